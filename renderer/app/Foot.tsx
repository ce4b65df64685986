import { useEffect } from 'react';
import { clockOf } from '../../core/calendar/clock.ts';
import { appWords, failureWords } from '../../core/words/en/app.ts';
import { doneSentence } from '../../core/words/en/records.ts';
import { localOf } from '../data/now.ts';
import { run, useQuery } from '../data/query.ts';
import { useHouse } from '../facts/useLitterGrowth.ts';
import { href } from '../links.ts';
import { useWindow } from '../state/window.ts';

/** The foot: where a number comes from on the left, the last thing done on the right. A failure takes the left side until mended. */
export function Foot() {
  const { explanation, drawnUp, failure, drawUp } = useWindow();
  const house = useHouse();
  const status = useQuery('records.status', {});
  const last = status.value?.canUndo ?? null;
  const again = status.value?.canRedo ?? null;
  useUndoKeys();
  return (
    <>
      {drawnUp && explanation !== null && <DrawnUp />}
      <footer className={failure === null ? 'foot' : 'foot failed'}>
        <p className="said" role="status">
          {failure !== null ? (
            failureWords[failure.code]
          ) : drawnUp ? (
            <>
              {appWords.footDrawnUp} <kbd>Esc</kbd> {appWords.letsItDown}
            </>
          ) : explanation !== null ? (
            <>
              <b>{explanation.figure}</b> {explanation.how}{' '}
              {explanation.sum.length > 0 && (
                <button type="button" className="link" onClick={() => drawUp(true)}>
                  {appWords.more}
                </button>
              )}
            </>
          ) : (
            <>
              {appWords.rulesAreCommon} <a href={href({ at: 'rules' })}>{appWords.readThem}</a>
            </>
          )}
        </p>
        <p className="undo">
          {last === null ? (
            appWords.nothingToUndo
          ) : (
            <>
              <button type="button" className="link" onClick={() => void run('records.undo', {})}>
                {appWords.undo}
              </button>{' '}
              {doneSentence(last, house.massUnit)} <kbd>Ctrl Z</kbd>
            </>
          )}
          {again !== null && (
            <>
              {' '}
              <button type="button" className="link" onClick={() => void run('records.redo', {})}>
                {appWords.redo}
              </button>
            </>
          )}
        </p>
      </footer>
    </>
  );
}

function DrawnUp() {
  const { explanation } = useWindow();
  const house = useHouse();
  const done = useQuery('records.done', { most: 8 });
  if (explanation === null) return null;
  return (
    <section className="drawn-up" aria-label={appWords.whereFrom}>
      <div>
        <h2>{appWords.whereFrom}</h2>
        <p>
          <b>{explanation.figure}</b> {explanation.how}
        </p>
        <table className="sum">
          <tbody>
            {explanation.sum.map((line) => (
              <tr key={line.what}>
                <th scope="row">{line.what}</th>
                <td className="figure">{line.figure}</td>
                <td className="note">{line.source}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <div className="done-list">
        <h2>{appWords.doneLatest}</h2>
        {(done.value?.done ?? []).map((d) => (
          <p key={d.id} className={d.undone ? 'line struck' : 'line'}>
            <span className="soft">{clockOf(localOf(d.instant))}</span> {doneSentence(d, house.massUnit)}
          </p>
        ))}
      </div>
    </section>
  );
}

/** Ctrl Z and Ctrl Y everywhere, except where text is being typed: there the browser's own undo has its place. */
function useUndoKeys(): void {
  useEffect(() => {
    const listener = (event: KeyboardEvent) => {
      if (event.defaultPrevented || event.altKey || !(event.ctrlKey || event.metaKey)) return;
      const key = event.key.toLowerCase();
      const target = event.target;
      if (target instanceof HTMLInputElement && target.value !== '' && target.type !== 'checkbox' && target.type !== 'radio')
        return;
      if (target instanceof HTMLTextAreaElement) return;
      if (key === 'z' && !event.shiftKey) {
        event.preventDefault();
        void run('records.undo', {});
      } else if (key === 'y' || (key === 'z' && event.shiftKey)) {
        event.preventDefault();
        void run('records.redo', {});
      }
    };
    window.addEventListener('keydown', listener);
    return () => window.removeEventListener('keydown', listener);
  }, []);
}
