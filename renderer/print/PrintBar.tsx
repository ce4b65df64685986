import { useState } from 'react';
import type { PlanDocument, PlanFinding } from '../../core/homing/document.ts';
import { go, type Paper } from '../links.ts';
import { words } from '../state/words.ts';
import type { PrintRoute } from './documents.ts';
import { HandOver } from './HandOver.tsx';
import { PaperChoice } from './PaperChoice.tsx';
import { usePrintKey } from './page.ts';
import { SavePdf } from './SavePdf.tsx';
import { SHEETS } from './Sheet.tsx';
import type { Fit } from './useFit.ts';

interface Shown {
  readonly route: PrintRoute;
  readonly documents: readonly PlanDocument[];
  readonly paper: Paper;
  readonly fit: Fit;
}

export interface Back {
  readonly href: string;
  readonly words: string;
  readonly litter: string;
}

/** Above the paper, never on it: which paper, print, save, hand over, and what she should look at first. */
export function PrintBar({ route, documents, paper, fit, back }: Shown & { back: Back }) {
  const ready = fit.at === 'fits';
  usePrintKey(ready);
  const one = documents.length === 1 ? documents[0] : undefined;
  return (
    <section className="print-bar no-print" aria-label={words.print.region}>
      <div className="print-row">
        <a href={back.href}>{back.words}</a>
        <PaperChoice paper={paper} choose={(p) => go({ ...route, paper: p })} />
        <p className="print-status" role="status">
          {status(fit, documents, route)}
        </p>
        <div className="print-right">
          <button type="button" className="button main" disabled={!ready} onClick={() => window.print()}>
            {documents.length > 1 ? words.print.printing : words.print.print}
          </button>
        </div>
      </div>
      <div className="print-actions">
        {documents.length > 0 && <SavePdf route={route} documents={documents} paper={paper} ready={ready} />}
        {route.of === 'puppy' && one !== undefined && <HandOver document={one} ready={ready} />}
      </div>
      {route.of !== 'kept' && <Findings documents={documents} />}
      {one !== undefined && <Numbers document={one} />}
    </section>
  );
}

function status(fit: Fit, documents: readonly PlanDocument[], route: PrintRoute): string {
  const first = documents[0];
  if (first === undefined || fit.at === 'clipped') return '';
  if (fit.at === 'measuring') return words.print.preparing;
  const sheets = words.print.fits(documents.length * SHEETS);
  return route.of === 'kept' ? `${words.print.kept(words.fullDate(first.made))} ${sheets}` : sheets;
}

/** What is found, with the names of the others it is true of too. */
interface Found {
  readonly finding: PlanFinding;
  readonly likewise: readonly string[];
}

/**
 * A finding is said once, however many puppies it is true of: two are the same when they differ in the puppy's name and in
 * figures only. One about the house alone names nobody.
 */
function foundIn(documents: readonly PlanDocument[]): Found[] {
  const found = new Map<string, Found>();
  for (const d of documents) {
    for (const finding of d.findings) {
      const key = `${finding.severity} ${finding.sentence.replaceAll(d.name, '').replaceAll(/\d+(\.\d+)?/g, '')}`;
      const first = found.get(key);
      const others = first === undefined ? [] : finding.sentence === first.finding.sentence ? [] : [d.name];
      found.set(key, { finding: first?.finding ?? finding, likewise: [...(first?.likewise ?? []), ...others] });
    }
  }
  return [...found.values()];
}

function Findings({ documents }: { documents: readonly PlanDocument[] }) {
  const found = foundIn(documents);
  const [open, setOpen] = useState(false);
  if (found.length === 0) return null;
  const order: PlanFinding['severity'][] = ['warning', 'caution', 'note'];
  const sorted = found.toSorted((a, b) => order.indexOf(a.finding.severity) - order.indexOf(b.finding.severity));
  const grave = sorted[0]?.finding.severity === 'warning';
  return (
    <details open={open || grave} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{words.print.before(found.length)}</summary>
      <ul className="print-findings">
        {sorted.map(({ finding: f, likewise }) => (
          <li key={f.sentence}>
            <span className={`severity severity-${f.severity}`}>{words.print.severity[f.severity]}</span>
            {f.sentence} {f.mend} {likewise.length > 0 && words.print.likewise(likewise)}{' '}
            <span className="note">{words.print.source(f.source)}</span>
          </li>
        ))}
      </ul>
      <p className="note">{words.print.beforeNote}</p>
    </details>
  );
}

function Numbers({ document }: { document: PlanDocument }) {
  return (
    <details>
      <summary>{words.print.whereFrom}</summary>
      <dl className="print-numbers">
        {document.provenance.map((p) => (
          <div key={p.what}>
            <dt>{p.what}</dt>
            <dd>{p.how}</dd>
          </div>
        ))}
      </dl>
    </details>
  );
}
