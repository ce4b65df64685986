/** Who eats what and when: the meals that the freezer has to be ready for. */

import { z } from 'zod';
import { dateOf, fromLocalMinutes, type LocalTime } from '../calendar/clock.ts';
import { addDays, type CivilDate, dayNumber, daysBetween } from '../calendar/day.ts';
import { DAY_MINUTES } from '../calendar/durations.ts';
import type { Dam } from '../dogs/dam.ts';
import { damDay, damDayInputOf } from '../feeding/dam-day.ts';
import { mealClock } from '../feeding/meals.ts';
import { type HouseRules, type RulesFacts, rulesOn } from '../feeding/rules.ts';
import type { MealName } from '../food/bowls.ts';
import type { FoodCatalogue } from '../food/catalogue.ts';
import { bowlOn, type Feeding, feedingOf, fillBowl } from '../food/rotation.ts';
import { inTheHouse } from '../litter/in-the-house.ts';
import type { Litter, Puppy } from '../litter/litter.ts';
import { dateSchema, idSchema } from '../units/fields.ts';
import { solidShare } from '../weaning/weaning.ts';
import { type OwnWeaningFacts, type WeaningFacts, type WeaningOn, weaningOn } from '../weaning/weaning-input.ts';
import type { Eater } from './pack.ts';

/** One bowl, or the bowls of a whole litter. `who` is what the thaw list calls them; `litterId` is null for a grown dog. */
export const demandSchema = z.strictObject({
  foodId: idSchema,
  day: dateSchema,
  clock: z.string().regex(/^\d\d:\d\d$/),
  grams: z.number().positive(),
  who: z.string(),
  litterId: idSchema.nullable(),
});
export type Demand = z.infer<typeof demandSchema>;

/** The moment of a meal. */
export function mealTime(demand: Pick<Demand, 'day' | 'clock'>): LocalTime {
  return fromLocalMinutes(
    dayNumber(demand.day) * DAY_MINUTES + Number(demand.clock.slice(0, 2)) * 60 + Number(demand.clock.slice(3, 5)),
  );
}

export interface DemandFacts {
  readonly today: CivilDate;
  readonly rules: RulesFacts;
  readonly catalogue: FoodCatalogue;
  readonly feedings: readonly Feeding[];
  readonly eaters: readonly Eater[];
  readonly dams: readonly Dam[];
  /** What the thaw list calls a litter. */
  readonly litterName: (litter: Litter) => string;
  /** At least those that eat in these days, see {@link eatsBetween}. */
  readonly litters: readonly OwnWeaningFacts[];
}

/** Grown puppies that were kept are dogs of the house by then, and are written down as such. */
const GROWN_DAYS = 400;

/** Whether a litter can eat on any of these days, both included: it is born, not grown, and someone is still in the house. */
export function eatsBetween(
  { litter, puppies }: { readonly litter: Litter; readonly puppies: readonly Puppy[] },
  from: CivilDate,
  until: CivilDate,
): boolean {
  const born = dateOf(litter.whelpedAt);
  return until >= born && daysBetween(born, from) <= GROWN_DAYS && puppies.some((p) => inTheHouse(p, from));
}

interface LitterDays {
  readonly facts: WeaningFacts;
  readonly who: string;
  readonly days: readonly WeaningOn[];
}

/** Every meal of every eater on these days, both included: the litters as the prep sheet has them, the dogs, and dams by what they need. */
export function demandOf(facts: DemandFacts, from: CivilDate, until: CivilDate): Demand[] {
  const { rules, eaters: dogs } = facts;
  const litters = facts.litters
    .filter((litter) => eatsBetween(litter, from, until))
    .map((litter): LitterDays => {
      const own = { ...facts, ...litter };
      return { facts: own, who: facts.litterName(litter.litter), days: weaningOn(own, from, until) };
    });
  const houseRules = (day: CivilDate) => rulesOn(rules, null, day).rules;
  const ofEaters = eaterDemand(dogs, houseRules, from, until, (dog, day) => damGrams(facts, dog, day, litters));
  return [...litters.flatMap(litterDemand), ...ofEaters];
}

function litterDemand({ facts, who, days }: LitterDays): Demand[] {
  const { litter, catalogue } = facts;
  const { week } = feedingOf(facts.feedings, litter.id);
  return days.flatMap(({ input, day }) => {
    const eaters = day.puppies.filter((p) => p.grams !== null);
    return day.meals.flatMap(({ name, grams }): Demand[] => {
      if (grams <= 0) return [];
      // Until they are weaned the mash is made of one food; then the bowls of the week begin.
      const bowl = day.weaned ? bowlOn(week, day.day, name) : null;
      return fillBowl(bowl, grams, eaters.length, catalogue, input.food, input.unit)
        .filter((part) => part.grams > 0)
        .map((part) => ({
          foodId: part.food.id,
          day: day.day,
          clock: mealClock(input.rules, name, day.meals.length),
          grams: part.grams,
          who,
          litterId: litter.id,
        }));
    });
  });
}

/** What a dam needs on a day, in grams of the food she has here; null where her fixed amount holds. */
function damGrams({ dams, catalogue }: DemandFacts, eater: Eater, day: CivilDate, litters: readonly LitterDays[]): number | null {
  const dam = eater.damId === null ? undefined : dams.find((d) => d.id === eater.damId);
  const food = catalogue.find(eater.foodId);
  if (dam === undefined || food === null) return null;
  const own = litters.find((l) => l.facts.litter.id === dam.fields.litterId);
  if (dam.fields.litterId !== null && own === undefined) return null;
  const fed = own?.days.find((d) => d.day.day === day);
  const input = damDayInputOf(
    {
      dam: { ...dam, fields: { ...dam.fields, foodKcalPer100g: food.kcalPer100g } },
      nursed: own === undefined ? null : { ...own.facts, solids: fed === undefined ? 0 : solidShare(fed.day) },
    },
    day,
  );
  if (input === null) return null;
  const need = damDay(input);
  return need.phase === 'before' || need.phase === 'dry' ? null : need.foodGrams;
}

const BY_COUNT: readonly (readonly MealName[])[] = [
  [],
  ['evening'],
  ['morning', 'evening'],
  ['morning', 'midday', 'evening'],
  ['morning', 'midday', 'afternoon', 'evening'],
];

/**
 * The meals of the dogs of the house; both days are included. `amountOn` answers grams for a day where they follow something (a dam's need); where
 * it answers null the dog's own fixed amount holds.
 */
export function eaterDemand(
  eaters: readonly Eater[],
  rulesOf: (day: CivilDate) => Pick<HouseRules, 'mealTimes'>,
  from: CivilDate,
  until: CivilDate,
  amountOn: (eater: Eater, day: CivilDate) => number | null = () => null,
): Demand[] {
  const demand: Demand[] = [];
  for (const eater of eaters) {
    const meals = BY_COUNT[eater.meals] ?? [];
    for (let day = from > eater.fromDay ? from : eater.fromDay; day <= until; day = addDays(day, 1)) {
      if (eater.untilDay !== null && day > eater.untilDay) break;
      const rules = rulesOf(day);
      const grams = (amountOn(eater, day) ?? eater.gramsADay) / meals.length;
      for (const meal of meals) {
        demand.push({
          foodId: eater.foodId,
          day,
          clock: mealClock(rules, meal, meals.length),
          grams,
          who: eater.name,
          litterId: null,
        });
      }
    }
  }
  return demand;
}
