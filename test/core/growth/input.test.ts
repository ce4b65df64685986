import { describe, expect, it } from 'vitest';
import { addDays } from '../../../core/calendar/day.ts';
import { doubtAbout, expectedAt } from '../../../core/growth/doubt.ts';
import { growthInputOf } from '../../../core/growth/input.ts';
import { seriesOf } from '../../../core/growth/series.ts';
import { GRAMS_PER_OUNCE } from '../../../core/units/mass.ts';
import { BORN, planFacts } from '../homing/facts.ts';

describe('what growth is reckoned from', () => {
  const home = planFacts({ age: 40, puppy: { state: 'home', stateOn: addDays(BORN, 30) } });

  it('leaves out weights of after a puppy went home, but for the one that is looked at where it lives now', () => {
    expect(seriesOf(growthInputOf(home), home.puppy.id)).toHaveLength(31);
    expect(seriesOf(growthInputOf(home, { atHomeToo: home.puppy.id }), home.puppy.id)).toHaveLength(41);
    expect(seriesOf(growthInputOf(home, { until: addDays(BORN, 20) }), home.puppy.id)).toHaveLength(21);
  });

  it('carries the unit of the house: a slip is looked for in the figures as an ounce house types them', () => {
    const ask = (massUnit: 'g' | 'oz') => {
      const { puppy, ...facts } = planFacts({ age: 10, house: { massUnit } });
      const input = growthInputOf(facts);
      expect(input.unit).toBe(massUnit);
      const last = input.readings.filter((r) => r.puppyId === puppy.id).at(-1) ?? expect.fail('never weighed');
      const instant = last.instant + 86_400_000;
      const ounces = ((expectedAt(input, puppy.id, instant)?.grams ?? 0) / GRAMS_PER_OUNCE).toFixed(1);
      const typed = Number(`${ounces[1]}${ounces[0]}${ounces.slice(2)}`) * GRAMS_PER_OUNCE;
      return doubtAbout(input, puppy.id, instant, last.at, typed)?.kind;
    };
    expect(ask('oz')).toBe('digits');
    expect(ask('g')).not.toBe('digits');
  });
});
