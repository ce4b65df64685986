/** A command is a change: two windows that change different fields at once lose nothing, and what is one act is one undo. */
import { expect, it } from 'vitest';
import type { InputOf, OperationName, OutputOf } from '../../core/contract/operations.ts';
import { DEFAULT_RULES } from '../../core/feeding/rules.ts';
import { EMPTY_WEEK } from '../../core/food/rotation.ts';
import { isCurrent, type Reading } from '../../core/litter/litter.ts';
import { usualPlan } from '../../core/weaning/weaning-plan.ts';
import {
  allFacts,
  before,
  call,
  dayBefore,
  foodFields,
  litterFields,
  puppyFields,
  readingFields,
  type World,
  weekOf,
} from './world.ts';

export function togetherSuite(world: () => World): void {
  const ask = <N extends OperationName>(name: N, input: InputOf<N>): Promise<OutputOf<N>> => call(world().dispatch, name, input);
  const litterNow = async (id: string) => (await ask('litter.all', {})).litters.find((l) => l.litter.id === id);

  it('of one litter', async () => {
    const litterId = world().emptyLitter.id;
    await Promise.all([
      ask('litter.change', { litterId, change: { name: 'The autumn litter' } }),
      ask('litter.change', { litterId, change: { breed: 'Field Spaniel' } }),
      ask('litter.change', { litterId, change: { adultDogKg: 24 } }),
    ]);
    const { id: _, ...was } = world().emptyLitter;
    expect((await litterNow(litterId))?.litter).toMatchObject({
      ...was,
      name: 'The autumn litter',
      breed: 'Field Spaniel',
      adultDogKg: 24,
    });
  });

  it('of one puppy, and of one collar', async () => {
    const { id: puppyId, ...was } = world().puppies[1] ?? world().unweighed;
    await Promise.all([
      ask('litter.changePuppy', { puppyId, change: { callName: 'Mallow' } }),
      ask('litter.changePuppy', { puppyId, change: { markings: 'white toes' } }),
      ask('litter.changePuppy', { puppyId, change: { collar: { colour: 'lime' } } }),
      ask('litter.changePuppy', { puppyId, change: { collar: { pattern: 'zigzag' } } }),
    ]);
    const puppy = (await litterNow(was.litterId))?.puppies.find((p) => p.id === puppyId);
    const collar = { letter: was.collar.letter, colour: 'lime', pattern: 'zigzag' };
    expect(puppy).toEqual({ ...was, id: puppyId, callName: 'Mallow', markings: 'white toes', collar });
  });

  it('of the house', async () => {
    const { house: was } = await ask('people.house', {});
    await Promise.all([
      ask('people.setHouse', { change: { vetPhone: '01 234' } }),
      ask('people.setHouse', { change: { massUnit: 'oz' } }),
      ask('people.setHouse', { change: { scaleStepGrams: 2 } }),
    ]);
    expect((await ask('people.house', {})).house).toEqual({ ...was, vetPhone: '01 234', massUnit: 'oz', scaleStepGrams: 2 });
  });

  it('of the rules of the house, on top of what holds on the day', async () => {
    const [yesterday, today] = [dayBefore(world().clock, 1), dayBefore(world().clock, 0)];
    await ask('feeding.setRules', { from: yesterday, change: { stepDays: 9 } });
    await Promise.all([
      ask('feeding.setRules', { from: today, change: { shareYoung: 0.06 } }),
      ask('feeding.setRules', { from: today, change: { mealTimes: { morning: '06:30' } } }),
      ask('feeding.setRules', { from: today, change: { mealTimes: { evening: '19:15' } } }),
    ]);
    const { versions } = await ask('feeding.rules', {});
    const mealTimes = { ...DEFAULT_RULES.mealTimes, morning: '06:30', evening: '19:15' };
    expect(versions.map((v) => [v.from, v.rules])).toEqual([
      [today, { ...DEFAULT_RULES, stepDays: 9, shareYoung: 0.06, mealTimes }],
      [yesterday, { ...DEFAULT_RULES, stepDays: 9 }],
      [expect.any(String), DEFAULT_RULES],
    ]);
  });

  it('of the rules of a litter, begun from the house’s on the day, and back', async () => {
    const { id: litterId } = world().litter;
    const today = dayBefore(world().clock, 0);
    const { versions } = await ask('feeding.rules', {});
    await Promise.all([
      ask('feeding.setLitterRules', { litterId, from: today, change: { boneShare: 0.15 } }),
      ask('feeding.setLitterRules', { litterId, from: today, change: { keepHours: 36 } }),
    ]);
    const own = async () => (await ask('feeding.rules', {})).ofLitters.find((v) => v.litterId === litterId && v.from === today);
    expect((await own())?.rules).toEqual({ ...versions[0]?.rules, boneShare: 0.15, keepHours: 36 });
    await ask('feeding.setLitterRules', { litterId, from: today, change: null });
    expect((await own())?.rules).toBeNull();
    await ask('feeding.setLitterRules', { litterId, from: today, change: { keepHours: 30 } });
    expect((await own())?.rules).toEqual({ ...versions[0]?.rules, keepHours: 30 });
  });

  it('of one food', async () => {
    const { foodId } = world();
    await Promise.all([
      ask('food.change', { foodId, change: { price: 4.2 } }),
      ask('food.change', { foodId, change: { note: 'from the mill' } }),
      ask('food.retire', { foodId, retired: true }),
    ]);
    const food = (await ask('food.all', {})).foods.find((f) => f.id === foodId);
    expect(food).toEqual({
      id: foodId,
      retired: true,
      fields: { ...foodFields('Lean mix'), price: 4.2, note: 'from the mill' },
    });
  });

  it('of one week of bowls; a litter’s own begins from the house’s', async () => {
    const { foodId, litter } = world();
    const house = weekOf(foodId);
    await ask('food.setWeek', { litterId: null, week: house });
    const bowl = { kind: 'bone', foodId: 'food-generic-mix', pieces: 2, pieceGrams: 90 } as const;
    await Promise.all([
      ask('food.changeWeek', { litterId: litter.id, bowls: [{ day: 1, meal: 'evening', bowl }] }),
      ask('food.changeWeek', { litterId: litter.id, bowls: [{ day: 4, meal: 'morning', bowl: null }] }),
    ]);
    const { feedings } = await ask('food.feedings', {});
    const week = house.map((day, i) => (i === 1 ? { ...day, evening: bowl } : i === 4 ? {} : day));
    expect(feedings.find((f) => f.litterId === litter.id)?.week).toEqual(week);
    expect(feedings.find((f) => f.litterId === null)?.week).toEqual(house);
    await ask('food.changeWeek', { litterId: world().emptyLitter.id, bowls: [{ day: 0, meal: 'morning', bowl: null }] });
    const { feedings: then } = await ask('food.feedings', {});
    expect(then.find((f) => f.litterId === world().emptyLitter.id)?.week).toEqual([{}, ...house.slice(1)]);
    expect(EMPTY_WEEK).toEqual(Array.from({ length: 7 }, () => ({})));
  });

  it('of one dam, held against the whole', async () => {
    const { damId, clock } = world();
    const dam = async () => (await ask('dogs.dams', {})).dams.find((d) => d.id === damId);
    const was = await dam();
    await Promise.all([
      ask('dogs.damChange', { damId, change: { foodKcalPer100g: 210.5 } }),
      ask('dogs.damChange', { damId, change: { lh: dayBefore(clock, 85) } }),
    ]);
    expect((await dam())?.fields).toEqual({ ...was?.fields, foodKcalPer100g: 210.5, lh: dayBefore(clock, 85) });
    // She was first mated 84 days ago: the rule between two fields holds for one that comes alone.
    const crossed = await world().dispatch('dogs.damChange', { damId, change: { lastMating: dayBefore(clock, 85) } });
    expect(crossed).toMatchObject({ ok: false, error: { code: 'bad-input', field: 'change.lastMating' } });
  });

  it('of one plan of weaning, and of its steps', async () => {
    const { litter, clock, dispatch } = world();
    const litterId = litter.id;
    const plan = usualPlan(dayBefore(clock, 20), dayBefore(clock, -1));
    await ask('weaning.setPlan', { litterId, plan });
    await Promise.all([
      ask('weaning.changePlan', { litterId, change: { liftMinutes: 25 } }),
      ask('weaning.changePlan', { litterId, change: { atOneBowl: 3 } }),
      ask('weaning.changeSteps', { litterId, to: { kind: 'change', place: 0, step: { share: 0.02 } } }),
      ask('weaning.changeSteps', { litterId, to: { kind: 'change', place: 1, step: { texture: 'fine mince' } } }),
      ask('weaning.changeSteps', { litterId, to: { kind: 'change', place: 0, step: { days: 5 } } }),
    ]);
    const now = async () => (await ask('weaning.plan', { litterId })).plan;
    const steps = plan.steps.map((s, i) =>
      i === 0 ? { ...s, share: 0.02, days: 5 } : i === 1 ? { ...s, texture: 'fine mince' } : s,
    );
    expect(await now()).toEqual({ ...plan, liftMinutes: 25, atOneBowl: 3, steps });
    await ask('weaning.changeSteps', { litterId, to: { kind: 'remove', place: 1 } });
    await ask('weaning.changeSteps', { litterId, to: { kind: 'add' } });
    const between = { share: 0.93, texture: 'mince', days: 3 };
    expect((await now())?.steps).toEqual([...steps.toSpliced(1, 1).slice(0, -1), between, steps.at(-1)]);
    const crossed = { litterId, to: { kind: 'change', place: 0, step: { share: 0.99 } } };
    expect(await dispatch('weaning.changeSteps', crossed)).toMatchObject({ ok: false, error: { code: 'bad-input' } });
    const gone = { litterId, to: { kind: 'remove', place: 11 } };
    expect(await dispatch('weaning.changeSteps', gone)).toMatchObject({ ok: false, error: { code: 'conflict' } });
    const early = { litterId, change: { starts: dayBefore(clock, 30) } };
    expect(await dispatch('weaning.changePlan', early)).toMatchObject({ ok: false, error: { field: 'change.starts' } });
    await ask('weaning.changeSteps', { litterId, to: { kind: 'usual' } });
    expect((await now())?.steps).toEqual(plan.steps);
  });

  it('of a dog, a starter pack, packs and the settings of the freezer', async () => {
    const { dogId, starterId, packIds, clock } = world();
    const stock = () => ask('freezer.stock', { since: dayBefore(clock, 60) });
    const was = await stock();
    await Promise.all([
      ask('freezer.changeDog', { dogId, change: { gramsADay: 620.5 } }),
      ask('freezer.changeDog', { dogId, change: { meals: 3 } }),
      ask('freezer.changeStarter', { starterId, change: { grams: 908 } }),
      ask('freezer.changeStarter', { starterId, change: { who: 'Mallow' } }),
      ask('freezer.setSettings', { change: { money: '€' } }),
      ask('freezer.setSettings', { change: { roomGrams: 12_000 } }),
      ask('freezer.changePacks', { packIds: [packIds[0]], change: { place: 'chest' } }),
      ask('freezer.changePacks', { packIds: [packIds[0]], change: { price: 2.5 } }),
    ]);
    const now = await stock();
    expect(now.eaters).toEqual(was.eaters.map((d) => (d.id === dogId ? { ...d, gramsADay: 620.5, meals: 3 } : d)));
    expect(now.starters).toEqual(was.starters.map((s) => (s.id === starterId ? { ...s, grams: 908, who: 'Mallow' } : s)));
    expect(now.settings).toEqual({ ...was.settings, money: '€', roomGrams: 12_000 });
    expect(now.packs).toEqual(was.packs.map((p) => (p.id === packIds[0] ? { ...p, place: 'chest', price: 2.5 } : p)));
  });

  it('of the grown dogs of the house, two of one name told apart', async () => {
    const grown = async () => (await ask('food.feedings', {})).feedings.find((f) => f.litterId === null)?.dogs ?? [];
    await Promise.all([
      ask('dogs.addGrown', { dog: { name: 'Comfrey', kg: 22.5 } }),
      ask('dogs.addGrown', { dog: { name: 'Bramble', kg: 31 } }),
      ask('dogs.addGrown', { dog: { name: 'Comfrey', kg: 19 } }),
    ]);
    expect((await grown()).map((d) => [d.name, d.kg])).toEqual([
      ['Comfrey', 22.5],
      ['Bramble', 31],
      ['Comfrey', 19],
    ]);
    const [first] = await grown();
    await Promise.all([
      ask('dogs.removeGrown', { dogId: first?.id ?? '' }),
      ask('dogs.addGrown', { dog: { name: 'Sorrel', kg: 12 } }),
    ]);
    expect((await grown()).map((d) => [d.name, d.kg])).toEqual([
      ['Bramble', 31],
      ['Comfrey', 19],
      ['Sorrel', 12],
    ]);
  });

  it('but what does not go together is refused, whichever window was first', async () => {
    const from = dayBefore(world().clock, -5);
    const answers = await Promise.all([
      world().dispatch('feeding.setRules', { from, change: { middleMonths: 11 } }),
      world().dispatch('feeding.setRules', { from, change: { adultMonths: 8 } }),
    ]);
    expect(answers.map((a) => a.ok)).toEqual([true, false]);
    expect(answers[1]).toMatchObject({ error: { code: 'bad-input', field: 'change.middleMonths' } });
  });
}

export function oneActSuite(world: () => World): void {
  const ask = <N extends OperationName>(name: N, input: InputOf<N>): Promise<OutputOf<N>> => call(world().dispatch, name, input);
  const readingsOf = async (litterId: string) => (await ask('growth.readings', { litterId })).readings;

  /** Does it, takes it back in one step and does it again in one; answers with what there was before and after. */
  async function oneStep<N extends OperationName>(name: N, input: InputOf<N>): Promise<void> {
    const was = await allFacts(world());
    await ask(name, input);
    const is = await allFacts(world());
    expect(is).not.toEqual(was);
    await ask('records.undo', {});
    expect(await allFacts(world())).toEqual(was);
    await ask('records.redo', {});
    expect(await allFacts(world())).toEqual(is);
  }

  it('a litter begun with its puppies and their weights', async () => {
    const { clock } = world();
    const weight = (grams: number) => ({ grams, typed: String(grams), unit: 'g', source: 'keyboard' }) as const;
    const puppies = [0, 1, 2].map((i) => ({ fields: puppyFields(clock, i), birthWeight: i === 1 ? null : weight(380 + i) }));
    await oneStep('litter.begin', { litter: litterFields(clock, 'Bryony'), puppies });
    const { litters } = await ask('litter.all', {});
    const begun = litters.find((l) => l.litter.dam === 'Bryony');
    expect(begun?.puppies.map((p) => [p.collar.letter, p.place, p.state])).toEqual([
      ['A', 0, 'litter'],
      ['B', 1, 'litter'],
      ['C', 2, 'litter'],
    ]);
    const readings = await readingsOf(begun?.litter.id ?? '');
    expect(readings.map((r) => [r.grams, r.session, r.at])).toEqual([
      [380, 'birth', puppies[0]?.fields.bornAt],
      [382, 'birth', puppies[2]?.fields.bornAt],
    ]);
  });

  it('a birth that is moved, with its birth weight', async () => {
    const { litter, puppies, clock } = world();
    const puppyId = puppies[1]?.id ?? '';
    const mine = async () => (await readingsOf(litter.id)).filter((r) => r.puppyId === puppyId);
    const was = (await mine()).find((r) => r.session === 'birth');
    const { local: bornAt, instant: bornInstant } = before(clock, 19, 7);
    await oneStep('litter.changePuppy', { puppyId, change: { bornAt, bornInstant } });
    const births = (await mine()).filter((r) => r.session === 'birth' && isCurrent(r));
    expect(births).toMatchObject([
      { grams: was?.grams, typed: was?.typed, at: bornAt, instant: bornInstant, supersedes: was?.id },
    ]);
    expect((await mine()).find((r) => r.id === was?.id)).toMatchObject({ supersededBy: births[0]?.id, withdrawn: false });
    // A weight after the birth stays where it was.
    expect((await mine()).filter((r) => r.session !== 'birth' && !isCurrent(r))).toEqual([]);
  });

  it('all births moved, each with its birth weight', async () => {
    const { litter, puppies, clock } = world();
    const births = puppies.map((p, i) => {
      const { local, instant } = before(clock, 18, -i);
      return { puppyId: p.id, bornAt: local, bornInstant: instant };
    });
    await oneStep('litter.moveBirths', { litterId: litter.id, births });
    const standing = (await readingsOf(litter.id)).filter((r) => r.session === 'birth' && isCurrent(r));
    for (const { puppyId, bornAt } of births)
      expect(standing.filter((r) => r.puppyId === puppyId).map((r) => r.at)).toEqual([bornAt]);
  });

  it('a whole table weighed, and moved to the day before', async () => {
    const { litter, puppies, clock } = world();
    const at = before(clock, 0, 40);
    const given = puppies.map((p, i) => ({ puppyId: p.id, reading: readingFields(at, 1010 + i) }));
    await oneStep('growth.recordWeighing', { litterId: litter.id, readings: given });
    const fresh = (await readingsOf(litter.id)).filter((r) => r.at === at.local && isCurrent(r));
    expect(fresh.map((r) => r.puppyId).toSorted()).toEqual(puppies.map((p) => p.id).toSorted());

    const [first] = fresh;
    if (first === undefined) throw new Error('no reading');
    await ask('growth.keep', { readingIds: [first.id] });
    const then = before(clock, 1, 40);
    const moved = { at: then.local, instant: then.instant };
    await oneStep('growth.correctWeighing', {
      litterId: litter.id,
      corrections: fresh.map((r) => ({ readingId: r.id, change: moved })),
    });
    const standing = (await readingsOf(litter.id)).filter((r) => r.at === then.local && isCurrent(r));
    const said = (all: readonly Reading[]) => all.map((r) => [r.puppyId, r.grams, r.typed, r.unit, r.session]).toSorted();
    expect(said(standing)).toEqual(said(fresh));
    // What she said is right stays so at its new time, and only that.
    expect(standing.filter((r) => r.kept).map((r) => r.supersedes)).toEqual([first.id]);
  });

  it('a puppy entered by mistake goes again once its weights were struck out, those too that were corrected before', async () => {
    const { unweighed, clock } = world();
    const at = before(clock, 0, 20);
    const wrong = await ask('growth.record', { puppyId: unweighed.id, reading: readingFields(at, 900) });
    const mended = await ask('growth.correct', { readingId: wrong.reading.id, reading: readingFields(at, 910) });
    await ask('growth.withdraw', { readingId: mended.reading.id });
    await oneStep('litter.removePuppy', { puppyId: unweighed.id });
    // The next ones need it.
    await ask('records.undo', {});
  });

  it('a weight that was another puppy’s, given to it; what stood there before stands again', async () => {
    const { reading, unweighed, litter, clock } = world();
    const at = before(clock, 0, 5);
    const wrong = await ask('growth.correct', {
      readingId: reading.id,
      reading: { ...readingFields(at, 812), held: true },
    });
    await oneStep('growth.give', { readingId: wrong.reading.id, puppyId: unweighed.id });
    const all = await readingsOf(litter.id);
    expect(
      all.filter((r) => r.puppyId === unweighed.id && isCurrent(r) && r.session !== 'birth').map((r) => [r.grams, r.at, r.held]),
    ).toEqual([[812, at.local, false]]);
    expect(all.filter((r) => r.puppyId === reading.puppyId && isCurrent(r)).map((r) => r.id)).toContain(reading.id);
    expect(all.find((r) => r.id === wrong.reading.id)).toMatchObject({ withdrawn: true, grams: 812 });
    for (const _ of ['given', 'corrected']) await ask('records.undo', {});
    expect((await readingsOf(litter.id)).find((r) => r.id === reading.id)).toMatchObject({
      supersededBy: null,
      withdrawn: false,
    });
  });

  it('both of a pair that was asked about, kept', async () => {
    const { reading, held } = world();
    await oneStep('growth.keep', { readingIds: [reading.id, held.id] });
    const kept = (await readingsOf(world().litter.id)).filter((r) => r.id === reading.id || r.id === held.id);
    expect(kept.map((r) => [r.held, r.kept])).toEqual([
      [false, true],
      [false, true],
    ]);
  });
}
