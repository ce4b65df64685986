import { useState } from 'react';
import type { RuleChange } from '../../core/feeding/finding.ts';
import type { PlanDocument, PlanFinding } from '../../core/homing/document.ts';
import { useToday } from '../data/now.ts';
import { run } from '../data/query.ts';
import { useLitterOfPuppy } from '../facts/useLitter.ts';
import { changeWords } from '../parts/FindingLines.tsx';
import { words } from '../state/words.ts';

/** What is found, with the names of the others it is true of too. */
interface Found {
  readonly finding: PlanFinding;
  readonly puppyId: string;
  readonly likewise: readonly string[];
}

const ORDER: readonly PlanFinding['severity'][] = ['warning', 'caution', 'note'];

/** A finding is said once, however many puppies it is true of, the gravest first. One about the house alone names nobody. */
export function foundIn(documents: readonly PlanDocument[]): Found[] {
  const found = new Map<string, Found>();
  for (const d of documents) {
    for (const finding of d.findings) {
      const key = `${finding.severity} ${finding.key}`;
      const first = found.get(key);
      if (first === undefined) found.set(key, { finding, puppyId: d.puppyId, likewise: [] });
      else if (finding.sentence !== first.finding.sentence) found.set(key, { ...first, likewise: [...first.likewise, d.name] });
    }
  }
  return [...found.values()].toSorted((a, b) => ORDER.indexOf(a.finding.severity) - ORDER.indexOf(b.finding.severity));
}

/** Her reason for printing though a warning stands, as typed. */
export interface Reason {
  readonly why: string;
  readonly setWhy: (why: string) => void;
}

/** What she should look at before printing; where a warning stands, why it is printed all the same. Not printed, but for the reason. */
export function PrintFindings({ documents, why, setWhy }: { documents: readonly PlanDocument[] } & Reason) {
  const found = foundIn(documents);
  const [open, setOpen] = useState(false);
  if (found.length === 0) return null;
  const grave = found[0]?.finding.severity === 'warning';
  return (
    <>
      <details open={open || grave} onToggle={(event) => setOpen(event.currentTarget.open)}>
        <summary>{words.print.before(found.length)}</summary>
        <ul className="print-findings">
          {found.map(({ finding: f, likewise, puppyId }) => (
            <li key={`${f.severity} ${f.key}`}>
              <span className={`severity severity-${f.severity}`}>{words.print.severity[f.severity]}</span>
              {f.sentence} {f.mend} {likewise.length > 0 && words.print.likewise(likewise)}{' '}
              <span className="note">{words.print.source(f.source)}</span>
              {f.change !== null && <Mend change={f.change as RuleChange} puppyId={puppyId} />}
            </li>
          ))}
        </ul>
        <p className="note">{words.print.beforeNote}</p>
      </details>
      {found.some((f) => f.finding.blocks) && (
        <label className="print-why">
          {words.print.why}
          <input className="written" value={why} maxLength={300} onChange={(event) => setWhy(event.target.value)} />
          <span className="note">{words.print.whyNote}</span>
        </label>
      )}
    </>
  );
}

/** Writes the rule that mends it for the litter, from today; the plan is then made again. */
function Mend({ change, puppyId }: { change: RuleChange; puppyId: string }) {
  const today = useToday();
  const litterId = useLitterOfPuppy(puppyId)?.litter.id;
  if (litterId === undefined) return null;
  const take = () => void run('feeding.setLitterRules', { litterId, from: today, change: { [change.key]: change.value } });
  return (
    <button type="button" className="button finding-mend" onClick={take}>
      {words.finding.mend(changeWords(change))}
    </button>
  );
}
