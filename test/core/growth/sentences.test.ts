/** What is said beside the numbers it is said of: nothing reassures falsely. */
import { describe, expect, it } from 'vitest';
import { assessLitter, growthAt } from '../../../core/growth/assess.ts';
import { historyOf } from '../../../core/growth/history.ts';
import type { GrowthInput } from '../../../core/growth/input.ts';
import { growthFindingWords as say } from '../../../core/words/en/growth-findings.ts';
import { KINDS, simulate } from '../../growth-sim/simulate.ts';
import { make, sixWith } from './make.ts';

const plain = (text: string) => text.replaceAll('\u00a0', ' ');

/** Everything that was said of puppies and litter, weighing by weighing, with the weights it was said of. */
function said(input: GrowthInput) {
  return historyOf(input).flatMap((known) => {
    const growth = growthAt(input, known);
    const rows = known.cleaned.sessions.at(-1)?.rows ?? [];
    return rows.flatMap((row) => {
      const a = growth.puppies.get(row.puppy.id);
      if (a === undefined || row.used === null) return [];
      const own = known.cleaned.sessions.flatMap((s) =>
        s.rows.flatMap((r) => (r.index === row.index && r.used !== null ? [r.used] : [])),
      );
      return [{ a, growth, own, wasFlagged: known.puppies[row.index]?.wasFlagged ?? false }];
    });
  });
}

describe('sentences beside their numbers', () => {
  const all = KINDS.flatMap((kind, i) => [1, 2].flatMap((n) => said(simulate(kind, 8100 + 10 * i + n, { days: 35 }).input)));

  it('"gaining again" needs a last interval that gains, and something said before', () => {
    const again = all.filter(({ a }) => a.finding.code === 'gaining-again');
    expect(again.length).toBeGreaterThan(0);
    for (const { a, own, wasFlagged } of again) {
      expect((own.at(-1) ?? 0) - (own.at(-2) ?? 0)).toBeGreaterThan(0);
      if (a.finding.code === 'gaining-again' && 'actual' in a.finding) expect(a.finding.actual).toBeGreaterThan(0);
      expect(wasFlagged).toBe(true);
    }
  });

  it('never "instead of 0", and a loss over hours is grams lost', () => {
    const troubled = all.filter(({ a }) => a.level !== 'steady');
    expect(troubled.length).toBeGreaterThan(100);
    for (const { a } of troubled) {
      const text = plain(say.puppy(a.finding, 'g'));
      expect(text).not.toMatch(/instead of (gaining )?0\b|; 0 g a day was expected/);
      if (a.finding.code === 'losing') {
        expect(Date.parse(`${a.finding.at}Z`) - Date.parse(`${a.finding.since}Z`)).toBeGreaterThan(17 * 3_600_000);
      }
    }
  });

  it('a whole litter is told only from a fifth less gain on', () => {
    const litters = all.map(({ growth }) => growth.litter).filter((l) => l.level !== 'steady');
    expect(litters.length).toBeGreaterThan(10);
    for (const { finding } of litters) {
      if (finding.code === 'gain-short') expect(finding.actual / finding.expected).toBeLessThanOrEqual(0.8);
    }
  });

  it('the late starter comes after the vet', () => {
    for (const { a } of all) {
      const late = a.todo.indexOf('may-be-late');
      if (late < 0) continue;
      expect(a.todo[late - 1]).toMatch(/^call-vet/);
    }
    expect(all.some(({ a }) => a.todo.includes('may-be-late'))).toBe(true);
  });
});

describe('378 g, then 341 g', () => {
  it('is no gain', () => {
    const input = make(sixWith('Dock', { birth: 360 }), {
      days: 4,
      perDay: 2,
      typed: (name, day, grams) => (name !== 'Dock' ? grams : day === 3.5 ? 378 : day === 4 ? 341 : grams),
    });
    const dock = assessLitter(input).puppies.get('Dock');
    expect(dock?.finding.code).not.toBe('gaining-again');
    if (dock !== undefined) expect(plain(say.puppy(dock.finding, 'g'))).not.toMatch(/[Gg]aining again|instead of 0/);
  });
});
