import { useRef } from 'react';
import type { PlanDocument } from '../../core/homing/document.ts';
import { useToday } from '../data/now.ts';
import { useQuery } from '../data/query.ts';
import { useLitter, useLitterOfPuppy } from '../facts/useLitter.ts';
import { useHouse } from '../facts/useLitterGrowth.ts';
import type { Paper } from '../links.ts';
import { href } from '../links.ts';
import { words } from '../state/words.ts';
import { type Documents, type PrintRoute, useDocuments } from './documents.ts';
import { PlanPaper } from './PlanPaper.tsx';
import { PrepPaper } from './PrepPaper.tsx';
import { type Back, PrintBar } from './PrintBar.tsx';
import { usePageTitle } from './page.ts';
import { type Fit, useFit } from './useFit.ts';
import { usePreviewScale } from './usePreviewScale.ts';
import './print-page.css';

/** The preview, which is the very page that is printed. A slot is the same without the bar, for the engine that makes the PDF. */
export function PrintPage({ route }: { route: PrintRoute }) {
  const today = useToday();
  const documents = useDocuments(route, today);
  return route.of === 'slot' ? <Slot route={route} documents={documents} /> : <Preview route={route} documents={documents} />;
}

function Slot({ route, documents }: { route: PrintRoute; documents: Documents }) {
  const sheets = useRef<HTMLElement>(null);
  const paper = route.paper ?? 'a4';
  const shown = documents.at === 'ready' ? documents.documents : NONE;
  const prep = documents.at === 'prep' ? documents.document : null;
  useFit(sheets, prep === null ? fitKey(shown, paper) : `${paper} ${JSON.stringify(prep)}`);
  usePageTitle(prep?.title ?? shown[0]?.title ?? '');
  return (
    <main className="print-window" ref={sheets}>
      {documents.at === 'failed' && <p>{words.print.gone}</p>}
      {prep !== null && <PrepPaper document={prep} paper={paper} />}
      {shown.map((d) => (
        <PlanPaper key={d.puppyId} document={d} paper={paper} />
      ))}
    </main>
  );
}

const NONE: readonly PlanDocument[] = [];

function Preview({ route, documents }: { route: PrintRoute; documents: Documents }) {
  const house = useHouse();
  const known = useQuery('people.house', {}).status !== 'loading';
  const sheets = useRef<HTMLElement>(null);
  const paper = route.paper ?? house.paper;
  const shown = documents.at === 'ready' && known ? documents.documents : NONE;
  const fit = useFit(sheets, fitKey(shown, paper));
  const back = useBack(route, shown);
  usePageTitle(shown.length > 1 ? words.print.plansOf(back.litter) : (shown[0]?.title ?? ''));
  return (
    <div className="print-window">
      <PrintBar route={route} documents={shown} paper={paper} fit={fit} back={back} />
      <p className="print-refused">{words.print.clippedPrint}</p>
      <main className="print-desk" ref={sheets}>
        <State documents={documents} fit={fit} />
        {shown.map((d) => (
          <Scaled key={d.puppyId} document={d} paper={paper} />
        ))}
      </main>
    </div>
  );
}

function fitKey(documents: readonly PlanDocument[], paper: Paper): string {
  return documents.length === 0 ? '' : `${paper} ${JSON.stringify(documents)}`;
}

/** What stands above the sheets instead of, or besides, them. */
function State({ documents, fit }: { documents: Documents; fit: Fit }) {
  if (documents.at === 'loading') return <p className="no-print">{words.print.loading}</p>;
  if (documents.at === 'failed') return <p className="no-print">{words.failure[documents.code]}</p>;
  if (documents.at === 'prep') return null;
  if (documents.documents.length === 0) return <p className="no-print">{words.print.nobody}</p>;
  if (fit.at !== 'clipped') return null;
  return (
    <p className="print-clipped no-print" role="alert">
      {words.print.clipped(fit.sheets.map((s) => words.print.sheetOf(s.sheet, s.name)).join(', '))}
    </p>
  );
}

/** On a narrow window the sheets are drawn smaller; their layout stays that of the paper. */
function Scaled({ document, paper }: { document: PlanDocument; paper: Paper }) {
  const box = useRef<HTMLDivElement>(null);
  usePreviewScale(box, paper);
  return (
    <div className="print-fit" ref={box}>
      <PlanPaper document={document} paper={paper} />
    </div>
  );
}

/** Back goes to the Homes of the litter that the sheets are about. */
function useBack(route: PrintRoute, documents: readonly PlanDocument[]): Back {
  const ofLitter = useLitter(route.of === 'litter' ? route.id : null);
  const ofPuppy = useLitterOfPuppy(route.of === 'puppy' ? route.id : (documents[0]?.puppyId ?? ''));
  const litter = (ofLitter ?? ofPuppy)?.litter;
  if (litter === undefined) return { href: href({ at: 'litters' }), words: words.print.backToLitters, litter: '' };
  const name = words.litterName(litter);
  return {
    href: href({ at: 'litter', litterId: litter.id, page: 'homes', puppyId: null }),
    words: words.print.backToHomes(name),
    litter: name,
  };
}
