import { describe, expect, it } from 'vitest';
import { localTime } from '../../../core/calendar/clock.ts';
import { assessLitter } from '../../../core/growth/assess.ts';
import { bandOf, gainsOf, seriesOf, standingsOf } from '../../../core/growth/series.ts';
import { GRAMS_PER_OUNCE, toGrams } from '../../../core/units/mass.ts';
import { growthFindingWords as say } from '../../../core/words/en/growth-findings.ts';
import { make, SIX } from './make.ts';

const swapped = (day: number, a: string, b: string, days: number) => {
  const plain = make(SIX, { days });
  const grams = (name: string) => plain.readings.find((r) => r.id === `r-${name}-${day}`)?.grams ?? 0;
  return make(SIX, {
    days,
    typed: (name, d, g) => (d === day && name === a ? grams(b) : d === day && name === b ? grams(a) : g),
  });
};

describe('two puppies exchanged', () => {
  const wide = SIX.map((p) => (p.name === 'Dock' ? { ...p, birth: 320 } : p));
  const plain = make(wide, { days: 10 });
  const of = (name: string) => plain.readings.find((r) => r.id === `r-${name}-10`)?.grams ?? 0;
  const input = make(wide, {
    days: 10,
    typed: (n, d, g) => (d !== 10 ? g : n === 'Dock' ? of('Cedar') : n === 'Cedar' ? of('Dock') : g),
  });

  it('are named, both flagged as readings and not as puppies', () => {
    const growth = assessLitter(input);
    expect(growth.findings).toHaveLength(1);
    const finding = growth.findings[0];
    expect(finding?.kind).toBe('swap');
    expect([finding?.puppyId, finding?.withPuppyId].sort()).toEqual(['Cedar', 'Dock']);
    expect(finding === undefined ? '' : say.reading(finding, 'g')).toContain('Cedar and Dock may have changed places');
    expect([...growth.puppies.values()].every((a) => a.level === 'steady')).toBe(true);
  });

  it('count exchanged until somebody says they are right', () => {
    expect(seriesOf(input, 'Dock').at(-1)?.grams).toBe(of('Dock'));
    const kept = { ...input, readings: input.readings.map((r) => (r.id.endsWith('-10') ? { ...r, kept: true } : r)) };
    expect(assessLitter(kept).findings).toEqual([]);
    expect(seriesOf(kept, 'Dock').at(-1)?.grams).toBe(of('Cedar'));
  });

  it('are not invented when two weights were close', () => {
    expect(assessLitter(swapped(8, 'Ash', 'Fern', 9)).findings).toEqual([]);
  });
});

describe('a mistyped weight of a house that weighs in ounces', () => {
  it('is guessed from the ounces that were typed, not from their grams', () => {
    const ounces = (grams: number) => (Math.round((grams / GRAMS_PER_OUNCE) * 10) / 10).toFixed(1);
    const grams = (text: string) => toGrams(Number(text) * GRAMS_PER_OUNCE);
    const input = make(SIX, {
      days: 11,
      typed: (name, day, g) => {
        const text = ounces(g);
        if (name !== 'Briar' || day !== 9) return grams(text);
        return grams(text.charAt(1) + text.charAt(0) + text.slice(2));
      },
    });
    const right = ounces(make(SIX, { days: 11 }).readings.find((r) => r.id === 'r-Briar-9')?.grams ?? 0);
    const found = assessLitter({ ...input, readings: input.readings.map((r) => ({ ...r, unit: 'oz' as const })) }).findings;
    expect(found.map((f) => [f.readingId, f.kind, ounces(f.guessGrams ?? 0)])).toEqual([['r-Briar-9', 'mistyped', right]]);
  });
});

describe('a mistyped weight', () => {
  const input = make(SIX, {
    days: 11,
    typed: (name, day, grams) => (name === 'Briar' && day === 9 ? Math.round(grams / 10) : grams),
  });

  it('is held out, with a guess, and accuses nobody', () => {
    const growth = assessLitter(input);
    const right = make(SIX, { days: 11 }).readings.find((r) => r.id === 'r-Briar-9')?.grams ?? 0;
    expect(growth.findings.map((f) => [f.readingId, f.kind])).toEqual([['r-Briar-9', 'mistyped']]);
    expect(Math.abs((growth.findings[0]?.guessGrams ?? 0) - right)).toBeLessThan(10);
    expect(seriesOf(input, 'Briar').some((p) => p.readingId === 'r-Briar-9')).toBe(false);
    expect(growth.puppies.get('Briar')?.level).toBe('steady');
  });

  it('counts again when the next weight agrees with it', () => {
    const lasting = make(SIX, {
      days: 11,
      typed: (name, day, grams) => (name === 'Briar' && day >= 9 ? Math.round(grams * 0.6) : grams),
    });
    const growth = assessLitter(lasting);
    expect(growth.findings).toEqual([]);
    expect(growth.puppies.get('Briar')?.level).toBe('act');
  });

  it('is never held out again once it is kept', () => {
    const kept = { ...input, readings: input.readings.map((r) => (r.id === 'r-Briar-9' ? { ...r, kept: true } : r)) };
    expect(assessLitter(kept).findings.filter((f) => f.readingId === 'r-Briar-9')).toEqual([]);
    expect(seriesOf(kept, 'Briar').some((p) => p.readingId === 'r-Briar-9')).toBe(true);
  });

  it('a held reading stays out until it is answered', () => {
    const held = make(SIX, { days: 10, held: (name, day) => name === 'Fern' && day === 10 });
    expect(seriesOf(held, 'Fern').at(-1)?.readingId).toBe('r-Fern-9');
    expect(assessLitter(held).findings.map((f) => f.readingId)).toEqual(['r-Fern-10']);
  });
});

describe('a scale that was wrong once', () => {
  const input = make(SIX, { days: 14, typed: (_name, day, grams) => (day === 12 ? Math.round(grams * 1.15) : grams) });
  it('is one finding for the session; no puppy and no litter is flagged', () => {
    const growth = assessLitter(input);
    expect(growth.findings.map((f) => f.kind)).toEqual(['scale']);
    expect(growth.litter.level).toBe('steady');
    expect([...growth.puppies.values()].every((a) => a.level === 'steady')).toBe(true);
    expect(seriesOf(input, 'Ash').some((p) => p.ageDays > 11.5 && p.ageDays < 12.5)).toBe(false);
  });
});

describe('series', () => {
  const input = make(SIX, { days: 6 });
  it('gives gains per 24 hours, whatever the hours between', () => {
    const series = seriesOf(input, 'Ash');
    expect(series).toHaveLength(7);
    const gains = gainsOf([
      { instant: 0, at: series[0]?.at ?? localTime('2026-03-01T06:00'), ageDays: 0, grams: 400, readingId: 'a' },
      { instant: 12 * 3_600_000, at: series[1]?.at ?? localTime('2026-03-02T06:00'), ageDays: 0.5, grams: 420, readingId: 'b' },
    ]);
    expect(gains[0]?.gramsPerDay).toBeCloseTo(40, 6);
    expect(gains[0]?.percentPerDay).toBeCloseTo(10.25, 6);
  });

  it('the band leaves the puppy itself out; the standing is ln of weight over its littermates', () => {
    const band = bandOf(input, 'Cedar');
    const birth = band[0];
    expect([birth?.low, birth?.median, birth?.high]).toEqual([380, 402, 418]);
    expect(standingsOf(input, 'Cedar')[0]?.standing).toBeCloseTo(Math.log(430 / 402), 9);
  });
});
