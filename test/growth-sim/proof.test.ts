/** The measured proof, small enough for every test run: wider limits than the bench, other litters, the same simulator. */
import { beforeAll, describe, expect, it } from 'vitest';
import { addLitter, emptyTally, found, share, type Tally } from './measure.ts';
import { program } from './methods.ts';
import { HAND_RULES, limited } from './rules.ts';
import { type Kind, simulate } from './simulate.ts';

const MIX: readonly (readonly [Kind, number])[] = [
  ['healthy', 30],
  ['weaning-stall', 8],
  ['small-steady', 12],
  ['acute', 24],
  ['slow', 24],
  ['several', 8],
  ['slow-litter', 14],
  ['singleton', 10],
];

describe('invented litters with a known truth', () => {
  const own: Tally = emptyTally();
  const loss: Tally = emptyTally();
  beforeAll(() => {
    let seed = 4000;
    const rule = HAND_RULES['less than yesterday by 3 %'];
    for (const [kind, count] of MIX) {
      for (let i = 0; i < count; i += 1) {
        seed += 1;
        const sim = simulate(kind, seed);
        addLitter(own, sim, program(sim.input));
        if (rule !== undefined) addLitter(loss, sim, limited(rule, 0.5)(sim.input));
      }
    }
  }, 300_000);
  const delays = (kind: string, level: 'watch' | 'act') => found(own.delays[kind]?.[level] ?? []);

  it('few false alarms', () => {
    expect(own.falseAct / own.weeks8).toBeLessThan(0.6);
    expect(own.falseAny / own.weeks8).toBeLessThan(1.6);
    expect(own.litterFalseAny / own.weeks8).toBeLessThan(0.35);
    expect(own.healthyFlaggedDays / own.healthyDays).toBeLessThan(0.025);
    expect(own.smallFlags / own.smallWeeks).toBeLessThan(0.07);
    expect(own.slowLitterActs / own.slowLitterPuppies).toBeLessThan(0.2);
  });

  it('acute fading is seen, one, several or a singleton', () => {
    expect(delays('acute', 'watch').share).toBeGreaterThan(0.92);
    expect(delays('acute', 'watch').median).toBeLessThan(1.9);
    expect(delays('acute', 'act').share).toBeGreaterThan(0.87);
    expect(delays('several', 'act').share).toBeGreaterThan(0.8);
    expect(delays('singleton', 'act').share).toBeGreaterThan(0.75);
  });

  it('slow slipping is seen, and a slow litter', () => {
    expect(delays('slow', 'watch').share).toBeGreaterThan(0.75);
    expect(delays('litter', 'watch').share).toBeGreaterThan(0.88);
    expect(delays('litter', 'act').share).toBeGreaterThan(0.8);
  });

  it('wrong figures and exchanges are found, and what is named is right', () => {
    expect(share(own.typo20)).toBeGreaterThan(0.96);
    expect(share(own.typo8)).toBeGreaterThan(0.85);
    expect(share(own.swaps)).toBeGreaterThan(0.85);
    expect(share(own.named)).toBeGreaterThan(0.8);
  });

  it('is better than a loss against yesterday, with a fraction of its false alarms', () => {
    expect(own.falseAny / own.weeks8).toBeLessThan(loss.falseAny / loss.weeks8 / 4);
    expect(delays('acute', 'watch').share).toBeGreaterThan(found(loss.delays['acute']?.watch ?? []).share);
    expect(delays('slow', 'watch').share).toBeGreaterThan(found(loss.delays['slow']?.watch ?? []).share + 0.2);
  });
});
