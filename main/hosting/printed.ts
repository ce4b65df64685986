/** What the page that prints says about itself, in `data-ready` of its root element. */
import { ContractFailure } from '../../core/contract/result.ts';

/** How long a page may take to lay out its sheets, in ms. */
export const READY_WITHIN = 20_000;

/** The address part that shows one slot's document on one paper. */
export function printRoute(slot: string, paper: 'a4' | 'letter'): string {
  return `#/print/slot/${slot}?paper=${paper}`;
}

/** Passes when every sheet is whole; a clipped sheet is refused, never printed. */
export function requireWhole(ready: string | null): void {
  if (ready === 'true') return;
  if (ready === 'clipped') throw new ContractFailure('refused', 'a sheet would be clipped');
  throw new ContractFailure('internal', `the page is not ready for paper: ${ready ?? 'no answer'}`);
}
