import { useId } from 'react';
import { spanOf } from '../../core/records/import.ts';
import { DATE_ORDERS } from '../../core/records/import-dates.ts';
import { type Column, SHAPES } from '../../core/records/import-shape.ts';
import { MEANINGS } from '../../core/records/import-words.ts';
import { MASS_UNITS } from '../../core/units/mass.ts';
import { FormChoice } from '../parts/form/fields.tsx';
import { TableHead } from '../parts/TableHead.tsx';
import { words } from '../state/words.ts';
import type { ImportDraft, Preview } from './import-draft.ts';

interface Props {
  draft: ImportDraft;
  preview: Preview;
  put: (change: Partial<ImportDraft>) => void;
}

/** Under this a middle weight is no puppy's, and over it few are: then the unit is asked about. */
const LIGHT_GRAMS = 30;
const HEAVY_GRAMS = 60_000;

/** How the table was read, in sentences, and what had to be asked. */
export function ImportColumns({ draft, preview, put }: Props) {
  const { columns } = preview;
  const shape = columns.ok ? columns.read.shape : columns.shape;
  return (
    <section className="part">
      <h2>{words.import.understood}</h2>
      {columns.ok ? <Sentences preview={preview} /> : <p role="alert">{words.import.columnsFault(columns.fault)}</p>}
      <div className="form">
        <FormChoice
          label={words.import.shape}
          value={shape}
          options={SHAPES.map((s) => ({ value: s, word: words.import.shapes[s] }))}
          onChange={(value) =>
            put({ table: { ...draft.table, meanings: {}, shape: SHAPES.find((s) => s === value) ?? null }, who: {}, ticked: [] })
          }
        />
        {columns.ok && columns.read.bareNumbers && (
          <FormChoice
            label={words.import.unit}
            value={preview.unit}
            options={MASS_UNITS.map((u) => ({ value: u, word: words.unitChoice[u] }))}
            onChange={(value) => put({ unit: MASS_UNITS.find((u) => u === value) ?? null })}
          />
        )}
      </div>
      <Order draft={draft} preview={preview} put={put} />
      <Meanings draft={draft} preview={preview} put={put} />
    </section>
  );
}

function Sentences({ preview }: { preview: Preview }) {
  if (!preview.columns.ok) return null;
  const { read } = preview.columns;
  const span = spanOf(preview.rows);
  const weights = preview.rows.flatMap((r) => (r.reading === null ? [] : [r.reading.grams])).sort((a, b) => a - b);
  const median = weights[Math.floor(weights.length / 2)];
  const sentences = [words.import.headings(read.headingLine)];
  if (span !== null) sentences.push(words.import.span(words.fullDate(span.first), words.fullDate(span.last), span.days));
  if (read.order === 'dmy' || read.order === 'mdy') sentences.push(words.import.orderTold[read.order]);
  if (preview.rows.some((r) => r.reading !== null && r.entry.clockText === '')) sentences.push(words.import.noClocks);
  if (median !== undefined && (median < LIGHT_GRAMS || median > HEAVY_GRAMS))
    sentences.push(words.import.unlikely(words.massText(median, preview.unit)));
  return <p className="import-sentences">{sentences.join(' ')}</p>;
}

/** Asked only where dates can be read two ways and the others don't tell. */
function Order({ draft, preview, put }: Props) {
  const id = useId();
  if (!preview.columns.ok) return null;
  const { order, twoWays } = preview.columns.read;
  if (order !== 'both' && (order !== null || !twoWays)) return null;
  return (
    <fieldset className="import-order">
      <legend>{order === 'both' ? words.import.orderBoth : words.import.orderAsk}</legend>
      {DATE_ORDERS.map((o) => (
        <label key={o} className="box">
          <input type="radio" name={id} checked={draft.order === o} onChange={() => put({ order: o })} />
          {words.import.orders[o]}
        </label>
      ))}
    </fieldset>
  );
}

function Meanings({ draft, preview, put }: Props) {
  const columns = preview.columns.ok ? preview.columns.read.columns : preview.columns.columns;
  const shape = preview.columns.ok ? preview.columns.read.shape : preview.columns.shape;
  const wrong = !preview.columns.ok;
  return (
    <details className="import-columns" open={wrong}>
      <summary>{words.import.columns}</summary>
      <p className="note">{words.import.columnsHint}</p>
      <table>
        <TableHead heads={[words.import.column, words.import.readAs]} />
        <tbody>
          {columns.map((column) => (
            <tr key={column.index}>
              <th scope="row">{nameOf(column)}</th>
              <td>
                <FormChoice
                  inCell
                  label={`${nameOf(column)}, ${words.import.readAs}`}
                  value={column.weights ? 'weights' : (column.meaning ?? 'leave')}
                  options={[
                    ...(shape !== 'rows' && (column.weights || draft.table.meanings[column.index] !== undefined)
                      ? [{ value: 'weights', word: shape === 'days-down' ? words.import.gridPuppy : words.import.gridDay }]
                      : []),
                    ...MEANINGS.map((m) => ({ value: m, word: words.import.meanings[m] })),
                  ]}
                  onChange={(value) =>
                    put({ table: { ...draft.table, meanings: withMeaning(draft, column, value) }, who: {}, ticked: [] })
                  }
                />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </details>
  );
}

function withMeaning(draft: ImportDraft, column: Column, value: string): ImportDraft['table']['meanings'] {
  const { [column.index]: _, ...others } = draft.table.meanings;
  const meaning = MEANINGS.find((m) => m === value);
  return meaning === undefined ? others : { ...others, [column.index]: meaning };
}

function nameOf(column: Column): string {
  return column.heading === '' ? words.import.unnamed(column.index + 1) : column.heading;
}
