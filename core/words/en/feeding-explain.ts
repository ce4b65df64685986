/** The worked sum of a ration, line by line, in words. */
import type { ExplainedLine } from '../../feeding/explain.ts';
import { isMetric, type MassUnit } from '../../units/mass.ts';
import { foodText, massText } from './amounts.ts';
import { ageInWords } from './dates.ts';
import { fixed, percentText, plain, rangeText } from './figures.ts';
import { foodName, foodSource } from './food.ts';

/** A line of the sum in words: what it is, its figure, where that comes from. */
export interface SaidLine {
  readonly what: string;
  readonly figure: string;
  readonly source: string;
}

const HOUSE_RULES = 'house rules; common practice, no source';
const KLEIN = 'growth: (254.1 − 135.0 p) × kg^0.75, p = weight over expected adult weight';
const NRC = 'growth by NRC 2006: 130 × kg^0.75 × 3.2 × (e^(−0.87 p) − 0.1), which runs 20 to 28 % above what pet puppies ate';
const EQUATIONS = { klein: KLEIN, nrc: NRC } as const;
const AMOUNTS: Record<LineOf<'amount'>['by'], string> = {
  share: 'The amount: the share of the weight',
  energy: 'The amount: the estimate over the energy of the food',
  floor: 'The amount: the share would be under the floor, so the floor',
  most: 'The amount: a fifth of the weight, which is the most',
};

type LineOf<C extends ExplainedLine['code']> = Extract<ExplainedLine, { readonly code: C }>;
type Says<C extends ExplainedLine['code']> = (line: LineOf<C>, unit: MassUnit) => SaidLine;

const SAYS: { [C in ExplainedLine['code']]: Says<C> } = {
  age: (l) => ({ what: 'Age', figure: ageInWords(l.born, l.day), source: 'date of birth' }),
  weight: (l, unit) => ({ what: 'Weight', figure: weight(l.grams, unit), source: 'the scale, or the forecast from it' }),
  rule: ({ rules: r, share }) => ({
    what: `House rule: ${percentText(r.shareYoung, 1)} until ${r.youngUntilMonths} months, ${percentText(r.shareMiddle, 1)} at ${r.middleMonths}, ${percentText(r.shareAdult, 1)} from ${r.adultMonths}; between these an even glide`,
    figure: percentText(share, 2),
    source: HOUSE_RULES,
  }),
  share: (l, unit) => ({
    what: 'Share of the weight',
    figure: `${percentText(l.share, 2)} × ${weight(l.weightGrams, unit)} = ${grams(l.grams)}`,
    source: 'computed',
  }),
  'no-estimate': (l) => ({ what: 'Published estimate', figure: 'not without an expected adult weight', source: l.source }),
  estimate: (l) => ({
    what: `Published estimate for ${EQUATIONS[l.method]}`,
    figure: `p = ${plain(l.kg, 2)} / ${plain(l.adultKg, 1)} = ${plain(l.p, 2)}; ${kcal(l.kcal)}`,
    source: l.source,
  }),
  'other-estimate': (l) => ({ what: `For comparison, ${EQUATIONS[l.method]}`, figure: kcal(l.kcal), source: l.source }),
  'older-steps': (l) => ({
    what: 'The same by the older steps of 210, 175, 140 kcal × kg^0.75',
    figure: kcal(l.kcal),
    source: l.source,
  }),
  resting: (l) => ({
    what: 'Resting need, for comparison: 70 × kg^0.75',
    figure: `${kcal(l.kcal)}${l.linear === null ? '' : `; by the straight line 30 × kg + 70: ${kcal(l.linear)}`}`,
    source: l.source,
  }),
  grown: (l) => ({
    what: `Grown, at ${plain(l.adultKg, 1)} kg: 95 to 130 × kg^0.75`,
    figure: `${kcal(l.quiet)} quiet, ${kcal(l.usual)} usual, ${kcal(l.active)} active`,
    source: l.source,
  }),
  amount: (l) => ({ what: AMOUNTS[l.by], figure: amountFigure(l), source: HOUSE_RULES }),
  treats: (l) => ({ what: 'Treats come off, by their energy', figure: grams(l.grams), source: HOUSE_RULES }),
  bowls: (l, unit) => ({
    what: `Bowls, each rounded to what can be weighed; the day is their sum${l.changing ? '. Midday is being left off' : ''}`,
    figure: `${l.grams.map((g) => foodText(g, unit)).join(' + ')} = ${foodText(l.dayGrams, unit)}`,
    source: 'computed',
  }),
  energy: (l) => ({
    what: `Energy of the bowls, at ${plain(l.kcalPer100g, 0)} kcal per 100 g`,
    figure: `${kcal(l.kcal)}${l.part === null ? '' : `, ${percentText(l.part, 0)} of the estimate`}`,
    source: `${foodName(l.food)}: ${foodSource(l.source)}`,
  }),
  calcium: ({ range, published, source }) => ({
    what: `Calcium per 1000 kcal${published === null ? '' : `; published ${fixed(published.low, 1)} to ${fixed(published.high, 1)} (${published.source})`}`,
    figure: `${rangeText(range, 1)}\u00a0g`,
    source: foodSource(source),
  }),
  'minerals-day': (l) => ({
    what: 'Calcium and phosphorus a day',
    figure: `${rangeText(l.calcium, 1)}\u00a0g and ${rangeText(l.phosphorus, 1)}\u00a0g`,
    source: foodSource(l.source),
  }),
  ratio: (l) => ({
    what: 'Calcium to phosphorus',
    figure: `${rangeText(l.range, 2)} to 1`,
    source: foodSource(l.source),
  }),
  bone: (l) => ({
    what: `Bone, ${l.basis === 'unknown' ? 'not said how weighed' : `weighed ${l.basis}`}: ${rangeText(l.calcium, 1)} g of calcium in 100 g of it`,
    figure: `${rangeText(l.percent, 0)}\u00a0% of the food`,
    source: l.source,
  }),
};

/** A line of the sum, with weights and bowls in her units. */
export function explainedLine(line: ExplainedLine, unit: MassUnit): SaidLine {
  const says = SAYS[line.code] as (l: ExplainedLine, unit: MassUnit) => SaidLine;
  return says(line, unit);
}

function amountFigure({ by, floor, estimateKcal, kcalPer100g, grams: amount }: LineOf<'amount'>): string {
  if (estimateKcal === null) return grams(amount);
  const part = by === 'floor' ? `${percentText(floor, 0)} of ` : '';
  return `${part}${kcal(estimateKcal)} / ${plain(kcalPer100g, 0)} × 100 = ${grams(amount)}`;
}

function weight(g: number, unit: MassUnit): string {
  return massText(g, isMetric(unit) ? 'kg' : 'lboz');
}

function grams(figure: number): string {
  return `${plain(figure, 1)}\u00a0g`;
}

function kcal(figure: number): string {
  return `${plain(figure, 0)}\u00a0kcal`;
}
