import { useMemo, useRef, useState } from 'react';
import { addDays, type CivilDate } from '../../core/calendar/day.ts';
import { type PrepDocument, prepDocumentOn } from '../../core/weaning/prep-document.ts';
import { run } from '../data/query.ts';
import { useWeaning, type Weaning } from '../facts/useWeaning.ts';
import { go, href, type Paper, type Route } from '../links.ts';
import { words } from '../state/words.ts';
import { PaperChoice } from './PaperChoice.tsx';
import { PrepPaper } from './PrepPaper.tsx';
import { usePageTitle, usePrintKey } from './page.ts';
import { type Fit, useFit } from './useFit.ts';
import { usePreviewScale } from './usePreviewScale.ts';
import './print-page.css';

type PrepRoute = Extract<Route, { at: 'prep' }>;

/** The prep sheet before it is printed: the page that is seen is the page that is printed. */
export function PrepPage({ route }: { route: PrepRoute }) {
  const weaning = useWeaning(route.litterId);
  if (weaning === null) return <p className="print-window">{words.prep.loading}</p>;
  return <Preview route={route} weaning={weaning} />;
}

function Preview({ route, weaning }: { route: PrepRoute; weaning: Weaning }) {
  const { today, facts, plan, reckoned } = weaning;
  const day = route.day ?? addDays(today, 1);
  const paper = route.paper ?? facts.house.paper;
  const document = useMemo(() => (plan === null ? null : prepDocumentOn(reckoned, day, words)), [plan, reckoned, day]);
  const sheets = useRef<HTMLElement>(null);
  const fit = useFit(sheets, document === null ? '' : `${paper} ${JSON.stringify(document)}`);
  usePageTitle(document?.title ?? words.prep.title);
  return (
    <div className="print-window">
      <PrepBar route={route} weaning={weaning} day={day} paper={paper} document={document} fit={fit} />
      <p className="print-refused">{words.prep.clipped}</p>
      <main className="print-desk" ref={sheets}>
        {document === null && <p className="no-print">{words.prep.nothing}</p>}
        {fit.at === 'clipped' && (
          <p className="print-clipped no-print" role="alert">
            {words.prep.clipped}
          </p>
        )}
        {document !== null && <Scaled document={document} paper={paper} />}
      </main>
    </div>
  );
}

function Scaled({ document, paper }: { document: PrepDocument; paper: Paper }) {
  const box = useRef<HTMLDivElement>(null);
  usePreviewScale(box, paper, 1);
  return (
    <div className="print-fit" ref={box}>
      <PrepPaper document={document} paper={paper} />
    </div>
  );
}

function PrepBar(props: {
  route: PrepRoute;
  weaning: Weaning;
  day: CivilDate;
  paper: Paper;
  document: PrepDocument | null;
  fit: Fit;
}) {
  const { route, weaning, day, paper, document, fit } = props;
  const { litter, today } = weaning;
  const ready = fit.at === 'fits' && document !== null;
  usePrintKey(ready);
  const days = [today, addDays(today, 1)];
  return (
    <section className="print-bar no-print" aria-label={words.print.region}>
      <div className="print-row">
        <a href={href({ at: 'litter', litterId: litter.id, page: 'weaning', puppyId: null })}>
          {words.prep.back(words.litterName(litter))}
        </a>
        <fieldset>
          <legend>{words.prep.day}</legend>
          {days.map((d, i) => (
            <label key={d} className="box">
              <input type="radio" name="day" checked={d === day} onChange={() => go({ ...route, day: d })} />
              {i === 0 ? words.prep.today : words.prep.tomorrow}
            </label>
          ))}
        </fieldset>
        <PaperChoice paper={paper} choose={(p) => go({ ...route, day, paper: p })} />
        <div className="print-right">
          <SavePrep litterId={litter.id} day={day} paper={paper} ready={ready} />
          <button type="button" className="button main" disabled={!ready} onClick={() => window.print()}>
            {words.print.print}
          </button>
        </div>
      </div>
      <p className="print-status" role="status">
        {document === null ? '' : fit.at === 'measuring' ? words.print.preparing : fit.at === 'fits' ? words.prep.fits : ''}
      </p>
    </section>
  );
}

function SavePrep({ litterId, day, paper, ready }: { litterId: string; day: CivilDate; paper: Paper; ready: boolean }) {
  const [said, setSaid] = useState('');
  const [writing, setWriting] = useState(false);
  const save = async () => {
    setWriting(true);
    const done = await run('weaning.prepPdf', { litterId, day, paper }, { quiet: true });
    setWriting(false);
    setSaid(done.ok ? words.prep.saved(done.value.file, done.value.folder) : words.failure[done.error.code]);
  };
  return (
    <>
      <span role="status">{writing ? words.print.savingOne : said}</span>
      <button type="button" className="button" disabled={!ready || writing} onClick={() => void save()}>
        {words.print.savePdf}
      </button>
    </>
  );
}
