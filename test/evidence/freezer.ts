/** Thawing, keeping and freezing against parasites, against published times. Each row goes through what the program itself plans and says. */

import { localTime } from '../../core/calendar/clock.ts';
import { date } from '../../core/calendar/day.ts';
import { OFFICIAL_KEEPING, thawHours } from '../../core/feeding/keeping.ts';
import { DEFAULT_RULES } from '../../core/feeding/rules.ts';
import { portionGrams } from '../../core/food/portion.ts';
import { daysNeeded, freezingFor, porkDaysLeft } from '../../core/freezer/parasites.ts';
import { coldWaterHours, thawClock } from '../../core/freezer/thawing.ts';
import type { Known } from '../../core/reference/feeding/known.ts';
import { FREEZER_C, QUALITY_MONTHS, REFRIGERATOR_C, WHOLE_CUTS_KEEP } from '../../core/reference/freezer/keeping.ts';
import { type MeatKind, PORK_RULE } from '../../core/reference/freezer/parasites.ts';
import { GRAMS_PER_POUND, toGrams } from '../../core/units/mass.ts';
import { type EvidenceRow, row } from './row.ts';

const FSIS = 'USDA Food Safety and Inspection Service, The Big Thaw';
const CFR = '9 CFR 318.10 (since reserved); JAMA 1954;155:1394';
const clock = (way: 'refrigerator' | 'cold-water' | 'counter', kg: number, rules = DEFAULT_RULES) =>
  thawClock(rules, way, localTime('2026-11-26T18:00'), kg);

/** Days at a temperature for the n-th line of the table of that meat. */
function days({ meat, line, celsius }: { meat: MeatKind; line: number; celsius: readonly number[] }): (number | null)[] {
  const found = freezingFor(meat)[line];
  return celsius.map((c) => (found === undefined ? null : daysNeeded(found, c)));
}

/** Days at -20 °C for each line of the table of that meat that is known so. */
function coldDays(meat: MeatKind, known: Known): (number | null)[] {
  return freezingFor(meat)
    .filter((line) => line.known === known)
    .map((line) => daysNeeded(line, -20));
}

export const freezerRows: readonly EvidenceRow[] = [
  row({
    id: 'freezer 5.1 temperatures',
    quantity: 'refrigerator and freezer, °C',
    inputs: 0,
    expected: [4, -18],
    tolerance: 0.5,
    source: 'FoodSafety.gov: 40 °F (4.4 °C) or colder, 0 °F (-17.8 °C); Food Standards Scotland: 0 to 5 °C',
    known: 'second-hand',
    run: () => [REFRIGERATOR_C.value, FREEZER_C.value],
  }),
  row({
    id: 'freezer 5.1 thaw',
    quantity: 'hours in the refrigerator for 4 to 5 lb, and for 10 lb',
    inputs: [4, 5, 10],
    expected: [24, 24, 48],
    tolerance: 1,
    source: `${FSIS}: 24 hours for each 4 to 5 lb`,
    known: 'second-hand',
    run: (pounds) => pounds.map((lb) => thawHours((lb * GRAMS_PER_POUND) / 1000)),
  }),
  row({
    id: 'freezer 5.1 pound',
    quantity: 'a 1 lb pack of mince is ready a full day after 18:00',
    inputs: 0.454,
    expected: '2026-11-27T18:00',
    tolerance: 'exact',
    source: `${FSIS}: a 1-lb pack of ground meat takes about a full day`,
    known: 'second-hand',
    run: (kg) => clock('refrigerator', kg).ready,
  }),
  row({
    id: 'freezer 5.1 cold water',
    quantity: 'hours in cold water for 1, 3, 4 and 20 lb, upper ends',
    inputs: [1, 3, 4, 20],
    expected: [1, 2.5, 3, 10],
    tolerance: 0.5,
    source: `${FSIS}: 1 lb within an hour, 3 to 4 lb 2 to 3 hours, large birds 30 minutes a pound`,
    known: 'seen',
    run: (pounds) => pounds.map((lb) => coldWaterHours((lb * GRAMS_PER_POUND) / 1000)),
  }),
  row({
    id: 'freezer 5.1 counter',
    quantity: 'taken out at 18:00 onto the counter: fed or thrown away by',
    inputs: 0.454,
    expected: '2026-11-26T20:00',
    tolerance: 'exact',
    source: `${FSIS}: never on the counter; discard after 2 hours above 40 °F`,
    known: 'second-hand',
    run: (kg) => clock('counter', kg).useBy,
  }),
  row({
    id: 'freezer 5.1 mince UK',
    quantity: 'thawed in the refrigerator from 18:00: used by, official',
    inputs: 'uk-ie' as const,
    expected: '2026-11-28T18:00',
    tolerance: 'exact',
    source: 'Food Standards Agency (UK): within 24 hours of thawing',
    known: 'second-hand',
    run: (officialKeeping) => clock('refrigerator', 0.5, { ...DEFAULT_RULES, officialKeeping }).officialUseBy,
  }),
  row({
    id: 'freezer 5.1 mince US',
    quantity: 'the same for the US',
    inputs: 'us' as const,
    expected: '2026-11-29T18:00',
    tolerance: 'exact',
    source: 'USDA Food Safety and Inspection Service: ground meat, stew meat, poultry, offal 1 to 2 days',
    known: 'second-hand',
    run: (officialKeeping) => clock('refrigerator', 0.5, { ...DEFAULT_RULES, officialKeeping }).officialUseBy,
  }),
  row({
    id: 'freezer 5.1 official stays',
    quantity: 'a house rule of 3 days does not move the official time',
    inputs: 72,
    expected: ['2026-11-30T18:00', '2026-11-28T18:00'],
    tolerance: 'exact',
    source: 'Food Standards Agency (UK): within 24 hours of thawing',
    known: 'second-hand',
    run: (keepHours) => {
      const { useBy, officialUseBy } = clock('refrigerator', 0.5, { ...DEFAULT_RULES, keepHours });
      return [useBy, officialUseBy];
    },
  }),
  row({
    id: 'freezer 5.1 whole cuts',
    quantity: 'roasts, steaks, chops after thawing: hours; mince at most, US',
    inputs: 0,
    expected: [72, 120, 48],
    tolerance: 0,
    source: 'USDA Food Safety and Inspection Service: 3 to 5 days; ground 1 to 2 days',
    known: 'second-hand',
    run: () => [WHOLE_CUTS_KEEP.value.low, WHOLE_CUTS_KEEP.value.high, OFFICIAL_KEEPING.us.hours],
  }),
  row({
    id: 'freezer 5.1 quality',
    quantity: 'months of quality in the freezer: mince, pieces, whole bird',
    inputs: 0,
    expected: [4, 9, 12],
    tolerance: 0,
    source: 'FoodSafety.gov, cold food storage chart',
    known: 'second-hand',
    run: () => [QUALITY_MONTHS.value.mince, QUALITY_MONTHS.value.pieces, QUALITY_MONTHS.value.wholeBird],
  }),
  row({
    id: 'freezer 5.3 pork thin',
    quantity: 'Trichinella, pork to 6 in: days at -14, -15, -23, -29 °C',
    inputs: { meat: 'pork' as const, line: 0, celsius: [-14, -15, -23, -29] },
    expected: [null, 20, 10, 6],
    tolerance: 0,
    source: CFR,
    known: 'seen',
    run: days,
  }),
  row({
    id: 'freezer 5.3 pork thick',
    quantity: 'Trichinella, pork 6 to 27 in: days at -15, -23, -29 °C',
    inputs: { meat: 'pork' as const, line: 1, celsius: [-15, -23, -29] },
    expected: [30, 20, 12],
    tolerance: 0,
    source: CFR,
    known: 'seen',
    run: days,
  }),
  row({
    id: 'freezer 5.3 game',
    quantity: 'Trichinella in game: no freezing is accepted, however cold',
    inputs: { meat: 'game' as const, line: 0, celsius: [-18, -40] },
    expected: [null, null],
    tolerance: 'exact',
    source: 'International Commission on Trichinellosis 2019, Food and Waterborne Parasitology 14:e00041',
    known: 'seen',
    run: days,
  }),
  row({
    id: 'freezer 5.3 fish',
    quantity: 'fish: days at -20 °C, and at -18 °C',
    inputs: { meat: 'fish' as const, line: 0, celsius: [-20, -18] },
    expected: [7, null],
    tolerance: 0,
    source: 'FDA Food Code, parasite destruction',
    known: 'second-hand',
    run: days,
  }),
  row({
    id: 'freezer 5.3 red meat',
    quantity: 'Toxoplasma, Taenia: days at -20 °C',
    inputs: 'red' as const,
    expected: [2, 10],
    tolerance: 0,
    source: 'advice on Toxoplasma; EFSA Panel on Biological Hazards',
    known: 'second-hand',
    run: (meat) => coldDays(meat, 'second-hand'),
  }),
  row({
    id: 'freezer 5.3 red meat, from memory',
    quantity: 'Neospora and Sarcocystis: days at -20 °C',
    inputs: 'red' as const,
    expected: [2],
    tolerance: 0,
    source: 'reviews',
    known: 'from memory',
    run: (meat) => coldDays(meat, 'from memory'),
  }),
  row({
    id: 'freezer 5.3 plain rule',
    quantity: 'pork frozen on 1 November at -18 °C: days to go on the 15th, 22nd; the rule covers the 20 days at -15 °C',
    inputs: ['2026-11-15', '2026-11-22'],
    expected: [7, 0, true],
    tolerance: 0,
    source: `Computed with a day to spare from ${CFR}`,
    known: 'computed',
    run: (on) => [
      ...on.map((d) => porkDaysLeft(date('2026-11-01'), date(d))),
      PORK_RULE.days >= (days({ meat: 'pork', line: 0, celsius: [PORK_RULE.celsius] })[0] ?? Number.POSITIVE_INFINITY),
    ],
  }),
  row({
    id: 'trade 8 portions',
    quantity: 'a solid pound cut in four, and an eighth of a pound, in grams',
    inputs: [4, 8],
    expected: [113.4, 56.7],
    tolerance: 0.1,
    source: 'common practice, no source',
    known: 'common practice',
    run: (portions) => portions.map((n) => portionGrams({ grams: toGrams(GRAMS_PER_POUND), portions: n })),
  }),
];
