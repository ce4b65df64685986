import { addDays } from '../../core/calendar/day.ts';
import type { AnyPlan } from '../../core/homing/document.ts';
import { useToday } from '../data/now.ts';
import { go, type Paper as PaperSize } from '../links.ts';
import { words } from '../state/words.ts';
import { HandOver } from './HandOver.tsx';
import { LabelChoice, type LabelChoiceProps } from './LabelChoice.tsx';
import { labelsOnSheet } from './LabelsPaper.tsx';
import { PaperChoice } from './PaperChoice.tsx';
import { sheetsOf } from './PaperSheets.tsx';
import { PrintFindings, type Reason } from './PrintFindings.tsx';
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
  readonly reason: Reason;
}

/** Above the paper, never on it: which paper, print, save, hand over, and what she should look at first. */
export function PrintBar({ route, papers, paper, fit, labels, reason }: Shown) {
  const plans = papers.flatMap(({ document }) => (document.kind === 'plan' ? [document] : []));
  const made = plans.flatMap((d) => (d.version === 3 ? [d] : []));
  const isBlocked = route.of !== 'handed-over' && made.some((d) => d.why === '' && d.findings.some((f) => f.blocks));
  const ready = fit.at === 'fits' && !isBlocked && (route.of !== 'labels' || labels.isPlaced);
  usePrintKey(ready);
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
          {isBlocked && fit.at !== 'measuring' ? words.print.blocked : status({ route, papers, paper, fit, labels })}
        </p>
        <div className="print-right">
          <button type="button" className="button main" disabled={!ready} onClick={() => window.print()}>
            {papers.length > 1 ? words.print.printing : words.print.print}
          </button>
        </div>
      </div>
      <div className="print-actions">
        {papers.length > 0 && <SavePdf papers={papers} paper={paper} ready={ready} />}
        {route.of === 'puppy' && made[0] !== undefined && <HandOver document={made[0]} ready={ready} why={reason.why} />}
      </div>
      {route.of !== 'handed-over' && <PrintFindings documents={made} {...reason} />}
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

function status({ route, papers, paper, fit, labels }: Omit<Shown, 'reason'>): string {
  const first = papers[0]?.document;
  if (first === undefined || fit.at === 'clipped') return '';
  if (fit.at === 'measuring') return words.print.preparing;
  const n = papers.reduce((sum, { document }) => sum + sheetsOf(document, paper), 0);
  if (route.of === 'labels') return labelStatus(n, paper, labels);
  if (first.kind !== 'plan') return words.print.sheets(n);
  const sheets = words.print.fits(n, papers.length);
  return route.of === 'handed-over' ? `${words.print.kept(words.fullDate(first.made))} ${sheets}` : sheets;
}

function labelStatus(n: number, paper: PaperSize, { sheet, isPlaced }: LabelChoiceProps): string {
  const w = words.freezerPaper;
  if (!isPlaced) return `${w.first}: ${w.firstRange(labelsOnSheet(sheet, paper))}.`;
  return sheet === 'small' ? `${words.print.sheets(n)} ${w.smallNote[paper]}.` : words.print.sheets(n);
}

function Numbers({ document }: { document: AnyPlan }) {
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
