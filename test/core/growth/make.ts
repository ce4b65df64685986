/** Small hand-made litters for tests: weights at 07:00, days after a birth at 05:00. */
import { fromLocalMinutes, localMinutes, localTime } from '../../../core/calendar/clock.ts';
import type { GrowthInput, GrowthPuppy, GrowthReading } from '../../../core/growth/input.ts';
import { referenceGain } from '../../../core/growth/reference-gain.ts';

const BORN = localMinutes(localTime('2026-03-02T05:00'));

export interface MadePuppy {
  readonly name: string;
  readonly birth: number;
  /** ln grams over the reference at an age in days; 0 when left out. */
  readonly drift?: (ageDays: number) => number;
  readonly sex?: 'dog' | 'bitch';
  readonly endsDay?: number;
}

export interface MadeLitter {
  readonly days: number;
  readonly perDay?: 1 | 2;
  /** Last word on a weight: the grams typed, or null for none. */
  readonly typed?: (name: string, day: number, grams: number) => number | null;
  readonly held?: (name: string, day: number) => boolean;
  readonly kept?: (name: string, day: number) => boolean;
}

export function make(puppies: readonly MadePuppy[], litter: MadeLitter): GrowthInput {
  const bornInstant = BORN * 60_000;
  const middle = [...puppies].map((p) => p.birth).sort((a, b) => a - b)[puppies.length >> 1] ?? 400;
  const reference = referenceGain(middle);
  const readings: GrowthReading[] = [];
  const step = litter.perDay === 2 ? 0.5 : 1;
  for (let day = 0; day <= litter.days; day += step) {
    puppies.forEach((p, i) => {
      if (p.endsDay !== undefined && day > p.endsDay) return;
      const minutes = BORN + day * 1440 + (day === 0 ? 0 : 120) + i;
      const age = (minutes - BORN) / 1440;
      // A feed more or less, the same each time the tests run.
      const feed = day === 0 ? 0 : 0.012 * Math.sin(day * 7.1 + i * 2.3);
      const grams = Math.round(p.birth * Math.exp(reference.since(age) + (p.drift?.(age) ?? 0) + feed));
      const typed = litter.typed === undefined ? grams : litter.typed(p.name, day, grams);
      if (typed === null) return;
      readings.push({
        id: `r-${p.name}-${day}`,
        puppyId: p.name,
        at: fromLocalMinutes(minutes),
        instant: minutes * 60_000,
        grams: typed,
        session: day === 0 ? 'birth' : day % 1 === 0 ? 'morning' : 'evening',
        held: litter.held?.(p.name, day) ?? false,
        kept: litter.kept?.(p.name, day) ?? false,
      });
    });
  }
  return {
    puppies: puppies.map(
      (p): GrowthPuppy => ({
        id: p.name,
        name: p.name,
        sex: p.sex ?? 'bitch',
        bornInstant,
        endsInstant: p.endsDay === undefined ? null : (BORN + p.endsDay * 1440 + 600) * 60_000,
        state: p.endsDay === undefined ? 'litter' : 'died',
      }),
    ),
    readings,
    scaleStepGrams: 1,
    sizeClass: 'medium',
    unit: 'g',
  };
}

export const SIX: readonly MadePuppy[] = [
  { name: 'Ash', birth: 410 },
  { name: 'Briar', birth: 395 },
  { name: 'Cedar', birth: 430, sex: 'dog' },
  { name: 'Dock', birth: 380, sex: 'dog' },
  { name: 'Elder', birth: 418 },
  { name: 'Fern', birth: 402 },
];

/** The six with one of them changed. */
export function sixWith(name: string, change: Partial<MadePuppy>): MadePuppy[] {
  return SIX.map((p) => (p.name === name ? { ...p, ...change } : p));
}
