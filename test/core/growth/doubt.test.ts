import { describe, expect, it } from 'vitest';
import { fromLocalMinutes, localMinutes } from '../../../core/calendar/clock.ts';
import { type Doubt, doubtAbout, expectedAt } from '../../../core/growth/doubt.ts';
import { parseMass } from '../../../core/units/mass.ts';
import { growthFindingWords as say } from '../../../core/words/en/growth-findings.ts';
import { make, SIX } from './make.ts';

const input = make(SIX, { days: 20 });
const last = input.readings.find((r) => r.id === 'r-Ash-20');
if (last === undefined) throw new Error('no reading');
const instant = last.instant + 86_400_000;
const at = fromLocalMinutes(localMinutes(last.at) + 1440);
const expected = expectedAt(input, 'Ash', instant)?.grams ?? 0;
const ask = (grams: number, unit?: 'g' | 'kg' | 'oz') => doubtAbout(input, 'Ash', instant, at, grams, unit);
const fact = (doubt: Doubt | null, unit: 'g' | 'oz' = 'g') =>
  doubt === null ? undefined : say.oddity(doubt.fact, unit).replaceAll('\u00a0', ' ');

describe('a doubtful weight', () => {
  it('is not doubted inside what a puppy can weigh', () => {
    expect(ask(Math.round(expected))).toBeNull();
    expect(ask(Math.round(expected * 1.06))).toBeNull();
    expect(ask(last.grams)).toBeNull();
  });

  it('a fading puppy is not questioned away', () => {
    expect(ask(Math.round(last.grams * 0.95))).toBeNull();
  });

  it('a tenth, ten times, kilograms', () => {
    const whole = Math.round(expected);
    const tenth = ask(Math.round(whole / 10));
    expect(tenth?.kind).toBe('tenth');
    expect(fact(tenth)).toMatch(/^A tenth of yesterday’s 1 \d{3} g\.$/);
    expect(Math.abs((tenth?.guessGrams ?? 0) - whole)).toBeLessThan(10);
    expect(ask(whole * 10)?.kind).toBe('tenfold');
    expect(ask(whole * 10)?.guessGrams).toBe(whole);
    expect(ask(Math.round(whole / 100) / 10)?.kind).toBe('kilo');
  });

  it.each(['0.545', '0,545'])('%s is 545 g in grams, and the guess where the scale shows another unit', (text) => {
    const small = make(
      SIX.map((p) => ({ ...p, birth: 300 })),
      { days: 6 },
    );
    const before = small.readings.find((r) => r.id === 'r-Ash-6');
    if (before === undefined) throw new Error('no reading');
    const then = before.instant + 86_400_000;
    const awaited = expectedAt(small, 'Ash', then)?.grams ?? 0;
    const meant = text.replace('545', String(Math.round(awaited)));
    const asked = (unit: 'g' | 'kg' | 'oz' | 'lb' | 'lboz') => {
      const read = parseMass(meant, unit);
      if (!read.ok) throw new Error(`${meant} in ${unit}: ${read.fault.code}`);
      return doubtAbout(small, 'Ash', then, at, read.exact, unit)?.guessGrams ?? null;
    };
    expect([asked('g'), asked('kg'), asked('oz'), asked('lb'), asked('lboz')]).toEqual([
      Math.round(awaited),
      null,
      Math.round(awaited),
      Math.round(awaited),
      Math.round(awaited),
    ]);
  });

  it('two figures that changed places', () => {
    const heavy = make(
      SIX.map((p) => ({ ...p, birth: 500 })),
      { days: 20, typed: (name, day, grams) => (day === 20 && name === 'Ash' ? 1788 : grams) },
    );
    const e = expectedAt(heavy, 'Ash', instant)?.grams ?? 0;
    const meant = Math.floor(e / 10) * 10 + 9;
    const text = String(meant);
    const typed = Number(text.charAt(0) + text.charAt(2) + text.charAt(1) + text.charAt(3));
    const doubt = doubtAbout(heavy, 'Ash', instant, at, typed);
    if (Math.abs(Math.log(typed / e)) > 0.25) expect([doubt?.kind, doubt?.guessGrams]).toEqual(['digits', meant]);
  });

  it('says how far off when no slip explains it', () => {
    const doubt = ask(Math.round(last.grams * 1.37));
    expect(doubt?.kind === 'too-high' || doubt?.kind === 'digits').toBe(true);
    expect(fact(doubt)).toMatch(/^\d{3} g more than yesterday\.$/);
  });

  it('speaks in the unit of the scale', () => {
    expect(fact(ask(Math.round(expected / 10), 'oz'), 'oz')).toMatch(/^A tenth of yesterday’s \d+\.\d oz\.$/);
  });

  it('a first weight is only doubted outside 50 to 1200 g', () => {
    const empty = { ...input, readings: [] };
    const born = input.puppies[0]?.bornInstant ?? 0;
    for (const grams of [50, 180, 560, 1200]) expect(doubtAbout(empty, 'Ash', born, at, grams)).toBeNull();
    expect(doubtAbout(empty, 'Ash', born, at, 1201)?.kind).toBe('too-high');
    expect(doubtAbout(empty, 'Ash', born, at, 49)?.kind).toBe('too-low');
    expect(doubtAbout(empty, 'Ash', born, at, 0.4)?.guessGrams).toBe(400);
  });
});
