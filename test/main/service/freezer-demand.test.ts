/** What the freezer has to be ready for is what the prep sheet of that day weighs out: the same facts, the same assembly. */
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { addDays, type CivilDate } from '../../../core/calendar/day.ts';
import type { Demand } from '../../../core/freezer/demand.ts';
import type { PuppyState } from '../../../core/litter/litter.ts';
import type { PrepDocument } from '../../../core/weaning/prep-document.ts';
import { usualPlan } from '../../../core/weaning/weaning-plan.ts';
import type { Program } from '../../../main/service/program.ts';
import { before, call, dayBefore, litterFields, machineClock, puppyFields, readingFields } from '../../contract/world.ts';
import { openOn, scratchFolder } from '../open.ts';

const clock = machineClock();
const today = dayBefore(clock, 0);
const AGE = 40;

let remove: () => void;
let program: Program;
let printed: PrepDocument | null;
beforeEach(() => {
  const scratch = scratchFolder();
  remove = scratch.remove;
  printed = null;
  const print = async (document: unknown) => {
    printed = document as PrepDocument;
    return new TextEncoder().encode('%PDF-1.7');
  };
  program = openOn(scratch.folder, { paper: { print } });
});
afterEach(() => {
  program.close();
  remove();
});

/** Five of forty days, in the third week of bowls: two gain a third of what is expected, the others all of it. */
async function begin(): Promise<{ litterId: string; puppyIds: string[] }> {
  const { dispatch } = program;
  const whelped = before(clock, AGE);
  const fields = { ...litterFields(clock, 'Yarrow'), whelpedAt: whelped.local, whelpedInstant: whelped.instant };
  const { litter } = await call(dispatch, 'litter.begin', { litter: fields, puppies: [] });
  const puppyIds: string[] = [];
  for (let i = 0; i < 5; i += 1) {
    const born = { bornAt: whelped.local, bornInstant: whelped.instant };
    const birthWeight = { grams: 350, typed: '350', unit: 'g', source: 'keyboard' } as const;
    const puppy = { litterId: litter.id, fields: { ...puppyFields(clock, i), ...born }, birthWeight };
    puppyIds.push((await call(dispatch, 'litter.addPuppy', puppy)).puppy.id);
  }
  for (let ago = 14; ago >= 0; ago -= 1) {
    for (const [i, puppyId] of puppyIds.entries()) {
      if (i > 1 && ago < 2) continue;
      const steady = 1100 * Math.exp(0.04 * (20 - Math.max(ago, 8)));
      const grams = Math.round(steady * Math.exp((i > 1 ? 0.04 : 0.009) * Math.max(0, 8 - ago)));
      await call(dispatch, 'growth.record', { puppyId, reading: readingFields(before(clock, ago, -i), grams) });
    }
  }
  const plan = usualPlan(dayBefore(clock, AGE), addDays(dayBefore(clock, AGE), 24));
  await call(dispatch, 'weaning.setPlan', { litterId: litter.id, plan });
  return { litterId: litter.id, puppyIds };
}

async function frozen(litterId: string, day: CivilDate): Promise<number> {
  const { demand } = await call(program.dispatch, 'freezer.demand', { from: addDays(today, -6), until: addDays(today, 30) });
  return demand.filter((d: Demand) => d.litterId === litterId && d.day === day).reduce((sum, d) => sum + d.grams, 0);
}

/** The figure of the whole litter for the day, in grams. */
async function weighedOut(litterId: string, day: CivilDate): Promise<number> {
  await call(program.dispatch, 'records.savePaper', { of: { kind: 'prep', litterId, day }, paper: 'a4' });
  return Number((printed?.totals[0]?.day ?? '').replace(/\s/g, ''));
}

describe('the freezer and the prep sheet', () => {
  it.each<[PuppyState, CivilDate]>([
    ['litter', today],
    ['home', addDays(today, -1)],
    ['died', addDays(today, -1)],
    ['kept', addDays(today, -1)],
    ['home', addDays(today, 2)],
  ])('reckon the same grams when three are %s on %s', async (state, on) => {
    const { litterId, puppyIds } = await begin();
    for (const puppyId of puppyIds.slice(2)) await call(program.dispatch, 'litter.setState', { puppyId, state, on });
    for (const day of [today, addDays(today, 1), addDays(today, 3), addDays(today, 9)])
      expect(await frozen(litterId, day), day).toBe(await weighedOut(litterId, day));
  });

  it('go by the rules of the day, also when they begin tomorrow', async () => {
    const { litterId } = await begin();
    const { versions } = await call(program.dispatch, 'feeding.rules', {});
    // By the share alone, so that twice the share is twice the bowl: the floor is above it.
    const rules = { ...(versions.at(-1)?.rules ?? expect.fail('no rules')), basis: 'share' as const };
    await call(program.dispatch, 'feeding.setRules', { from: today, change: rules });
    const before = await weighedOut(litterId, addDays(today, 1));
    const more = { ...rules, shareYoung: 0.11 };
    await call(program.dispatch, 'feeding.setRules', { from: addDays(today, 1), change: more });
    expect((await weighedOut(litterId, addDays(today, 1))) / before).toBeCloseTo(2, 1);
    for (const day of [today, addDays(today, 1), addDays(today, 8)])
      expect(await frozen(litterId, day), day).toBe(await weighedOut(litterId, day));
    expect(printed?.foot).toContain('house rules of');
  });
});
