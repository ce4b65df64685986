import { useRef, useState } from 'react';
import { weekRows } from '../facts/freezer-text.ts';
import { type Freezer, useFreezer } from '../facts/useFreezer.ts';
import { go, href, type Paper, type Route } from '../links.ts';
import { readNumber } from '../parts/form/read.ts';
import { words } from '../state/words.ts';
import { LABELS, type LabelSheet, LabelsPaper, labelSheets, labelsOf } from './LabelsPaper.tsx';
import { PaperChoice } from './PaperChoice.tsx';
import { usePageTitle, usePrintKey } from './page.ts';
import { ThawListPaper } from './ThawListPaper.tsx';
import { type Fit, useFit } from './useFit.ts';
import { usePreviewScale } from './usePreviewScale.ts';
import './print-page.css';
import './freezer-paper.css';

type PaperRoute = Extract<Route, { at: 'freezer-paper' }>;

/** The thaw list, or the labels of what thaws, before they are printed: the page that is seen is the page that is printed. */
export function FreezerPaperPage({ route }: { route: PaperRoute }) {
  const f = useFreezer();
  if (f === null) return <p className="print-window">{words.freezer.loading}</p>;
  return <Preview route={route} f={f} />;
}

function Preview({ route, f }: { route: PaperRoute; f: Freezer }) {
  const paper = route.paper ?? f.house.paper;
  const [kind, setKind] = useState<LabelSheet>('small');
  const [first, setFirst] = useState('1');
  const labels = labelsOf(f);
  const most = LABELS[kind][paper].across * LABELS[kind][paper].down;
  const from = readNumber({ low: 1, high: most, whole: true, example: '1' })(first);
  const sheets = route.of === 'labels' ? labelSheets(labels, most, from.ok ? from.value - 1 : 0) : [];
  const isEmpty = route.of === 'labels' ? labels.length === 0 : weekRows(f).length === 0;
  const root = useRef<HTMLElement>(null);
  const fit = useFit(root, isEmpty ? '' : `${route.of} ${paper} ${kind} ${first} ${f.now} ${labels.length}`);
  usePageTitle(route.of === 'labels' ? words.freezerPaper.labelsTitle : words.freezerPaper.listTitle(f.today));
  return (
    <div className="print-window">
      <section className="print-bar no-print" aria-label={words.print.region}>
        <div className="print-row">
          <a href={href({ at: 'freezer' })}>{words.freezerPaper.back}</a>
          {route.of === 'labels' && (
            <fieldset>
              <legend>{words.freezerPaper.kind}</legend>
              {(['small', 'plain'] as const).map((k) => (
                <label key={k} className="box">
                  <input type="radio" name="kind" checked={kind === k} onChange={() => setKind(k)} />
                  {words.freezerPaper.kinds[k]}
                </label>
              ))}
            </fieldset>
          )}
          <PaperChoice paper={paper} choose={(p) => go({ ...route, paper: p })} />
          {route.of === 'labels' && kind === 'small' && (
            <label className="labels-first">
              {words.freezerPaper.first}
              <input
                className="written"
                inputMode="numeric"
                value={first}
                aria-invalid={!from.ok}
                onChange={(event) => setFirst(event.target.value)}
              />
            </label>
          )}
          <PrintButton fit={fit} />
        </div>
        <p className="print-status" role="status">
          {isEmpty ? '' : status(fit, route, paper, kind, sheets.length, from.ok, most)}
        </p>
      </section>
      <p className="print-refused">{words.freezerPaper.clipped}</p>
      <main className="print-desk" ref={root}>
        <h1 className="unseen">
          {route.of === 'labels' ? words.freezerPaper.labelsTitle : words.freezerPaper.listTitle(f.today)}
        </h1>
        {isEmpty && (
          <p className="no-print">{route.of === 'labels' ? words.freezerPaper.nothing : words.freezerPaper.nothingList}</p>
        )}
        {!isEmpty && (
          <Scaled paper={paper} sheets={route.of === 'labels' ? sheets.length : 1}>
            {route.of === 'labels' ? (
              <LabelsPaper sheets={sheets} paper={paper} kind={kind} f={f} />
            ) : (
              <ThawListPaper f={f} paper={paper} />
            )}
          </Scaled>
        )}
      </main>
    </div>
  );
}

function status(
  fit: Fit,
  route: PaperRoute,
  paper: Paper,
  kind: LabelSheet,
  sheets: number,
  isPlaced: boolean,
  most: number,
): string {
  if (fit.at === 'measuring') return words.print.preparing;
  if (fit.at === 'clipped') return words.freezerPaper.clipped;
  if (route.of === 'list') return words.freezerPaper.fits(1);
  const size = kind === 'small' ? ` ${words.freezerPaper.smallNote[paper]}.` : '';
  return isPlaced
    ? `${words.freezerPaper.fits(sheets)}${size}`
    : `${words.freezerPaper.first}: ${words.freezerPaper.firstRange(most)}.`;
}

function Scaled({ paper, sheets, children }: { paper: Paper; sheets: number; children: React.ReactNode }) {
  const box = useRef<HTMLDivElement>(null);
  usePreviewScale(box, paper, sheets);
  return (
    <div className="print-fit" ref={box}>
      {children}
    </div>
  );
}

function PrintButton({ fit }: { fit: Fit }) {
  const ready = fit.at === 'fits';
  usePrintKey(ready);
  return (
    <div className="print-right">
      <button type="button" className="button main" disabled={!ready} onClick={() => window.print()}>
        {words.print.print}
      </button>
    </div>
  );
}
