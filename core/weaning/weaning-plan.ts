/** The plan of weaning as the breeder has it: when the first bowl is offered, the steps, and how bowls are shared. */

import { z } from 'zod';
import { addDays, type CivilDate, daysBetween } from '../calendar/day.ts';
import type { HouseRules } from '../feeding/rules.ts';
import { EIGHT_WEEKS } from '../litter/ages.ts';
import { LIFT_AT_WEANING } from '../reference/feeding/weaning.ts';
import { changeOf, dateSchema } from '../units/fields.ts';
import { TEXTURES, type Texture } from './texture.ts';

/** One step: which part of the food comes from the bowl, how it is made, for how many days. The last one goes on. */
export const weaningStepSchema = z.strictObject({
  share: z.number().min(0.01).max(1),
  texture: z.enum(TEXTURES),
  days: z.number().int().min(1).max(28),
});
export type WeaningStep = z.infer<typeof weaningStepSchema>;

export const weaningPlanSchema = z
  .strictObject({
    /** Day of the first bowl. */
    starts: dateSchema,
    steps: z.array(weaningStepSchema).min(1).max(12),
    /** What is left is lifted after so many minutes. */
    liftMinutes: z.number().int().min(5).max(60),
    /** Most puppies at one bowl. */
    atOneBowl: z.number().int().min(1).max(16),
  })
  .refine((p) => p.steps.every((s, i) => i === 0 || s.share > (p.steps[i - 1]?.share ?? 0)), {
    message: 'the shares must rise from step to step',
    path: ['steps'],
  })
  .refine((p) => p.steps.at(-1)?.share === 1, { message: 'the last step must be all from the bowl', path: ['steps'] });
export type WeaningPlan = z.infer<typeof weaningPlanSchema>;

/** What may be done to the steps of a plan; `place` counts from 0. */
export const stepsChangeSchema = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('change'),
    place: z.number().int().min(0).max(11),
    step: changeOf(weaningStepSchema.shape),
  }),
  /** A step between the last two, halfway in share. */
  z.strictObject({ kind: z.literal('add') }),
  z.strictObject({ kind: z.literal('remove'), place: z.number().int().min(0).max(11) }),
  /** The planning curve from the day of the first bowl. */
  z.strictObject({ kind: z.literal('usual') }),
]);
export type StepsChange = z.infer<typeof stepsChangeSchema>;

/** Puppies at one bowl when nobody said (common practice, no source). */
const AT_ONE_BOWL = 4;

/** Everything from the bowl since eight weeks: a litter that is weaned without a plan. */
export function allFromBowl(born: CivilDate, rules: Pick<HouseRules, 'liftAfterMinutes'>): WeaningPlan {
  return {
    starts: addDays(born, EIGHT_WEEKS),
    steps: [{ share: 1, texture: 'mince with soft bone', days: 1 }],
    liftMinutes: rules.liftAfterMinutes,
    atOneBowl: AT_ONE_BOWL,
  };
}

/** The planning curve as steps by age in days: inside the range of each week, softer texture first (the textures: common practice). */
const USUAL_STEPS: readonly { readonly fromDay: number; readonly share: number; readonly texture: Texture }[] = [
  { fromDay: 21, share: 0.05, texture: 'gruel' },
  { fromDay: 28, share: 0.15, texture: 'gruel' },
  { fromDay: 32, share: 0.25, texture: 'thick gruel' },
  { fromDay: 35, share: 0.35, texture: 'thick gruel' },
  { fromDay: 39, share: 0.5, texture: 'fine mince' },
  { fromDay: 42, share: 0.6, texture: 'fine mince' },
  { fromDay: 46, share: 0.75, texture: 'mince' },
  { fromDay: 49, share: 0.85, texture: 'mince' },
  { fromDay: EIGHT_WEEKS, share: 1, texture: 'mince with soft bone' },
];
const LAST_STEP_DAYS = 7;
/** Later than this the curve moves with the start, so that nobody begins with a big bowl. */
const LATEST_START = 28;

/** The plan to begin with: the planning curve from the day of the first bowl. */
export function usualPlan(born: CivilDate, starts: CivilDate): WeaningPlan {
  return {
    starts,
    steps: usualSteps(daysBetween(born, starts)),
    liftMinutes: LIFT_AT_WEANING.minutes,
    atOneBowl: AT_ONE_BOWL,
  };
}

/** The planning curve as steps for a first bowl at an age in days. */
export function usualSteps(startAge: number): WeaningStep[] {
  const late = Math.max(0, startAge - LATEST_START);
  const steps: WeaningStep[] = [];
  for (const [i, step] of USUAL_STEPS.entries()) {
    const next = USUAL_STEPS[i + 1];
    const from = Math.max(startAge, i === 0 ? startAge : step.fromDay + late);
    const days = next === undefined ? LAST_STEP_DAYS : next.fromDay + late - from;
    if (days > 0) steps.push({ share: step.share, texture: step.texture, days: Math.min(28, days) });
  }
  return steps;
}

/** The place of the step on a day of the plan; the day of the first bowl is 0, a paused day is not counted. The last step goes on. */
export function stepOnPlanDay(steps: readonly WeaningStep[], planDay: number): number {
  let until = 0;
  for (const [i, step] of steps.entries()) {
    until += step.days;
    if (planDay < until) return i;
  }
  return steps.length - 1;
}

function withOneMore(steps: readonly WeaningStep[]): WeaningStep[] {
  const last = steps.at(-1);
  if (last === undefined) return [];
  const before = steps.at(-2);
  const share = Math.round(50 * ((before?.share ?? 0) + 1)) / 100;
  return [...steps.slice(0, -1), { share, texture: before?.texture ?? last.texture, days: 3 }, last];
}

/** The steps as a change makes them; null when it is about a step that is not there. Whether they rise is asked of the whole plan. */
export function changedSteps(plan: WeaningPlan, born: CivilDate, to: StepsChange): WeaningStep[] | null {
  const { steps } = plan;
  if (to.kind === 'add') return withOneMore(steps);
  if (to.kind === 'usual') return usualSteps(daysBetween(born, plan.starts));
  const step = steps[to.place];
  if (step === undefined) return null;
  return to.kind === 'remove' ? steps.toSpliced(to.place, 1) : steps.with(to.place, { ...step, ...to.step });
}
