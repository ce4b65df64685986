import type { ThawDocument } from '../../core/freezer/paper-document.ts';
import { catalogueOf } from '../../core/words/catalogue.ts';
import type { Paper } from '../links.ts';
import './fonts.css';
import './print.css';
import './freezer-paper.css';
import { TableHead } from '../parts/TableHead.tsx';

type Day = ThawDocument['days'][number];

/** So many rows a sheet takes, each in two lines, with the headings of their days. */
const ROWS_A_SHEET = 14;

/** The days by sheet; a day that goes over the end of one goes on under the same heading. */
export function thawSheets(days: readonly Day[]): Day[][] {
  const sheets: Day[][] = [[]];
  let room = ROWS_A_SHEET;
  for (const { heading, rows } of days) {
    for (let at = 0; at < rows.length; ) {
      if (room === 0) {
        sheets.push([]);
        room = ROWS_A_SHEET;
      }
      const some = rows.slice(at, at + room);
      sheets.at(-1)?.push({ heading, rows: some });
      at += some.length;
      room -= some.length;
    }
  }
  return sheets;
}

/** The thaw list of seven days, for the freezer door. */
export function ThawListPaper({ document, paper }: { document: ThawDocument; paper: Paper }) {
  const sheets = thawSheets(document.days);
  return (
    <article className="plan-paper thaw-paper on-paper" data-paper={paper} lang={document.language} aria-label={document.title}>
      {sheets.map((days, i) => (
        <ThawSheet key={days[0]?.rows[0]?.what ?? i} document={document} days={days} n={i + 1} of={sheets.length} />
      ))}
    </article>
  );
}

function ThawSheet({ document, days, n, of }: { document: ThawDocument; days: readonly Day[]; n: number; of: number }) {
  const { heads, title } = document;
  const number = catalogueOf(document.language).freezerPaper.sheet(n, of);
  return (
    <section className="sheet" data-sheet={n} data-name={title} aria-label={of === 1 ? title : `${title}, ${number}`}>
      <div className="sheet-body">
        <header className="thaw-paper-head">
          {n === 1 ? <h1>{title}</h1> : <h2>{title}</h2>}
          <p>{document.lead}</p>
        </header>
        <table>
          <caption className="unseen">{title}</caption>
          <TableHead
            heads={[{ head: heads.box, unseen: true }, heads.out, heads.what, heads.ready, heads.useBy, heads.forWhom]}
          />
          {days.map((day) => (
            <tbody key={day.heading}>
              <tr className="thaw-paper-day">
                <th scope="rowgroup" colSpan={6}>
                  {day.heading}
                </th>
              </tr>
              {day.rows.map((row) => (
                <tr key={`${row.what} ${row.out}`}>
                  <td>
                    <i className="thaw-paper-box" aria-hidden="true" />
                  </td>
                  <td>{row.out}</td>
                  <th scope="row">{row.what}</th>
                  <td>{row.ready}</td>
                  <td>
                    <b>{row.useBy}</b>
                    {row.official !== '' && (
                      <>
                        <br />
                        <i>{row.official}</i>
                      </>
                    )}
                  </td>
                  <td>{row.who}</td>
                </tr>
              ))}
            </tbody>
          ))}
        </table>
        <footer className="sheet-foot">
          <span>{document.foot}</span>
          <span className="sheet-number">{of === 1 ? document.when : `${document.when}, ${number}`}</span>
        </footer>
      </div>
    </section>
  );
}
