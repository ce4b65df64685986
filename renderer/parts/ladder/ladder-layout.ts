/**
 * Where everything on the meal ladder stands, in CSS pixels: the same picture on screen and on paper. Age runs to the
 * right, height is grams a day, layers are the meals. Pure; no two texts ever overlap: what finds no room is left out
 * (the same rows stand in a table).
 */

import { ageInMonths } from '../../../core/calendar/age.ts';
import { addDays, addMonths, ageInDays, type CivilDate } from '../../../core/calendar/day.ts';
import type { LadderStep } from '../../../core/feeding/ladder.ts';
import type { MealName } from '../../../core/food/bowls.ts';
import type { Measure } from '../measure.ts';
import { layerTexts } from './ladder-layers.ts';
import {
  GAP,
  inside,
  LAYERS,
  type LadderLook,
  type LadderText,
  type LadderTexts,
  overlaps,
  type Tread,
  weightOf,
  type Zone,
} from './ladder-look.ts';

export interface LadderLayout {
  readonly width: number;
  readonly height: number;
  readonly base: number;
  readonly treads: readonly Tread[];
  readonly changes: readonly { readonly from: number; readonly to: number; readonly top: number }[];
  readonly brackets: readonly { readonly from: number; readonly to: number; readonly y: number }[];
  readonly ticks: readonly number[];
  readonly texts: readonly LadderText[];
  readonly now: Tread | null;
}

/** A word over a bracket stands over at least this much of it. */
const LEAST_OVER = 8;
const MONTHLY_FROM_DAY = 26 * 7;

export function ladderLayout(
  steps: readonly LadderStep[],
  born: CivilDate,
  nowDay: number | null,
  look: LadderLook,
  texts: LadderTexts,
  measure: Measure,
): LadderLayout {
  const first = steps[0];
  const last = steps.at(-1);
  if (first === undefined || last === undefined) throw new RangeError('a ladder without a step');
  const [from, until] = [first.fromDay, last.untilDay];
  const xOf = (day: number) => look.pad + ((day - from) / (until - from)) * (look.width - 2 * look.pad);
  const zones = zonesOf(steps);
  const heads = headTexts(zones, xOf, look, texts, measure);
  const base = look.height - 6 - look.age - 4 - (look.date === 0 ? 0 : look.date + 4);
  const peakTop = heads.bottom + 8 + look.figure + 6;
  const largest = Math.max(1, ...steps.map((s) => s.dayGrams));
  const treads = steps.map((step) => treadOf(step, xOf, base, (base - peakTop) / largest));
  const now = nowDay === null ? undefined : treads.find((t) => t.step.fromDay <= nowDay && nowDay < t.step.untilDay);
  const axis = axisTexts(from, until, born, now?.step === first, xOf, base, look, texts, measure);
  return {
    width: look.width,
    height: look.height,
    base,
    treads,
    changes: zones.filter((z) => z.changing).map((z) => ({ from: xOf(z.from), to: xOf(z.to), top: heads.bottom })),
    brackets: heads.brackets,
    ticks: axis.ticks,
    texts: [
      ...heads.texts,
      ...figureTexts(treads, now, look, texts, measure),
      ...layerTexts(zones, treads, xOf, base, look, texts, measure),
      ...axis.texts,
    ],
    now: now ?? null,
  };
}

const fed = (step: LadderStep): MealName[] => LAYERS.filter((meal) => (step.meals[meal] ?? 0) > 0);

/** Stretches with the same meals; the days of change are a stretch of their own. */
function zonesOf(steps: readonly LadderStep[]): Zone[] {
  const zones: Zone[] = [];
  for (const step of steps) {
    const names = fed(step);
    const open = zones.at(-1);
    if (open !== undefined && open.changing === step.changing && open.names.join() === names.join()) {
      zones[zones.length - 1] = { ...open, to: step.untilDay };
    } else {
      zones.push({ from: step.fromDay, to: step.untilDay, meals: names.length, changing: step.changing, names });
    }
  }
  return zones;
}

function treadOf(step: LadderStep, xOf: (day: number) => number, base: number, pixelsPerGram: number): Tread {
  let bottom = base;
  const layers = fed(step).map((meal) => {
    const top = bottom - (step.meals[meal] ?? 0) * pixelsPerGram;
    const layer = { meal, top, bottom };
    bottom = top;
    return layer;
  });
  return { step, from: xOf(step.fromDay), to: xOf(step.untilDay), top: base - step.dayGrams * pixelsPerGram, layers };
}

/** Brackets with "three meals a day"; "two weeks of change" stands in the same row when it fits there, else in a row above. */
function headTexts(zones: readonly Zone[], xOf: (day: number) => number, look: LadderLook, texts: LadderTexts, measure: Measure) {
  const wanted = zones.map((zone) => ({
    middle: (xOf(zone.from) + xOf(zone.to)) / 2,
    variants: zone.changing ? texts.change(zone.to - zone.from) : texts.meals(zone.meals),
    kind: zone.changing ? ('change' as const) : ('bracket' as const),
    zone,
  }));
  const row = (items: typeof wanted, y: number, gap = GAP): LadderText[] => {
    const placed: LadderText[] = [];
    for (const item of items) {
      const size = item.kind === 'change' ? look.change : look.bracket;
      const room = (text: string): LadderText => {
        const width = measure(text, size, weightOf(item.kind));
        // It may give way to its neighbour as long as it still stands over a part of its own stretch.
        const free = Math.max(0, ...placed.map((p) => p.x + p.width / 2 + gap));
        return { kind: item.kind, text, x: Math.max(free + width / 2, inside(item.middle, width, look.width)), y, width, size };
      };
      const fits = item.variants
        .map(room)
        .find(
          (t) =>
            t.x - t.width / 2 < xOf(item.zone.to) - LEAST_OVER &&
            t.x + t.width / 2 <= look.width &&
            t.x - item.middle < t.width * 0.6,
        );
      if (fits !== undefined) placed.push(fits);
    }
    return placed;
  };
  const brackets = wanted.filter((w) => w.kind === 'bracket');
  const changes = wanted.filter((w) => w.kind === 'change');
  // One row only when every word keeps its full length over its own stretch.
  const single = row(
    wanted.map((w) => ({ ...w, variants: w.kind === 'change' ? w.variants : w.variants.slice(0, 1) })),
    look.bracket,
    2 * GAP,
  );
  const oneRow =
    changes.length === 0 ||
    (single.length === wanted.length && single.every((t, i) => t.kind === 'change' || overBracket(t, wanted[i]?.zone, xOf)));
  const above = oneRow ? 0 : look.change + 5;
  const full = row(brackets, above + look.bracket);
  const short = row(
    brackets.map((b) => ({ ...b, variants: b.variants.slice(1) })),
    above + look.bracket,
  );
  const placed =
    oneRow && changes.length > 0 ? single : [...row(changes, look.change), ...(short.length > full.length ? short : full)];
  const y = above + look.bracket + 6;
  return {
    texts: placed,
    brackets: brackets.map(({ zone }) => ({ from: xOf(zone.from) + 2, to: xOf(zone.to) - 2, y })),
    bottom: y + 7,
  };
}

function overBracket(text: LadderText, zone: Zone | undefined, xOf: (day: number) => number): boolean {
  return zone !== undefined && text.width <= xOf(zone.to) - xOf(zone.from);
}

/** The highest, the first, the last, the present one, every fourth week, then monthly: each just over every tread it spans. */
function figureTexts(
  treads: readonly Tread[],
  now: Tread | undefined,
  look: LadderLook,
  texts: LadderTexts,
  measure: Measure,
): LadderText[] {
  const first = treads[0];
  const top = treads.reduce<Tread | undefined>(
    (best, t) => (best === undefined || t.step.dayGrams > best.step.dayGrams ? t : best),
    undefined,
  );
  const start = first?.step.fromDay ?? 0;
  const monthly = treads.filter((t) => t.step.fromDay >= MONTHLY_FROM_DAY);
  const rising = treads.filter((t) => !monthly.includes(t) && t.step.fromDay < (top?.step.fromDay ?? 0));
  const week = (t: Tread) => Math.round((t.step.fromDay - start) / 7);
  // A fourth week without room gives its figure to a neighbour.
  const fourth = rising
    .filter((t) => week(t) % 4 === 0)
    .map((t) => [0, 1, -1].map((by) => rising.find((n) => week(n) === week(t) + by)));
  const order = [[now], [top], [first], [treads.at(-1)], ...monthly.map((t) => [t]), ...fourth];
  const placed: LadderText[] = [];
  const done = new Set<Tread>();
  for (const choices of order) {
    for (const tread of choices) {
      if (tread === undefined) continue;
      if (done.has(tread)) break;
      const text = texts.figure(tread.step.dayGrams, tread === first, tread === now && tread !== first);
      const box = overTread(tread, treads, text, measure(text, look.figure, weightOf('figure')), look);
      if (placed.some((p) => overlaps(p, box, GAP))) continue;
      done.add(tread);
      placed.push(box);
      break;
    }
  }
  return placed;
}

/** A figure wider than its tread leans over the lower side, so that it need not rise. */
function overTread(tread: Tread, treads: readonly Tread[], text: string, width: number, look: LadderLook): LadderText {
  const i = treads.indexOf(tread);
  const [before, after] = [treads[i - 1]?.top ?? tread.top, treads[i + 1]?.top ?? tread.top];
  const middle = (tread.from + tread.to) / 2;
  const wide = width + 4 > tread.to - tread.from;
  const leaning =
    after < tread.top && before >= tread.top
      ? tread.to - width / 2 - 1
      : before < tread.top && after >= tread.top
        ? tread.from + width / 2 + 1
        : middle;
  const x = inside(wide ? leaning : middle, width, look.width);
  const spanned = treads.filter((t) => t.to > x - width / 2 + 1 && t.from < x + width / 2 - 1);
  const y = Math.min(tread.top, ...spanned.map((t) => t.top)) - 6;
  return { kind: 'figure', text, x, y, width, size: look.figure };
}

/** Ages: every fourth week up to five months, then months; on paper with the date under it. */
function axisTexts(
  from: number,
  until: number,
  born: CivilDate,
  nowIsFirst: boolean,
  xOf: (day: number) => number,
  base: number,
  look: LadderLook,
  texts: LadderTexts,
  measure: Measure,
): { ticks: number[]; texts: LadderText[] } {
  const monthDay = (months: number) => ageInDays(born, addMonths(born, months));
  const firstMonth = Math.max(5, ageInMonths(born, addDays(born, from)) + (from >= monthDay(5) ? 0 : 1));
  const marks: { day: number; text: string; first: boolean }[] = [];
  const firstMonthDay = monthDay(firstMonth);
  if (from < monthDay(5)) {
    const start = Math.floor(from / 7);
    for (let week = start; week * 7 < firstMonthDay - 17 && week * 7 < until; week += 4) {
      marks.push({ day: Math.max(from, week * 7), text: texts.weeks(week, week === start), first: week === start });
    }
  }
  for (let month = firstMonth; monthDay(month) < until; month += 1) {
    marks.push({
      day: Math.max(from, monthDay(month)),
      text: texts.months(month, month === firstMonth),
      first: month === firstMonth,
    });
  }
  const ordered = [...marks.filter((m) => m.first), ...marks.slice(-1), ...marks.filter((m) => !m.first)];
  const placed: LadderText[] = [];
  const ticks: number[] = [];
  const seen = new Set<number>();
  for (const mark of ordered) {
    if (seen.has(mark.day)) continue;
    seen.add(mark.day);
    const pair = [at(mark.text, 'age', look.age, base + 6 + look.age)];
    if (look.date > 0) {
      const text = nowIsFirst && mark.day === from ? texts.now : texts.date(addDays(born, mark.day));
      pair.push(at(text, 'date', look.date, base + 6 + look.age + look.date + 3));
    }
    if (pair.every((t) => placed.every((p) => !overlaps(p, t, GAP)))) {
      placed.push(...pair);
      ticks.push(xOf(mark.day));
    }
    function at(text: string, kind: 'age' | 'date', size: number, y: number): LadderText {
      const width = measure(text, size, weightOf(kind));
      return { kind, text, x: inside(xOf(mark.day), width, look.width), y, width, size };
    }
  }
  return { ticks, texts: placed };
}
