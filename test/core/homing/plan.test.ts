/** The go-home plan: it adds up, its days are right, its safety sentences are always there, and thin or hostile facts do not break it. */
import fc from 'fast-check';
import { Temporal } from 'temporal-polyfill';
import { describe, expect, it } from 'vitest';
import { growthEstimate } from '../../../core/feeding/energy.ts';
import { type HouseRules, PROGRAM_RULES } from '../../../core/feeding/rules.ts';
import { DEFAULT_FOOD, type Food } from '../../../core/food/food.ts';
import { roundedDown } from '../../../core/homing/amounts.ts';
import { type PlanDocument, planDocumentSchema } from '../../../core/homing/document.ts';
import { goHomePlan } from '../../../core/homing/plan.ts';
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
const textOfRuns = (runs: readonly { text: string }[]) => runs.map((r) => r.text).join('');
const fairText = (d: PlanDocument) => textOfRuns(d.week?.fair ?? []);
/** Two ends that differ. */
const WIDE_RANGE = /^([\d.]+)–(?!\1$)[\d.]+$/;
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
    if (d.week !== null) expect(d.week.bowls.reduce((a, m) => a + m.grams, 0)).toBeCloseTo(d.week.dayGrams, 6);
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
    for (const row of rows) if (row.weight !== '') expect(row.weight).toMatch(WIDE_RANGE);
  });

  it('names the age of each row by the calendar', () => {
    const born = Temporal.PlainDate.from(d.ladder.bornOn);
    for (const row of rowsOf(d)) {
      const [, weeks, days = '0'] = /^(\d+)\u00a0weeks(?: (\d) days?)?$/.exec(row.age) ?? [];
      const day = born.add({ weeks: Number(weeks), days: Number(days) });
      expect(day.equals(born.add({ days: row.fromDay }))).toBe(true);
      if (row.months === '') continue;
      // Full months, and not a month more.
      const months = Number(/^(\d+) months$/.exec(row.months)?.[1]);
      expect(Temporal.PlainDate.compare(born.add({ months }), day)).toBeLessThanOrEqual(0);
      expect(Temporal.PlainDate.compare(born.add({ months: months + 1 }), day)).toBe(1);
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
    expect(noteText(d, 'poisons')).toMatch(/Onion, garlic.*grapes, raisins.*chocolate.*xylitol.*ring the vet now/);
    expect(noteText(d, 'choking')).toMatch(/ring the vet and drive.*Ask your vet to show you/);
    expect(noteText(d, 'treats')).toMatch(/No fat trimmings.*pancreas.*the vet, today/);
    expect(noteText(d, 'bones')).toMatch(/US FDA\): bones of any size are unsafe/);
    expect(noteText(d, 'thawing')).toMatch(/Never thaw on the counter/);
    expect(noteText(d, 'thawing')).toMatch(/24 hours \(UK, Ireland\), 48 at most \(US\)/);
    const said = (tier: PlanDocument['vet']['now']) => [tier.first, ...tier.lines].map(textOfRuns).join(' ');
    expect(said(d.vet.now)).toMatch(/Swollen belly, or retching.*breathing.*A fit, or collapse.*Pale gums.*poison/);
    expect(said(d.vet.today)).toMatch(/Eats nothing at (two meals|one meal)/);
    expect(d.vet.lines[0]).toEqual({ label: 'Your vet', name: '', phone: '' });
    expect(d.vet.lines[1]).toEqual({ label: 'Out of hours', name: '', phone: '' });
    expect(d.last).toMatch(/guidance.*Your vet knows your puppy.*Local advice differs/);
  });

  it('has by-weight rows as long as the heads, with no amount that falls as the weight rises', () => {
    for (const row of d.byWeight.rows) {
      const known = row.cells.flatMap(({ grams }) => (grams === null ? [] : [grams]));
      expect(known.length).toBeGreaterThan(0);
      expect(known).toEqual([...known].sort((a, b) => a - b));
      if (d.week === null) expect(row.cells).toHaveLength(d.byWeight.heads.length - 1);
      else expect(row.cells.length).toBeLessThanOrEqual(12);
    }
    expect(d.byWeight.heads.length).toBeLessThanOrEqual(13);
  });
});

describe('the plan of one puppy', () => {
  const d = plan();

  it('says whose it is', () => {
    expect(d.title).toBe('Tansy: go-home plan');
    expect(d.collarWords).toBe('Collar: green, zigzag, letter D');
    expect(d.about.map(textOfRuns)).toEqual([
      'bitch, 8 weeks, born Saturday 26\u00a0September 2026, 04:40',
      'fourth born of seven, by Marsh Otter out of Wren of Hollinside',
      'farm collie × water dog, about 22\u00a0kg grown',
      'green collar, zigzag; white blaze, left hind sock',
      expect.stringMatching(/^4\.01\u00a0kg today, .*her six littermates, and steady$/),
    ]);
    const weekday = Temporal.PlainDate.from('2026-09-26').toLocaleString('en-GB', { weekday: 'long' });
    expect(textOfRuns(d.table.end)).toContain(`Weigh her on ${weekday}s, before breakfast`);
  });

  it('feeds the house share of the weight of today, and never under the floor', () => {
    const last = goHomePlan(planFacts(), 'Tansy').weights.anchor?.grams ?? 0;
    const floor = (0.85 * growthEstimate(last / 1000, 22)) / (DEFAULT_FOOD.kcalPer100g / 100);
    expect(floor).toBeGreaterThan(last * 0.055);
    expect(Math.abs((d.week?.dayGrams ?? 0) - floor)).toBeLessThanOrEqual(7.5);
    const byShare = plan({ rules: { basis: 'share' } });
    expect(Math.abs((byShare.week?.dayGrams ?? 0) - last * 0.055)).toBeLessThanOrEqual(3);
    expect(rowsOf(d)[0]?.from).toBe('21\u00a0Nov');
    expect(d.week?.until).toBe('until Friday 27 November');
    expect(fairText(d)).toMatch(/weighed today/);
    expect(d.week?.bowls.map((m) => m.time)).toEqual(['07:00', '13:00', '20:00']);
  });

  it('goes weekly to 26 weeks, then monthly to 12 months, and marks the two weeks of change', () => {
    const ages = rowsOf(d).map((r) => r.age.replace('\u00a0', ' '));
    expect(ages.slice(0, 2)).toEqual(['8 weeks', '9 weeks']);
    expect(ages).toContain('26 weeks');
    expect(
      rowsOf(d)
        .slice(-6)
        .map((r) => r.months),
    ).toEqual(['7 months', '8 months', '9 months', '10 months', '11 months', '12 months']);
    expect(rowsOf(d).filter((r) => r.mark === 'changing')).toHaveLength(2);
    expect(d.table.groups.map((g) => g.heading)).toEqual(['Three meals a day', 'Three become two', 'Two meals a day']);
  });

  it('speaks of a dog as he', () => {
    const dog = plan({ place: 2 });
    const said = [
      dog.byWeight.heading,
      textOfRuns(dog.byWeight.way),
      textOfRuns(dog.table.end),
      fairText(dog),
      ...dog.notes.flatMap((n) => n.runs.map((r) => r.text)),
    ].join(' ');
    expect(said).toMatch(/\bhis\b/);
    expect(said).not.toMatch(/\b(she|her)\b/i);
  });

  it('is the same document for the same facts', () => {
    expect(plan()).toEqual(plan());
  });

  it('leaves out what was weighed after its day, and what was replaced or taken back', () => {
    const facts = planFacts({ age: 60 });
    const last = facts.readings.filter((r) => r.puppyId === facts.puppy.id).at(-1);
    const lastDay = (of: typeof facts) => goHomePlan(of, 'Tansy').weights.own.at(-1)?.ageDays;
    const without = { ...facts, readings: facts.readings.map((r) => (r.id === last?.id ? { ...r, withdrawn: true } : r)) };
    expect(lastDay(without)).toBeLessThan(60);
    expect(lastDay({ ...facts, on: planFacts({ age: 57 }).on })).toBeLessThan(58);
  });

  it('goes on with a weight that the new owner told, after the puppy has left', () => {
    const facts = planFacts({ age: 70, puppy: { state: 'home', stateOn: planFacts({ age: 56 }).on } });
    expect(fairText(planDocument(facts))).toMatch(/weighed today/);
  });
});

describe('thin facts', () => {
  it('without a weight gives no amounts, says so, and still gives the table by weight', () => {
    const d = plan({ weighed: -1, rules: { basis: 'share' } });
    expect(d.week).toBeNull();
    expect(d.missing).toMatch(/No weight is written down/);
    expect(d.ladder.steps).toEqual([]);
    expect(rowsOf(d).every((r) => r.dayGrams === null && r.weight === '')).toBe(true);
    expect(rowsOf(d)[0]?.instead).toBe('by weight, 5.5\u00a0%: sheet 3');
    expect(d.byWeight.rows.every((r) => r.cells.every((c) => c.grams !== null))).toBe(true);
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

  it('writes down no amount from a weight of six days ago', () => {
    const d = plan({ age: 66, weighed: 60 });
    expect(d.week).toBeNull();
    expect(d.next).toBeNull();
    expect(rowsOf(d).every((r) => r.dayGrams === null)).toBe(true);
    expect(d.missing).toMatch(/6 days ago.*real weight: the table on sheet 3.*new plan/);
    expect(d.byWeight.rows.every((r) => r.cells.every((c) => c.grams !== null))).toBe(true);
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
    expect(rowsOf(d)[0]?.from).toBe('21\u00a0Nov');
    expect(d.week?.until).toBe('until Friday 27 November');
    expect(d.ladder.nowDay).toBeNull();
    expect(fairText(d)).toMatch(/forecast/);
    expect(d.findings.some((f) => /local rule/.test(f.mend ?? ''))).toBe(true);
  });

  it('calls nobody steady for one weight', () => {
    const standing = (choices: Choices) =>
      plan(choices)
        .about.map(textOfRuns)
        .find((t) => /littermates/.test(t));
    expect(standing({})).toMatch(/, and steady$/);
    const once = standing({ age: 0, weighed: 0 });
    expect(once).toMatch(/the middle of/);
    expect(once).not.toMatch(/steady/);
  });

  it('of a litter of one says nothing of littermates', () => {
    const d = plan({ count: 1, place: 0 });
    expect(d.about.map(textOfRuns).some((t) => /littermate|born of/.test(t))).toBe(false);
    expect(textOfRuns(d.about[0] ?? [])).toMatch(/^dog, /);
  });

  it('prints lines to write on when nobody can be rung', () => {
    const d = plan({ house: { breederName: '', phone: '', vetName: '', vetPhone: '' } });
    expect(d.contact).toMatchObject({ name: '', phone: '' });
    expect(d.vet.lines.map((l) => l.phone)).toEqual(['', '']);
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
    expect(noteText(d, 'treats')).toMatch(/a tenth of the energy, now \d+ kcal, or 30\u00a0g of the food/);
    expect(noteText(plan({ rules: { treatShare: 0.2 } }), 'treats')).toContain('Published limit: a tenth');
    expect(noteText(plan({ rules: { treatShare: 0 } }), 'treats')).toMatch(/Treats: none/);
  });

  it('never tells a toy to leave out a meal', () => {
    const toy = noteText(plan({ scale: 0.2, litter: { adultBitchKg: 3.5, sizeClass: 'toy' } }), 'left');
    expect(toy).toMatch(/ring the vet/);
    expect(toy).not.toMatch(/leave out|left out/);
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

describe('the second form', () => {
  const byAge = (d: PlanDocument) => new Map(d.byWeight.rows.map((r) => [r.age.replace('\u00a0', ' '), r.cells]));

  it('by real weight goes one way: the amount for the age up to the middle, then by weight, and never beyond the top', () => {
    const d = plan();
    const { weights, born } = goHomePlan(planFacts(), 'Tansy');
    for (const row of d.byWeight.rows) {
      const [first, ...above] = row.cells;
      expect(first?.as).toBe('age');
      expect(above.every((c) => c.as === 'weight' && (c.grams ?? 0) >= (first?.grams ?? 0))).toBe(true);
      // Steps fine enough to read off: none is more than a tenth of the amount and a rounding of three bowls.
      for (const [i, c] of row.cells.entries())
        if (i > 0) expect(c.grams ?? 0).toBeLessThanOrEqual((row.cells[i - 1]?.grams ?? 0) * 1.1 + 15);
    }
    const sixteen = byAge(d).get('16 weeks') ?? [];
    const band = weights.at(112);
    expect(rowsOf(d).find((r) => r.fromDay === 112)?.dayGrams).toBe(sixteen[0]?.grams);
    expect(Number(/[\d.]+$/.exec(sixteen.at(-1)?.at ?? '')?.[0])).toBeCloseTo((band?.high ?? 0) / 1000, 1);
    // The share is the rule: a weight at the top of the range gets as much more as it is heavier.
    expect((sixteen.at(-1)?.grams ?? 0) / (sixteen[0]?.grams ?? 1)).toBeCloseTo((band?.high ?? 0) / (band?.mid ?? 1), 1);
    expect(born).toBe('2026-09-26');
  });

  it('by real weight has rows from two months to twelve, and no two weights of a row read alike', () => {
    for (const choices of Object.values(CASES)) {
      const d = plan(choices);
      expect(d.byWeight.rows.at(-1)?.age).toBe(choices.age === 900 ? '29\u00a0months' : '12\u00a0months');
      for (const row of d.byWeight.rows) {
        const weights = row.cells.map((c) => c.at).filter((t) => t !== '');
        expect(new Set(weights.map((t) => /[\d.]+$/.exec(t)?.[0])).size).toBe(weights.length);
      }
    }
    expect([...byAge(plan()).keys()][0]).toBe('8 weeks');
  });

  it('shows the next six weeks by their first days, each as the table has it', () => {
    const d = plan();
    expect(d.next?.weeks.map((w) => w.from.replace('\u00a0', ' '))).toEqual([
      '28 Nov',
      '5 Dec',
      '12 Dec',
      '19 Dec',
      '26 Dec',
      '2 Jan',
    ]);
    for (const week of d.next?.weeks ?? []) {
      const row = rowsOf(d).find((r) => r.from === week.from);
      expect(week.bowls).toEqual([`3 × ${row?.meals.morning}`]);
    }
    const changing = plan({ age: 140 }).next?.weeks.filter((w) => w.changes) ?? [];
    expect(changing.length).toBeGreaterThanOrEqual(2);
    expect(changing[0]?.bowls).toHaveLength(2);
  });

  it('says what the amount is of the published estimate, and the gain at which to ring', () => {
    const { week } = goHomePlan(planFacts(), 'Tansy');
    expect(fairText(plan())).toContain(
      `${Math.round((week?.fair.part ?? 0) * 100)}\u00a0% of the published estimate (Klein 2019)`,
    );
    expect(fairText(plan())).toMatch(
      /Expect about 550\u00a0g more on the scale by Saturday 28 November\. Less than 280\u00a0g: ring me/,
    );
    const toy = plan({ scale: 0.16, litter: { adultBitchKg: 2.5, sizeClass: 'toy' } });
    expect(fairText(toy)).toMatch(/no gain on two mornings: ring me/);
    expect(textOfRuns(toy.vet.now.first)).toMatch(/low blood sugar.*ring the vet now/);
    expect(textOfRuns(toy.vet.today.lines[0] ?? [])).toBe('Eats nothing at one meal');
  });

  it('prints the numbers of the vet that are known, and a line for the buyer’s own', () => {
    const d = plan({ house: { vetOutOfHours: '555-0199' } });
    expect(d.vet.lines.slice(2)).toEqual([
      { label: 'Our vet', name: 'Dr Iver Strand', phone: '555-0188' },
      { label: 'Ours out of hours', name: '', phone: '555-0199' },
    ]);
  });

  it('of a puppy at “act” gives no amount anywhere, asks why before it is printed, and prints the reason', () => {
    const facts = planFacts();
    const failing = facts.readings.map((r) => {
      const days = (r.instant - facts.puppy.bornInstant) / 86_400_000;
      return r.puppyId === facts.puppy.id && days > 44 ? { ...r, grams: toGrams(r.grams * 0.93 ** (days - 44)) } : r;
    });
    const d = planDocument({ ...facts, readings: failing, why: 'The vet has seen her.' });
    expect(d.findings.filter((f) => f.blocks).map((f) => f.key)).toContain('level act losing');
    expect([d.week, d.next, d.ladder.steps, d.byWeight.rows]).toEqual([null, null, [], []]);
    expect(rowsOf(d).every((r) => r.dayGrams === null && r.instead === 'ask me first')).toBe(true);
    expect(d.missing).toMatch(/as the vet says/);
    expect(d.why).toBe('My reason: The vet has seen her.');
    expect(plan().findings.some((f) => f.blocks)).toBe(false);
  });

  it('does not print rules of a day on which nobody wrote any', () => {
    expect(plan().foot).toContain('house rules of 3\u00a0August 2026');
    const never = planDocument({ ...planFacts(), rules: PROGRAM_RULES });
    expect(never.foot).not.toMatch(/house rules/);
    expect(never.rulesFrom).toBeNull();
  });

  it.each([
    [49, '7\u00a0weeks'],
    [112, '16\u00a0weeks'],
  ])('starts on the day for one that goes at %i days', (age, first) => {
    const d = plan({ age });
    expect(rowsOf(d)[0]).toMatchObject({ age: first, fromDay: age });
    expect(fairText(d)).toMatch(/weighed today/);
    expect(d.byWeight.rows[0]?.age).toBe(first);
    expect(d.next?.weeks).toHaveLength(6);
  });

  it('fits the notes to the food: bone, thawing or soaking, greens', () => {
    const of = (food: Partial<Food>) => planDocument({ ...planFacts(), food: { ...DEFAULT_FOOD, ...food } });
    expect(noteText(plan(), 'bones')).toContain('the mix holds ground bone');
    expect(noteText(of({ bone: { share: 0, basis: 'wet' } }), 'bones')).toContain('holds no ground bone');
    expect(noteText(of({ bone: null }), 'bones')).toContain('nothing is known');
    const dried = of({ form: 'freeze-dried' });
    expect(dried.notes.find((n) => n.key === 'thawing')?.heading).toBe('Soaking and keeping');
    expect(noteText(dried, 'thawing')).toMatch(/never thaw on the counter.*24 hours \(UK, Ireland\), 48 at most \(US\)/);
    expect(noteText(of({ holdsVegetables: false }), 'water')).toContain('one tablespoon of chopped greens for each 225\u00a0g');
    expect(noteText(of({ holdsVegetables: true }), 'water')).not.toContain('greens');
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
