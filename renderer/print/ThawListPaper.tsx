import type { ThawDocument } from '../../core/freezer/paper-document.ts';
import type { Paper } from '../links.ts';
import './print.css';
import './freezer-paper.css';
import { TableHead } from '../parts/TableHead.tsx';

/** The thaw list of seven days on one sheet, for the freezer door. */
export function ThawListPaper({ document, paper }: { document: ThawDocument; paper: Paper }) {
  const { heads, title } = document;
  return (
    <article className="plan-paper thaw-paper on-paper" data-paper={paper} lang={document.language} aria-label={title}>
      <section className="sheet" data-sheet={1} data-name={title} aria-label={title}>
        <div className="sheet-body">
          <header className="thaw-paper-head">
            <h1>{title}</h1>
            <p>{document.lead}</p>
          </header>
          <table>
            <TableHead
              heads={[{ head: heads.box, unseen: true }, heads.out, heads.what, heads.ready, heads.useBy, heads.forWhom]}
            />
            {document.days.map((day) => (
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
            <span className="sheet-number">{document.when}</span>
          </footer>
        </div>
      </section>
    </article>
  );
}
