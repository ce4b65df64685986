import type { EarlierPlan } from '../../../core/homing/earlier-plan.ts';
import { words } from './words.ts';

export const EARLIER_SHEETS = 2;

/** One sheet of paper: fixed in height, its parts spread over it; the foot says whose it is, of when, and which sheet. */
export function Sheet({
  document,
  n,
  thin = false,
  children,
}: {
  document: EarlierPlan;
  n: number;
  /** With few parts on it they stand together at the top. */
  thin?: boolean;
  children: React.ReactNode;
}) {
  return (
    <section
      className="sheet"
      data-sheet={n}
      data-name={document.name}
      aria-label={words.paper.sheetLabel(document.name, n, EARLIER_SHEETS)}
    >
      <div className={thin ? 'sheet-body thin' : 'sheet-body'}>
        {children}
        <footer className="sheet-foot">
          <span>{document.foot}</span>
          <span className="sheet-number">{words.paper.sheet(n, EARLIER_SHEETS)}</span>
        </footer>
      </div>
    </section>
  );
}

/** A heading with its one line of help to the right. */
export function PartHead({ heading, note }: { heading: string; note: string }) {
  return (
    <div className="part-head">
      <h2>{heading}</h2>
      <p>{note}</p>
    </div>
  );
}

/** A line to write on. */
export function WriteOn({ label }: { label: string }) {
  return (
    <span className="write-on">
      <span>{label}</span>
    </span>
  );
}
