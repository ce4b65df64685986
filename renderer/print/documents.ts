/** The documents that a print address stands for, fetched from the host and fetched again when their facts change elsewhere. */
import { useEffect, useState } from 'react';
import type { CivilDate } from '../../core/calendar/day.ts';
import { printDocumentSchema } from '../../core/contract/paper.ts';
import type { ErrorCode, Tag } from '../../core/contract/result.ts';
import type { PlanDocument } from '../../core/homing/document.ts';
import type { Puppy } from '../../core/litter/litter.ts';
import type { PrepDocument } from '../../core/weaning/prep-document.ts';
import { call, onChanged } from '../data/host.ts';
import type { Route } from '../links.ts';

export type PrintRoute = Extract<Route, { at: 'print' }>;

export type Documents =
  | { at: 'loading' }
  | { at: 'ready'; documents: readonly PlanDocument[] }
  /** Only out of a slot: the prep sheet has a preview of its own. */
  | { at: 'prep'; document: PrepDocument }
  | { at: 'failed'; code: ErrorCode };

const FACTS: readonly Tag[] = ['litters', 'readings', 'rules', 'house', 'plans'];

export function useDocuments(route: PrintRoute, today: CivilDate): Documents {
  const { of, id } = route;
  const [state, setState] = useState<{ key: string; value: Documents } | null>(null);
  const key = `${of} ${id} ${today}`;

  useEffect(() => {
    let turn = 0;
    const load = async () => {
      turn += 1;
      const mine = turn;
      const value = await fetchDocuments(of, id, today);
      if (mine === turn) setState({ key, value });
    };
    void load();
    // A slot is read once, so it is never asked for again.
    const deaf =
      of === 'slot'
        ? null
        : onChanged((tags) => {
            if (tags.some((t) => FACTS.includes(t))) void load();
          });
    return () => {
      turn = Number.NaN;
      deaf?.();
    };
  }, [of, id, today, key]);

  return state?.key === key ? state.value : { at: 'loading' };
}

/** Slots already read, so that drawing the page twice does not ask twice. */
const slots = new Map<string, Promise<Documents>>();

function fetchDocuments(of: PrintRoute['of'], id: string, today: CivilDate): Promise<Documents> {
  switch (of) {
    case 'puppy':
      return plans([id], today);
    case 'litter':
      return litterPlans(id, today);
    case 'kept':
      return kept(id);
    case 'slot': {
      const reading = slots.get(id) ?? fromSlot(id);
      slots.set(id, reading);
      return reading;
    }
  }
}

async function plans(puppyIds: readonly string[], on: CivilDate): Promise<Documents> {
  const documents: PlanDocument[] = [];
  for (const puppyId of puppyIds) {
    const result = await call('homing.plan', { puppyId, on });
    if (!result.ok) return { at: 'failed', code: result.error.code };
    documents.push(result.value.document);
  }
  return { at: 'ready', documents };
}

/** Those still in the litter: the ones that have left have their plan. */
async function litterPlans(litterId: string, on: CivilDate): Promise<Documents> {
  const all = await call('litter.all', {});
  if (!all.ok) return { at: 'failed', code: all.error.code };
  const facts = all.value.litters.find((l) => l.litter.id === litterId);
  if (facts === undefined) return { at: 'failed', code: 'not-found' };
  return await plans(
    facts.puppies.filter(waitsForPlan).map((p) => p.id),
    on,
  );
}

/** Whether a puppy is still to be homed. */
export function waitsForPlan(puppy: Pick<Puppy, 'state'>): boolean {
  return puppy.state === 'litter';
}

async function kept(planId: string): Promise<Documents> {
  const result = await call('homing.keptDocument', { planId });
  return result.ok ? { at: 'ready', documents: [result.value.document] } : { at: 'failed', code: result.error.code };
}

/** A document left by the host for the engine that makes the PDF. */
async function fromSlot(id: string): Promise<Documents> {
  try {
    const answer = await fetch(`/paper/${encodeURIComponent(id)}`);
    const parsed = answer.ok ? printDocumentSchema.safeParse(await answer.json()) : null;
    if (parsed?.success !== true) return { at: 'failed', code: 'not-found' };
    return parsed.data.kind === 'prep' ? { at: 'prep', document: parsed.data } : { at: 'ready', documents: [parsed.data] };
  } catch {
    return { at: 'failed', code: 'unreachable' };
  }
}
