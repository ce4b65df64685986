/** Where things stand on the second sheet: the halves of the table, the columns of the notes. Pure: what it needs of the page is measured there. */
import type { EarlierNote, EarlierPlan, Run } from '../../../core/homing/earlier-plan.ts';
import { words } from './words.ts';

type Group = EarlierPlan['table']['groups'][number];

/** A half may be so many lines longer than the other before a group is divided. */
const MOST_UNEVEN = 5;
/** So few rows stand in one half. */
const ONE_HALF = 10;

/** The table in two halves, parted where the meals change if that is even enough, else inside a group. */
export function halves(groups: readonly Group[]): [Group[], Group[]] {
  const lines = (some: readonly Group[]) => some.reduce((n, g) => n + g.rows.length + 1, 0);
  const all = lines(groups);
  if (all <= ONE_HALF) return [[...groups], []];
  let best = { at: 0, uneven: Number.POSITIVE_INFINITY };
  for (let at = 1; at < groups.length; at += 1) {
    const uneven = Math.abs(all - 2 * lines(groups.slice(0, at)));
    if (uneven < best.uneven) best = { at, uneven };
  }
  if (best.uneven <= MOST_UNEVEN) return [groups.slice(0, best.at), groups.slice(best.at)];
  return divided(groups, Math.ceil((all + 1) / 2));
}

/** Divided after so many lines; the group that is cut says its heading again. */
function divided(groups: readonly Group[], linesLeft: number): [Group[], Group[]] {
  const left: Group[] = [];
  const right: Group[] = [];
  let room = linesLeft;
  for (const g of groups) {
    const rows = Math.max(0, Math.min(g.rows.length, room - 1));
    if (rows > 0) left.push({ heading: g.heading, rows: g.rows.slice(0, rows) });
    if (rows < g.rows.length)
      right.push({ heading: rows > 0 ? words.paper.continued(g.heading) : g.heading, rows: g.rows.slice(rows) });
    room -= rows + 1;
  }
  return [left, right];
}

/** How many of the notes stand in the first column, and in the first and second. */
export interface NoteSplit {
  readonly first: number;
  readonly second: number;
}

/** Before anything is measured: a third each. */
export function evenSplit(notes: number): NoteSplit {
  return { first: Math.ceil(notes / 3), second: Math.ceil((2 * notes) / 3) };
}

/**
 * The notes in three columns, in their order, as even as can be by their heights; the box for the vet is the end of the last.
 * All heights in the same unit; `gap` stands between two blocks of a column.
 */
export function noteSplit(heights: readonly number[], vetHeight: number, gap: number): NoteSplit {
  const column = (from: number, to: number, last = 0) => {
    const blocks = [...heights.slice(from, to), ...(last > 0 ? [last] : [])];
    return blocks.reduce((a, b) => a + b, 0) + gap * Math.max(0, blocks.length - 1);
  };
  let best = { first: 1, second: 2, high: Number.POSITIVE_INFINITY };
  for (let first = 1; first < heights.length; first += 1) {
    for (let second = first; second <= heights.length; second += 1) {
      const high = Math.max(column(0, first), column(first, second), column(second, heights.length, vetHeight));
      if (high < best.high) best = { first, second, high };
    }
  }
  return { first: best.first, second: best.second };
}

/** Letters on a line of a column, and what a heading, the vet's frame and a line to write on take, in lines. */
const LETTERS_A_LINE = 36;
const HEADING_LINES = 1.9;
const VET_FRAME_LINES = 1.2;
const WRITE_ON_LINES = 1.9;

/** As plans of version 1 were divided before the page was measured: one that was handed over is printed again just so. */
export function splitOfVersion1(notes: readonly EarlierNote[], vet: EarlierPlan['vet']): NoteSplit {
  const lines = (runs: readonly Run[]) => Math.ceil(runs.reduce((n, r) => n + r.text.length, 0) / LETTERS_A_LINE);
  const vetHeight = HEADING_LINES + VET_FRAME_LINES + lines(vet.runs) * 1.1 + vet.lines.length * WRITE_ON_LINES;
  return noteSplit(
    notes.map((n) => HEADING_LINES + lines(n.runs)),
    vetHeight,
    0,
  );
}

/** The notes of each column. */
export function noteColumns(notes: readonly EarlierNote[], { first, second }: NoteSplit): EarlierNote[][] {
  return [notes.slice(0, first), notes.slice(first, second), notes.slice(second)];
}
