import { useEffect } from 'react';
import { clockOf } from '../../core/calendar/clock.ts';
import { localOf } from '../data/now.ts';
import { run, useQuery } from '../data/query.ts';
import { useHouse } from '../facts/useLitterGrowth.ts';
import { href } from '../links.ts';
import { useWindow } from '../state/window.ts';
import { words } from '../state/words.ts';

/** The foot: where a number comes from on the left, the last thing done on the right. A failure takes the left side until mended. */
export function Foot() {
  const { explanation, drawnUp, failure, drawUp } = useWindow();
  const house = useHouse();
  const status = useQuery('records.status', {});
  const last = status.value?.canUndo ?? null;
  const again = status.value?.canRedo ?? null;
  // The defaults of the program are a version of their own.
  const rules = useQuery('feeding.rules', {}).value;
  const isCommon = rules !== null && rules.versions.length === 1 && rules.ofLitters.length === 0;
  useUndoKeys();
  return (
    <>
      {drawnUp && explanation !== null && <DrawnUp />}
      <footer className={failure === null ? 'foot' : 'foot failed'}>
        <p className="said" role="status">
          {failure !== null ? (
            words.failure[failure.code]
          ) : drawnUp ? (
            <>
              {words.app.footDrawnUp} <kbd>{words.keys.escape}</kbd> {words.app.letsItDown}
            </>
          ) : explanation !== null ? (
            <>
              <b>{explanation.figure}</b> {explanation.how}{' '}
              {explanation.sum.length > 0 && (
                <button type="button" className="link" onClick={() => drawUp(true)}>
                  {words.app.more}
                </button>
              )}
            </>
          ) : (
            isCommon && (
              <>
                {words.app.rulesAreCommon} <a href={href({ at: 'rules' })}>{words.app.readThem}</a>
              </>
            )
          )}
        </p>
        <p className="undo">
          {last === null ? (
            words.app.nothingToUndo
          ) : (
            <>
              <button type="button" className="link" onClick={() => void run('records.undo', {})}>
                {words.app.undo}
              </button>{' '}
              {words.doneSentence(last, house.massUnit)} <kbd>{words.keys.undo}</kbd>
            </>
          )}
          {again !== null && (
            <>
              {' '}
              <button type="button" className="link" onClick={() => void run('records.redo', {})}>
                {words.app.redo}
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
  const done = useQuery('records.done', { limit: 8 });
  if (explanation === null) return null;
  return (
    <section className="drawn-up" aria-label={words.app.whereFrom}>
      <div>
        <h2>{words.app.whereFrom}</h2>
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
        <h2>{words.app.doneLatest}</h2>
        {(done.value?.done ?? []).map((d) => (
          <p key={d.id} className={d.undone ? 'line struck' : 'line'}>
            <span className="soft">{clockOf(localOf(d.instant))}</span> {words.doneSentence(d, house.massUnit)}
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
