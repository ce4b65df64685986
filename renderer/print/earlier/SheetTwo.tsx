import { useLayoutEffect, useRef, useState } from 'react';
import type { EarlierNote, EarlierPlan, EarlierRow, Run } from '../../../core/homing/earlier-plan.ts';
import { CollarBand } from '../../parts/CollarBand.tsx';
import { evenSplit, halves, type NoteSplit, noteColumns, noteSplit, splitOfVersion1 } from './arrange.ts';
import { PartHead, Sheet, WriteOn } from './Sheet.tsx';
import { words } from './words.ts';

/** To look up and to read: the table to twelve months, the table by real weight, the notes, the vet. */
export function SheetTwo({ document }: { document: EarlierPlan }) {
  const { table, byWeight } = document;
  const [left, right] = halves(table.groups);
  return (
    <Sheet document={document} n={2}>
      <header className="second-head">
        <CollarBand collar={document.collar} height={34} label={null} />
        <h2 data-length={table.heading.length > LONG_HEADING ? 'long' : 'short'}>{table.heading}</h2>
        <p>{table.note}</p>
      </header>
      <div className={right.length === 0 ? 'halves one' : 'halves'}>
        <PlanTable document={document} groups={left} />
        {right.length > 0 && <PlanTable document={document} groups={right} />}
      </div>
      <section>
        <PartHead heading={byWeight.heading} note={byWeight.note} />
        <ByWeight document={document} />
      </section>
      <Notes document={document} />
      <p className="last-line">{document.last}</p>
    </Sheet>
  );
}

const LONG_HEADING = 42;
/** "9.1–11" is a short range; "0.78–0.82" needs a wider column. */
const SHORT_RANGE = 7;

function weightsLength(document: EarlierPlan): 'short' | 'long' {
  return document.table.groups.some((g) => g.rows.some((r) => r.weight.length > SHORT_RANGE)) ? 'long' : 'short';
}

/** "980" is short; "1 080" needs a wider column. */
function daysLength(document: EarlierPlan): 'short' | 'long' {
  const long = (grams: number | null) => grams !== null && words.foodFigure(grams, document.units.amount).length > 4;
  return document.table.groups.some((g) => g.rows.some((r) => long(r.dayGrams))) ? 'long' : 'short';
}

function PlanTable({ document, groups }: { document: EarlierPlan; groups: EarlierPlan['table']['groups'] }) {
  const { columns } = document.table;
  const { units } = document;
  return (
    <table
      className="plan-table"
      data-columns={columns.length}
      data-unit={units.amount}
      data-weights={weightsLength(document)}
      data-days={daysLength(document)}
    >
      <caption className="unseen">{words.paper.tableCaption(document.name)}</caption>
      <colgroup>
        <col className="col-age" />
        <col className="col-from" />
        <col className="col-weight" />
        <col className="col-share" />
        <col className="col-day" />
        {columns.map((c) => (
          <col key={c} />
        ))}
      </colgroup>
      <thead>
        <tr>
          <th scope="col">{words.paper.age}</th>
          <th scope="col">{words.paper.from}</th>
          <th scope="col">
            {words.paper.weight}
            <br />
            {units.weight}
          </th>
          <th scope="col">
            {words.paper.share}
            <br />
            {words.paper.perCent}
          </th>
          <th scope="col">
            {units.amount} {words.paper.a}
            <br />
            {words.paper.day}
          </th>
          {columns.map((c) => (
            <th key={c} scope="col">
              {words.paper.mealHeads[c][0]}
              <br />
              {words.paper.mealHeads[c][1]}
            </th>
          ))}
        </tr>
      </thead>
      {groups.map((g) => (
        <tbody key={`${g.heading} ${g.rows[0]?.fromDay ?? ''}`}>
          <tr className="group-row">
            <th scope="rowgroup" colSpan={5 + columns.length}>
              {g.heading}
            </th>
          </tr>
          {g.rows.map((r) => (
            <PlanTableRow key={r.fromDay} row={r} document={document} />
          ))}
        </tbody>
      ))}
    </table>
  );
}

function PlanTableRow({ row, document }: { row: EarlierRow; document: EarlierPlan }) {
  const { units } = document;
  return (
    <tr className={`mark-${row.mark}`}>
      <th scope="row">{row.age}</th>
      <td className="cell-from">{row.from}</td>
      <td>{row.weight}</td>
      <td>{row.share}</td>
      {row.dayGrams === null ? (
        <td className="cell-none" colSpan={1 + document.table.columns.length}>
          {words.paper.noAmount}
        </td>
      ) : (
        <>
          <td className="cell-day">{words.foodFigure(row.dayGrams, units.amount)}</td>
          {document.table.columns.map((c) => {
            const grams = row.meals[c];
            return (
              <td key={c} className="cell-meal">
                {grams === undefined ? '' : words.foodFigure(grams, units.amount)}
              </td>
            );
          })}
        </>
      )}
    </tr>
  );
}

function ByWeight({ document }: { document: EarlierPlan }) {
  const { byWeight, units } = document;
  return (
    <table className="by-weight">
      <caption className="unseen">{words.paper.byWeightCaption(units.weight, units.amount)}</caption>
      <thead>
        <tr>
          <th scope="col">{units.weight}</th>
          {byWeight.columns.map((c) => (
            <th key={c} scope="col">
              {c}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {byWeight.rows.map((r) => (
          <tr key={r.age}>
            <th scope="row">{r.age}</th>
            {byWeight.columns.map((c, i) => {
              const grams = r.grams[i] ?? null;
              return <td key={c}>{grams === null ? '' : words.foodFigure(grams, units.amount)}</td>;
            })}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function Notes({ document }: { document: EarlierPlan }) {
  const box = useRef<HTMLDivElement>(null);
  const [split, setSplit] = useState(() =>
    document.version === 1 ? splitOfVersion1(document.notes, document.vet) : evenSplit(document.notes.length),
  );
  // After every drawing, so that the faces that have loaded by then are measured too; the same split draws nothing again.
  useLayoutEffect(() => {
    const measured = box.current === null || document.version === 1 ? null : measuredSplit(box.current);
    if (measured !== null && (measured.first !== split.first || measured.second !== split.second)) setSplit(measured);
  });
  const columns = noteColumns(document.notes, split);
  return (
    <div className="notes" ref={box}>
      {columns.map((notes, i) => (
        <div key={notes[0]?.key ?? i}>
          {notes.map((n) => (
            <NoteBlock key={n.key} note={n} />
          ))}
          {i === columns.length - 1 && <VetBlock vet={document.vet} />}
        </div>
      ))}
    </div>
  );
}

/** CSS pixels between two blocks of a column: see `.notes` in print.css. */
const GAP = 6;

/** As the blocks are drawn in the page: a column is as wide as the others, so a block is as high in each of them. */
function measuredSplit(box: HTMLElement): NoteSplit | null {
  const heights = [...box.querySelectorAll<HTMLElement>('.note-block')].map((block) => block.offsetHeight);
  const vetHeight = heights.pop();
  return vetHeight === undefined || heights.some((h) => h === 0) ? null : noteSplit(heights, vetHeight, GAP);
}

function NoteBlock({ note }: { note: EarlierNote }) {
  return (
    <section className="note-block">
      <h3>{note.heading}</h3>
      <p>
        <Runs runs={note.runs} />
      </p>
    </section>
  );
}

function VetBlock({ vet }: { vet: EarlierPlan['vet'] }) {
  return (
    <section className="note-block vet-block">
      <h3>{vet.heading}</h3>
      <p>
        <Runs runs={vet.runs} />
      </p>
      {vet.lines.map((l) =>
        l.name === '' && l.phone === '' ? (
          <WriteOn key={l.label} label={l.label} />
        ) : (
          <p key={l.label} className="vet-line">
            {l.label}: {l.name} <span>{l.phone}</span>
          </p>
        ),
      )}
    </section>
  );
}

function Runs({ runs }: { runs: readonly Run[] }) {
  return runs.map((r) => {
    if (r.as === 'strong') return <strong key={r.text}>{r.text}</strong>;
    if (r.as === 'official') return <em key={r.text}>{r.text}</em>;
    return <span key={r.text}>{r.text}</span>;
  });
}
