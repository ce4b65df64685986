import type { PlanDocument, PlanRow } from '../../../core/homing/document.ts';
import { catalogueOf } from '../../../core/words/catalogue.ts';
import { CollarBand } from '../../parts/CollarBand.tsx';
import { Runs } from '../Runs.tsx';
import { PlanSheet } from './PlanSheet.tsx';

/** Head of the second and third sheets: the collar, a heading, and how to read it. */
export function SheetHead({ document, heading, note }: { document: PlanDocument; heading: string; note: string }) {
  return (
    <header className="sheet-head">
      <CollarBand collar={document.collar} height={34} label={null} />
      <div className="sheet-title" data-fit="0.6" data-wraps="true">
        <h2 className="fit">{heading}</h2>
      </div>
      <p>{note}</p>
    </header>
  );
}

/** Whatever is to be fed until it is grown, a row a week and later a month, and room to write what it really weighs. */
export function TableSheet({ document }: { document: PlanDocument }) {
  const { table } = document;
  const { heads, columns } = table;
  return (
    <PlanSheet document={document} n={2} className="table-sheet">
      <SheetHead document={document} heading={table.heading} note={table.note} />
      <table className="ages">
        <caption>{table.caption}</caption>
        <thead>
          <tr>
            <th scope="col" className="left">
              {heads.age}
            </th>
            <th scope="col" className="left">
              {heads.from}
            </th>
            <th scope="col">{heads.weight}</th>
            <th scope="col" className="weighed">
              {heads.weighed}
            </th>
            <th scope="col">{heads.day}</th>
            {columns.map((c) => (
              <th key={c.name} scope="col">
                {c.head}
              </th>
            ))}
          </tr>
        </thead>
        {table.groups.map((g) => (
          <tbody key={`${g.heading} ${g.rows[0]?.fromDay ?? ''}`}>
            <tr className="group-row">
              <th scope="rowgroup" colSpan={5 + columns.length}>
                {g.heading} <span>{g.note}</span>
              </th>
            </tr>
            {g.rows.map((r) => (
              <AgeRow key={r.fromDay} row={r} document={document} />
            ))}
          </tbody>
        ))}
      </table>
      <p className="table-end">
        <Runs runs={table.end} />
      </p>
    </PlanSheet>
  );
}

function AgeRow({ row, document: { table, units, language } }: { row: PlanRow; document: PlanDocument }) {
  const figure = (grams: number) => catalogueOf(language).foodFigure(grams, units.amount);
  return (
    <tr className={`mark-${row.mark}`}>
      <th scope="row">
        {row.age}
        {row.months !== '' && <span>, {row.months}</span>}
      </th>
      <td className="words">{row.from}</td>
      <td>{row.weight}</td>
      <td className="weighed">{row.weighed}</td>
      {row.dayGrams === null ? (
        <td className="instead words" colSpan={1 + table.columns.length}>
          {row.instead}
        </td>
      ) : (
        <>
          <td className="day">{figure(row.dayGrams)}</td>
          {table.columns.map((c) => {
            const grams = row.meals[c.name];
            return (
              <td key={c.name} className="meal">
                {grams === undefined ? '' : figure(grams)}
              </td>
            );
          })}
        </>
      )}
    </tr>
  );
}
