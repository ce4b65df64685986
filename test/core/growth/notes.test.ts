/** Birth weights, milestones and the quiet record, against published figures and one real litter. */
import { describe, expect, test } from 'vitest';
import { localTime } from '../../../core/calendar/clock.ts';
import { veryLowBelow } from '../../../core/growth/birth-class.ts';
import { birthNote } from '../../../core/growth/birth-note.ts';
import { levelChanges } from '../../../core/growth/level-changes.ts';
import { milestonesOf } from '../../../core/growth/milestones.ts';
import { seriesOf } from '../../../core/growth/series.ts';
import { BREED_BIRTH_WEIGHTS } from '../../../core/reference/growth/birth-weight.ts';
import { growthFindingWords as say } from '../../../core/words/en/growth-findings.ts';
import { birthHow } from '../../../core/words/en/puppy-notes.ts';
import { TYHURST } from '../../fixtures/tyhurst-litter.ts';
import { make, SIX, sixWith } from './make.ts';

describe('birth weight', () => {
  // Mugnier et al. 2020, tables 1 and 2, seen: the thresholds of each breed and the deaths under them.
  test.each(BREED_BIRTH_WEIGHTS.map((b) => [b.breed, b] as const))('%s by its own thresholds', (name, b) => {
    expect(birthNote(name.toLowerCase(), null, b.lowBelow, [])).toMatchObject({ by: 'breed', is: 'normal', deaths: b.deaths[0] });
    expect(birthNote(name, null, b.veryLowBelow, [])).toMatchObject({ is: 'low', deaths: b.deaths[1] });
    expect(birthNote(name, null, b.veryLowBelow - 1, [])).toMatchObject({ is: 'very-low', deaths: b.deaths[2] });
  });

  test('an unlisted breed by two thirds of what its breeder wrote, before a small study and before its litter', () => {
    expect(birthNote('Mudi', 240, 159.9, [])).toMatchObject({
      by: 'mean',
      is: 'very-low',
      cutOff: { by: 'given', below: 160, mean: 240 },
    });
    expect(birthNote('Mudi', 240, 160, [300, 310, 290])).toMatchObject({ by: 'mean', is: 'normal' });
    expect(birthNote('Toy Poodle', 180, 119, [])).toMatchObject({ is: 'very-low', cutOff: { by: 'given', below: 120 } });
  });

  test('what was written never stands over the published threshold of a breed', () => {
    expect(birthNote('Maltese', 300, 116, [])).toMatchObject({ by: 'breed', is: 'low' });
    expect(veryLowBelow('Maltese', 300)).toMatchObject({ by: 'thresholds', below: 115.5, mean: 161.9 });
  });

  // Bawaskar et al. 2018 and Menchetti et al. 2020, seen: the means only; the names are as people write them.
  test.each([
    ['pug', 152.5],
    ['Spitz', 186.9],
    ['St. Bernard', 462],
    ['saint bernard', 462],
    ['Great Dane', 456.7],
    ['Doberman', 525],
    ['Poodle (Toy)', 154],
  ] as const)('%s by two thirds of the mean of a small study', (name, mean) => {
    const cutOff = veryLowBelow(name, null);
    expect(cutOff).toMatchObject({ by: 'small-study', mean });
    expect(cutOff?.below).toBeCloseTo(mean * 0.66667, 2);
  });

  test.each(['', 'Mudi', 'German Spitz', 'Standard Poodle'])('%j without a figure: nothing is known', (name) => {
    expect(veryLowBelow(name, null)).toBeNull();
  });

  test('the explanation says where the figure is from, and tells no deaths', () => {
    const how = (breed: string, given: number | null) => {
      const note = birthNote(breed, given, 90, []);
      return note === null ? '' : birthHow(note, 'g').replaceAll('\u00a0', ' ');
    };
    expect(how('Mudi', 240)).toMatch(/^You wrote 240 g as the usual birth weight of the breed; two thirds of it is 160 g\./);
    expect(how('Pug', null)).toContain('small study');
    expect(how('Pug', null)).toContain('Bawaskar et al. 2018, Indian Journal of Canine Practice 10:123');
    for (const text of [how('Mudi', 240), how('Pug', null)]) {
      expect(text).toContain('(Mugnier et al. 2020; computed)');
      expect(text).not.toMatch(/died|death|lost/);
    }
  });

  test('an unlisted breed by two thirds of its litter, and not at all with fewer than three', () => {
    const litter = [300, 310, 290, 300];
    expect(birthNote('Mudi', null, 199, litter)).toMatchObject({ by: 'litter', is: 'very-low', meanGrams: 300, under: 200 });
    expect(birthNote('Mudi', null, 200, litter)).toMatchObject({ is: 'normal' });
    expect(birthNote('', null, 100, [100, 300])).toBeNull();
  });
});

describe('milestones', () => {
  // Computed from all 45 weighings of the litter.
  test.each(TYHURST.names.map((name, i) => [name, i] as const))(
    '%s of a real litter doubled and tripled as published',
    (_, i) => {
      const series = TYHURST.ounces
        .filter(({ weights }) => weights[i] !== null)
        .map(({ day, weights }) => ({
          instant: day * 86_400_000,
          at: localTime(`2019-03-${String(Math.min(31, day)).padStart(2, '0')}T07:00`),
          // Weighed first on day 1, taken as its birth weight as in the publication.
          ageDays: day === 1 ? 0 : day,
          grams: weights[i] ?? Number.NaN,
          readingId: `${day}`,
        }));
      const [double, triple] = milestonesOf(series);
      expect([double?.day, triple?.day]).toEqual([TYHURST.doublingDays[i], TYHURST.triplingDays[i]]);
    },
  );

  test('none without a weight at birth', () => {
    const litter = make(SIX, { days: 20, typed: (name, day, grams) => (name === 'Ash' && day === 0 ? null : grams) });
    expect(milestonesOf(seriesOf(litter, 'Ash'))).toEqual([]);
    expect(milestonesOf(seriesOf(litter, 'Briar')).map((m) => m.times)).toEqual([2, 3]);
  });
});

describe('what was seen', () => {
  test('a fading puppy: each change of level once, in order, with what was said then; its littermates nothing', () => {
    const litter = make(sixWith('Dock', { drift: (age) => (age < 6 ? 0 : -0.06 * (age - 6)) }), { days: 10 });
    const seen = levelChanges(litter, 'Dock').flatMap((s) => (s.about === 'puppy' ? [s] : []));
    expect(seen.length).toBeGreaterThan(0);
    expect(seen.at(-1)?.level).toBe('act');
    expect(seen.every((s) => /\d+ g a day|losing|No gain/.test(say.puppy(s.finding, 'g').replaceAll('\u00a0', ' ')))).toBe(true);
    expect(seen.map((s) => s.at)).toEqual(seen.map((s) => s.at).toSorted());
    expect(new Set(seen.map((s, i) => `${s.level}${i}`)).size).toBe(seen.length);
    seen.slice(1).forEach((s, i) => {
      expect(s.level).not.toBe(seen[i]?.level);
    });
    expect(levelChanges(litter, 'Briar').filter((s) => s.about === 'puppy')).toEqual([]);
  });

  test('it never looks ahead: cut at a session, the record is the beginning of the whole one', () => {
    const litter = make(sixWith('Dock', { drift: (age) => (age < 6 ? 0 : -0.06 * (age - 6)) }), { days: 10 });
    const whole = levelChanges(litter, 'Dock');
    const day8 = (litter.puppies[0]?.bornInstant ?? 0) + 8.5 * 86_400_000;
    const cut = levelChanges({ ...litter, readings: litter.readings.filter((r) => r.instant < day8) }, 'Dock');
    expect(cut).toEqual(whole.slice(0, cut.length));
  });
});
