/** A breeder's own line: curves fitted, places in a line, mixed models. Row numbers are those of the project's check table. */
import { conditionalGain } from '../../core/growth/own-line/conditional-gain.ts';
import { type CurveShape, fitCurve } from '../../core/growth/own-line/fit-curve.ts';
import { asNormal, lmsValue, lmsZ, percentileOf, plainLmsZ } from '../../core/growth/own-line/lms.ts';
import { fitRandomIntercept, type Group } from '../../core/growth/own-line/mixed-model.ts';
import R from '../fixtures/r/growth-line.json' with { type: 'json' };
import { WILSON } from '../fixtures/wilson-dog.ts';
import { type EvidenceRow, row } from './row.ts';

const ANTHRO = 'WHO Child Growth Standards, R package anthro: weight for age of boys at 28 days, L .2331 M 4.3671 S .13497';
const COLE = 'Cole 1995, Arch Dis Child 73:8: abstract seen, formula from memory; z computed';
const NLME = `${R['made with']}: lme by REML on RatPupWeight, 322 pups of 27 litters (Dempster et al 1984)`;

const BOY = { l: 0.2331, m: 4.3671, s: 0.13497 } as const;

const DATA = ['one dog', 'chick 6', 'chick 21', 'chick 50'] as const;

/** End, place, scale and sum of squares, each over what R has. */
function besideR(shape: CurveShape): number[] {
  return DATA.flatMap((name) => {
    const d = R[name];
    const fit = fitCurve(
      d.ages.map((age, i) => ({ age, weight: d.weights[i] ?? Number.NaN })),
      shape,
    );
    if (fit === null) return [Number.NaN];
    const got = [fit.end, fit.place, fit.scale, fit.rss];
    const r = shape === 'logistic' ? d.logistic : d.gompertz;
    const expected = 'x0' in r ? [r.A, r.x0, r.s, r.rss] : [r.A, r.c, r.b, r.rss];
    return got.map((v, i) => v / (expected[i] ?? Number.NaN));
  });
}

/** The pups by litter; `x` gives the fixed effects of pup i. */
function litters(x: (i: number) => number[]): Group[] {
  const pups = R['rat pups'];
  return [...new Set(pups.litter)].map((litter) => {
    const own = pups.litter.flatMap((l, i) => (l === litter ? [i] : []));
    return { x: own.map(x), y: own.map((i) => pups.weight[i] ?? Number.NaN) };
  });
}

const WILSON_SOURCE =
  'R package demodelr, data set wilson (MIT), all 19 weights; fitted by R nls and by another library, which agree to five digits';

function fitted(shape: CurveShape): number[] {
  const fit = fitCurve(
    WILSON.weights.map((w) => ({ age: w.day, weight: w.kg })),
    shape,
  );
  return fit === null ? [] : [fit.end, fit.place, fit.scale, fit.rss];
}

export const growthLineRows: readonly EvidenceRow[] = [
  row({
    id: 'growth 24',
    quantity: 'logistic fitted to all 19 weights of one dog, kg and days: end, place, scale, sum of squares',
    inputs: 'logistic',
    expected: [32.464, 144.547, 58.713, 24.947],
    tolerance: 1e-3,
    source: WILSON_SOURCE,
    known: 'computed',
    run: fitted,
  }),
  row({
    id: 'growth 25',
    quantity: 'the same for the Gompertz curve: end, scale and place, sum of squares',
    inputs: 'gompertz',
    expected: [32.926, 111.683, 86.571, 13.478],
    tolerance: 1e-3,
    source: WILSON_SOURCE,
    known: 'computed',
    run: fitted,
  }),
  row({
    id: 'growth 24b',
    quantity: `logistic fitted to 8 weights of a dog of 33.7 kg and to three chicks: end, place, scale, sum of squares over those of R`,
    inputs: 'logistic',
    expected: DATA.flatMap(() => [1, 1, 1, 1]),
    tolerance: 1e-5,
    source: `${R['made with']}: nls with SSlogis; the dog from demodelr, data set wilson (MIT), as shares of adult weight; datasets::ChickWeight`,
    known: 'computed',
    run: besideR,
  }),
  row({
    id: 'growth 25b',
    quantity: 'the same for the Gompertz curve',
    inputs: 'gompertz',
    expected: DATA.flatMap(() => [1, 1, 1, 1]),
    tolerance: 1e-5,
    source: `${R['made with']}: nls with SSgompertz, the same data`,
    known: 'computed',
    run: besideR,
  }),
  row({
    id: 'growth 24c',
    quantity: 'logistic fitted to the distances as shares of the weights, chick 50: end, place, scale over those of R',
    inputs: R['chick 50'],
    expected: [1, 1, 1],
    tolerance: 1e-5,
    source: `${R['made with']}: nls with weights 1 / y²; datasets::ChickWeight`,
    known: 'computed',
    run: (d) => {
      const fit = fitCurve(
        d.ages.map((age, i) => ({ age, weight: d.weights[i] ?? Number.NaN })),
        'logistic',
        'share',
      );
      const r = R['chick 50, as shares'];
      return fit === null ? null : [fit.end / r.A, fit.place / r.x0, fit.scale / r.s];
    },
  }),
  row({
    id: 'growth 30',
    quantity: 'z by L, M, S of a boy of 3.0 kg at 28 days',
    inputs: 3,
    expected: -2.6637,
    tolerance: 1e-4,
    source: ANTHRO,
    known: 'computed',
    run: (kg) => lmsZ(kg, BOY),
  }),
  row({
    id: 'growth 30b',
    quantity: 'how many of 100 stand under z -2.5, -1, 0, .5244, 3',
    inputs: R.pnorm.z,
    expected: R.pnorm.percent,
    tolerance: 2e-5,
    source: `${R['made with']}: pnorm`,
    known: 'computed',
    run: (z) => z.map(percentileOf),
  }),
  row({
    id: 'growth 30c',
    quantity: 'how many of 100 stand under -3, -1, .5, 2 when the spread was read off 3, 5, 10 litters: Student’s distribution',
    inputs: R.pt,
    expected: R.pt.percent,
    // The largest error of the approximation, at two degrees of freedom.
    tolerance: 2.6,
    source: `${R['made with']}: pt`,
    known: 'computed',
    run: ({ t, degrees }) => degrees.flatMap((d) => t.map((x) => percentileOf(asNormal(x, d)))),
  }),
  row({
    id: 'growth 31',
    quantity: 'the same at 2.5 kg: plain, by the rule beyond three, and the weight back from that z',
    inputs: 2.5,
    expected: [-3.8754, -3.7865, 2.5],
    tolerance: 1e-4,
    source: ANTHRO,
    known: 'computed',
    run: (kg) => [plainLmsZ(kg, BOY), lmsZ(kg, BOY), lmsValue(lmsZ(kg, BOY), BOY)],
  }),
  row({
    id: 'growth 32',
    quantity: 'z of a girl of 17 kg at 1522 days',
    inputs: 17,
    expected: 0.24,
    tolerance: 0.005,
    source:
      'WHO Child Growth Standards, R package anthro, its own test vector (seen); L -.36 M 16.4322 S .1423 at 50 months from memory',
    known: 'from memory',
    run: (kg) => lmsZ(kg, { l: -0.36, m: 16.4322, s: 0.1423 }),
  }),
  row({
    id: 'growth 33',
    quantity: 'gain given the place before, correlation .9: z from 0 to -.67, -1.5 to -1.5, 1.5 to .5',
    inputs: [
      [0, -0.67],
      [-1.5, -1.5],
      [1.5, 0.5],
    ],
    expected: [-1.5371, -0.3441, -1.95],
    tolerance: 1e-4,
    source: COLE,
    known: 'computed',
    run: (pairs) => pairs.map(([z1, z2]) => conditionalGain(z1, z2, 0.9)),
  }),
  row({
    id: 'growth 42',
    quantity:
      'mixed model, weight by treatment, sex, litter size, one level a litter: variance of litters and pups, slope of size, female',
    inputs: R['rat pups'],
    expected: [0.0974, 0.1628, -0.129, -0.35908],
    tolerance: 1e-4,
    source: NLME,
    known: 'computed',
    run: (pups) => {
      const mark = (yes: boolean) => (yes ? 1 : 0);
      const fit = fitRandomIntercept(
        litters((i) => [
          1,
          mark(pups.treatment[i] === 'Low'),
          mark(pups.treatment[i] === 'High'),
          mark(pups.sex[i] === 'Female'),
          pups.size[i] ?? Number.NaN,
        ]),
      );
      return fit === null ? null : [fit.groupVariance, fit.residualVariance, fit.fixed[4] ?? null, fit.fixed[3] ?? null];
    },
  }),
  row({
    id: 'growth 43',
    quantity: 'the same without effects: variance of litters and pups, share of the litters',
    inputs: 1,
    expected: [0.30037, 0.19631, 0.605],
    tolerance: 1e-3,
    source: NLME,
    known: 'computed',
    run: (one) => {
      const fit = fitRandomIntercept(litters(() => [one]));
      if (fit === null) return null;
      return [fit.groupVariance, fit.residualVariance, fit.groupVariance / (fit.groupVariance + fit.residualVariance)];
    },
  }),
];
