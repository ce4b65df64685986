import { useState } from 'react';
import { clockOf, dateOf } from '../../core/calendar/clock.ts';
import type { ImportRow } from '../../core/records/import.ts';
import { TableHead } from '../parts/TableHead.tsx';
import { words } from '../state/words.ts';
import { type ImportDraft, isTaken, type Preview } from './import-draft.ts';

interface Props {
  draft: ImportDraft;
  preview: Preview;
  put: (change: Partial<ImportDraft>) => void;
  /** What the weights themselves make doubtful, by the row's number. */
  findings: ReadonlyMap<number, string>;
}

interface Numbered {
  readonly row: ImportRow;
  readonly n: number;
}

const SHOWN = 100;

/** Every row with what becomes of it: those to look at first, then those that are taken in. */
export function ImportRows({ draft, preview, put, findings }: Props) {
  const numbered = preview.rows.map((row, n): Numbered => ({ row, n }));
  const isDoubtful = ({ row, n }: Numbered) => row.state.is === 'doubtful' || (row.state.is === 'taken' && findings.has(n));
  const doubtful = numbered.filter(isDoubtful);
  const refused = numbered.filter(({ row }) => row.state.is === 'refused');
  const there = numbered.filter(({ row }) => row.state.is === 'there' || row.state.is === 'twice');
  const good = numbered.filter((r) => isTaken(r.row) && !isDoubtful(r));
  const toLookAt = numbered.filter((r) => isDoubtful(r) || !isTaken(r.row));
  const table = { draft, preview, put, findings };
  return (
    <section className="part">
      <h2>{words.import.rows}</h2>
      <p role="status" className="import-counts">
        {words.import.counts(good.length, doubtful.length, there.length, refused.length)}
      </p>
      <h3>{words.import.toLookAt}</h3>
      {toLookAt.length === 0 ? <p className="soft">{words.import.nothingToLookAt}</p> : <Rows {...table} rows={toLookAt} />}
      {good.length > 0 && (
        <details className="import-good">
          <summary>{words.import.allRows(good.length)}</summary>
          <Rows {...table} rows={good} />
        </details>
      )}
    </section>
  );
}

function Rows({ rows, draft, preview, put, findings }: Props & { rows: readonly Numbered[] }) {
  const [shown, setShown] = useState(SHOWN);
  return (
    <>
      <table className="import-rows">
        <TableHead
          heads={[
            words.import.row,
            words.import.stands,
            words.import.day,
            { head: words.import.weight, className: 'figure' },
            words.import.remark,
          ]}
        />
        <tbody>
          {rows.slice(0, shown).map(({ row, n }) => {
            const place = words.import.place(row.entry.line, row.entry.heading);
            const remark = remarkOf(row, findings.get(n), preview);
            const asks = isTaken(row) && (row.state.is === 'doubtful' || findings.has(n));
            return (
              <tr key={n}>
                <th scope="row">
                  <bdi>{place}</bdi>
                </th>
                <td className="import-stands">
                  <bdi>{[row.entry.label.text, row.entry.weightText].filter((t) => t !== '').join(': ')}</bdi>
                </td>
                <td className="import-day">
                  {row.reading === null ? '' : `${dateOf(row.reading.at)} ${clockOf(row.reading.at)}`}
                </td>
                <td className="figure">{row.reading === null ? '' : words.massText(row.reading.grams, preview.unit)}</td>
                <td className="import-remark">
                  <bdi>{remark}</bdi>
                  {asks && (
                    <label className="box">
                      <input
                        type="checkbox"
                        aria-label={words.import.takeItOf(place)}
                        checked={draft.ticked.includes(n)}
                        onChange={(event) =>
                          put({ ticked: event.target.checked ? [...draft.ticked, n] : draft.ticked.filter((t) => t !== n) })
                        }
                      />
                      {words.import.takeIt}
                    </label>
                  )}
                </td>
              </tr>
            );
          })}
        </tbody>
      </table>
      {rows.length > shown && (
        <p className="note">
          {words.import.firstOf(shown, rows.length)}{' '}
          <button type="button" className="link" onClick={() => setShown(rows.length)}>
            {words.import.allOf(rows.length)}
          </button>
        </p>
      )}
    </>
  );
}

function remarkOf(row: ImportRow, finding: string | undefined, preview: Preview): string {
  switch (row.state.is) {
    case 'refused':
      return words.import.refusal(row.state.why, row.entry.weightText);
    case 'there':
      return words.import.there;
    case 'twice':
      return words.import.twice;
    case 'doubtful':
      return [words.import.doubt(row.state.why, (grams) => words.massText(grams, preview.unit)), finding ?? '']
        .filter((t) => t !== '')
        .join(' ');
    case 'taken':
      return finding ?? words.import.good;
  }
}
