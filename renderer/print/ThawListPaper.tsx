import { clockOf, dateOf } from '../../core/calendar/clock.ts';
import { namesText, takesText, weekRows } from '../facts/freezer-text.ts';
import type { Freezer } from '../facts/useFreezer.ts';
import type { Paper } from '../links.ts';
import { words } from '../state/words.ts';
import './print.css';
import './freezer-paper.css';

/** More rows than this do not fit on one sheet; the nearest days are what is needed at the freezer door. */
const MOST_ROWS = 18;

/** The thaw list of seven days on one sheet, for the freezer door. */
export function ThawListPaper({ f, paper }: { f: Freezer; paper: Paper }) {
  const rows = weekRows(f).slice(0, MOST_ROWS);
  const time = (t: Parameters<typeof clockOf>[0]) => words.freezerPaper.atTime(dateOf(t), clockOf(t));
  const byDay = [...Map.groupBy(rows, (r) => dateOf(r.out))];
  return (
    <article
      className="plan-paper thaw-paper on-paper"
      data-paper={paper}
      lang="en"
      aria-label={words.freezerPaper.listTitle(f.today)}
    >
      <section
        className="sheet"
        data-sheet={1}
        data-name={words.freezerPaper.listTitle(f.today)}
        aria-label={words.freezerPaper.listTitle(f.today)}
      >
        <div className="sheet-body">
          <header className="thaw-paper-head">
            <h1>{words.freezerPaper.listTitle(f.today)}</h1>
            <p>{words.freezerPaper.lead(f.rules.thawHours, f.rules.keepHours)}</p>
          </header>
          <table>
            <thead>
              <tr>
                <th scope="col">
                  <span className="unseen">{words.freezerPaper.box}</span>
                </th>
                <th scope="col">{words.freezerPaper.out}</th>
                <th scope="col">{words.freezerPaper.what}</th>
                <th scope="col">{words.freezerPaper.ready}</th>
                <th scope="col">{words.freezerPaper.useBy}</th>
                <th scope="col">{words.freezerPaper.forWhom}</th>
              </tr>
            </thead>
            {byDay.map(([day, ofDay]) => (
              <tbody key={day}>
                <tr className="thaw-paper-day">
                  <th scope="rowgroup" colSpan={6}>
                    {words.longDate(day)}
                  </th>
                </tr>
                {ofDay.map((row) => (
                  <tr key={`${row.foodId} ${row.out}`}>
                    <td>
                      <i className="thaw-paper-box" aria-hidden="true" />
                    </td>
                    <td>{row.manyTimes ? words.freezerPaper.from(clockOf(row.out)) : clockOf(row.out)}</td>
                    <th scope="row">{takesText(f, row.takes)}</th>
                    <td>{row.manyTimes ? words.freezerPaper.from(time(row.ready)) : time(row.ready)}</td>
                    <td>
                      <b>{row.manyTimes ? words.freezerPaper.from(time(row.useBy)) : time(row.useBy)}</b>
                      {row.officialUseBy < row.useBy && (
                        <>
                          <br />
                          <i>{words.freezerPaper.official(time(row.officialUseBy))}</i>
                        </>
                      )}
                    </td>
                    <td>{namesText(row.eaters)}</td>
                  </tr>
                ))}
              </tbody>
            ))}
          </table>
          <footer className="sheet-foot">
            <span>{words.freezerPaper.foot}</span>
            <span className="sheet-number">{words.freezerPaper.made(words.timeNear(f.now, f.today))}</span>
          </footer>
        </div>
      </section>
    </article>
  );
}
