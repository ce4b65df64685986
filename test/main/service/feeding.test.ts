/** Rules and foods of one litter: what its plans are made with, and what they leave alone. */
import { afterEach, beforeEach, expect, it } from 'vitest';
import { DEFAULT_RULES } from '../../../core/feeding/rules.ts';
import type { Program } from '../../../main/service/program.ts';
import { call, dayBefore, foodFields, makeWorld, planOn, recipeFields, type World, weekOf } from '../../contract/world.ts';
import { openOn, scratchFolder } from '../open.ts';

let program: Program;
let scratch: ReturnType<typeof scratchFolder>;
let world: World;

beforeEach(async () => {
  scratch = scratchFolder();
  program = openOn(scratch.folder);
  world = await makeWorld(program.dispatch);
});
afterEach(() => {
  program.close();
  scratch.remove();
});

/** The plan of a puppy, made today for its go-home day. */
async function plan(puppyId: string) {
  return planOn(world.dispatch, puppyId, dayBefore(world.clock, 0));
}

const first = () => world.puppies[0]?.id ?? '';

it('a plan goes by the rules of its litter from their day, and by the house again when they are taken away', async () => {
  // By the share alone, so that its parts show: the floor is above both.
  await call(world.dispatch, 'feeding.setRules', { from: dayBefore(world.clock, 0), change: { basis: 'share' } });
  const usual = await plan(first());
  const own = { ...DEFAULT_RULES, basis: 'share' as const, shareYoung: 0.08 };
  await call(world.dispatch, 'feeding.setLitterRules', {
    litterId: world.litter.id,
    from: dayBefore(world.clock, 0),
    change: own,
  });
  const richer = await plan(first());
  expect((richer.week?.dayGrams ?? 0) / (usual.week?.dayGrams ?? 1)).toBeCloseTo(8 / 5.5, 1);
  expect(richer.rulesFrom).toBe(dayBefore(world.clock, 0));
  await call(world.dispatch, 'feeding.setLitterRules', {
    litterId: world.litter.id,
    from: dayBefore(world.clock, 0),
    change: null,
  });
  expect(await plan(first())).toEqual(usual);
});

it('a change of the house leaves a litter with rules of its own as it is', async () => {
  await call(world.dispatch, 'feeding.setLitterRules', {
    litterId: world.litter.id,
    from: dayBefore(world.clock, 0),
    change: { ...DEFAULT_RULES, shareYoung: 0.08 },
  });
  const own = await plan(first());
  await call(world.dispatch, 'feeding.setRules', {
    from: dayBefore(world.clock, 0),
    change: { ...DEFAULT_RULES, shareYoung: 0.04 },
  });
  expect(await plan(first())).toEqual(own);
});

it('a plan is found fault with for the food that the litter eats, the house’s where it has none', async () => {
  const boneless = foodFields('Boneless', { calcium: 0.01, phosphorus: 0.18 });
  const { food } = await call(world.dispatch, 'food.add', { fields: { ...boneless, bone: null } });
  const says = async () => (await plan(first())).findings.map((f) => f.sentence).join(' ');
  expect(await says()).not.toContain('Boneless');
  await call(world.dispatch, 'food.choose', { litterId: null, foodId: food.id });
  expect(await says()).toContain('Boneless: 0.1 g of calcium');
  await call(world.dispatch, 'food.choose', { litterId: world.litter.id, foodId: world.foodId });
  expect(await says()).not.toContain('Boneless');
  expect((await plan(first())).provenance.map((p) => p.how).join(' ')).toContain('Lean mix');
});

it('with a week of bowls the mean of the week is reckoned with, and a food that is put away stays in it', async () => {
  await call(world.dispatch, 'food.setWeek', { litterId: world.litter.id, week: weekOf('usda-13325') });
  await call(world.dispatch, 'food.retire', { foodId: world.foodId, retired: true });
  await call(world.dispatch, 'food.choose', { litterId: world.litter.id, foodId: world.foodId });
  expect((await plan(first())).provenance.map((p) => p.how).join(' ')).toContain('the week’s rotation');
});

it('a circle of recipes is refused at its second half', async () => {
  const whole = recipeFields([[world.foodId, 1]]);
  const { food } = await call(world.dispatch, 'food.add', { fields: whole });
  const answer = await world.dispatch('food.change', { foodId: world.foodId, change: recipeFields([[food.id, 1]]) });
  expect(answer).toMatchObject({ ok: false, error: { code: 'bad-input', field: 'change.parts' } });
});
