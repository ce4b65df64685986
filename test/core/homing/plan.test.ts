/** The go-home plan: it adds up, its days are right, its safety sentences are always there, and thin or hostile facts do not break it. */
import fc from 'fast-check';
import { Temporal } from 'temporal-polyfill';
import { describe, expect, it } from 'vitest';
import { growthEstimate } from '../../../core/feeding/energy.ts';
import type { HouseRules } from '../../../core/feeding/rules.ts';
import { DEFAULT_FOOD } from '../../../core/food/food.ts';
import { roundedDown } from '../../../core/homing/amounts.ts';
import { type PlanDocument, planDocumentSchema } from '../../../core/homing/document.ts';
import { GRAMS_PER_OUNCE, toGrams } from '../../../core/units/mass.ts';
import { foodFigure } from '../../../core/words/en/amounts.ts';
import { planDocument } from '../../../core/words/plan-paper.ts';
import { type Choices, planFacts } from './facts.ts';

const plan = (choices: Choices = {}): PlanDocument => planDocument(planFacts(choices));
const rowsOf = (d: PlanDocument) => d.table.groups.flatMap((g) => g.rows);
const noteText = (d: PlanDocument, key: string) =>
  d.notes
    .filter((n) => n.key === key)
    .flatMap((n) => n.runs.map((r) => r.text))
    .join('');
const sum = (meals: Record<string, number | undefined>) => Object.values(meals).reduce<number>((a, g) => a + (g ?? 0), 0);

const CASES: Record<string, Choices> = {
  'a bitch at eight weeks': {},
  'a dog between two weeks': { place: 2, age: 60 },
  'a toy': { scale: 0.2, litter: { adultBitchKg: 3.5, adultDogKg: 4, sizeClass: 'toy' } },
  'a giant with four meals': {
    scale: 1.7,
    litter: { adultBitchKg: 55, adultDogKg: 62, sizeClass: 'giant' },
    rules: { fourMealsUntilWeeks: 16 },
  },
  'pounds and ounces': { house: { massUnit: 'lboz' } },
  'a litter of one': { count: 1, place: 0 },
  'no weight': { weighed: -1 },
  'no grown weight': { litter: { sizeClass: null, adultDogKg: null, adultBitchKg: null } },
  'before eight weeks': { age: 35 },
  'an old weight': { age: 70, weighed: 60 },
  'nine months old': { age: 290, weighed: 120 },
  'grown long ago': { age: 900, weighed: 120 },
  'by energy': { rules: { basis: 'energy' } },
  'the day it was born': { age: 0, weighed: 0 },
};

describe.each(Object.entries(CASES))('%s', (_, choices) => {
  const d = plan(choices);

  it('passes its own schema', () => {
    expect(planDocumentSchema.safeParse(d).error).toBeUndefined();
  });

  it('adds up: the meals of every row, of the week and of every tread are the day', () => {
    for (const row of rowsOf(d)) if (row.dayGrams !== null) expect(sum(row.meals)).toBeCloseTo(row.dayGrams, 6);
    for (const step of d.ladder.steps) expect(sum(step.meals)).toBeCloseTo(step.dayGrams, 6);
    if (d.week !== null) expect(d.week.meals.reduce((a, m) => a + m.grams, 0)).toBeCloseTo(d.week.dayGrams, 6);
  });

  it('says the same in the week, in the first row and on the first tread', () => {
    expect(rowsOf(d)[0]?.mark).toBe('now');
    expect(rowsOf(d)[0]?.dayGrams).toBe(d.week?.dayGrams ?? null);
    expect(d.ladder.steps[0]?.dayGrams).toBe(d.week?.dayGrams);
  });

  it('has days that rise, and dates that the calendar gives', () => {
    const rows = rowsOf(d);
    const born = Temporal.PlainDate.from(d.ladder.bornOn);
    for (const [i, row] of rows.entries()) {
      if (i > 0) expect(row.fromDay).toBeGreaterThan(rows[i - 1]?.fromDay ?? 0);
      const day = born.add({ days: row.fromDay });
      expect(row.from).toBe(`${day.day}\u00a0${day.toLocaleString('en-GB', { month: 'short' }).slice(0, 3)}`);
    }
    expect(new Set(rows.map((r) => r.age)).size).toBe(rows.length);
  });

  it('names the age of each row by the calendar', () => {
    const born = Temporal.PlainDate.from(d.ladder.bornOn);
    for (const row of rowsOf(d).slice(1)) {
      const [n, unit] = row.age.split('\u00a0');
      const named = unit === 'mo' ? born.add({ months: Number(n) }) : born.add({ weeks: Number(n) });
      expect(Math.abs(born.add({ days: row.fromDay }).until(named).days)).toBeLessThanOrEqual(unit === 'mo' ? 0 : 3);
    }
  });

  it('never falls by more than a tenth and a bowl’s rounding from one row to the next, and has one hump', () => {
    const days = rowsOf(d).flatMap((r) => (r.dayGrams === null ? [] : [r]));
    let fallen = false;
    for (const [i, row] of days.entries()) {
      const before = days[i - 1];
      if (before?.dayGrams === undefined || before.dayGrams === null || row.dayGrams === null) continue;
      const rounding =
        (d.units.amount === 'oz' ? GRAMS_PER_OUNCE / 4 : row.dayGrams < 300 ? 2 : 5) * Object.keys(row.meals).length;
      if (row.fromDay - before.fromDay >= 6) expect(row.dayGrams).toBeGreaterThanOrEqual(before.dayGrams * 0.9 - rounding);
      if (fallen) expect(row.dayGrams).toBeLessThanOrEqual(before.dayGrams + 1e-9);
      fallen ||= row.dayGrams < before.dayGrams - 1e-9;
    }
  });

  it('always holds the safety sentences', () => {
    expect(noteText(d, 'hygiene')).toMatch(/20 seconds/);
    expect(noteText(d, 'hygiene')).toMatch(/children under 5, pregnant women, older people, anyone with weak immunity/);
    expect(noteText(d, 'hygiene')).toMatch(/Freezing does not kill bacteria/);
    expect(noteText(d, 'hygiene')).toMatch(/advise against raw feeding/);
    expect(noteText(d, 'bones')).toMatch(/Never cooked/);
    expect(noteText(d, 'bones')).toMatch(/US FDA\): bones of any size are unsafe/);
    expect(noteText(d, 'thawing')).toMatch(/Never thaw on the counter/);
    expect(noteText(d, 'thawing')).toMatch(/24 hours \(UK, Ireland\), 48 at most \(US\)/);
    expect(d.vet.runs.map((r) => r.text).join('')).toMatch(/Eats nothing at two meals/);
    expect(d.vet.lines[0]).toEqual({ label: 'Your vet', name: '', phone: '' });
    expect(d.last).toMatch(/guidance.*Your vet knows your puppy.*Local advice differs/);
  });

  it('has by-weight rows as long as the columns, with no amount that falls as the weight rises', () => {
    for (const row of d.byWeight.rows) {
      expect(row.grams).toHaveLength(d.byWeight.columns.length);
      const known = row.grams.filter((g) => g !== null);
      expect(known.length).toBeGreaterThan(0);
      expect(known).toEqual([...known].sort((a, b) => a - b));
    }
    expect(d.byWeight.columns.length).toBeLessThanOrEqual(12);
  });
});

describe('the plan of one puppy', () => {
  const d = plan();

  it('says whose it is', () => {
    expect(d.title).toBe('Tansy: go-home plan');
    const facts = Object.fromEntries(d.facts.map((f) => [f.label, f.value]));
    expect(facts).toEqual({
      Collar: 'green, zigzag, letter D',
      Born: 'Saturday 26\u00a0September 2026, 04:40',
      Sex: 'bitch, fourth born of seven',
      Breed: 'farm collie × water dog, about 22\u00a0kg grown',
      Parents: 'Wren of Hollinside and Marsh Otter',
      Marks: 'white blaze, left hind sock',
    });
    const weekday = Temporal.PlainDate.from('2026-09-26').toLocaleString('en-GB', { weekday: 'long' });
    expect(d.table.note).toBe(`Weigh her on ${weekday}s, before breakfast.`);
  });

  it('feeds the house share of the weight of today, and never under the floor', () => {
    const last = d.weights.own.at(-1)?.grams ?? 0;
    const floor = (0.85 * growthEstimate(last / 1000, 22)) / (DEFAULT_FOOD.kcalPer100g / 100);
    expect(floor).toBeGreaterThan(last * 0.055);
    expect(Math.abs((d.week?.dayGrams ?? 0) - floor)).toBeLessThanOrEqual(7.5);
    const byShare = plan({ rules: { basis: 'share' } });
    expect(Math.abs((byShare.week?.dayGrams ?? 0) - last * 0.055)).toBeLessThanOrEqual(3);
    expect(d.week?.dates).toBe('21 to 27\u00a0November');
    expect(d.week?.basis).toMatch(/weighed today/);
    expect(d.week?.meals.map((m) => m.time)).toEqual(['07:00', '13:00', '20:00']);
  });

  it('goes weekly to 26 weeks, then monthly to 12 months, and marks the two weeks of change', () => {
    const ages = rowsOf(d).map((r) => r.age.replace('\u00a0', ' '));
    expect(ages.slice(0, 2)).toEqual(['8 wk', '9 wk']);
    expect(ages).toContain('26 wk');
    expect(ages.slice(-6)).toEqual(['7 mo', '8 mo', '9 mo', '10 mo', '11 mo', '12 mo']);
    expect(rowsOf(d).filter((r) => r.mark === 'changing')).toHaveLength(2);
    expect(d.table.groups.map((g) => g.heading)).toEqual([
      'Three meals a day',
      'Three become two: midday shrinks',
      'Two meals a day',
    ]);
  });

  it('speaks of a dog as he', () => {
    const dog = plan({ place: 2 });
    const said = [dog.byWeight.heading, dog.table.note, ...dog.notes.flatMap((n) => n.runs.map((r) => r.text))].join(' ');
    expect(said).toMatch(/\bhis\b/);
    expect(said).not.toMatch(/\b(she|her)\b/i);
  });

  it('is the same document for the same facts', () => {
    expect(plan()).toEqual(plan());
  });

  it('leaves out what was weighed after its day, and what was replaced or taken back', () => {
    const facts = planFacts({ age: 60 });
    const last = facts.readings.filter((r) => r.puppyId === facts.puppy.id).at(-1);
    const without = planDocument({
      ...facts,
      readings: facts.readings.map((r) => (r.id === last?.id ? { ...r, withdrawn: true } : r)),
    });
    expect(without.weights.own.at(-1)?.day).toBeLessThan(60);
    expect(planDocument({ ...facts, on: planFacts({ age: 57 }).on }).weights.own.at(-1)?.day).toBeLessThan(58);
  });

  it('goes on with a weight that the new owner told, after the puppy has left', () => {
    const facts = planFacts({ age: 70, puppy: { state: 'home', stateOn: planFacts({ age: 56 }).on } });
    expect(planDocument(facts).week?.basis).toMatch(/weighed today/);
  });
});

describe('thin facts', () => {
  it('without a weight gives no amounts, says so, and still gives the table by weight', () => {
    const d = plan({ weighed: -1, rules: { basis: 'share' } });
    expect(d.week).toBeNull();
    expect(d.missing).toMatch(/No weight is written down/);
    expect(d.ladder.steps).toEqual([]);
    expect(rowsOf(d).every((r) => r.dayGrams === null && r.weight === '')).toBe(true);
    expect(rowsOf(d)[0]?.share).toBe('5.5');
    expect(d.byWeight.rows.every((r) => r.grams.every((g) => g !== null))).toBe(true);
    expect(d.findings.some((f) => f.severity === 'warning')).toBe(true);
  });

  it('without a grown weight goes two weeks and then by weight', () => {
    const d = plan({ litter: { sizeClass: null, adultDogKg: null, adultBitchKg: null } });
    expect(d.week).not.toBeNull();
    const known = rowsOf(d).filter((r) => r.dayGrams !== null);
    expect(known.length).toBeGreaterThan(0);
    expect(known.at(-1)?.fromDay).toBeLessThanOrEqual(56 + 14);
    expect(d.ladder.note).toMatch(/not known/);
  });

  it('calls a weight of six days ago a forecast', () => {
    const d = plan({ age: 66, weighed: 60 });
    expect(d.week?.basis).toMatch(/forecast.*6 days ago/);
    expect(d.findings.some((f) => /days old/.test(f.sentence))).toBe(true);
  });

  it.each([
    ['g', /\d\u00a0g a day/],
    ['oz', /\d\u00a0oz a day/],
    ['lboz', /\d\u00a0oz a day/],
  ] as const)('tells a house that weighs in %s of a slow puppy in its unit', (massUnit, gain) => {
    const facts = planFacts({ house: { massUnit } });
    const slow = facts.readings.map((r) => {
      const days = (r.instant - facts.puppy.bornInstant) / 86_400_000;
      return r.puppyId === facts.puppy.id && days > 46 ? { ...r, grams: toGrams(r.grams * 0.98 ** (days - 46)) } : r;
    });
    const said = planDocument({ ...facts, readings: slow }).findings.find((f) => f.source === 'its own weights')?.sentence;
    expect(said).toMatch(gain);
    expect(said?.match(/\d\u00a0g\b/) === null).toBe(massUnit !== 'g');
  });

  it('before eight weeks starts on the go-home day', () => {
    const d = plan({ age: 35 });
    expect(d.week?.heading).toBe('The first week at home');
    expect(d.week?.dates).toBe('21 to 27\u00a0November');
    expect(d.ladder.nowDay).toBeNull();
    expect(d.week?.basis).toMatch(/forecast/);
    expect(d.findings.some((f) => /local rule/.test(f.mend ?? ''))).toBe(true);
  });

  it('calls nobody steady for one weight', () => {
    const standing = (choices: Choices) => plan(choices).weights.facts.find((f) => /littermates/.test(f.text))?.text;
    expect(standing({})).toMatch(/, and steady\.$/);
    const once = standing({ age: 0, weighed: 0 });
    expect(once).toMatch(/the middle of/);
    expect(once).not.toMatch(/steady/);
  });

  it('of a litter of one says nothing of littermates', () => {
    const d = plan({ count: 1, place: 0 });
    expect(d.weights.band).toEqual([]);
    expect(d.weights.facts.some((f) => /littermate/.test(f.text))).toBe(false);
    expect(d.facts.find((f) => f.label === 'Sex')?.value).toBe('dog');
  });

  it('prints lines to write on when nobody can be rung', () => {
    const d = plan({ house: { breederName: '', phone: '', vetName: '', vetPhone: '' } });
    expect(d.contact).toMatchObject({ name: '', phone: '' });
    expect(d.vet.lines).toHaveLength(1);
    expect(d.findings.some((f) => /telephone/.test(f.sentence))).toBe(true);
  });
});

describe('the notes follow the rules', () => {
  it('prints the shorter official time beside any longer house rule', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 12, max: 120 }),
        fc.constantFrom<HouseRules['officialKeeping']>('uk-ie', 'us'),
        (keepHours, officialKeeping) => {
          const text = noteText(
            plan({ count: 1, place: 0, weighed: 3, age: 56, rules: { keepHours, officialKeeping } }),
            'thawing',
          );
          expect(text).toContain(`${keepHours} hours`);
          expect(text).toContain('24 hours (UK, Ireland), 48 at most (US)');
          expect(/my own time/.test(text)).toBe(keepHours > (officialKeeping === 'us' ? 48 : 24));
        },
      ),
      { numRuns: 40 },
    );
  });

  it('takes treats off the meals, at most a tenth, and names the published limit beside more', () => {
    const d = plan();
    expect(noteText(d, 'treats')).toContain('a tenth of the day: 30\u00a0g');
    expect(noteText(plan({ rules: { treatShare: 0.2 } }), 'treats')).toContain('Published limit: a tenth');
    expect(noteText(plan({ rules: { treatShare: 0 } }), 'treats')).toContain('None');
  });

  it('never tells a toy to leave out a meal', () => {
    const toy = noteText(plan({ scale: 0.2, litter: { adultBitchKg: 3.5, sizeClass: 'toy' } }), 'left');
    expect(toy).toMatch(/call the vet/);
    expect(toy).not.toMatch(/leave out/);
  });

  it('tells the owner of a big puppy that slow growth is safe', () => {
    const big = plan({ scale: 1.5, litter: { adultBitchKg: 40, sizeClass: 'large' } });
    expect(big.notes.find((n) => n.key === 'growth')?.heading).toBe('Slow growth is safe growth');
  });

  it('gives ounces in quarters, and degrees Fahrenheit, to who weighs in pounds', () => {
    const d = plan({ house: { massUnit: 'lboz' } });
    expect(d.units).toEqual({ amount: 'oz', weight: 'lb' });
    for (const row of rowsOf(d)) {
      const quarters = ((row.dayGrams ?? 0) * 4) / GRAMS_PER_OUNCE;
      expect(Math.abs(quarters - Math.round(quarters))).toBeLessThan(1e-6);
    }
    expect(noteText(d, 'thawing')).toContain('40\u00a0°F');
    expect(foodFigure(d.week?.dayGrams ?? 0, 'oz')).toMatch(/^\d+\.(00|25|50|75)$/);
  });

  it('rounds treats down, never up', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.1, max: 400, noNaN: true }), fc.constantFrom('g' as const, 'oz' as const), (grams, unit) => {
        expect(roundedDown(grams, unit)).toBeLessThanOrEqual(grams + 1e-6);
      }),
    );
  });
});

describe('hostile facts', () => {
  it('takes names of any kind and length, and any day of life', () => {
    fc.assert(
      fc.property(
        fc.string({ maxLength: 120, unit: 'grapheme' }).map((t) => t.slice(0, 120)),
        fc.integer({ min: 0, max: 1200 }),
        fc.integer({ min: -1, max: 70 }),
        fc.constantFrom('g' as const, 'kg' as const, 'oz' as const, 'lb' as const, 'lboz' as const),
        (name, age, weighed, massUnit) => {
          const d = plan({
            age,
            weighed: Math.min(age, weighed),
            puppy: { callName: name, markings: name },
            litter: { dam: name === '' ? 'x' : name, sire: name, breed: name },
            house: { massUnit, breederName: name, address: name, phone: name, email: name, vetName: name, vetPhone: name },
          });
          expect(planDocumentSchema.safeParse(d).error).toBeUndefined();
          expect(d.name.trim()).not.toBe('');
          expect(JSON.stringify(d)).not.toMatch(/NaN|Infinity|undefined/);
        },
      ),
      { numRuns: 60 },
    );
  });
});
