import type { PrepDocument } from '../../core/weaning/prep-document.ts';
import { catalogueOf } from '../../core/words/catalogue.ts';
import type { Paper } from '../links.ts';
import { CollarBand } from '../parts/CollarBand.tsx';
import '../parts/parts.css';
import './fonts.css';
import './print.css';
import './prep.css';

const LINES = ['one', 'two', 'three', 'four', 'five', 'six'] as const;

/** The prep sheet of one day, as it is printed. */
export function PrepPaper({ document, paper }: { document: PrepDocument; paper: Paper }) {
  return (
    <article className="plan-paper prep-paper on-paper" data-paper={paper} lang={document.language} aria-label={document.title}>
      <section className="sheet" data-sheet={1} data-name={document.name} aria-label={document.title}>
        <div className="sheet-body">
          <header className="prep-head">
            <div>
              <h1>{document.heading}</h1>
              <p className="prep-sub">{document.sub}</p>
            </div>
            <div className="prep-top">
              {document.top.map((line) => (
                <p key={line}>{line}</p>
              ))}
            </div>
          </header>
          <PrepTable document={document} />
          <div className="prep-notes">
            {document.notes.map((note) => (
              <section key={note.heading}>
                <h2>{note.heading}</h2>
                <p>{note.text}</p>
                {LINES.slice(0, note.lines).map((line) => (
                  <span key={line} className="write-on" />
                ))}
              </section>
            ))}
          </div>
          <footer className="sheet-foot">
            <span>{document.foot}</span>
            <span className="sheet-number">{catalogueOf(document.language).prep.sheet}</span>
          </footer>
        </div>
      </section>
    </article>
  );
}

function PrepTable({ document: { bowls, times, totals, unit, language } }: { document: PrepDocument }) {
  const w = catalogueOf(language).prep;
  return (
    <table className="prep-table">
      <thead>
        <tr>
          <th scope="col">{w.collar}</th>
          <th scope="col">{w.puppy}</th>
          {times.map((time) => (
            <th key={time} scope="col">
              <b>{time}</b>
              <br />
              {unit}
            </th>
          ))}
          <th scope="col">
            <b>{w.dayHead}</b>
            <br />
            {unit}
          </th>
        </tr>
      </thead>
      {bowls.map((bowl) => (
        <tbody key={bowl.name}>
          {bowl.rows.map((row) => (
            <tr key={row.collar.letter}>
              <td className="prep-collar">
                <CollarBand collar={row.collar} height={26} label={null} />
              </td>
              <th scope="row">
                <bdi>{row.name}</bdi> <span className="prep-holds">{row.note}</span>
              </th>
              <Amounts amounts={row.amounts} times={times} />
              <td>{row.day}</td>
            </tr>
          ))}
          <tr className="prep-bowl">
            <th scope="row" colSpan={2}>
              {bowl.name}
            </th>
            <Amounts amounts={bowl.amounts} times={times} box />
            <td />
          </tr>
        </tbody>
      ))}
      <tbody>
        {totals.map((total) => (
          <tr key={total.label} className={total.strong ? 'prep-total' : 'prep-water'}>
            <th scope="row" colSpan={2}>
              {total.label}
            </th>
            <Amounts amounts={total.amounts} times={times} />
            <td>{total.day}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** One cell a meal; a bowl's has a box to cross when it is weighed out. */
function Amounts({ amounts, times, box = false }: { amounts: readonly string[]; times: readonly string[]; box?: boolean }) {
  return times.map((time, i) => (
    <td key={time}>
      {amounts[i]}
      <i className={box ? 'prep-box' : 'prep-box none'} aria-hidden="true" />
    </td>
  ));
}
