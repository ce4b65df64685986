/** Where things stand on the second sheet: the halves of the table, the columns of the notes. Pure. */
import type { PlanDocument, PlanNote, Run } from '../../core/homing/document.ts';
import { words } from '../state/words.ts';

type Group = PlanDocument['table']['groups'][number];

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

const COLUMNS = 3;
/** Letters on a line of a column, and what a heading with its rule takes, in lines. */
const LETTERS_A_LINE = 36;
const HEADING_LINES = 1.9;
const VET_FRAME_LINES = 1.2;
const WRITE_ON_LINES = 1.9;

/** The notes in three columns, in their order, as even as can be; the box for the vet is the end of the last. */
export function noteColumns(notes: readonly PlanNote[], vet: PlanDocument['vet']): PlanNote[][] {
  const heights = notes.map((n) => HEADING_LINES + linesOf(n.runs));
  const vetHeight = HEADING_LINES + VET_FRAME_LINES + linesOf(vet.runs) * 1.1 + vet.lines.length * WRITE_ON_LINES;
  const sum = (from: number, to: number) => heights.slice(from, to).reduce((a, b) => a + b, 0);
  let best = { first: 1, second: 2, high: Number.POSITIVE_INFINITY };
  for (let first = 1; first < notes.length; first += 1) {
    for (let second = first; second <= notes.length; second += 1) {
      const high = Math.max(sum(0, first), sum(first, second), sum(second, notes.length) + vetHeight);
      if (high < best.high) best = { first, second, high };
    }
  }
  return [notes.slice(0, best.first), notes.slice(best.first, best.second), notes.slice(best.second)].slice(0, COLUMNS);
}

function linesOf(runs: readonly Run[]): number {
  return Math.ceil(runs.reduce((n, r) => n + r.text.length, 0) / LETTERS_A_LINE);
}
