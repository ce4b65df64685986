/** What a puppy is fed, from thin and odd facts: no grown weight, no weight for days, litters of one and of fourteen, toy and giant. */

import { describe, expect, it } from 'vitest';
import { localTime } from '../../../core/calendar/clock.ts';
import { addDays, type CivilDate, date } from '../../../core/calendar/day.ts';
import { findings } from '../../../core/feeding/findings.ts';
import { rationOn } from '../../../core/feeding/ration.ts';
import { rationInputOf } from '../../../core/feeding/ration-input.ts';
import { DEFAULT_RULES } from '../../../core/feeding/rules.ts';
import { DEFAULT_FOOD } from '../../../core/food/food.ts';
import { type GrowthInput, growthInputOf } from '../../../core/growth/input.ts';
import { USUAL_COLLARS } from '../../../core/litter/collar.ts';
import type { Litter, Puppy, Reading } from '../../../core/litter/litter.ts';
import { DEFAULT_HOUSE } from '../../../core/people/house.ts';
import type { SizeClass } from '../../../core/reference/classes.ts';
import { toGrams } from '../../../core/units/mass.ts';
import { ENGLISH } from '../../../core/words/en/catalogue.ts';

const born = date('2026-03-01');
const instantAt = (day: CivilDate) => Date.parse(`${day}T08:00:00Z`);

interface Choices {
  readonly count?: number;
  readonly sizeClass?: SizeClass | null;
  readonly adultKg?: number | null;
  /** Grams at a day of life, and the last day weighed. */
  readonly grams?: (day: number) => number;
  readonly lastDay?: number;
}

interface Facts {
  readonly litter: Litter;
  readonly puppies: readonly Puppy[];
  readonly growth: GrowthInput;
}

function factsOf({ count = 4, sizeClass = 'medium', adultKg = null, grams = (d) => 350 + d * 65, lastDay = 60 }: Choices): Facts {
  const whelped = localTime(`${born}T08:00`);
  const litter: Litter = {
    id: 'litter-one',
    name: '',
    dam: 'Yarrow',
    sire: '',
    breed: '',
    sizeClass,
    adultDogKg: adultKg,
    adultBitchKg: adultKg,
    breedBirthGrams: null,
    whelpedAt: whelped,
    whelpedInstant: instantAt(born),
    demo: false,
  };
  const puppies = Array.from({ length: count }, (_, i): Puppy => {
    const collar = USUAL_COLLARS[i];
    if (collar === undefined) throw new RangeError(`no collar ${i}`);
    return {
      id: `puppy-${i}-id`,
      litterId: litter.id,
      collar,
      callName: '',
      sex: i % 2 === 0 ? 'dog' : 'bitch',
      markings: '',
      birthOrder: i + 1,
      bornAt: whelped,
      bornInstant: litter.whelpedInstant,
      place: i,
      state: 'litter',
      stateOn: null,
    };
  });
  const readings = puppies.flatMap((p, i) =>
    Array.from({ length: lastDay + 1 }, (_, d): Reading => {
      const day = addDays(born, d);
      return {
        id: `reading-${i}-${d}`,
        puppyId: p.id,
        at: localTime(`${day}T08:00`),
        instant: instantAt(day),
        session: d === 0 ? 'birth' : 'morning',
        grams: toGrams(grams(d) * (1 + i / 200)),
        typed: '',
        unit: 'g',
        source: 'keyboard',
        held: false,
        kept: false,
        supersedes: null,
        supersededBy: null,
        withdrawn: false,
        recordedInstant: instantAt(day),
      };
    }),
  );
  return { litter, puppies, growth: growthInputOf({ litter, puppies, readings, house: DEFAULT_HOUSE }) };
}

const fedOn = ({ litter, growth }: Facts, puppy: Puppy, on: CivilDate) =>
  rationInputOf({ litter, puppy, growth, rules: DEFAULT_RULES, food: DEFAULT_FOOD, on });

function first(choices: Choices, day: number) {
  const facts = factsOf(choices);
  const [puppy] = facts.puppies;
  if (puppy === undefined) throw new Error('no puppy');
  return fedOn(facts, puppy, addDays(born, day));
}

describe('from what a puppy is fed', () => {
  it('is its weight, when that is fresh', () => {
    expect(first({ adultKg: 24 }, 60)).toMatchObject({
      weightGrams: 350 + 60 * 65,
      weighedOn: addDays(born, 60),
      gainInBand: true,
    });
  });

  it('is the forecast when nobody weighed for days, and a weight is asked for after four', () => {
    const three = first({ adultKg: 24 }, 63);
    expect(three?.weightGrams).toBeGreaterThan(350 + 60 * 65);
    expect(three === null ? [] : findings(three).map((f) => f.code)).not.toContain('weight-old');
    const five = first({ adultKg: 24 }, 65);
    expect(five?.weightGrams).toBeGreaterThan(three?.weightGrams ?? 0);
    const old = five === null ? undefined : findings(five).find((f) => f.code === 'weight-old');
    expect(old === undefined ? '' : ENGLISH.finding.say(old, 'g').mend).toMatch(/^Weigh /);
  });

  it('works without a grown weight: the share alone, no estimate', () => {
    const thin = first({ sizeClass: null, adultKg: null }, 60);
    expect(thin?.adultKg).toBeNull();
    const ration = thin === null ? null : rationOn(thin);
    expect(ration?.estimateKcal).toBeNull();
    expect(ration?.dayGrams).toBeGreaterThan(200);
    expect(thin === null ? [] : findings(thin).filter((f) => f.code.startsWith('energy'))).toEqual([]);
  });

  it('before weaning is the day it is eight weeks old; without a forecast there is none', () => {
    expect(first({ adultKg: 24, lastDay: 20 }, 20)).toMatchObject({ day: addDays(born, 56), weighedOn: null });
    expect(first({ sizeClass: null, adultKg: null, lastDay: 20 }, 20)).toBeNull();
  });

  it.each([
    ['one toy puppy', { count: 1, sizeClass: 'toy', adultKg: 2, grams: (d: number) => 90 + d * 8 }],
    ['fourteen of a giant breed', { count: 14, sizeClass: 'giant', adultKg: 70, grams: (d: number) => 600 + d * 140 }],
  ] as const)('%s: every bowl can be weighed and nothing is refused', (_what, choices) => {
    const facts = factsOf(choices);
    expect(facts.puppies).toHaveLength(choices.count);
    for (const puppy of facts.puppies) {
      const input = fedOn(facts, puppy, addDays(born, 60));
      expect(input).not.toBeNull();
      if (input === null) continue;
      const { dayGrams, meals } = rationOn(input);
      expect(Object.values(meals).reduce((a, b) => a + b, 0)).toBe(dayGrams);
      const { kcal, estimateKcal } = rationOn(input);
      expect(kcal / (estimateKcal ?? 0)).toBeGreaterThan(0.8);
      expect(kcal / (estimateKcal ?? 0)).toBeLessThan(1.2);
      expect(
        findings(input)
          .map((f) => ENGLISH.finding.say(f, 'g'))
          .every((f) => f.sentence.length > 10 && !/NaN|Infinity|undefined/.test(`${f.sentence} ${f.mend}`)),
      ).toBe(true);
    }
  });
});
