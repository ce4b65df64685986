import { useState } from 'react';
import { addDays } from '../../core/calendar/day.ts';
import type { PlanDocument, PlanFinding } from '../../core/homing/document.ts';
import { useToday } from '../data/now.ts';
import { go, type Paper as PaperSize } from '../links.ts';
import { words } from '../state/words.ts';
import { HandOver } from './HandOver.tsx';
import { LabelChoice, type LabelChoiceProps } from './LabelChoice.tsx';
import { labelsOnSheet } from './LabelsPaper.tsx';
import { PaperChoice } from './PaperChoice.tsx';
import { sheetsOf } from './PaperSheets.tsx';
import { usePrintKey } from './page.ts';
import { type Paper, type PrintRoute, prepDay } from './papers.ts';
import { SavePdf } from './SavePdf.tsx';
import { useBack } from './useBack.ts';
import type { Fit } from './useFit.ts';

interface Shown {
  readonly route: PrintRoute;
  readonly papers: readonly Paper[];
  readonly paper: PaperSize;
  readonly fit: Fit;
  readonly labels: LabelChoiceProps;
}

/** Above the paper, never on it: which paper, print, save, hand over, and what she should look at first. */
export function PrintBar({ route, papers, paper, fit, labels }: Shown) {
  const ready = fit.at === 'fits' && (route.of !== 'labels' || labels.isPlaced);
  usePrintKey(ready);
  const plans = papers.flatMap(({ document }) => (document.kind === 'plan' ? [document] : []));
  const one = plans.length === 1 ? plans[0] : undefined;
  const back = useBack(route, plans[0]?.puppyId ?? '');
  return (
    <section className="print-bar no-print" aria-label={words.print.region}>
      <div className="print-row">
        <a href={back.href}>{back.words}</a>
        {route.of === 'prep' && <DayChoice route={route} />}
        {route.of === 'labels' && <LabelChoice {...labels} />}
        <PaperChoice paper={paper} choose={(p) => go({ ...route, paper: p })} />
        <p className="print-status" role="status">
          {status({ route, papers, paper, fit, labels })}
        </p>
        <div className="print-right">
          <button type="button" className="button main" disabled={!ready} onClick={() => window.print()}>
            {papers.length > 1 ? words.print.printing : words.print.print}
          </button>
        </div>
      </div>
      <div className="print-actions">
        {papers.length > 0 && <SavePdf papers={papers} paper={paper} ready={ready} />}
        {route.of === 'puppy' && one !== undefined && <HandOver document={one} ready={ready} />}
      </div>
      {route.of !== 'handed-over' && <Findings documents={plans} />}
      {one !== undefined && <Numbers document={one} />}
    </section>
  );
}

/** Today's prep sheet or tomorrow's. */
function DayChoice({ route }: { route: PrintRoute }) {
  const today = useToday();
  const w = words.prep;
  return (
    <fieldset>
      <legend>{w.day}</legend>
      {[today, addDays(today, 1)].map((day, i) => (
        <label key={day} className="box">
          <input type="radio" name="day" checked={day === prepDay(route, today)} onChange={() => go({ ...route, day })} />
          {i === 0 ? w.today : w.tomorrow}
        </label>
      ))}
    </fieldset>
  );
}

function status({ route, papers, paper, fit, labels }: Shown): string {
  const first = papers[0]?.document;
  if (first === undefined || fit.at === 'clipped') return '';
  if (fit.at === 'measuring') return words.print.preparing;
  const n = papers.reduce((sum, { document }) => sum + sheetsOf(document, paper), 0);
  if (route.of === 'labels') return labelStatus(n, paper, labels);
  if (first.kind !== 'plan') return words.print.sheets(n);
  const sheets = words.print.fits(n);
  return route.of === 'handed-over' ? `${words.print.kept(words.fullDate(first.made))} ${sheets}` : sheets;
}

function labelStatus(n: number, paper: PaperSize, { sheet, isPlaced }: LabelChoiceProps): string {
  const w = words.freezerPaper;
  if (!isPlaced) return `${w.first}: ${w.firstRange(labelsOnSheet(sheet, paper))}.`;
  return sheet === 'small' ? `${words.print.sheets(n)} ${w.smallNote[paper]}.` : words.print.sheets(n);
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
