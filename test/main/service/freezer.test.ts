import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { addDays, type CivilDate } from '../../../core/calendar/day.ts';
import type { Demand } from '../../../core/freezer/demand.ts';
import { usualPlan } from '../../../core/weaning/weaning-plan.ts';
import type { Program } from '../../../main/service/program.ts';
import { call, dayBefore, dogFields, litterFields, makeWorld, packFields, type World } from '../../contract/world.ts';
import { openOn, scratchFolder } from '../open.ts';

let remove: () => void;
let program: Program;
let world: World;
let today: CivilDate;
beforeEach(async () => {
  const scratch = scratchFolder();
  remove = scratch.remove;
  program = openOn(scratch.folder);
  world = await makeWorld(program.dispatch);
  today = dayBefore(world.clock, 0);
});
afterEach(() => {
  program.close();
  remove();
});

const grams = (demand: readonly Demand[]) => demand.reduce((sum, d) => sum + d.grams, 0);
const demandOn = async (day: CivilDate) =>
  (await call(program.dispatch, 'freezer.demand', { from: addDays(today, -1), until: addDays(today, 60) })).demand.filter(
    (d) => d.day === day,
  );

describe('what everyone eats', () => {
  it('is nothing from the freezer while the puppies live on milk, then all of it', async () => {
    const litter = world.litter.id;
    expect((await demandOn(today)).filter((d) => d.litterId === litter)).toEqual([]);
    const weaned = (await demandOn(addDays(today, 40))).filter((d) => d.litterId === litter);
    expect(weaned.map((d) => d.clock)).toEqual(['07:00', '13:00', '20:00']);
    // Three weighed puppies at 5.5 % of some kilograms each.
    expect(grams(weaned)).toBeGreaterThan(3 * 150);
    expect(grams(weaned)).toBeLessThan(3 * 600);
  });

  it('follows the plan of weaning step by step', async () => {
    const plan = usualPlan(dayBefore(world.clock, 20), addDays(today, 1));
    await call(program.dispatch, 'weaning.setPlan', { litterId: world.litter.id, plan });
    const own = async (day: number) => grams((await demandOn(addDays(today, day))).filter((d) => d.litterId === world.litter.id));
    expect(await own(0)).toBe(0);
    expect(await own(1)).toBeGreaterThan(0);
    expect(await own(12)).toBeGreaterThan(await own(1));
  });

  it('leaves out a puppy from the day it goes home', async () => {
    const day = addDays(today, 40);
    const before = grams((await demandOn(day)).filter((d) => d.litterId === world.litter.id));
    await call(program.dispatch, 'litter.setState', { puppyId: world.puppies[0]?.id ?? '', state: 'home', on: today });
    const after = grams((await demandOn(day)).filter((d) => d.litterId === world.litter.id));
    expect(after).toBeLessThan(before * 0.9);
    expect(after).toBeGreaterThan(before * 0.5);
  });

  it('splits a rotation into its foods', async () => {
    const bowl = {
      kind: 'foods',
      parts: [
        { foodId: world.foodId, share: 0.25 },
        { foodId: 'food-generic-mix', share: 0.75 },
      ],
    } as const;
    const week = Array.from({ length: 7 }, () => ({ morning: { ...bowl, parts: [...bowl.parts] } }));
    await call(program.dispatch, 'food.setWeek', { litterId: world.litter.id, week });
    const morning = (await demandOn(addDays(today, 45))).filter((d) => d.litterId === world.litter.id && d.clock === '07:00');
    const own = morning.filter((d) => d.foodId === world.foodId);
    expect(grams(own) / grams(morning)).toBeCloseTo(0.25, 1);
  });

  it('counts a dog from its first day to its last, in its meals', async () => {
    const wren = { ...dogFields(world.clock, 'Wren'), gramsADay: 120, meals: 3, untilDay: addDays(today, 5) };
    await call(program.dispatch, 'freezer.addDog', { fields: wren });
    const own = async (day: number) => (await demandOn(addDays(today, day))).filter((d) => d.who === 'Wren');
    expect((await own(-1)).length).toBe(0);
    expect((await own(5)).map((d) => d.grams)).toEqual([40, 40, 40]);
    expect((await own(6)).length).toBe(0);
  });

  it('feeds a dam by what she needs, and by the fixed amount when that is over', async () => {
    const nurse = { ...dogFields(world.clock, 'Yarrow'), gramsADay: 400, damId: world.damId, meals: 4 };
    await call(program.dispatch, 'freezer.addDog', { fields: nurse });
    const own = async (day: number) => grams((await demandOn(addDays(today, day))).filter((d) => d.who === 'Yarrow'));
    // 21 kg in the third week with four puppies: 145 × 21^0.75 + 21 × 24 × 4 × 1.1 kcal at about 150 kcal in 100 g.
    expect(await own(0)).toBeGreaterThan(1800);
    expect(await own(60)).toBeCloseTo(400);
  });

  it('forgets a litter that was removed', async () => {
    const { litter } = await call(program.dispatch, 'litter.begin', { litter: litterFields(world.clock, 'Bryony'), puppies: [] });
    await call(program.dispatch, 'litter.remove', { litterId: litter.id });
    expect((await demandOn(addDays(today, 40))).some((d) => d.litterId === litter.id)).toBe(false);
  });
});

describe('the stock', () => {
  const stock = () => call(program.dispatch, 'freezer.stock', { since: dayBefore(world.clock, 40) });

  it('is counted: what lacks was used, the oldest first; what is too much is like the newest', async () => {
    const { packs } = await call(program.dispatch, 'freezer.add', {
      count: 3,
      pack: { ...packFields(world.clock), frozenOn: dayBefore(world.clock, 2) },
    });
    const ids = [world.packIds[0], ...packs.map((p) => p.id)];
    await call(program.dispatch, 'freezer.count', { on: today, counts: [{ packIds: ids, there: 3 }] });
    const first = (await stock()).packs.find((p) => p.id === world.packIds[0]);
    expect(first).toMatchObject({ gone: 'used', left: 0 });
    const left = packs.map((p) => p.id);
    await call(program.dispatch, 'freezer.count', { on: today, counts: [{ packIds: left, there: 5 }] });
    const there = (await stock()).packs.filter((p) => p.frozenOn === dayBefore(world.clock, 2) && p.gone === null);
    expect(there).toHaveLength(5);
    expect(there.every((p) => p.left === 4)).toBe(true);
  });

  it('gives a portion back when a thaw is taken back', async () => {
    const left = async () => (await stock()).packs.find((p) => p.id === world.packIds[0])?.left;
    const { local: at, instant } = world.clock;
    await call(program.dispatch, 'freezer.thaw', {
      takes: [{ packId: world.packIds[0], portions: 3 }],
      at,
      instant,
      way: 'refrigerator',
    });
    expect(await left()).toBe(1);
    await call(program.dispatch, 'records.undo', {});
    expect(await left()).toBe(4);
  });

  it('remembers the last pack of a food for ever, others that are gone for a while', async () => {
    await call(program.dispatch, 'freezer.takeOut', { packIds: [...world.packIds], way: 'given', on: dayBefore(world.clock, 3) });
    const later = await call(program.dispatch, 'freezer.stock', { since: addDays(today, 60) });
    expect(later.packs).toHaveLength(1);
    expect(later.packs[0]).toMatchObject({ price: 3.2, grams: 454 });
  });
});
