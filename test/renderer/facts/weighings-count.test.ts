import { describe, expect, it } from 'vitest';
import { localTime } from '../../../core/calendar/clock.ts';
import type { GrowthInput, GrowthReading } from '../../../core/growth/input.ts';
import type { Session } from '../../../core/litter/litter.ts';
import { weighingsCount } from '../../../renderer/facts/weighings-count.ts';

const HOUR = 3_600_000;

function weight(hours: number, session: Session = 'morning', held = false, puppyId = 'a'): GrowthReading {
  const at = localTime('2026-03-02T08:00');
  return { id: `${puppyId}${hours}`, puppyId, at, instant: hours * HOUR, grams: 400, session, held, kept: false };
}
const of = (...readings: GrowthReading[]): GrowthInput => ({
  puppies: [],
  readings,
  scaleStepGrams: 1,
  sizeClass: null,
  unit: 'g',
});

describe('how much is known of a puppy', () => {
  it('is nothing without a weight of its own, or with one in question only', () => {
    expect(weighingsCount(of(), 'a')).toBe('none');
    expect(weighingsCount(of(weight(8, 'morning', false, 'b')), 'a')).toBe('none');
    expect(weighingsCount(of(weight(8, 'morning', true)), 'a')).toBe('none');
  });

  it('is one weight until the second that counts', () => {
    expect(weighingsCount(of(weight(8)), 'a')).toBe('once');
    expect(weighingsCount(of(weight(0, 'birth')), 'a')).toBe('once');
    expect(weighingsCount(of(weight(8), weight(20, 'evening', true)), 'a')).toBe('once');
    expect(weighingsCount(of(weight(8), weight(20, 'evening')), 'a')).toBe('more');
  });

  it('takes a birth weight for a first one in the first days, not weeks later', () => {
    expect(weighingsCount(of(weight(0, 'birth'), weight(12)), 'a')).toBe('more');
    expect(weighingsCount(of(weight(0, 'birth'), weight(55 * 24)), 'a')).toBe('once');
    expect(weighingsCount(of(weight(0, 'birth'), weight(55 * 24), weight(56 * 24)), 'a')).toBe('more');
  });
});
