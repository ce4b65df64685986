import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { localTime } from '../../../core/calendar/clock.ts';
import { addDays, type CivilDate, dayNumber } from '../../../core/calendar/day.ts';
import { DEFAULT_RULES } from '../../../core/feeding/rules.ts';
import { MEAL_NAMES, type MealName } from '../../../core/food/bowls.ts';
import { DEFAULT_FOOD } from '../../../core/food/food.ts';
import { GRAMS_PER_OUNCE } from '../../../core/units/mass.ts';
import {
  adjustedOn,
  restsOn,
  stoolHints,
  suggestionOf,
  type WeaningEvent,
  type WeaningNote,
} from '../../../core/weaning/eaten.ts';
import { prepSheet } from '../../../core/weaning/prep.ts';
import { solidShare, weaningDay, weaningDays } from '../../../core/weaning/weaning.ts';
import { nextStep, weaningFindings } from '../../../core/weaning/weaning-findings.ts';
import { usualPlan, usualSteps, weaningPlanSchema } from '../../../core/weaning/weaning-plan.ts';
import { ENGLISH } from '../../../core/words/en/catalogue.ts';
import { anyRules } from '../feeding/arbitrary.ts';
import { age, anyShape, BORN, litterOf } from './weaning-litter.ts';

const HEALTHY = { sizeClass: 'medium', puppies: 8, until: 33, stalls: [], knowsAdult: true } as const;
let made = 0;
function event(day: CivilDate, note: WeaningNote, puppyId: string | null = null): WeaningEvent {
  made += 1;
  return {
    id: `event-${String(made).padStart(4, '0')}`,
    litterId: 'litter-0001',
    puppyId,
    day,
    at: localTime(`${day}T08:00`),
    instant: dayNumber(day) * 86_400_000 + made,
    note,
  };
}
const meal = (day: CivilDate, name: MealName, ate: 'clean' | 'left' | 'refused') => event(day, { kind: 'meal', meal: name, ate });
const answer = (day: CivilDate, name: MealName, suggestion: 'cut' | 'miss-meal' | 'restore', accepted = true) =>
  event(day, { kind: 'answer', meal: name, suggestion, accepted });
const ask = (events: WeaningEvent[], ageDays = 40, sizeClass: 'toy' | 'medium' = 'medium') =>
  suggestionOf({ events, rules: DEFAULT_RULES, liftMinutes: 20, ageDays, sizeClass });

describe('the days of weaning', () => {
  it('agree to the gram: puppies, bowls, meals, day and water', () => {
    fc.assert(
      fc.property(anyShape, anyRules, fc.integer({ min: 1, max: 6 }), fc.boolean(), (shape, rules, atOneBowl, ounces) => {
        const input = litterOf(shape, { rules, unit: ounces ? 'oz' : 'g' });
        for (const day of weaningDays(input, age(18), 50)) {
          const sheet = prepSheet(day, atOneBowl, DEFAULT_FOOD);
          const close = (a: number, b: number) => expect(Math.abs(a - b)).toBeLessThan(1e-6);
          close(sheet.food.day, day.dayGrams);
          close(sheet.food.day, sum(day.puppies.map((p) => p.dayGrams)));
          close(sheet.water.day, sum(sheet.bowls.map((b) => b.water.day)));
          for (const [i, m] of day.meals.entries()) {
            close(m.grams, sheet.food.byMeal[i] ?? -1);
            close(m.grams, sum(sheet.bowls.map((b) => b.food.byMeal[i] ?? 0)));
          }
          for (const bowl of sheet.bowls) {
            expect(bowl.puppies.length).toBeLessThanOrEqual(atOneBowl);
            close(bowl.food.day, sum(bowl.puppies.map((p) => p.day)));
            for (const p of bowl.puppies) close(p.day, sum(p.byMeal));
          }
          expect(sheet.bowls.flatMap((b) => b.puppies)).toHaveLength(day.puppies.filter((p) => p.grams !== null).length);
        }
      }),
      { numRuns: 60 },
    );
  });

  it('never give less than nothing or more than a fifth of the weight, but for rounding', () => {
    fc.assert(
      fc.property(anyShape, anyRules, fc.boolean(), (shape, rules, ounces) => {
        const input = litterOf(shape, { rules, unit: ounces ? 'lboz' : 'g' });
        const step = ounces ? GRAMS_PER_OUNCE / 4 : 5;
        for (const day of weaningDays(input, age(20), 45)) {
          for (const p of day.puppies) {
            for (const name of MEAL_NAMES) expect(p.meals[name] ?? 0).toBeGreaterThanOrEqual(0);
            expect(p.dayGrams).toBeLessThanOrEqual(0.2 * p.share * (p.grams ?? 0) + 4 * step);
          }
        }
      }),
      { numRuns: 60 },
    );
  });

  it('only go up, and no puppy is ahead of its litter', () => {
    fc.assert(
      fc.property(anyShape, (shape) => {
        const days = weaningDays(litterOf(shape), age(21), 60);
        for (const [n, day] of days.entries()) {
          const before = days[n - 1];
          expect(day.step).not.toBeNull();
          expect(day.step ?? 0).toBeGreaterThanOrEqual(before?.step ?? 0);
          for (const [i, p] of day.puppies.entries()) {
            expect(p.step).toBeLessThanOrEqual(day.step ?? 0);
            expect(p.step).toBeGreaterThanOrEqual(before?.puppies[i]?.step ?? 0);
            expect(p.holds).toBe(p.step < (day.step ?? 0));
          }
        }
      }),
      { numRuns: 60 },
    );
  });

  it('are the same whether asked for one by one or all at once', () => {
    const input = litterOf({ ...HEALTHY, until: 44, stalls: [{ place: 3, from: 29, until: 34 }] });
    for (const day of weaningDays(input, age(21), 40)) expect(weaningDay(input, day.day)).toEqual(day);
  });

  it('have no bowls before the first', () => {
    const [before, first] = weaningDays(litterOf(HEALTHY), age(20), 2);
    expect(before).toMatchObject({ step: null, dayGrams: 0, puppies: [] });
    expect(first?.dayGrams).toBeGreaterThan(0);
  });

  it('hold a puppy whose gain stalls more than two days, and let it follow once its gain is back', () => {
    const stalls = [{ place: 3, from: 29, until: 34 }];
    const held = weaningDays(litterOf({ ...HEALTHY, until: 50, stalls }), age(21), 36);
    const own = (day: number) => held[day - 21]?.puppies[3];
    expect(own(31)?.holds).toBe(false);
    expect(own(33)).toMatchObject({ holds: true, share: 0.15 });
    expect(held[33 - 21]?.puppies[0]).toMatchObject({ holds: false, share: 0.25 });
    expect(own(35)).toMatchObject({ holds: true, share: 0.15 });
    expect(own(44)?.holds).toBe(false);
    expect(held.slice(0, 11).every((d) => d.puppies.every((p) => !p.holds))).toBe(true);
  });

  it('hold everyone when the whole litter stalls', () => {
    const stalls = Array.from({ length: 8 }, (_, place) => ({ place, from: 28, until: 36 }));
    const day = weaningDay(litterOf({ ...HEALTHY, until: 33, stalls }), age(33));
    expect(day.puppies.every((p) => p.holds)).toBe(true);
  });

  it('reckon with the weight of the day, else with an expected one, and say how old it is', () => {
    const input = litterOf(HEALTHY);
    expect(weaningDay(input, age(33)).puppies[0]).toMatchObject({ weight: 'weighed', weighedAgo: 0 });
    const later = weaningDay(input, age(38));
    expect(later.puppies[0]).toMatchObject({ weight: 'expected', weighedAgo: 5 });
    expect(later.puppies[0]?.grams ?? 0).toBeGreaterThan(input.puppies[0]?.weighings.at(-1)?.grams ?? 0);
    expect(weaningFindings(input, later).map((f) => f.code)).toContain('weight-old');
  });

  it('work without a grown weight and for a puppy never weighed, and say so', () => {
    const input = litterOf({ ...HEALTHY, knowsAdult: false, until: 30 });
    const [first, ...rest] = input.puppies;
    const blank = { ...first, id: 'puppy-new', name: 'Late', weighings: [], forecast: () => null } as typeof first;
    const asked = { ...input, puppies: [...rest, blank as NonNullable<typeof first>] };
    const day = weaningDay(asked, age(60));
    expect(day.puppies.at(-1)).toMatchObject({ grams: null, weight: 'none', dayGrams: 0 });
    expect(day.dayGrams).toBeGreaterThan(0);
    expect(weaningFindings(asked, day).map((f) => f.code)).toEqual(['no-weight', 'weight-old', 'no-adult-weight']);
  });

  it('say that a puppy is weaned after three days of nothing but bowls', () => {
    const days = weaningDays(litterOf({ ...HEALTHY, until: 60 }), age(54), 6);
    expect(days.map((d) => [d.puppies[0]?.share, d.weaned])).toEqual([
      [0.85, false],
      [0.85, false],
      [1, false],
      [1, false],
      [1, true],
      [1, true],
    ]);
    expect(days.map(solidShare)[2]).toBe(1);
  });
});

describe('the plan', () => {
  it('rises to all from the bowl, whenever it starts', () => {
    for (let start = 14; start <= 60; start += 1) {
      const plan = usualPlan(BORN, age(start));
      expect(weaningPlanSchema.safeParse(plan).success, `day ${start}`).toBe(true);
      expect(plan.steps[0]?.share).toBeLessThanOrEqual(0.15);
    }
    expect(usualSteps(21).map((s) => s.days)).toEqual([7, 4, 3, 4, 3, 4, 3, 7, 7]);
  });

  it('is refused when shares cross or it never gets there', () => {
    const plan = usualPlan(BORN, age(24));
    const [a, b] = plan.steps;
    const crossed = { ...plan, steps: [b, a, ...plan.steps.slice(2)] };
    expect(weaningPlanSchema.safeParse(crossed).error?.issues[0]?.message).toBe('the shares must rise from step to step');
    expect(weaningPlanSchema.safeParse({ ...plan, steps: plan.steps.slice(0, 3) }).success).toBe(false);
    expect(weaningPlanSchema.safeParse({ ...plan, steps: [] }).success).toBe(false);
  });

  it('knows its next step', () => {
    const input = litterOf(HEALTHY);
    expect(nextStep(input.plan, weaningDays(input, age(33), 30))).toEqual({ day: age(35), step: 3 });
    expect(nextStep(input.plan, weaningDays(input, age(57), 30))).toBeNull();
  });
});

describe('food that is left', () => {
  const day = age(40);
  it('is offered again, then a tenth less, then a meal is left out; only when she accepts', () => {
    const events = [meal(day, 'morning', 'left')];
    expect(ask(events)).toMatchObject({ code: 'offer-again', accepted: null });
    events.push(meal(day, 'midday', 'refused'));
    expect(ask(events)).toMatchObject({ code: 'cut', day, meal: 'midday' });
    expect(adjustedOn(events, DEFAULT_RULES, day, ['morning', 'midday', 'evening'])).toEqual({ factor: 1, missed: [] });
    events.push(answer(day, 'midday', 'cut'));
    expect(adjustedOn(events, DEFAULT_RULES, day, []).factor).toBeCloseTo(0.9, 12);
    events.push(meal(day, 'evening', 'left'));
    expect(ask(events, 60)).toMatchObject({ code: 'miss-meal' });
    expect(ask(events, 40)).toBeNull();
    expect(ask(events, 60, 'toy')).toBeNull();
    events.push(answer(day, 'evening', 'miss-meal'));
    const fed = ['morning', 'midday', 'evening'] as const;
    expect(adjustedOn(events, DEFAULT_RULES, addDays(day, 1), fed).missed).toEqual(['morning']);
    expect(adjustedOn(events, DEFAULT_RULES, day, fed).missed).toEqual([]);
    expect(adjustedOn(events, DEFAULT_RULES, addDays(day, 2), fed).missed).toEqual([]);
  });

  it('changes nothing when she says no', () => {
    const events = [meal(day, 'morning', 'left'), meal(day, 'midday', 'left'), answer(day, 'midday', 'cut', false)];
    expect(ask(events)).toMatchObject({ code: 'cut', accepted: false });
    expect(adjustedOn(events, DEFAULT_RULES, day, []).factor).toBe(1);
  });

  it('comes back to the full amount after six clean meals', () => {
    const events = [answer(day, 'morning', 'cut')];
    for (let n = 1; n <= 2; n += 1)
      for (const name of ['morning', 'midday', 'evening'] as const) events.push(meal(addDays(day, n), name, 'clean'));
    expect(ask(events)).toMatchObject({ code: 'restore' });
    events.push(answer(addDays(day, 2), 'evening', 'restore'));
    expect(adjustedOn(events, DEFAULT_RULES, addDays(day, 3), []).factor).toBe(1);
  });

  it('is noted once a meal: the later note holds', () => {
    const events = [meal(day, 'morning', 'left'), meal(day, 'morning', 'clean')];
    expect(ask(events)).toBeNull();
  });

  it('cuts what is weighed out, and a meal left out is no bowl', () => {
    const input = litterOf(HEALTHY);
    const cut = { ...input, events: [answer(age(33), 'morning', 'cut'), answer(age(33), 'morning', 'miss-meal')] };
    const [full, less] = [weaningDay(input, age(33)), weaningDay(cut, age(33))];
    expect(less.cut).toBeCloseTo(0.9, 12);
    expect(less.meals.find((m) => m.name === 'midday')?.grams).toBe(0);
    expect(less.meals[0]?.grams ?? 0).toBeLessThan(full.meals[0]?.grams ?? 0);
    expect(less.dayGrams).toBe(sum(less.puppies.map((p) => p.dayGrams)));
  });
});

describe('stools', () => {
  it('loose rests the steps for two days, or until a normal one', () => {
    const loose = event(age(31), { kind: 'stool', stool: 'loose' });
    expect([30, 31, 33, 34].map((d) => restsOn([loose], age(d)))).toEqual([false, true, true, false]);
    const normal = event(age(32), { kind: 'stool', stool: 'normal' });
    expect(restsOn([loose, normal], age(32))).toBe(false);
    const days = weaningDays(litterOf({ ...HEALTHY, until: 40 }, { events: [loose] }), age(31), 5);
    expect(days.map((d) => d.step)).toEqual([1, 1, 1, 1, 2]);
    expect(weaningDay(litterOf({ ...HEALTHY, until: 40 }), age(32)).step).toBe(2);
  });

  it('of one puppy rest that puppy only', () => {
    const events = [event(age(31), { kind: 'stool', stool: 'loose' }, 'puppy-2')];
    const day = weaningDay(litterOf({ ...HEALTHY, until: 33 }, { events }), age(32));
    expect(day.puppies.map((p) => p.holds)).toEqual([false, false, true, false, false, false, false, false]);
  });

  it('crumbly hints at bone, and the hint goes after a normal one', () => {
    const events = [event(age(50), { kind: 'stool', stool: 'crumbly' })];
    const hint = stoolHints(events, age(51))[0];
    expect(hint).toMatchObject({ stool: 'crumbly' });
    expect(hint === undefined ? '' : ENGLISH.weaning.stoolHints[hint.stool]).toContain('too much bone');
    expect(stoolHints([...events, event(age(51), { kind: 'stool', stool: 'normal' })], age(51))).toEqual([]);
    expect(stoolHints(events, age(55))).toEqual([]);
  });

  it('a pause holds until she goes on', () => {
    const events = [event(age(31), { kind: 'pause', paused: true }), event(age(38), { kind: 'pause', paused: false })];
    expect(weaningDays(litterOf({ ...HEALTHY, until: 45 }, { events }), age(31), 10).map((d) => d.step)).toEqual([
      1, 1, 1, 1, 1, 1, 1, 1, 2, 2,
    ]);
  });
});

it('says who holds in one sentence', () => {
  expect(ENGLISH.weaning.hold(0.45, 'dog')).toBe(
    'holds at 45\u00a0% until his gain is back for two days. He nurses first, then comes to the bowl.',
  );
});

function sum(figures: readonly number[]): number {
  return figures.reduce((all, f) => all + f, 0);
}
