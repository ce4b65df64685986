/** Whose weight is it? The puppy in hand, a littermate not weighed yet, or one weighed before with which it changed places. */
import { describe, expect, it } from 'vitest';
import { fromLocalMinutes, localMinutes } from '../../../core/calendar/clock.ts';
import { assessLitter } from '../../../core/growth/assess.ts';
import { doubtAbout, expectedAt } from '../../../core/growth/doubt.ts';
import { make, SIX } from './make.ts';

const DAY = 86_400_000;
// Cedar is heavy, Dock light: nobody else is near either.
const WIDE = SIX.map((p) => (p.name === 'Dock' ? { ...p, birth: 300 } : p.name === 'Cedar' ? { ...p, birth: 540 } : p));
const input = make(WIDE, { days: 10 });
const last = input.readings.find((r) => r.id === 'r-Dock-10');
if (last === undefined) throw new Error('no reading');
const instant = last.instant + DAY;
const at = fromLocalMinutes(localMinutes(last.at) + 1440);
const of = (name: string) => Math.round(expectedAt(input, name, instant)?.grams ?? 0);

/** The round so far: these were weighed a minute ago. */
const roundWith = (weights: Readonly<Record<string, number>>) => ({
  ...input,
  readings: [
    ...input.readings,
    ...Object.entries(weights).map(([puppyId, grams], i) => ({
      ...last,
      id: `now-${puppyId}`,
      puppyId,
      grams,
      at,
      instant: instant - 60_000 * (i + 1),
    })),
  ],
});

describe('a number that fits a littermate not weighed yet', () => {
  it('asks for it by name, as data', () => {
    const doubt = doubtAbout(roundWith({ Ash: of('Ash') }), 'Dock', instant, at, of('Cedar') + 3);
    expect(doubt).toMatchObject({
      kind: 'other-puppy',
      question: 'littermate',
      littermate: { puppyId: 'Cedar', name: 'Cedar' },
      guessGrams: null,
    });
  });

  it('is not asked when that one was weighed already, nor when the number fits the puppy in hand', () => {
    const weighed = roundWith({ Cedar: of('Cedar') });
    expect(doubtAbout(weighed, 'Dock', instant, at, of('Cedar') + 3)?.littermate).toBeNull();
    expect(doubtAbout(roundWith({}), 'Dock', instant, at, of('Dock') + 4)).toBeNull();
  });

  it('is not asked when two fit', () => {
    const doubt = doubtAbout(roundWith({}), 'Dock', instant, at, of('Ash'));
    expect(doubt?.littermate ?? null).toBeNull();
  });

  it('a slip of the finger that fits the puppy in hand comes first', () => {
    expect(doubtAbout(roundWith({}), 'Dock', instant, at, of('Dock') * 10)?.kind).toBe('tenfold');
  });

  it('is named in the assessment too, when it is found out only there', () => {
    const swapped = make(WIDE, {
      days: 10,
      typed: (name, day, grams) =>
        day !== 10 ? grams : name === 'Cedar' ? null : name === 'Dock' ? Math.round(grams * 1.79) : grams,
    });
    const finding = assessLitter(swapped).findings.find((f) => f.readingId === 'r-Dock-10');
    expect(finding).toMatchObject({ kind: 'mistyped', guess: null, fits: { puppyId: 'Cedar', name: 'Cedar' } });
  });
});

describe('two that changed places in one round', () => {
  it('the second number is not questioned: the exchange is offered, which explains both', () => {
    const first = roundWith({ Cedar: of('Dock') });
    expect(doubtAbout(first, 'Dock', instant, at, of('Cedar'))).toBeNull();
    const both = { ...first, readings: [...first.readings, { ...last, id: 'now-Dock', grams: of('Cedar'), at, instant }] };
    expect(assessLitter(both).findings.map((f) => f.kind)).toEqual(['swap']);
  });
});

describe('a correction of an old day', () => {
  // Slow until day 8, then fast: what day 5 could be is told by both sides, not by where the puppy is now.
  const old = input.readings.find((r) => r.id === 'r-Ash-5');
  if (old === undefined) throw new Error('no reading');
  const without = { ...input, readings: input.readings.filter((r) => r.id !== old.id) };
  const ask = (grams: number) => doubtAbout(without, 'Ash', old.instant, old.at, grams);

  it('is judged by the readings on either side', () => {
    expect(ask(old.grams)).toBeNull();
    expect(Math.abs((expectedAt(without, 'Ash', old.instant)?.grams ?? 0) / old.grams - 1)).toBeLessThan(0.03);
    expect(ask(Math.round(old.grams * 1.2))?.kind).not.toBeUndefined();
    expect(ask(old.grams * 10)).toMatchObject({ kind: 'tenfold', guessGrams: old.grams });
  });

  it('what today weighs would be wrong on that day', () => {
    const today = input.readings.find((r) => r.id === 'r-Ash-10')?.grams ?? 0;
    expect(ask(today)).not.toBeNull();
  });

  it('both sides say it more sharply than one', () => {
    const width = (i: typeof input) => {
      const e = expectedAt(i, 'Ash', old.instant);
      return e === null ? Number.NaN : Math.log(e.high / e.low);
    };
    const before = { ...without, readings: without.readings.filter((r) => r.instant < old.instant) };
    expect(width(without)).toBeLessThan(width(before));
  });

  it('a birth weight is judged by the weights after it', () => {
    const birth = input.readings.find((r) => r.id === 'r-Ash-0');
    const none = { ...input, readings: input.readings.filter((r) => r.id !== 'r-Ash-0') };
    if (birth === undefined) throw new Error('no birth weight');
    const asked = (grams: number) => doubtAbout(none, 'Ash', birth.instant, birth.at, grams);
    expect(asked(birth.grams)).toBeNull();
    expect(asked(birth.grams * 2)).not.toBeNull();
  });
});
