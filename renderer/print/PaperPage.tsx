import { useMemo, useRef, useState } from 'react';
import type { PaperDocument } from '../../core/contract/paper.ts';
import type { LabelSheet } from '../../core/freezer/paper-document.ts';
import { catalogueOf } from '../../core/words/catalogue.ts';
import { now, useToday } from '../data/now.ts';
import { useQuery } from '../data/query.ts';
import { useHouse } from '../facts/useLitterGrowth.ts';
import type { Paper as PaperSize } from '../links.ts';
import { words } from '../state/words.ts';
import { readFirst } from './LabelChoice.tsx';
import { labelsOnSheet } from './LabelsPaper.tsx';
import { PaperSheets, sheetsOf } from './PaperSheets.tsx';
import { PrintBar } from './PrintBar.tsx';
import { usePageTitle } from './page.ts';
import { type Paper, type Papers, type PrintRoute, usePapers } from './papers.ts';
import { type Fit, useFit } from './useFit.ts';
import { usePreviewScale } from './usePreviewScale.ts';
import '../parts/parts.css';
import './print-page.css';

/** The preview, which is the very page that is printed. A slot is the same without the bar, for the engine that makes the PDF. */
export function PaperPage({ route }: { route: PrintRoute }) {
  const today = useToday();
  const [opened] = useState(() => now().local);
  const papers = usePapers(route, today, opened);
  return route.of === 'slot' ? <Slot route={route} papers={papers} /> : <Preview route={route} papers={papers} />;
}

const NONE: readonly Paper[] = [];

function Slot({ route, papers }: { route: PrintRoute; papers: Papers }) {
  const sheets = useRef<HTMLElement>(null);
  const paper = route.paper ?? 'a4';
  const shown = papers.at === 'ready' ? papers.papers : NONE;
  useFit(sheets, fitKey(shown, paper));
  usePageTitle(shown[0]?.document.title ?? '');
  return (
    <main className="print-window" ref={sheets}>
      {papers.at === 'failed' && <p>{words.print.gone}</p>}
      {shown.map(({ document }) => (
        <PaperSheets key={keyOf(document)} document={document} paper={paper} />
      ))}
    </main>
  );
}

function Preview({ route, papers }: { route: PrintRoute; papers: Papers }) {
  const house = useHouse();
  const known = useQuery('people.house', {}).status !== 'loading';
  const sheets = useRef<HTMLElement>(null);
  const paper = route.paper ?? house.paper;
  const [sheet, setSheet] = useState<LabelSheet>('small');
  const [first, setFirst] = useState('1');
  const place = readFirst(first, labelsOnSheet(sheet, paper));
  const used = sheet === 'small' && place.ok ? place.value - 1 : 0;
  const fetched = papers.at === 'ready' && known ? papers.papers : NONE;
  const [why, setWhy] = useState('');
  const shown = useMemo(() => fetched.map((p) => reasoned(placed(p, sheet, used), why)), [fetched, sheet, used, why]);
  const fit = useFit(sheets, fitKey(shown, paper));
  usePageTitle(shown.length > 1 ? words.print.manyPlans : (shown[0]?.document.title ?? ''));
  return (
    <div className="print-window">
      <PrintBar
        route={route}
        papers={shown}
        paper={paper}
        fit={fit}
        labels={{ sheet, setSheet, first, setFirst, isPlaced: place.ok }}
        reason={{ why, setWhy }}
      />
      <p className="print-refused">{words.print.clippedPrint}</p>
      <main className="print-desk" ref={sheets}>
        <State route={route} papers={papers} fit={fit} />
        {shown.map(({ document }) => (
          <Scaled key={keyOf(document)} document={document} paper={paper} />
        ))}
      </main>
    </div>
  );
}

/** Which labels, and from which place, are chosen here: they do not change what the labels say. */
function placed({ of, document }: Paper, sheet: LabelSheet, used: number): Paper {
  if (of?.kind !== 'labels' || document.kind !== 'labels') return { of, document };
  return { of: { ...of, sheet, used }, document: { ...document, sheet, used } };
}

/** Her reason stands on the plans that a warning stands against, as the program will print it. */
function reasoned({ of, document }: Paper, why: string): Paper {
  const reason = why.trim();
  if (of?.kind !== 'puppy' || document.kind !== 'plan' || document.version !== 3 || reason === '') return { of, document };
  if (!document.findings.some((f) => f.blocks)) return { of, document };
  return { of: { ...of, why: reason }, document: { ...document, why: catalogueOf(document.language).plan.why(reason) } };
}

function keyOf(document: PaperDocument): string {
  return document.kind === 'plan' ? document.puppyId : document.kind;
}

function fitKey(papers: readonly Paper[], paper: PaperSize): string {
  return papers.length === 0 ? '' : `${paper} ${JSON.stringify(papers.map((p) => p.document))}`;
}

/** What stands above the sheets instead of, or besides, them. */
function State({ route, papers, fit }: { route: PrintRoute; papers: Papers; fit: Fit }) {
  const w = words.print;
  if (papers.at === 'loading') return <p className="no-print">{w.loading}</p>;
  if (papers.at === 'failed') return <p className="no-print">{words.failure[papers.code]}</p>;
  if (papers.papers.length === 0) return <p className="no-print">{w.nothing[route.of]}</p>;
  if (fit.at !== 'clipped') return null;
  return (
    <p className="print-clipped no-print" role="alert">
      {w.clipped[papers.papers[0]?.document.kind ?? 'plan'](fit.sheets.map((s) => w.sheetOf(s.sheet, s.name)).join(', '))}
    </p>
  );
}

/** On a narrow window the sheets are drawn smaller; their layout stays that of the paper. */
function Scaled({ document, paper }: { document: PaperDocument; paper: PaperSize }) {
  const box = useRef<HTMLDivElement>(null);
  usePreviewScale(box, paper, sheetsOf(document, paper));
  return (
    <div className="print-fit" ref={box}>
      <PaperSheets document={document} paper={paper} />
    </div>
  );
}
