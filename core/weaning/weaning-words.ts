/** Sentences about weaning: who holds and why, what the numbers say beside the plan. They point, they never diagnose. */

import { type CivilDate, daysBetween } from '../calendar/day.ts';
import { capital } from '../calendar/words.ts';
import { ESTIMATE_BOUNDS, GROWTH_SOURCES } from '../feeding/energy.ts';
import { percentText } from '../food/figures.ts';
import { pronouns } from '../litter/pronouns.ts';
import type { Sex } from '../reference/classes.ts';
import type { Known } from '../reference/feeding/known.ts';
import { FIRST_BOWL, SOLIDS_BY_WEEK, SOLIDS_SOURCE } from '../reference/feeding/weaning.ts';
import { OLD_WEIGHT_DAYS, type WeaningDay, type WeaningInput } from './weaning.ts';
import type { WeaningPlan } from './weaning-plan.ts';

export interface WeaningFinding {
  readonly code:
    | 'bowl-lean'
    | 'weight-old'
    | 'no-weight'
    | 'no-adult-weight'
    | 'starts-early'
    | 'starts-late'
    | 'faster-than-curve';
  readonly severity: 'note' | 'caution';
  readonly sentence: string;
  readonly mend: string | null;
  readonly source: string;
  readonly known: Known;
}

/** "holds at 45 % until his gain is back for two days. He nurses first, then comes to the bowl." */
export function holdSentence(share: number, sex: Sex): string {
  const { they, their } = pronouns(sex);
  return `holds at ${percentText(share, 0)} until ${their} gain is back for two days. ${capital(they)} nurses first, then comes to the bowl.`;
}

/** Everything worth saying about a day of weaning; each sentence once. */
export function weaningFindings(input: WeaningInput, day: WeaningDay): WeaningFinding[] {
  return [...startsWell(input), ...weights(input, day), lean(input, day), ahead(input, day)].filter((f) => f !== null);
}

function startsWell({ plan, puppies }: WeaningInput): (WeaningFinding | null)[] {
  const born = puppies[0]?.born;
  if (born === undefined) return [];
  const age = daysBetween(born, plan.starts);
  const { source, known } = FIRST_BOWL;
  if (age < FIRST_BOWL.earliestDay) {
    return [
      {
        code: 'starts-early',
        severity: 'caution',
        sentence: `The first bowl is on day ${age}. Until three weeks puppies live on milk alone.`,
        mend: 'Start between three and four weeks.',
        source,
        known,
      },
    ];
  }
  if (age > FIRST_BOWL.latestDay) {
    return [
      {
        code: 'starts-late',
        severity: 'note',
        sentence: `The first bowl is on day ${age}. From four weeks milk alone no longer covers everything.`,
        mend: null,
        source,
        known,
      },
    ];
  }
  return [];
}

function weights({ puppies }: WeaningInput, day: WeaningDay): (WeaningFinding | null)[] {
  const named = (is: (p: WeaningDay['puppies'][number]) => boolean) =>
    day.puppies
      .filter(is)
      .map((d) => puppies.find((p) => p.id === d.puppyId)?.name ?? '')
      .join(', ');
  const old = named((p) => p.weighedAgo !== null && p.weighedAgo > OLD_WEIGHT_DAYS);
  const none = named((p) => p.grams === null);
  const unknown = puppies.some((p) => p.adultKg === null);
  const own = { source: 'our own bound of 4 days', known: 'common practice' as const };
  return [
    none === ''
      ? null
      : {
          code: 'no-weight',
          severity: 'caution',
          sentence: `No weight yet: ${none}.`,
          mend: 'Weigh them; until then they are not on the sheet.',
          ...own,
        },
    old === ''
      ? null
      : {
          code: 'weight-old',
          severity: 'caution',
          sentence: `Not weighed for over four days: ${old}. The amounts are reckoned from an expected weight.`,
          mend: 'Weigh them today.',
          ...own,
        },
    unknown
      ? {
          code: 'no-adult-weight',
          severity: 'note',
          sentence:
            'No grown weight is written, so there is no published estimate to compare, and weights can be expected for two weeks only.',
          mend: 'Write the grown weight or the size on Puppies.',
          ...own,
        }
      : null,
  ];
}

function lean({ food, rules }: WeaningInput, day: WeaningDay): WeaningFinding | null {
  const fed = day.puppies.filter((p) => p.estimateKcal !== null && p.grams !== null);
  const aim = fed.reduce((all, p) => all + (p.estimateKcal ?? 0) * p.share, 0);
  if (aim === 0) return null;
  const part = (fed.reduce((all, p) => all + p.dayGrams, 0) * food.kcalPer100g) / 100 / aim;
  const { source, known } = GROWTH_SOURCES[rules.growthMethod];
  if (part >= ESTIMATE_BOUNDS.low) return null;
  return {
    code: 'bowl-lean',
    severity: 'note',
    sentence: `The bowls give about ${percentText(part, 0)} of the published estimate for their share of the food; the dam makes up the rest. The scale is the judge.`,
    mend: 'If they are not gaining as expected: more in the bowl, a richer mix, or slower steps.',
    source: `${source}. The bound of 80 % is our own`,
    known,
  };
}

/** Whether the litter's step is above the planning curve of that week. */
function ahead({ plan, puppies }: WeaningInput, day: WeaningDay): WeaningFinding | null {
  const born = puppies[0]?.born;
  const share = day.step === null ? null : (plan.steps[day.step]?.share ?? null);
  if (born === undefined || share === null) return null;
  const curve = curveOn(born, day.day);
  if (curve === null || share <= curve.high) return null;
  return {
    code: 'faster-than-curve',
    severity: 'note',
    sentence: `${percentText(share, 0)} from the bowl is quicker than the planning curve, which has ${percentText(curve.low, 0)} to ${percentText(curve.high, 0)} in this week.`,
    mend: 'Longer steps, if gains fall or stools are loose.',
    ...SOLIDS_SOURCE,
  };
}

/** The planning curve in the week of life that a day is in; null outside three to eight weeks. */
export function curveOn(born: CivilDate, day: CivilDate): { low: number; high: number } | null {
  const week = Math.floor(daysBetween(born, day) / 7);
  return SOLIDS_BY_WEEK.find((w) => w.week === week) ?? null;
}

/** The next step after a day by the plan as it stands: its first day, or null on the last step or while the steps rest. */
export function nextStep(plan: WeaningPlan, days: readonly WeaningDay[]): { day: CivilDate; step: number } | null {
  const now = days[0]?.step ?? null;
  const next = days.find((d) => d.step !== null && (now === null || d.step > now));
  return next === undefined || next.step === null || plan.steps[next.step] === undefined
    ? null
    : { day: next.day, step: next.step };
}
