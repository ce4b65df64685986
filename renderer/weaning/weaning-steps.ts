/** Where things stand in the picture of the steps. Pure: sizes in CSS pixels, text measured by the caller. */
import type { WeaningPlan } from '../../core/weaning/weaning-plan.ts';
import type { Measure } from '../parts/measure.ts';

const TOP = 30;
const BASE = 124;
const FIGURE = 16;
const NOW_FIGURE = 24;
const DAY = 14;
const BRACKET = 15;
const PAD = 1;
/** A bracket's text in at most so many lines. */
const LINES = 2;

export interface DrawnStep {
  readonly index: number;
  readonly from: number;
  readonly to: number;
  readonly top: number;
  readonly when: 'done' | 'now' | 'later';
  /** Null where it does not fit. */
  readonly figure: { readonly text: string; readonly x: number; readonly size: number } | null;
}

export interface StepsLayout {
  readonly width: number;
  readonly height: number;
  readonly base: number;
  readonly steps: readonly DrawnStep[];
  readonly ticks: readonly {
    readonly x: number;
    readonly text: string;
    readonly anchor: 'start' | 'middle' | 'end';
    readonly now: boolean;
  }[];
  readonly brackets: readonly {
    readonly from: number;
    readonly to: number;
    readonly lines: readonly string[];
    readonly x: number;
    readonly anchor: 'start' | 'middle' | 'end';
  }[];
  readonly bracketTop: number;
}

/**
 * The steps over `width`. `spans` are the ages each step runs from and to; `nowStep` is the present one, null before the first; `today` the age
 * today.
 */
export function stepsLayout(
  plan: WeaningPlan,
  spans: readonly { readonly from: number; readonly to: number }[],
  nowStep: number | null,
  today: number,
  width: number,
  texts: {
    readonly percent: (share: number) => string;
    readonly texture: (t: WeaningPlan['steps'][number]['texture']) => string;
    readonly day: (d: number) => string;
    readonly today: (d: number) => string;
  },
  measure: Measure,
): StepsLayout {
  const [first, last] = [spans[0]?.from ?? 0, spans.at(-1)?.to ?? 1];
  const x = (age: number) => PAD + ((age - first) / Math.max(1, last - first)) * (width - 2 * PAD);
  const top = (share: number) => BASE - share * (BASE - TOP);
  const steps = plan.steps.map((step, index): DrawnStep => {
    const span = spans[index] as { from: number; to: number };
    const when = nowStep === null || index > nowStep ? 'later' : index === nowStep ? 'now' : 'done';
    const size = when === 'now' ? NOW_FIGURE : FIGURE;
    const text = texts.percent(step.share);
    const room = x(span.to) - x(span.from);
    const wide = measure(text, size, when === 'now' ? 700 : 500);
    // A present figure that is wider than its step may stand over the next, which is higher: so it is moved to the left.
    const fits = wide + 6 <= room || when === 'now';
    const left = wide + 6 <= room ? x(span.from) + Math.min(8, (room - wide) / 2) : Math.max(0, x(span.to) - wide - 4);
    return {
      index,
      from: x(span.from),
      to: x(span.to),
      top: top(step.share),
      when,
      figure: fits ? { text, x: left, size } : null,
    };
  });
  const shown = dropFigures(steps);
  return {
    width,
    height: BASE + 60,
    base: BASE,
    steps: shown,
    ticks: ticksOf(spans, nowStep, today, x, width, texts, measure),
    brackets: bracketsOf(plan, spans, x, width, texts.texture, measure),
    bracketTop: BASE + 31,
  };
}

/** A figure of a step before the present one gives way when the big one reaches over it. */
function dropFigures(steps: readonly DrawnStep[]): DrawnStep[] {
  const now = steps.find((s) => s.when === 'now');
  const reach = now?.figure?.x ?? Number.POSITIVE_INFINITY;
  return steps.map((s) => (s.when === 'done' && s.to > reach ? { ...s, figure: null } : s));
}

function ticksOf(
  spans: readonly { readonly from: number; readonly to: number }[],
  nowStep: number | null,
  today: number,
  x: (age: number) => number,
  width: number,
  texts: { readonly day: (d: number) => string; readonly today: (d: number) => string },
  measure: Measure,
): StepsLayout['ticks'] {
  const all = spans.map((s, i) => {
    const now = i === nowStep && s.from === today;
    return { x: x(s.from), text: now ? texts.today(s.from) : i === 0 ? texts.day(s.from) : String(s.from), now };
  });
  const inStep =
    nowStep !== null && spans[nowStep]?.from !== today && today >= (spans[0]?.from ?? 0) && today < (spans.at(-1)?.to ?? 0);
  if (inStep) all.push({ x: x(today), text: texts.today(today), now: true });
  const placed = all.map((t) => {
    const wide = measure(t.text, DAY, t.now ? 700 : 400);
    const anchor = t.x - wide / 2 < 0 ? ('start' as const) : t.x + wide / 2 > width ? ('end' as const) : ('middle' as const);
    const left = anchor === 'start' ? t.x : anchor === 'end' ? t.x - wide : t.x - wide / 2;
    return { ...t, anchor, left, right: left + wide };
  });
  const kept: typeof placed = [];
  // Today stays; another that would touch it, or one already there, is left out.
  for (const t of [...placed].sort((a, b) => Number(b.now) - Number(a.now) || a.x - b.x)) {
    if (!kept.some((k) => t.left < k.right + 8 && k.left < t.right + 8)) kept.push(t);
  }
  return kept.sort((a, b) => a.x - b.x).map(({ x: at, text, anchor, now }) => ({ x: at, text, anchor, now }));
}

function bracketsOf(
  plan: WeaningPlan,
  spans: readonly { readonly from: number; readonly to: number }[],
  x: (age: number) => number,
  width: number,
  texture: (t: WeaningPlan['steps'][number]['texture']) => string,
  measure: Measure,
): StepsLayout['brackets'] {
  const groups: { texture: WeaningPlan['steps'][number]['texture']; from: number; to: number }[] = [];
  for (const [i, step] of plan.steps.entries()) {
    const span = spans[i] as { from: number; to: number };
    const before = groups.at(-1);
    if (before !== undefined && before.texture === step.texture) before.to = span.to;
    else groups.push({ texture: step.texture, from: span.from, to: span.to });
  }
  let free = 0;
  return groups.map((g) => {
    const [from, to] = [x(g.from) + 3, x(g.to) - 3];
    const text = texture(g.texture);
    const lines = linesOf(text, to - from, measure);
    const wide = Math.max(0, ...lines.map((l) => measure(l, BRACKET, 600)));
    const middle = (from + to) / 2;
    const anchor =
      middle - wide / 2 < 0 ? ('start' as const) : middle + wide / 2 > width ? ('end' as const) : ('middle' as const);
    const at = anchor === 'start' ? 0 : anchor === 'end' ? width : middle;
    const left = anchor === 'start' ? 0 : anchor === 'end' ? width - wide : middle - wide / 2;
    const shown = left >= free ? lines : [];
    if (shown.length > 0) free = left + wide + 8;
    return { from, to, lines: shown, x: at, anchor };
  });
}

/** The text in one line, or broken between words into two when the bracket is narrow. */
function linesOf(text: string, room: number, measure: Measure): string[] {
  if (measure(text, BRACKET, 600) <= room + 12) return [text];
  const words = text.split(' ');
  if (words.length < 2) return [text];
  const half = Math.ceil(words.length / LINES);
  return [words.slice(0, half).join(' '), words.slice(half).join(' ')];
}
