import type { PlanDocument, PlanNote } from '../../../core/homing/document.ts';
import { catalogueOf } from '../../../core/words/catalogue.ts';
import { Runs } from '../Runs.tsx';
import { PlanSheet } from './PlanSheet.tsx';
import { SheetHead } from './TableSheet.tsx';

/** To look up: what to feed by the weight that the scale shows, and the notes. */
export function KitchenSheet({ document }: { document: PlanDocument }) {
  const { byWeight, kitchen, notes } = document;
  return (
    <PlanSheet document={document} n={3} className="kitchen-sheet">
      <SheetHead document={document} heading={kitchen.heading} note={kitchen.note} />
      {byWeight.rows.length > 0 && (
        <section>
          <h2>{byWeight.heading}</h2>
          <ByWeight document={document} />
          <p className="way">
            <Runs runs={byWeight.way} />
          </p>
        </section>
      )}
      <div className="notes">
        {notes.map((n) => (
          <Note key={n.key} note={n} />
        ))}
      </div>
      <p className="last-line">{document.last}</p>
    </PlanSheet>
  );
}

function ByWeight({ document: { byWeight, units, language } }: { document: PlanDocument }) {
  const figure = (grams: number) => catalogueOf(language).foodFigure(grams, units.amount);
  const { heads, rows } = byWeight;
  const most = Math.max(...rows.map((r) => r.cells.length));
  // The last head stands over all columns that are left.
  const over = 1 + most - (heads.length - 1);
  return (
    <table className="by-weight">
      <caption>
        <Runs runs={byWeight.note} />
      </caption>
      <thead>
        <tr>
          {heads.map((head, i) => (
            <th key={head} scope="col" colSpan={i === heads.length - 1 ? over : 1}>
              {head}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {rows.map((row) => (
          <tr key={row.age}>
            <th scope="row">{row.age}</th>
            {Array.from({ length: most }, (_, i) => {
              const cell = row.cells[i];
              const place = heads[i + 1] ?? `${heads.at(-1)} ${i}`;
              if (cell === undefined || cell.grams === null) return <td key={place} />;
              return (
                <td key={place} className={cell.as}>
                  {cell.at !== '' && <span className="at">{cell.at}</span>} <b>{figure(cell.grams)}</b>
                </td>
              );
            })}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function Note({ note }: { note: PlanNote }) {
  return (
    <section className={note.boxed ? 'note-block boxed' : 'note-block'}>
      <h3>{note.heading}</h3>
      <p>
        <Runs runs={note.runs} />
      </p>
    </section>
  );
}
