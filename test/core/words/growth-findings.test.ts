/** Every finding of the growth method is said, in the reader's unit, and as it always was. */
import { describe, expect, it, test } from 'vitest';
import { localTime } from '../../../core/calendar/clock.ts';
import { veryLowBelow } from '../../../core/growth/birth-class.ts';
import type { Oddity, Question } from '../../../core/growth/doubt.ts';
import type { ReadingFinding } from '../../../core/growth/findings.ts';
import {
  bornSmall,
  type LitterFinding,
  type LitterTodo,
  litterTodo,
  type PuppyFinding,
  type PuppyTodo,
  puppyTodo,
} from '../../../core/growth/puppy-findings.ts';
import { MASS_UNITS, type MassUnit } from '../../../core/units/mass.ts';
import { growthFindingWords as say } from '../../../core/words/en/growth-findings.ts';

const plain = (text: string) => text.replaceAll('\u00a0', ' ');
/** A Tuesday, two days before the last weighing. */
const since = localTime('2026-03-10T07:00');
const at = localTime('2026-03-12T07:10');
const gains = (actual: number) => ({ since, at, actual, expected: 41 });
const trouble = (actual: number) => ({ ...gains(actual), sex: 'bitch' }) as const;

const PUPPY: { readonly [C in PuppyFinding['code']]: readonly [PuppyFinding & { readonly code: C }, string] } = {
  'not-weighed': [{ code: 'not-weighed' }, 'Not weighed yet.'],
  left: [{ code: 'left' }, 'No longer weighed here.'],
  'weighed-once': [{ code: 'weighed-once' }, 'Weighed once; gains show from the next weight on.'],
  'smallest-in-place': [
    { code: 'smallest-in-place', name: 'Fern', sex: 'bitch', days: 9 },
    'Fern is the smallest and has kept her place for nine days.',
  ],
  'steady-gain': [{ code: 'steady-gain', gain: 38, standing: Math.log(0.94) }, '38 g a day, 6 % under the middle.'],
  losing: [{ code: 'losing', ...trouble(-12) }, 'Since Tuesday she has been losing about 12 g a day instead of gaining 41.'],
  'no-gain': [{ code: 'no-gain', ...trouble(0) }, 'No gain since Tuesday; 41 g a day was expected.'],
  'gain-short': [
    { code: 'gain-short', ...trouble(16) },
    'Since Tuesday about 60 % less gain than expected: 16 g a day instead of 41.',
  ],
  'gaining-again': [
    { code: 'gaining-again', sex: 'dog', since, at, actual: 30 },
    'Gaining again, but not yet back where he was: 30 g a day since Tuesday.',
  ],
  lost: [{ code: 'lost', sex: 'bitch', since, at, grams: -37 }, 'She has lost 37 g since Tuesday.'],
  'not-as-expected': [{ code: 'not-as-expected' }, 'Not gaining as expected.'],
  'under-birth-weight': [
    { code: 'under-birth-weight', grams: 369, birth: 410, percent: 10 },
    '369 g is 10 % under the birth weight of 410 g.',
  ],
  'born-small': [
    { code: 'born-small', birth: 345, veryLow: veryLowBelow('Dobermann', null), deaths: null },
    '345 g at birth is very little for the breed (under two thirds of the usual 525 g).',
  ],
};

const LITTER: { readonly [C in LitterFinding['code']]: readonly [LitterFinding & { readonly code: C }, string] } = {
  'nobody-weighed': [{ code: 'nobody-weighed' }, 'Nobody has been weighed yet.'],
  growing: [{ code: 'growing' }, 'The litter is growing as expected.'],
  losing: [
    { code: 'losing', ...gains(-12) },
    'The whole litter. Since Tuesday the puppies have each been losing about 12 g a day instead of gaining 41.',
  ],
  'no-gain': [{ code: 'no-gain', ...gains(0) }, 'The whole litter. No gain since Tuesday; 41 g a day was expected.'],
  'gain-short': [
    { code: 'gain-short', ...gains(16) },
    'The whole litter. Since Tuesday about 60 % less gain than expected: 16 g a day instead of 41.',
  ],
  'gaining-again': [{ code: 'gaining-again' }, 'The whole litter is gaining again, but is not yet back where it was.'],
};

const reading = {
  readingId: 'r',
  puppyId: 'p',
  withReadingId: null,
  withPuppyId: null,
  guessGrams: null,
  name: 'Cedar',
  at: localTime('2026-03-11T19:00'),
  grams: 640,
  now: at,
} as const;
const READING: { readonly [K in ReadingFinding['kind']]: readonly [ReadingFinding & { readonly kind: K }, string] } = {
  swap: [
    { ...reading, kind: 'swap', withName: 'Dock', withGrams: 580 },
    'Dock and Cedar may have changed places on Wednesday evening: 580 g and 640 g.',
  ],
  mistyped: [
    { ...reading, kind: 'mistyped', expected: 460, guess: { grams: 460, kind: 'digits', slip: 'swapped' }, fits: null },
    'Cedar, Wednesday evening: 640 g, where about 460 g was expected. Two figures changed places?',
  ],
  scale: [
    { ...reading, kind: 'scale', off: Math.log(1.08) },
    'Wednesday evening: everyone about 8 % heavier than expected. Check the scale and weigh all of them again.',
  ],
};

const ODD: { readonly [C in Oddity['code']]: readonly [Oddity & { readonly code: C }, string] } = {
  tenth: [{ code: 'tenth', last: 2240, lastAt: localTime('2026-03-11T07:00'), at }, 'A tenth of yesterday’s 2 240 g.'],
  tenfold: [{ code: 'tenfold', last: 224, lastAt: since, at }, 'Ten times Tuesday’s 224 g.'],
  'last-was': [{ code: 'last-was', last: 224, lastAt: since, at }, 'Tuesday’s weight was 224 g.'],
  more: [{ code: 'more', by: 607, lastAt: localTime('2026-03-11T07:00'), at }, '607 g more than yesterday.'],
  less: [{ code: 'less', by: 607, lastAt: localTime('2026-03-11T07:00'), at }, '607 g less than yesterday.'],
  'very-light': [{ code: 'very-light', grams: 49 }, '49 g is very light for a puppy of this age.'],
  'very-heavy': [{ code: 'very-heavy', grams: 1201 }, '1 201 g is very heavy for a puppy of this age.'],
};

const QUESTIONS: Readonly<Record<Question, string>> = {
  'nought-few': 'A nought too few?',
  'nought-many': 'A nought too many?',
  'kilograms-meant': 'Kilograms, not grams?',
  'grams-meant': 'Grams, not kilograms?',
  'in-kilograms': 'Meant in kilograms?',
  'in-grams': 'Meant in grams?',
  swapped: 'Two figures changed places?',
  doubled: 'A figure typed twice?',
  missing: 'A figure missing?',
  'one-wrong': 'One figure wrong?',
  littermate: 'Is it another puppy?',
  'weigh-again': 'Please weigh again.',
  'another-puppy': 'Weigh again, or is it another puppy?',
};

/** Every sentence that holds a weight or a gain, in a unit. */
function weighty(unit: MassUnit): string[] {
  return [
    ...Object.values(PUPPY).map(([f]) => say.puppy(f, unit)),
    ...Object.values(LITTER).map(([f]) => say.litter(f, unit)),
    ...Object.values(READING).map(([f]) => say.reading(f, unit)),
    ...Object.values(ODD).map(([f]) => say.oddity(f, unit)),
    say.coarseScale(5, unit),
  ];
}

describe('every finding is said', () => {
  test.each(Object.values(PUPPY))('of a puppy: %o', (finding, sentence) => {
    expect(plain(say.puppy(finding, 'g'))).toBe(sentence);
  });

  test.each(Object.values(LITTER))('of a litter: %o', (finding, sentence) => {
    expect(plain(say.litter(finding, 'g'))).toBe(sentence);
  });

  test.each(Object.values(READING))('of a reading: %o', (finding, sentence) => {
    expect(plain(say.reading(finding, 'g'))).toBe(sentence);
  });

  test.each(Object.values(ODD))('of a weight in hand: %o', (oddity, sentence) => {
    expect(plain(say.oddity(oddity, 'g'))).toBe(sentence);
  });

  test.each(Object.keys(QUESTIONS) as Question[])('as a question: %s', (question) => {
    expect(say.question({ question })).toBe(QUESTIONS[question]);
  });

  it('tells published deaths only where there are some', () => {
    const labrador = veryLowBelow('Labrador Retriever', null);
    expect(plain(say.puppy(bornSmall(240, labrador), 'g'))).toMatch(
      /^240 g at birth is very little for the breed \(under 248 g\)\. In one study \d+ % of such puppies were lost by day 21\.$/,
    );
    expect(plain(say.puppy(bornSmall(240, null), 'g'))).toBe('240 g at birth is very little.');
  });

  it('a littermate that it fits is asked for by name', () => {
    const littermate = { puppyId: 'h', name: 'Hazel' };
    expect(say.question({ question: 'littermate', littermate })).toBe('Hazel?');
    const [mistyped] = READING.mistyped;
    expect(plain(say.reading({ ...mistyped, guess: null, fits: littermate }, 'g'))).toMatch(/was expected\. Hazel\?$/);
  });
});

describe('what to do is said', () => {
  it('in order, for a newborn and for one that eats, with he and she', () => {
    expect(puppyTodo('watch', 3, true).map((t) => say.todo(t, 'bitch'))).toEqual([
      'Check the number: weigh again now.',
      'Weigh again in 6 to 12 hours; that weight counts.',
      'Keep her warm; a chilled puppy cannot digest, so warm first, then milk.',
      'See her suckle and swallow; put her on a full teat first.',
      'If the next weight is no better, call your vet.',
      'It may be a late starter; until the weight catches up nobody can tell.',
    ]);
    expect(puppyTodo('act', 30, false).map((t) => say.todo(t, 'dog'))).toEqual([
      'Check the number: weigh again now.',
      'Then weigh every 6 hours.',
      'Keep him warm and quiet.',
      'See him eat and drink, alone and in peace.',
      'Call your vet now.',
    ]);
  });

  it('of the whole litter: the dam first', () => {
    for (const level of ['watch', 'act'] as const) {
      const said = litterTodo(level).map((t) => say.litterTodo(t));
      expect(said[0]).toBe('Look at the dam first: food, water, teats, temperature.');
      expect(said.at(-1)).toMatch(/call your vet/i);
    }
  });

  it('and nothing that can be asked for is left unsaid', () => {
    const puppy = new Set<PuppyTodo>(
      [0, 25, 40].flatMap((age) => [...puppyTodo('watch', age, age < 4), ...puppyTodo('act', age, age < 4)]),
    );
    const litter = new Set<LitterTodo>([...litterTodo('watch'), ...litterTodo('act')]);
    expect([puppy.size, litter.size]).toEqual([10, 7]);
    for (const t of puppy) expect(say.todo(t, 'dog')).toMatch(/^[A-Z].*\.$/);
    for (const t of litter) expect(say.litterTodo(t)).toMatch(/^[A-Z].*\.$/);
  });
});

describe('the unit of the house', () => {
  it.each(['oz', 'lb', 'lboz'] as const)('no gram is said to a house that weighs in %s', (unit) => {
    for (const sentence of weighty(unit)) expect(sentence).not.toMatch(/\d\s(g|kg)\b/);
  });

  it.each(['g', 'kg'] as const)('no ounce is said to a house that weighs in %s', (unit) => {
    for (const sentence of weighty(unit)) expect(sentence).not.toMatch(/\d\s(oz|lb)\b/);
  });

  it('a gain is in the small unit, a weight in that of the scale', () => {
    const short = PUPPY['gain-short'][0];
    expect(MASS_UNITS.map((unit) => plain(say.puppy(short, unit)).replace(/^.*: /, ''))).toEqual([
      '16 g a day instead of 41.',
      '16 g a day instead of 41.',
      '0.6 oz a day instead of 1.4.',
      '0.6 oz a day instead of 1.4.',
      '0.6 oz a day instead of 1.4.',
    ]);
    expect(plain(say.oddity(ODD['more'][0], 'lboz'))).toBe('1 lb 5.4 oz more than yesterday.');
  });
});
