/** Growth, against published numbers. Row numbers are those of the project's check table. */
import { fromLocalMinutes, localMinutes, localTime } from '../../core/calendar/clock.ts';
import { growthEnergyKlein, growthEnergyNrc } from '../../core/feeding/energy.ts';
import { assessLitter } from '../../core/growth/assess.ts';
import { birthClass, breedBirthWeight, deathsToDay21, twoThirds, veryLowBelow } from '../../core/growth/birth-class.ts';
import { fastestGrowth, gompertz, gompertzPeakGain, logistic, logisticScale, scaledRate } from '../../core/growth/curves.ts';
import { firstDaysGrowth, firstDaysLevel, isUnderBirth } from '../../core/growth/first-days.ts';
import { classOfAdult, forecastWeight } from '../../core/growth/forecast.ts';
import { roundedDifferencePercent, tooCoarse } from '../../core/growth/noise.ts';
import { referenceGain } from '../../core/growth/reference-gain.ts';
import { gainsOf, type SeriesPoint, seriesOf } from '../../core/growth/series.ts';
import { BREED_BIRTH_WEIGHTS } from '../../core/reference/growth/birth-weight.ts';
import { BEAGLE, GREAT_DANE, GROWTH_CURVES, LABRADOR, POSADA_LARGE, POSADA_SMALL } from '../../core/reference/growth/curves.ts';
import { mad, median } from '../../core/statistics/median.ts';
import R from '../fixtures/r/growth.json' with { type: 'json' };
import { TYHURST, tyhurst } from '../fixtures/tyhurst-litter.ts';
import { WILSON } from '../fixtures/wilson-dog.ts';
import { random } from '../growth-sim/random.ts';
import { cusum, ewma, ewmaLimit, plainZ } from '../growth-sim/rules.ts';
import { type EvidenceRow, row } from './row.ts';

const MUGNIER = 'Mugnier et al 2020, BMC Vet Res 16, tables 1 and 2';
const MILA = 'Mila et al 2015, J Anim Sci, doi 10.2527/jas.2015-8971, as quoted in Alves 2020';
const HANDBOOK = "Dog Owner's Home Veterinary Handbook, pp 489-493 (practice, no study)";
const ALVES = 'Alves 2020, Vet Med Sci, doi 10.1002/vms3.322';
const SACN = 'Small Animal Clinical Nutrition, 5th edition, table 16-1, p 297';
const POSADA = 'Posada, Gomez, Rosero 2014, Rev MVZ Córdoba: x0 and T99';
const LEWIS = 'Lewis, Emmans 2020, J Anim Sci 98:skaa087, table 1';
const HELMINK = 'Helmink, Shanks, Leighton 2000, J Anim Sci 78:27-32';
const MENCHETTI = 'Menchetti et al 2020, Ital J Anim Sci 19:792';
const MONTGOMERY =
  'Montgomery, Introduction to Statistical Quality Control, the example of 30 values, from memory; limits by the NIST handbook 6.3.2.4';
const TYHURST_SOURCE = 'J. Tyhurst, codesamplerr, inst/weights-2019 (MIT)';
const GAUSS = 'Computed in R 4.2.2 (stats::mad, median); definition of Iglewicz and Hoaglin 1993';

const MONTH = 30.4375;

function breed(name: string) {
  const found = breedBirthWeight(name);
  if (found === null) throw new RangeError(`${name} is not in the table`);
  return found;
}

/** The published very-low threshold as a share of the published mean. */
function ownRatio(name: string): number {
  const row = breed(name);
  return row.veryLowBelow / row.mean;
}

function classes(name: string, grams: readonly number[]): string[] {
  return grams.map((g) => birthClass(breed(name), g));
}

/** Two weights so many days apart, as a series. */
function pair(from: number, to: number, days: number): SeriesPoint[] {
  const start = localMinutes(localTime('2026-03-02T07:00'));
  return [0, days].map((d, i) => ({
    instant: d * 86_400_000,
    at: fromLocalMinutes(start + Math.round(d * 1440)),
    ageDays: d,
    grams: i === 0 ? from : to,
    readingId: `r${i}`,
  }));
}

/** Whole ounces kept as tenths of a gram: twice a weight may end a tenth beside it. */
const ROUNDED = 0.2;

/** Days of life at which each puppy first weighed so many times its first weight, in the series the program shows. */
function daysOfMultiple(multiple: number): number[] {
  const input = tyhurst();
  return TYHURST.names.map((name) => {
    const own = seriesOf(input, name);
    return Math.floor(own.find((p) => p.grams + ROUNDED >= multiple * (own[0]?.grams ?? 0))?.ageDays ?? Number.NaN);
  });
}

/** Weeks by tenths. */
const TENTHS = Array.from({ length: 800 }, (_, i) => i / 10);

/** Weeks at which the forecast of a puppy that weighs what its class curve says at nine weeks comes to half its adult weight. */
function weeksToHalf(adultKg: number): number {
  const sizeClass = classOfAdult(adultKg);
  const anchorGrams = 1000 * adultKg * logistic(9, GROWTH_CURVES[sizeClass]);
  const forecast = forecastWeight({ adultKg, sizeClass, anchorAgeDays: 63, anchorGrams });
  for (let day = 63; day < 400; day += 1) if ((forecast.at(day)?.mid ?? 0) >= 500 * adultKg) return day / 7;
  return Number.NaN;
}

const GREAT_DANE_SHARE = (day: number) => gompertz(day, GREAT_DANE.fastestDay, 1 / GREAT_DANE.ratePerDay);
const LABRADOR_SHARE = (day: number) => gompertz(day, LABRADOR.fastestDay, LABRADOR.scaleDays);

/** A dog on a published curve: its weights each week to day 500, told from thirteen of its days; how many of them lie outside the band. */
function outsideForecast(dog: { adultKg: number; sizeClass: 'large' | 'giant'; share: (day: number) => number }): number[] {
  const { adultKg, sizeClass, share } = dog;
  const inside: boolean[] = [];
  for (const from of [3, 7, 14, 21, 28, 35, 42, 49, 56, 70, 84, 112, 140]) {
    const forecast = forecastWeight({ adultKg, sizeClass, anchorAgeDays: from, anchorGrams: 1000 * adultKg * share(from) });
    for (let day = from + 7; day <= 500; day += 7) {
      const band = forecast.at(day);
      const grams = 1000 * adultKg * share(day);
      inside.push(band !== null && band.low <= grams && grams <= band.high);
    }
  }
  return [inside.length, inside.filter((is) => !is).length];
}

/** Montgomery's thirty values. */
const THIRTY = [
  9.45, 7.99, 9.29, 11.66, 12.16, 10.18, 8.04, 11.46, 9.2, 10.34, 9.03, 11.47, 10.51, 9.4, 10.08, 9.37, 10.62, 10.31, 8.52, 10.84,
  10.9, 9.33, 12.29, 11.5, 10.6, 11.08, 10.38, 11.62, 11.31, 10.52,
] as const;

interface Chicks {
  readonly chicks: readonly number[];
  readonly grams: readonly number[];
  readonly of: number;
}

/** Distance from the median in scaled median distances, of logs. */
function robustZ({ chicks, grams, of }: Chicks): number {
  const logs = grams.map(Math.log);
  const own = logs[chicks.indexOf(of)] ?? Number.NaN;
  return (own - median(logs)) / (1.4826 * mad(logs));
}

/** Mean number of normal values until the first alarm; `alarm` gives its place in a list, or -1. */
function runLength(runs: number, alarm: (values: readonly number[]) => number): number {
  const r = random(39);
  let sum = 0;
  for (let run = 0; run < runs; run += 1) {
    const values: number[] = [];
    let at = -1;
    while (at < 0) {
      for (let i = 0; i < 1000; i += 1) values.push(r.normal(1));
      at = alarm(values);
    }
    sum += at + 1;
  }
  return sum / runs;
}

export const growthRows: readonly EvidenceRow[] = [
  row({
    id: 'growth 1',
    quantity: 'birth class, German Shepherd',
    inputs: [482, 454, 337],
    expected: ['normal', 'low', 'very-low'],
    tolerance: 'exact',
    source: MUGNIER,
    known: 'seen',
    run: (g) => classes('German Shepherd', g),
  }),
  row({
    id: 'growth 2',
    quantity: 'birth class, Labrador Retriever',
    inputs: [406, 405, 248, 247],
    expected: ['normal', 'low', 'low', 'very-low'],
    tolerance: 'exact',
    source: MUGNIER,
    known: 'seen',
    run: (g) => classes('labrador  retriever', g),
  }),
  row({
    id: 'growth 3',
    quantity: 'birth class, Maltese 115 g and Bichon Frise 164 g',
    inputs: { maltese: 115, bichon: 164 },
    expected: ['very-low', 'low'],
    tolerance: 'exact',
    source: MUGNIER,
    known: 'seen',
    run: (i) => [...classes('Maltese', [i.maltese]), ...classes('Bichon Frisé', [i.bichon])],
  }),
  row({
    id: 'growth 4',
    quantity: 'deaths to day 21 by birth class, all breeds, percent',
    inputs: ['normal', 'low', 'very-low'],
    expected: [4.2, 8.9, 55.3],
    tolerance: 0.1,
    source: MUGNIER,
    known: 'seen',
    run: (c) => c.map((x) => deathsToDay21(x, null)),
  }),
  row({
    id: 'growth 4b',
    quantity: 'very-low threshold over the mean of the breed, ten breeds: median, least, most',
    inputs: BREED_BIRTH_WEIGHTS.map((b) => b.breed),
    expected: [0.6647, 0.4496, 0.9078],
    tolerance: 0.0001,
    source: `${MUGNIER}; ratios computed by hand`,
    known: 'computed',
    run: (names) => {
      const ratios = names.map(ownRatio);
      return [median(ratios), Math.min(...ratios), Math.max(...ratios)];
    },
  }),
  row({
    id: 'growth 4c',
    quantity:
      'two thirds of the mean, grams, beside the own thresholds 115.5, 248 and 177.5 of Maltese, Labrador and Golden Retriever',
    inputs: ['Maltese', 'Labrador Retriever', 'Golden Retriever'],
    expected: [107.9, 273.3, 263.2],
    tolerance: 0.05,
    source: `${MUGNIER}: means 161.9, 409.9, 394.8; two thirds is a synthesis of ours`,
    known: 'computed',
    run: (names) => names.map((name) => twoThirds(breed(name).mean)),
  }),
  row({
    id: 'growth 4d',
    quantity: 'the rule of thumb never stands in for the own threshold of a listed breed, whatever was written as usual',
    inputs: ['Maltese', 'Labrador Retriever', 'Golden Retriever'],
    expected: [115.5, 248, 177.5],
    tolerance: 0,
    source: MUGNIER,
    known: 'seen',
    run: (names) => names.map((name) => veryLowBelow(name, 600)?.below ?? Number.NaN),
  }),
  row({
    id: 'growth 4e',
    quantity: 'Toy Poodle, mean 154 g: two thirds, from where on down a birth weight is very low',
    inputs: 'Toy Poodle',
    expected: 102.67,
    tolerance: 0.005,
    source: `${MENCHETTI}: 154 g, standard deviation 35; two thirds is a synthesis of ours`,
    known: 'computed',
    run: (name) => veryLowBelow(name, null)?.below ?? Number.NaN,
  }),
  row({
    id: 'growth 4f',
    quantity: 'mean birth weights in a small study, grams: Pug, Spitz, Saint Bernard, Great Dane, Dobermann',
    inputs: ['Pug', 'Spitz', 'Saint Bernard', 'Great Dane', 'Dobermann'],
    expected: [152.5, 186.9, 462, 456.7, 525],
    tolerance: 0,
    source: 'Bawaskar et al 2018, Indian J Canine Pract 10:123',
    known: 'seen',
    run: (names) => names.map((name) => veryLowBelow(name, null)?.mean ?? Number.NaN),
  }),
  row({
    id: 'growth 5',
    quantity: 'growth to day two, 400 g to 384 g and to 385 g: percent',
    inputs: [384, 385],
    expected: [-4, -3.75],
    tolerance: 0,
    source: MILA,
    known: 'second-hand',
    run: (g) => g.map((w) => firstDaysGrowth(400, w)),
  }),
  row({
    id: 'growth 5b',
    quantity: 'the same: 4 % or more under birth weight',
    inputs: [384, 385],
    expected: [true, false],
    tolerance: 'exact',
    source: MILA,
    known: 'second-hand',
    run: (g) => g.map((w) => isUnderBirth(400, w, 4)),
  }),
  row({
    id: 'growth 6',
    quantity: '300 g at birth, 270 g at 48 h and at 72 h',
    inputs: [
      [270, 2],
      [270, 3],
    ],
    expected: ['act', 'act'],
    tolerance: 'exact',
    source: HANDBOOK,
    known: 'seen',
    run: (w) => {
      const first = firstDaysLevel('steady', 300, w[0][0], w[0][1], 1);
      return [first, firstDaysLevel(first, 300, w[1][0], w[1][1], 1)];
    },
  }),
  row({
    id: 'growth 7',
    quantity: 'most growth from 400 g at day 7, 14, 21, grams',
    inputs: [7, 14, 21],
    expected: [923.5, 1819.8, 3060.9],
    tolerance: 0.5,
    source: ALVES,
    known: 'seen',
    run: (d) => d.map((x) => 400 * fastestGrowth(x)),
  }),
  row({
    id: 'growth 8',
    quantity: 'most growth at its days of doubling and tripling',
    inputs: [5.699, 9.515],
    expected: [2, 3],
    tolerance: 0.001,
    source: `${ALVES}; days computed`,
    known: 'computed',
    run: (d) => d.map(fastestGrowth),
  }),
  row({
    id: 'growth 9',
    quantity: 'percent a day that doubles in 9.006, 14.207, 7.273 days',
    inputs: [9.006, 14.207, 7.273],
    expected: [8, 5, 10],
    tolerance: 0.001,
    source: `${SACN}; days computed`,
    known: 'computed',
    run: (d) => d.map((x) => gainsOf(pair(400, 800, x))[0]?.percentPerDay ?? Number.NaN),
  }),
  row({
    id: 'growth 10',
    quantity: '8 % a day for 7 days, then 5 %: multiples 1.7138, 3.393, 4.775 at day 7, 21, 28 read back as percent',
    inputs: [1.71382, 3.393, 4.775],
    expected: [8, 5, 5],
    tolerance: 0.01,
    source: `${SACN}; multiples computed`,
    known: 'computed',
    run: (m) =>
      [pair(400, 400 * m[0], 7), pair(400 * m[0], 400 * m[1], 14), pair(400 * m[1], 400 * m[2], 7)].map(
        (p) => gainsOf(p)[0]?.percentPerDay ?? Number.NaN,
      ),
  }),
  row({
    id: 'growth 10b',
    quantity:
      'expected gain at 290 g birth weight in the published range of week one (from day two on) and of weeks two to four: 1 is its end',
    inputs: 290,
    expected: [0, 0],
    tolerance: 1,
    source: `${SACN}: 5-10 and 3.5-6 % a day`,
    known: 'seen',
    run: (grams) => {
      const r = referenceGain(grams);
      const mean = (from: number, to: number) => 100 * Math.expm1((r.since(to) - r.since(from)) / (to - from));
      return [(mean(2, 7) - 7.5) / 2.5, (mean(7, 28) - 4.75) / 1.25];
    },
  }),
  row({
    id: 'growth 11',
    quantity: 'expected gain in week 12 at an adult weight of 35 kg, grams a day: 2-4 g for each kg is 70-140',
    inputs: 35,
    expected: 105,
    tolerance: 35,
    source: SACN,
    known: 'seen',
    run: (adultKg) => {
      const forecast = forecastWeight({ adultKg, sizeClass: 'large', anchorAgeDays: 80, anchorGrams: 7150 });
      return ((forecast.at(87)?.mid ?? Number.NaN) - (forecast.at(80)?.mid ?? Number.NaN)) / 7;
    },
  }),
  row({
    id: 'growth 12',
    quantity: 'share of adult weight, small, 2 3 4 6 9 months',
    inputs: [2, 3, 4, 6, 9],
    expected: [0.241, 0.407, 0.597, 0.873, 0.986],
    tolerance: 0.001,
    source: POSADA,
    known: 'computed',
    run: (m) => m.map((x) => logistic(x, POSADA_SMALL)),
  }),
  row({
    id: 'growth 13',
    quantity: 'share of adult weight, large, 2 3 4 6 9 12 months',
    inputs: [2, 3, 4, 6, 9, 12],
    expected: [0.161, 0.241, 0.345, 0.591, 0.868, 0.968],
    tolerance: 0.001,
    source: POSADA,
    known: 'computed',
    run: (m) => m.map((x) => logistic(x, POSADA_LARGE)),
  }),
  row({
    id: 'growth 14',
    quantity: 'share at x0 and at T99, small',
    inputs: POSADA_SMALL,
    expected: [0.5, 0.99],
    tolerance: 1e-4,
    source: POSADA,
    known: 'seen',
    run: (c) => [logistic(c.half, c), logistic(c.ninetyNine, c)],
  }),
  row({
    id: 'growth 15',
    quantity: 'large at 26 weeks beside "60 % at six months"',
    inputs: 26 * 7,
    expected: 0.589,
    tolerance: 0.03,
    source: `${POSADA}; six months by common practice`,
    known: 'computed',
    run: (d) => logistic(d / MONTH, POSADA_LARGE),
  }),
  row({
    id: 'growth 16',
    quantity: 'Gompertz at c, c + .36651 b, c + 4 b, c + 4.60015 b',
    inputs: [0, 0.36651, 4, 4.60015],
    expected: [0.36788, 0.5, 0.98185, 0.99],
    tolerance: 1e-4,
    source: 'Identities of the Gompertz curve',
    known: 'computed',
    run: (k) => k.map((x) => gompertz(90 + 60 * x, 90, 60)),
  }),
  row({
    id: 'growth 17',
    quantity: 'Great Dane, share at day 56 84 112 182 364',
    inputs: [56, 84, 112, 182, 364],
    expected: [0.17, 0.329, 0.499, 0.806, 0.99],
    tolerance: 0.001,
    source: LEWIS,
    known: 'computed',
    run: (d) => d.map((x) => gompertz(x, GREAT_DANE.fastestDay, 1 / GREAT_DANE.ratePerDay)),
  }),
  row({
    id: 'growth 18',
    quantity: 'Great Dane, largest gain, grams a day',
    inputs: GREAT_DANE,
    expected: 338,
    tolerance: 1,
    source: LEWIS,
    known: 'computed',
    run: (g) => gompertzPeakGain(g.adultKg * 1000, 1 / g.ratePerDay),
  }),
  row({
    id: 'growth 19',
    quantity: 'scaled rate a day at 55, 10, 30 kg',
    inputs: [55, 10, 30],
    expected: [0.0167, 0.02648, 0.01968],
    tolerance: 1e-4,
    source: LEWIS,
    known: 'computed',
    run: (a) => a.map((x) => scaledRate(0.0493, x)),
  }),
  row({
    id: 'growth 20',
    quantity: 'female Labrador rebuilt: kg at birth, share at day 105.5',
    inputs: LABRADOR,
    expected: [0.41, 0.5],
    tolerance: 0.005,
    source: `${HELMINK}: 4b + c = 319, 26.7 kg`,
    known: 'computed',
    run: (i) => [0, 105.5].map((day, k) => (k === 0 ? 26.7 : 1) * gompertz(day, i.fastestDay, i.scaleDays)),
  }),
  row({
    id: 'growth 21',
    quantity: 'Beagle: logistic scale in weeks, share at week 16 and 26',
    inputs: BEAGLE,
    expected: [5.898, 0.551, 0.87],
    tolerance: 0.001,
    source: 'Hawthorne et al 2004, J Nutr 134:2027S, as quoted in Helmsmüller et al 2013, BMC Vet Res 9:203',
    known: 'second-hand',
    run: (c) => [logisticScale(c.half, c.ninetyNine), logistic(16, c), logistic(26, c)],
  }),
  row({
    id: 'growth 22',
    quantity: 'forecast of a Toy Poodle: half the adult weight at 11 to 12 weeks',
    inputs: 3.208,
    expected: 11.5,
    tolerance: 0.5,
    source: `${MENCHETTI}: adult 3,208 g`,
    known: 'seen',
    run: weeksToHalf,
  }),
  row({
    id: 'growth 23',
    quantity: 'class curve of a dog of 8 kg and of 32 kg: first tenth of a week at half the adult weight',
    inputs: [8, 32],
    expected: [13, 24],
    tolerance: 3,
    source: 'Veterinary Focus 22(2) 2012: small 3 months, large 5-6 months',
    known: 'seen',
    run: (kg) => kg.map((k) => TENTHS.find((week) => logistic(week, GROWTH_CURVES[classOfAdult(k)]) >= 0.5) ?? Number.NaN),
  }),
  row({
    id: 'growth 17a',
    quantity: 'Great Dane of 55 kg: of 829 weights to day 500 told from days 3 to 140, how many outside the forecast',
    inputs: { adultKg: 55, sizeClass: 'giant', share: GREAT_DANE_SHARE },
    expected: [829, 0],
    tolerance: 'exact',
    source: LEWIS,
    known: 'computed',
    run: outsideForecast,
  }),
  row({
    id: 'growth 20a',
    quantity: 'Labrador bitch of 26.7 kg: of 829 weights to day 500 told from days 3 to 140, how many outside the forecast',
    inputs: { adultKg: 26.7, sizeClass: 'large', share: LABRADOR_SHARE },
    expected: [829, 0],
    tolerance: 'exact',
    source: HELMINK,
    known: 'computed',
    run: outsideForecast,
  }),
  row({
    id: 'growth 20b',
    quantity: 'Labrador dog of 31.4 kg: of 829 weights to day 500 told from days 3 to 140, how many outside the forecast',
    inputs: { adultKg: 31.4, sizeClass: 'large', share: LABRADOR_SHARE },
    expected: [829, 0],
    tolerance: 'exact',
    source: HELMINK,
    known: 'computed',
    run: outsideForecast,
  }),
  row({
    id: 'growth 35a',
    quantity: 'a real litter in ounces: later weights of its first month that are told from a weight of the first three days',
    inputs: TYHURST.names,
    expected: 0,
    tolerance: 'exact',
    source: TYHURST_SOURCE,
    known: 'computed',
    run: (names) =>
      names.reduce((told, name) => {
        const own = seriesOf(tyhurst(30), name);
        const early = own.filter((p) => p.ageDays < 3);
        return early.reduce((sum, { ageDays, grams }) => {
          const forecast = forecastWeight({ adultKg: 32, sizeClass: 'large', anchorAgeDays: ageDays, anchorGrams: grams });
          return sum + own.filter((p) => p.ageDays > ageDays && forecast.at(p.ageDays) !== null).length;
        }, told);
      }, 0),
  }),
  row({
    id: 'growth 26',
    quantity: 'adult kg from the weight of one dog at day 180, large (it came to 33.75)',
    inputs: 180,
    expected: 38.05,
    tolerance: 0.05,
    source: `demodelr, data set wilson (MIT); ${POSADA}`,
    known: 'computed',
    run: (day) => (WILSON.weights.find((w) => w.day === day)?.kg ?? Number.NaN) / logistic(day / MONTH, POSADA_LARGE),
  }),
  row({
    id: 'growth 27',
    quantity: 'one dog, all 16 weights of day 31 to 482: how many within 20 % of the curve of large dogs',
    inputs: WILSON.weights.filter((w) => w.day <= 482),
    expected: [16, 16],
    tolerance: 'exact',
    source: 'demodelr, data set wilson (MIT), all weights; an adult of 33.75 kg',
    known: 'computed',
    run: (w) => [
      w.length,
      w.filter(({ day, kg }) => Math.abs(kg / (WILSON.adultKg * logistic(day / 7, GROWTH_CURVES.large)) - 1) <= 0.2).length,
    ],
  }),
  row({
    id: 'growth 28',
    quantity: 'energy for growth over 130 kcal x kg^0.75, by share of adult weight',
    inputs: [0.15, 0.3, 0.43, 0.6, 0.71, 0.8, 1],
    expected: [2.489, 2.145, 1.881, 1.579, 1.405, 1.275, 1.021],
    tolerance: 0.001,
    source: 'National Research Council 2006, Nutrient Requirements of Dogs and Cats, chapter 15, as reproduced',
    known: 'second-hand',
    run: (p) => p.map((x) => growthEnergyNrc(1, x) / 130),
  }),
  row({
    id: 'growth 29',
    quantity: 'energy for growth, MJ x kg^0.75, by share of adult weight',
    inputs: [0.2, 0.5, 0.8, 1],
    expected: [0.95, 0.7805, 0.611, 0.498],
    tolerance: 1e-4,
    source: 'Klein, Thes, Böswald, Kienzle 2019, J Anim Physiol Anim Nutr',
    known: 'seen',
    run: (p) => p.map((x) => (growthEnergyKlein(1, x) * 4.184) / 1000),
  }),
  row({
    id: 'growth 34',
    quantity: 'median, median distance, scaled, robust z of 330 g',
    inputs: [412, 398, 405, 421, 330, 409],
    expected: [407, 7, 10.378, -7.419],
    tolerance: 0.001,
    source: GAUSS,
    known: 'computed',
    run: (g) => {
      const scaled = 1.4826 * mad(g);
      return [median(g), mad(g), scaled, (330 - median(g)) / scaled];
    },
  }),
  row({
    id: 'growth 35',
    quantity: 'a real first day without any spread: scores finite, nobody flagged',
    inputs: 1,
    expected: [true, true],
    tolerance: 'exact',
    source: TYHURST_SOURCE,
    known: 'computed',
    run: (day) => {
      const all = [...assessLitter(tyhurst(day)).puppies.values()];
      return [all.every((a) => Number.isFinite(a.score)), all.every((a) => a.level === 'steady')];
    },
  }),
  row({
    id: 'growth 36',
    quantity: 'largest plain z in a litter of 6, 8, 10: why the program does not use it (comparison method of the tests)',
    inputs: [6, 8, 10],
    expected: [2.041, 2.475, 2.846],
    tolerance: 0.001,
    source: '(n - 1) / sqrt(n), Shiffler 1988',
    known: 'computed',
    run: (n) => n.map((x) => Math.max(...plainZ(Array.from({ length: x }, (_, i) => (i === 0 ? 1000 : 400))))),
  }),
  row({
    id: 'growth 37',
    quantity: 'comparison method of the tests, moving average .1: values 1, 2 and 29, limit at 29, first signal',
    inputs: THIRTY,
    expected: [9.945, 9.7495, 10.6468, 10.6187, 29],
    tolerance: 1e-4,
    source: MONTGOMERY,
    known: 'from memory',
    run: (v) => {
      const z = ewma(v, 0.1, 10);
      return [
        z[0] ?? 0,
        z[1] ?? 0,
        z[28] ?? 0,
        ewmaLimit(0.1, 2.7, 10, 1, 29),
        1 + z.findIndex((x, i) => x > ewmaLimit(0.1, 2.7, 10, 1, i + 1)),
      ];
    },
  }),
  row({
    id: 'growth 38',
    quantity: 'comparison method of the tests, cumulative sum .5: values 28 and 29, first over 5',
    inputs: THIRTY,
    expected: [4.47, 5.28, 29],
    tolerance: 0.005,
    source: MONTGOMERY,
    known: 'from memory',
    run: (v) => {
      const c = cusum(v, 10, 0.5);
      return [c[27] ?? 0, c[28] ?? 0, 1 + c.findIndex((x) => x > 5)];
    },
  }),
  row({
    id: 'growth 39',
    quantity: 'values to a false alarm, mean of 3000 runs: cumulative sum .5 over 5, moving average .2 over 2.962, both ways',
    inputs: 3000,
    expected: [R['cusum .5 5'], R['ewma .2 2.962']],
    // Three standard errors of such a mean.
    tolerance: 27,
    source: `${R['made with']}: xcusum.arl, xewma.arl`,
    known: 'computed',
    run: (runs) => {
      const limit = 2.962 * Math.sqrt(0.2 / 1.8);
      return [
        runLength(runs, (v) => {
          const up = cusum(v, 0, 0.5);
          const down = cusum(
            v.map((x) => -x),
            0,
            0.5,
          );
          return up.findIndex((c, i) => c > 5 || (down[i] ?? 0) > 5);
        }),
        runLength(runs, (v) => ewma(v, 0.2, 0).findIndex((z) => Math.abs(z) > limit)),
      ];
    },
  }),
  row({
    id: 'growth 40',
    quantity: 'robust z on the log scale, chick 24 at day 18 among all',
    inputs: R['chick 24 day 18'],
    expected: -3.047,
    tolerance: 0.001,
    source: R['made with'],
    known: 'computed',
    run: robustZ,
  }),
  row({
    id: 'growth 41',
    quantity: 'the same for two fading chicks on their own diet: chick 18 at day 2, chick 16 at day 10',
    inputs: [R['chick 18 day 2'], R['chick 16 day 10']],
    expected: [-7.49, -2.93],
    tolerance: 0.01,
    source: R['made with'],
    known: 'computed',
    run: (groups) => groups.map(robustZ),
  }),
  row({
    id: 'growth 44',
    quantity: 'a real litter, all 45 weighings: day at which each first weighed twice its first weight',
    inputs: 2,
    expected: TYHURST.doublingDays,
    tolerance: 'exact',
    source: TYHURST_SOURCE,
    known: 'computed',
    run: daysOfMultiple,
  }),
  row({
    id: 'growth 45',
    quantity: 'the same for three times',
    inputs: 3,
    expected: TYHURST.triplingDays,
    tolerance: 'exact',
    source: TYHURST_SOURCE,
    known: 'computed',
    run: daysOfMultiple,
  }),
  row({
    id: 'growth 46',
    quantity:
      'a real scale fault on day 38: its findings on day 39, puppies flagged then, and sessions held out for the scale in all 45',
    inputs: 39,
    expected: [1, 0, 1],
    tolerance: 'exact',
    source: TYHURST_SOURCE,
    known: 'computed',
    run: (day) => {
      const growth = assessLitter(tyhurst(day));
      const scale = growth.findings.filter((f) => f.kind === 'scale' && f.readingId.startsWith('d38'));
      const flagged = [...growth.puppies.values()].filter((a) => a.level !== 'steady').length;
      return [scale.length, flagged, assessLitter(tyhurst()).findings.filter((f) => f.kind === 'scale').length];
    },
  }),
  row({
    id: 'growth 47',
    quantity: 'rounding to 28.35 g, a puppy of 400 g: percent of a difference, too coarse',
    inputs: 28.35,
    expected: [2.89, true],
    tolerance: 0.01,
    source: 'Standard deviation of a rounded difference, step / sqrt(6)',
    known: 'computed',
    run: (step) => [roundedDifferencePercent(400, step), tooCoarse(400, step)],
  }),
];
