import { describe, expect, it } from 'vitest';
import { type Assessment, assessLitter, type LitterGrowth } from '../../../core/growth/assess.ts';
import type { GrowthInput } from '../../../core/growth/input.ts';
import { growthFindingWords as say } from '../../../core/words/en/growth-findings.ts';
import { make, SIX, sixWith } from './make.ts';

const sentence = (a: Assessment | undefined) => (a === undefined ? undefined : say.puppy(a.finding, 'g'));
const litterSentence = (growth: LitterGrowth | undefined) =>
  growth === undefined ? undefined : say.litter(growth.litter.finding, 'g');

/** What was said after each day. */
function daily(input: GrowthInput, days: number): LitterGrowth[] {
  const born = input.puppies[0]?.bornInstant ?? 0;
  return Array.from({ length: days + 1 }, (_, day) =>
    assessLitter({ ...input, readings: input.readings.filter((r) => r.instant < born + day * 86_400_000 + 5 * 3_600_000) }),
  );
}

const levelOn = (all: readonly LitterGrowth[], day: number, name: string) => all[day]?.puppies.get(name)?.level;

describe('a litter that grows as it should', () => {
  it('flags nobody in eight weeks', () => {
    const all = daily(make(SIX, { days: 56 }), 56);
    for (const growth of all) {
      expect([...growth.puppies.values()].map((a) => a.level)).toEqual(SIX.map(() => 'steady'));
      expect(growth.litter.level).toBe('steady');
      expect(growth.findings).toEqual([]);
    }
  });

  it('says what each gained and where it stands', () => {
    const fern = assessLitter(make(SIX, { days: 9 })).puppies.get('Fern');
    expect(fern?.grams).toBeGreaterThan(700);
    expect(Math.abs(fern?.standing ?? 1)).toBeLessThan(0.05);
    expect(fern?.gain?.hours).toBeCloseTo(24, 0);
    expect(fern?.gain?.percent).toBeGreaterThan(4);
    expect(fern?.expectedNext).toBeGreaterThan(fern?.grams ?? 0);
    expect(fern?.todo).toEqual([]);
  });
});

describe('a fading newborn', () => {
  // From day 5 it gains nothing and then loses.
  const fading = make(sixWith('Dock', { drift: (age) => (age < 5 ? 0 : -0.12 * (age - 5)) }), { days: 12, perDay: 2 });
  const all = daily(fading, 12);

  it('is seen within two days, and the litter is not', () => {
    expect(levelOn(all, 5, 'Dock')).toBe('steady');
    expect(['watch', 'act']).toContain(levelOn(all, 7, 'Dock'));
    expect(levelOn(all, 8, 'Dock')).toBe('act');
    for (const growth of all) {
      expect([...growth.puppies.values()].filter((a) => a.puppyId !== 'Dock').every((a) => a.level === 'steady')).toBe(true);
      expect(growth.litter.level).toBe('steady');
    }
  });

  it('says since when, how much, what to do, and ends with the vet', () => {
    const dock = all[8]?.puppies.get('Dock');
    expect(dock?.since?.slice(0, 10)).toMatch(/2026-03-0[678]/);
    expect(sentence(dock)).toMatch(/^Since |^No gain since /);
    const todo = dock?.todo.map((t) => say.todo(t, 'dog')) ?? [];
    expect(todo[0]).toContain('Check the number');
    expect(todo.join(' ')).toContain('him');
    expect(todo.at(-1)).toMatch(/vet/);
    expect(dock?.weighAgainHours).toBe(6);
    expect(dock?.shortfall).toBeGreaterThan(0.5);
  });
});

describe('a puppy that is small but steady', () => {
  const input = make(sixWith('Fern', { birth: 270 }), { days: 42 });
  it('is never flagged, and is said to have kept its place', () => {
    for (const growth of daily(input, 42)) expect(growth.puppies.get('Fern')?.level).toBe('steady');
    const nine = daily(input, 9)[9]?.puppies.get('Fern');
    expect(sentence(nine)).toBe('Fern is the smallest and has kept her place for nine days.');
    expect(nine?.standing).toBeLessThan(-0.25);
  });
});

describe('a litter that is slow together', () => {
  it('points at the dam and not at the puppies', () => {
    const all = daily(
      make(
        SIX.map((p) => ({ ...p, drift: (age: number) => (age < 6 ? 0 : -0.06 * (age - 6)) })),
        { days: 12, perDay: 2 },
      ),
      12,
    );
    expect(all[12]?.litter.level).toBe('act');
    expect(litterSentence(all[12])).toMatch(/^The whole litter/);
    const todo = all[12]?.litter.todo.map((t) => say.litterTodo(t)) ?? [];
    expect(todo[0]).toMatch(/^Look at the dam first/);
    expect(todo.at(-1)).toMatch(/vet/);
    expect([...(all[12]?.puppies.values() ?? [])].filter((a) => a.level === 'act')).toEqual([]);
  });
});

describe('litters of one and two', () => {
  it('a singleton that fades is seen against the reference', () => {
    const one = make([{ name: 'Solo', birth: 400, sex: 'bitch', drift: (age) => (age < 6 ? 0 : -0.12 * (age - 6)) }], {
      days: 12,
      perDay: 2,
    });
    const all = daily(one, 12);
    expect(levelOn(all, 6, 'Solo')).toBe('steady');
    expect(levelOn(all, 9, 'Solo')).toBe('act');
    expect(all[9]?.puppies.get('Solo')?.standing).toBeNull();
  });

  it('a healthy singleton and a healthy pair stay steady', () => {
    for (const puppies of [SIX.slice(0, 1), SIX.slice(0, 2)]) {
      for (const growth of daily(make(puppies, { days: 40 }), 40)) {
        expect([...growth.puppies.values()].every((a) => a.level === 'steady')).toBe(true);
        expect(growth.litter.level).toBe('steady');
      }
    }
  });
});

describe('the first days', () => {
  it('10 % under birth weight at two days is act at once', () => {
    const all = daily(
      make(SIX, {
        days: 3,
        typed: (name, day, grams) => (name === 'Ash' && day === 2 ? 369 : name === 'Ash' && day === 1 ? 385 : grams),
      }),
      2,
    );
    expect(levelOn(all, 2, 'Ash')).toBe('act');
    expect(sentence(all[2]?.puppies.get('Ash'))?.replaceAll('\u00a0', ' ')).toMatch(
      /10 % under the birth weight of 410 g|Since /,
    );
  });
});

describe('a puppy that is no longer there', () => {
  it('is not flagged for missing weights, and the others go on', () => {
    const growth = assessLitter(
      make(sixWith('Elder', { endsDay: 8, drift: (age) => (age < 5 ? 0 : -0.12 * (age - 5)) }), { days: 20 }),
    );
    expect(growth.puppies.get('Elder')?.level).toBe('steady');
    expect(growth.puppies.get('Elder')?.todo).toEqual([]);
    expect(growth.puppies.get('Ash')?.level).toBe('steady');
  });
});

describe('nothing yet', () => {
  it('answers for every puppy without a weight', () => {
    const growth = assessLitter({ ...make(SIX, { days: 0 }), readings: [] });
    expect(growth.puppies.size).toBe(6);
    expect(sentence(growth.puppies.get('Ash'))).toBe('Not weighed yet.');
    expect(growth.medianGrams).toBeNull();
  });
});
