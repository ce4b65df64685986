/** Dam, milk, hand-rearing, weaning and gestation, against published figures. */
import { addDays, date, daysBetween } from '../../core/calendar/day.ts';
import { dueWindows, type HeatDates } from '../../core/dogs/gestation.ts';
import {
  gestationEnergy,
  lactationEnergy,
  lactationRange,
  lactationShortcut,
  litterOfDam,
  milkYield,
  waterMl,
} from '../../core/feeding/dam-day.ts';
import { restingEnergy } from '../../core/feeding/energy.ts';
import { DEFAULT_RULES } from '../../core/feeding/rules.ts';
import { earliestGoHome } from '../../core/homing/go-home-day.ts';
import { HAND_REARING, LACTATION_SHORTCUT } from '../../core/reference/feeding/nursing.ts';
import { GO_HOME_RULES } from '../../core/reference/go-home.ts';
import { GRAMS_PER_OUNCE } from '../../core/units/mass.ts';
import { feedLimit, feedsFor, handbookFeeds, milkGrossEnergy, neonateNeed, topUp } from '../../core/weaning/hand-rearing.ts';
import { curveOn } from '../../core/weaning/weaning-findings.ts';
import { stepOnPlanDay, usualPlan } from '../../core/weaning/weaning-plan.ts';
import { type EvidenceRow, row } from './row.ts';

const NRC = 'National Research Council 2006, Nutrient Requirements of Dogs and Cats, lactation and gestation';
const SACN = 'Hand et al. 2010, Small Animal Clinical Nutrition, 5th edition';
const ORPHANS = 'a canine breeding handbook, chapter on orphans';
const HANDBOOK = 'Dog Owner’s Home Veterinary Handbook, p. 499';
const OFTEDAL = 'Oftedal 1984, J Nutr 114:803';
const CURVE = 'planning curve inferred from guidance by age (Hand et al. 2010, tables 16-6 and 17-3)';

const NONE: HeatDates = { lh: null, ovulation: null, dioestrus: null, firstMating: null, lastMating: null };
const heat = date('2026-03-01');
const born = date('2026-01-01');

function window(dates: HeatDates): number[] {
  const w = dueWindows(dates)[0];
  return w === undefined ? [] : [w.due, w.low, w.high].map((d) => daysBetween(heat, d));
}

export const nursingRows: readonly EvidenceRow[] = [
  row({
    id: 'feeding 14',
    quantity: 'lactation, 22.7 kg, 6 puppies, week 3, kcal',
    inputs: [22.7, 6, 3],
    expected: 4504,
    tolerance: 3,
    source: NRC,
    known: 'computed',
    run: ([kg, n, w]) => lactationEnergy(kg, n, w),
  }),
  row({
    id: 'feeding 15',
    quantity: 'lactation, 20 kg, 8 puppies, week 4, kcal',
    inputs: [20, 8, 4],
    expected: 4827,
    tolerance: 3,
    source: NRC,
    known: 'computed',
    run: ([kg, n, w]) => lactationEnergy(kg, n, w),
  }),
  row({
    id: 'feeding 16',
    quantity: 'lactation counts no more than 8 puppies: 35 kg, 10 and 8, week 4',
    inputs: [10, 8],
    expected: [8135, 8135],
    tolerance: 3,
    source: NRC,
    known: 'computed',
    run: (n) => n.map((x) => lactationEnergy(35, x, 4)),
  }),
  row({
    id: 'feeding lactation grid',
    quantity: 'lactation: 20 kg 3 puppies week 1; 20 kg 6 week 3; 30 kg 8 week 4',
    inputs: [
      [20, 3, 1],
      [20, 6, 3],
      [30, 8, 4],
    ],
    expected: [2451, 4011, 7043],
    tolerance: 3,
    source: NRC,
    known: 'computed',
    run: (all) => all.map(([kg, n, w]) => lactationEnergy(kg, n, w)),
  }),
  row({
    id: 'feeding 17',
    quantity: 'textbook case: 65 kg, 11 puppies, 1.9 × resting and a quarter of it each, kcal',
    inputs: [65, 11],
    expected: 11_250,
    tolerance: 11_250 * 0.015,
    source: `${SACN}, case p. 294 (the book rounds 3045 to 3000 first)`,
    known: 'seen',
    run: ([kg, n]) => lactationShortcut(kg, n, LACTATION_SHORTCUT.inCase),
  }),
  row({
    id: 'feeding 17b',
    quantity: 'the same case: her own part, about 3000 kcal, and 8250 for the puppies',
    inputs: 65,
    expected: [3045, 8374],
    tolerance: 130,
    source: `${SACN}, case p. 294: 3000 and 8250 after rounding`,
    known: 'computed',
    run: (kg) => [lactationShortcut(kg, 0, 1.9), lactationShortcut(kg, 11, 1.9) - lactationShortcut(kg, 0, 1.9)],
  }),
  row({
    id: 'feeding 17c',
    quantity: 'the same case: short by, when 9180 and 240 kcal are fed',
    inputs: [9180, 240],
    expected: 1830,
    tolerance: 11_250 * 0.015,
    source: `${SACN}, case p. 294`,
    known: 'seen',
    run: ([food, more]) => lactationShortcut(65, 11, 1.9) - food - more,
  }),
  row({
    id: 'feeding 18',
    quantity: 'late gestation, 20 kg, kcal',
    inputs: 20,
    expected: 1749,
    tolerance: 1,
    source: NRC,
    known: 'computed',
    run: (kg) => gestationEnergy(kg, true),
  }),
  row({
    id: 'feeding 18b',
    quantity: 'late gestation, 10 and 30 kg; by FEDIAF 10, 20, 30 kg',
    inputs: [10, 20, 30],
    expected: [991, 2446, 1002, 1768, 2472],
    tolerance: 1,
    source: `${NRC}; FEDIAF guidelines, annex`,
    known: 'computed',
    run: (kg) => [
      gestationEnergy(kg[0], true),
      gestationEnergy(kg[2], true),
      ...kg.map((x) => gestationEnergy(x, true, 'fediaf')),
    ],
  }),
  row({
    id: 'feeding E15',
    quantity: 'gestation by NRC beside 1.8-2.0 and 2.2-3.5 × resting, 20 kg: inside',
    inputs: 20,
    expected: [true, true],
    tolerance: 'exact',
    source: `${SACN}, table 15-10`,
    known: 'seen',
    run: (kg) => {
      const times = (late: boolean) => gestationEnergy(kg, late) / restingEnergy(kg);
      return [times(false) >= 1.8 && times(false) <= 2, times(true) >= 2.2 && times(true) <= 3.5];
    },
  }),
  row({
    id: 'feeding E18',
    quantity:
      'lactation by NRC in week 3 beside 3, 3.5, 4 and 4-8 × resting, 20 kg, 1, 2, 3, 8 puppies: within a fifth (for 4 they differ by a third)',
    inputs: [1, 2, 3, 8],
    expected: [true, true, true, true],
    tolerance: 'exact',
    source: `${SACN}, tables 5-2 and 15-10`,
    known: 'seen',
    run: (n) =>
      n.map((x) => {
        const { low, high } = lactationRange(20, x);
        const got = lactationEnergy(20, x, 3);
        return got >= 0.8 * low && got <= 1.2 * high;
      }),
  }),
  row({
    id: 'feeding E20',
    quantity: 'water of a 35 kg dam with a large litter at the peak: 5 to 6 L are inside a mL a kcal of the textbook range',
    inputs: [5, 6],
    expected: [true, true],
    tolerance: 'exact',
    source: `${SACN}: a 35 kg bitch drinks 5 to 6 L a day at the peak`,
    known: 'seen',
    run: (litres) => {
      const { low, high } = lactationRange(35, 8);
      return litres.map((l) => waterMl(low) <= l * 1000 && l * 1000 <= waterMl(high));
    },
  }),
  row({
    id: 'feeding 19',
    quantity: 'milk in all and at the peak, 30 kg, 8 puppies, litres',
    inputs: [30, 8],
    expected: [72, 2.88],
    tolerance: 0.05,
    source: `${SACN}, table 15-8`,
    known: 'seen',
    run: ([kg, n]) => Object.values(milkYield(kg, n)),
  }),
  row({
    id: 'feeding 20',
    quantity: 'milk in all and at the peak, 20 kg, 6 puppies, litres',
    inputs: [20, 6],
    expected: [40, 1.6],
    tolerance: 0.05,
    source: `${SACN}, table 15-8`,
    known: 'computed',
    run: ([kg, n]) => Object.values(milkYield(kg, n)),
  }),
  row({
    id: 'feeding 21',
    quantity: 'newborn of 400 g: kcal a day, most mL a feed',
    inputs: 400,
    expected: [100, 16],
    tolerance: 0,
    source: 'National Research Council 2006: 25 kcal in 100 g; stomach 4 mL in 100 g',
    known: 'computed',
    run: (g) => [neonateNeed(g), feedLimit(g)],
  }),
  row({
    id: 'feeding 22',
    quantity: '8 oz, 7 kcal an ounce, 0.75 kcal in a mL, 8 feeds: kcal, mL a day before the cap, mL a feed',
    inputs: 8,
    expected: [56, 74.5, 9],
    tolerance: 1,
    source: ORPHANS,
    known: 'second-hand',
    run: (oz) => {
      const feeds = feedsFor(oz * GRAMS_PER_OUNCE, 7 * oz, 0.75, 8);
      return [feeds.kcal, feeds.kcal / 0.75, feeds.feedMl];
    },
  }),
  row({
    id: 'feeding 22b',
    quantity: 'the same: the stomach holds mL',
    inputs: 8,
    expected: 9,
    tolerance: 0.1,
    source: ORPHANS,
    known: 'second-hand',
    run: (oz) => feedLimit(oz * GRAMS_PER_OUNCE),
  }),
  row({
    id: 'feeding 23',
    quantity: '227 g in week 1: kcal a day, mL a feed of six',
    inputs: 227,
    expected: [30, 5],
    tolerance: 0.1,
    source: HANDBOOK,
    known: 'seen',
    run: (g) => {
      const { kcal, feedMl } = handbookFeeds(HAND_REARING.B, g, 0, 1);
      return [kcal, feedMl];
    },
  }),
  row({
    id: 'feeding 23b',
    quantity: '454 g at 60 kcal in a pound, four feeds: mL a day, mL a feed',
    inputs: 454,
    expected: [60, 15],
    tolerance: 0.1,
    source: HANDBOOK,
    known: 'seen',
    run: (g) => {
      const { dayMl, feedMl } = feedsFor(g, (60 * g) / 453.59237, 1, 4);
      return [dayMl, feedMl];
    },
  }),
  row({
    id: 'feeding X14',
    quantity: 'no feed of a top-up is over 4 mL in 100 g, day 0 to 27, 100 to 900 g',
    inputs: [100, 250, 400, 900],
    expected: true,
    tolerance: 'exact',
    source: `${ORPHANS}: 18 mL in a pound`,
    known: 'second-hand',
    run: (all) =>
      all.every((g) =>
        Array.from({ length: 28 }, (_, d) => topUp(g, d, 0.75)).every((t) => t !== null && t.feedMl.high <= g * 0.04),
      ),
  }),
  row({
    id: 'feeding 24',
    quantity: 'gross energy of 160 g of milk, kcal',
    inputs: 160,
    expected: 233.6,
    tolerance: 0.5,
    source: OFTEDAL,
    known: 'computed',
    run: (g) => milkGrossEnergy(g),
  }),
  row({
    id: 'feeding birth weight',
    quantity: 'a litter of 2.6 kg of a dam of 20 kg: usual; 2 kg under, 3 kg over',
    inputs: [2600, 2000, 3000],
    expected: ['usual', 'under', 'over'],
    tolerance: 'exact',
    source: `${SACN}, box 16-3: 12 to 14 %`,
    known: 'seen',
    run: (g) => g.map((x) => litterOfDam(x, 20_000).is),
  }),
  row({
    id: 'feeding 40',
    quantity: 'first day to leave, born on day 0: England, Germany, Austria, France',
    inputs: 0,
    expected: [56, 57, 57, 57],
    tolerance: 0,
    source: 'SI 2018/486 Sch. 6 (draft text, not under 8 weeks); TierSchHuV, Austria, Code rural L214-8 (over 8 weeks)',
    known: 'second-hand',
    run: () => GO_HOME_RULES.map((r) => daysBetween(born, earliestGoHome(born, r))),
  }),
  row({
    id: 'feeding weaning curve',
    quantity: 'share from the bowl in the middle of week 3 to 8: inside the planning curve',
    inputs: [3, 4, 5, 6, 7, 8],
    expected: [true, true, true, true, true, true],
    tolerance: 'exact',
    source: CURVE,
    known: 'computed',
    run: (weeks) =>
      weeks.map((w) => {
        const plan = usualPlan(born, addDays(born, 21));
        const share = plan.steps[stepOnPlanDay(plan.steps, 7 * w + 3 - 21)]?.share ?? 0;
        const curve = curveOn(born, addDays(born, 7 * w + 3));
        return curve !== null && share >= curve.low && share <= curve.high;
      }),
  }),
  row({
    id: 'feeding X10',
    quantity: 'minutes until the bowl is lifted: house rule, weaning plan',
    inputs: 0,
    expected: [10, 20],
    tolerance: 0,
    source: 'common practice, no source (10); a home veterinary handbook (20, second-hand)',
    known: 'second-hand',
    run: () => [DEFAULT_RULES.liftAfterMinutes, usualPlan(born, addDays(born, 21)).liftMinutes],
  }),
  row({
    id: 'growth 48',
    quantity: 'due from LH peak, ovulation, first day of dioestrus: days to the middle, first, last',
    inputs: { lh: heat, ovulation: heat, dioestrus: heat },
    expected: [65, 64, 66, 63, 61, 65, 57, 54, 60],
    tolerance: 0,
    source: 'Kutzler et al. 2003, Theriogenology 60:1187; Mir et al. 2011, Reprod Domest Anim; Eilts et al. 2005, Theriogenology',
    known: 'seen',
    run: (d) => [
      ...window({ ...NONE, lh: d.lh }),
      ...window({ ...NONE, ovulation: d.ovulation }),
      ...window({ ...NONE, dioestrus: d.dioestrus }),
    ],
  }),
  row({
    id: 'growth 48b',
    quantity: 'due from one mating: days to the middle, first, last',
    inputs: heat,
    expected: [61, 58, 65],
    tolerance: 0,
    source: 'Okkens et al. 2001',
    known: 'seen',
    run: (d) => window({ ...NONE, firstMating: d }),
  }),
  row({
    id: 'growth 48c',
    quantity: 'due from matings on two days: first and last day',
    inputs: [heat, addDays(heat, 2)],
    expected: [55, 70],
    tolerance: 0,
    source: 'Concannon, canine pregnancy: 55 to 68 days from any mating (second-hand)',
    known: 'second-hand',
    run: ([a, b]) => window({ ...NONE, firstMating: a, lastMating: b }).slice(1),
  }),
];
