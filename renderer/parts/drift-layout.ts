/**
 * Where everything on the drift line stands, in CSS pixels. Pure and deterministic: the same puppies in any order give
 * the same picture.
 */
import { clamp } from '../../core/statistics/clamp.ts';
import type { Measure } from './measure.ts';
import { wrapText } from './wrap.ts';

export interface DriftItem {
  readonly id: string;
  /** Per cent over (or, negative, under) the middle: now, and two days ago when that is known. */
  readonly percent: number;
  readonly before: number | null;
  /** Watch or act: hangs under the line. */
  readonly flagged: boolean;
  readonly weighedNow: boolean;
  /** What stands beside a flagged band: the level's word, and why. */
  readonly remark: { readonly lead: string; readonly text: string };
}

interface DriftTail {
  /** Where it stood (thin end) and where it stands. */
  readonly from: number;
  readonly to: number;
  readonly y: number;
}

interface DriftText {
  readonly x: number;
  readonly y: number;
  readonly bold: string;
  readonly text: string;
}

export interface PlacedBand {
  readonly id: string;
  readonly flagged: boolean;
  readonly weighedNow: boolean;
  /** Exact standing on the line, or the end of the scale. */
  readonly x: number;
  /** Its standing in per cent when that is beyond the scale, which then says it. */
  readonly beyond: number | null;
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
  readonly lane: number;
  readonly tail: DriftTail | null;
  readonly texts: readonly DriftText[];
}

export interface DriftLayout {
  readonly width: number;
  readonly height: number;
  readonly lineY: number;
  readonly middleX: number;
  /** Per cent at either end of the scale. */
  readonly limit: number;
  readonly narrow: boolean;
  readonly ticks: readonly { readonly percent: number; readonly x: number }[];
  readonly bands: readonly PlacedBand[];
}

export const DRIFT_TOP = 22;
export const REMARK_SIZE = 16;
export const REMARK_LINE = 20;
export const LEAD_WEIGHT = 600;
export const LEAD_GAP = 10;
const NARROW = 560;
const GAP = 7;
const SHORTEST_TAIL = 6;
const ROOM_FOR_REMARK = 250;

/** A log ratio as per cent over (or under) the middle. */
export function percentOf(standing: number): number {
  return (Math.exp(standing) - 1) * 100;
}

/** Half width of the scale: 15, growing in fives when someone is, or was, beyond; one wrong weight must not press all the others together. */
export function scaleLimit(items: readonly DriftItem[]): number {
  const furthest = Math.max(0, ...items.flatMap((i) => [Math.abs(i.percent), Math.abs(i.before ?? 0)]));
  return Math.min(MOST_PERCENT, Math.max(15, Math.ceil(Math.round(furthest * 100) / 500) * 5));
}

const MOST_PERCENT = 40;

export function driftLayout(items: readonly DriftItem[], width: number, measure: Measure): DriftLayout {
  const narrow = width < NARROW;
  const limit = scaleLimit(items);
  const edge = Math.min(46, Math.max(20, width * 0.046));
  const middleX = width / 2;
  const xOf = (percent: number) => middleX + (Math.max(-limit, Math.min(limit, percent)) / limit) * (middleX - edge);
  const beyondOf = (percent: number) => (Math.abs(percent) > limit ? Math.round(percent) : null);
  const high = narrow || items.length >= 10 ? 16 : 20;
  const frame = { width, xOf, beyondOf, high, measure };
  const steady = steadyBands(
    items.filter((i) => !i.flagged),
    frame,
  );
  const lanes = Math.max(0, ...steady.map((b) => b.lane + 1));
  const lineY = lanes === 0 ? DRIFT_TOP + 12 : DRIFT_TOP + 6 + high + 14 + (lanes - 1) * (high + 12);
  const hung = hangingBands(
    items.filter((i) => i.flagged),
    frame,
    lineY,
  );
  const above = steady.map((b) => ({
    ...b,
    top: lineY + b.top,
    tail: b.tail === null ? null : { ...b.tail, y: lineY + b.tail.y },
  }));
  return {
    width,
    height: hung.bottom,
    lineY,
    middleX,
    limit,
    narrow,
    ticks: ticksOf(limit, xOf),
    bands: [...above, ...hung.bands],
  };
}

interface Frame {
  readonly width: number;
  readonly xOf: (percent: number) => number;
  readonly beyondOf: (percent: number) => number | null;
  readonly high: number;
  readonly measure: Measure;
}

/** Sorted by length of tail, longest first; each takes the lowest lane where band and tail are free. Tops are from the line. */
function steadyBands(items: readonly DriftItem[], { width, xOf, beyondOf, high }: Frame): PlacedBand[] {
  const wide = high * 2.5;
  const measured = items.map((item) => {
    const x = xOf(item.percent);
    const left = clamp(x - wide / 2, 0, Math.max(0, width - wide));
    const was = item.weighedNow && item.before !== null ? xOf(item.before) : x;
    const tailed = Math.abs(was - x) >= SHORTEST_TAIL;
    return { item, x, left, was: tailed ? was : x, tailed };
  });
  measured.sort((a, b) => Math.abs(b.was - b.x) - Math.abs(a.was - a.x) || a.x - b.x || (a.item.id < b.item.id ? -1 : 1));
  const taken: { from: number; to: number }[][] = [];
  return measured.map(({ item, x, left, was, tailed }) => {
    const span = { from: Math.min(left, was), to: Math.max(left + wide, was) };
    const free = taken.findIndex((lane) => lane.every((s) => span.to + GAP <= s.from || s.to + GAP <= span.from));
    const lane = free === -1 ? taken.length : free;
    taken[lane] = [...(taken[lane] ?? []), span];
    const top = -(high + 14) - lane * (high + 12);
    return {
      id: item.id,
      flagged: false,
      weighedNow: item.weighedNow,
      x,
      beyond: beyondOf(item.percent),
      left,
      top,
      width: wide,
      height: high,
      lane,
      tail: tailed ? { from: was, to: x, y: top + high + 4.5 } : null,
      texts: [],
    };
  });
}

/** One lane each under the line, rightmost first, so that no needle crosses a tail. */
function hangingBands(items: readonly DriftItem[], frame: Frame, lineY: number): { bands: PlacedBand[]; bottom: number } {
  const sorted = [...items].sort((a, b) => b.percent - a.percent || (a.id < b.id ? -1 : 1));
  const high = (frame.high * 4) / 3;
  const wide = high * 2.5;
  let y = lineY + 30;
  const bands = sorted.map((item, lane) => {
    const x = frame.xOf(item.percent);
    const left = clamp(x - wide / 2, 0, Math.max(0, frame.width - wide));
    const was = item.before === null ? null : frame.xOf(item.before);
    const tailed = was !== null && (was > left + wide + SHORTEST_TAIL || was < left - SHORTEST_TAIL);
    const start = Math.max(left + wide, tailed ? was + 5 : 0) + 10;
    const needles = sorted.slice(lane + 1).map((i) => frame.xOf(i.percent));
    const remark = placeRemark(item, start, Math.min(left, tailed ? was - 5 : left) - 10, needles, frame);
    const block = Math.max(high, remark.besideLines * REMARK_LINE);
    const middle = y + block / 2;
    const first = middle - ((remark.besideLines - 1) * REMARK_LINE) / 2 + 5.5;
    const under = y + block + 19;
    const band: PlacedBand = {
      id: item.id,
      flagged: true,
      weighedNow: item.weighedNow,
      x,
      beyond: frame.beyondOf(item.percent),
      left,
      top: middle - high / 2,
      width: wide,
      height: high,
      lane,
      tail: tailed ? { from: was, to: x, y: middle } : null,
      texts: [...linesFrom(remark.beside, first), ...linesFrom(remark.beneath, under)],
    };
    y += block + remark.beneath.length * REMARK_LINE + 14;
    return band;
  });
  return { bands, bottom: bands.length === 0 ? lineY + 30 : y - 4 };
}

interface RemarkLine {
  readonly x: number;
  readonly bold: string;
  readonly text: string;
}

/** Beside the band when there is room for the sentence; else the level's word beside it and the sentence beneath. */
function placeRemark(
  item: DriftItem,
  start: number,
  end: number,
  needles: readonly number[],
  { width, measure }: Frame,
): { beside: RemarkLine[]; besideLines: number; beneath: RemarkLine[] } {
  const { lead, text } = item.remark;
  const leadWidth = measure(lead, REMARK_SIZE, LEAD_WEIGHT) + LEAD_GAP;
  const room = width - start;
  const needed = leadWidth + measure(text, REMARK_SIZE);
  if (room >= Math.min(needed, ROOM_FOR_REMARK + leadWidth)) {
    const beside = linesOf(lead, wrapText(text, REMARK_SIZE, room, measure, room - leadWidth), start);
    return { beside, besideLines: beside.length, beneath: [] };
  }
  const clear = (wide: number) => end >= wide && needles.every((x) => x < end - wide - 6 || x > end);
  if (clear(needed)) return { beside: linesOf(lead, [text], end - needed), besideLines: 1, beneath: [] };
  // Beneath, the sentence stands as near under its band as the width allows.
  const word = measure(lead, REMARK_SIZE, LEAD_WEIGHT);
  if (room < word && end < word) {
    // Band and tail leave no room for the word on either side.
    const under = wrapText(text, REMARK_SIZE, width, measure, width - leadWidth);
    return { beside: [], besideLines: 0, beneath: linesOf(lead, under, 0) };
  }
  const lines = wrapText(text, REMARK_SIZE, width, measure);
  const longest = Math.max(0, ...lines.map((line) => measure(line, REMARK_SIZE)));
  const beneath = linesOf('', lines, Math.max(0, Math.min(end, width - longest)));
  return { beside: linesOf(lead, [''], room >= word ? start : Math.max(0, end - word)), besideLines: 1, beneath };
}

function linesOf(lead: string, lines: readonly string[], x: number): RemarkLine[] {
  return lines.map((text, i) => ({ x, bold: i === 0 ? lead : '', text }));
}

function linesFrom(lines: readonly RemarkLine[], firstY: number): DriftText[] {
  return lines.map((line, i) => ({ ...line, y: firstY + i * REMARK_LINE }));
}

/** Fives, or wider apart when they would crowd; nothing weighs 100 % under. */
function ticksOf(limit: number, xOf: (percent: number) => number): { percent: number; x: number }[] {
  const step = [5, 10, 20, 25, 50, 100, 200, 500].find((s) => xOf(s) - xOf(0) >= 46) ?? 1000;
  const ticks = [];
  for (let percent = -Math.floor(limit / step) * step; percent <= limit; percent += step) {
    if (percent !== 0 && percent > -100) ticks.push({ percent, x: xOf(percent) });
  }
  return ticks;
}
