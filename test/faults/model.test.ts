/** Random commands, undo, redo and restarts, against a model in memory that knows nothing of SQLite. */
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { localTime } from '../../core/calendar/clock.ts';
import { addDays, date } from '../../core/calendar/day.ts';
import type { InputOf, OperationName } from '../../core/contract/operations.ts';
import type { ErrorCode } from '../../core/contract/result.ts';
import { DEFAULT_RULES } from '../../core/feeding/rules.ts';
import { DEFAULT_HOUSE } from '../../core/people/house.ts';
import type { Program } from '../../main/service/program.ts';
import { before, type Clock, call, litterFields, puppyFields, readingFields } from '../contract/world.ts';
import { openOn, scratchFolder } from '../main/open.ts';

const CLOCK: Clock = { instant: Date.parse('2026-05-20T07:00:00Z'), local: localTime('2026-05-20T07:00') };
const DAY = date('2026-05-20');

interface ModelPuppy {
  id: string;
  letter: string;
  place: number;
  state: string;
  plans: number;
}
interface ModelReading {
  id: string;
  puppyId: string;
  birth: boolean;
  grams: number;
  held: boolean;
  kept: boolean;
  by: string | null;
}
/** The facts, without anything that was taken back. */
interface Facts {
  litters: { id: string; dam: string; puppies: ModelPuppy[] }[];
  readings: ModelReading[];
  rules: Record<string, number>;
  house: string;
}

class Model {
  past: Facts[] = [];
  facts: Facts = { litters: [], readings: [], rules: {}, house: '' };
  future: Facts[] = [];

  command(change: (facts: Facts) => void): void {
    const next = structuredClone(this.facts);
    change(next);
    this.past.push(this.facts);
    this.facts = next;
    this.future = [];
  }

  undo(): boolean {
    const before = this.past.pop();
    if (before === undefined) return false;
    this.future.push(this.facts);
    this.facts = before;
    return true;
  }

  redo(): boolean {
    const after = this.future.pop();
    if (after === undefined) return false;
    this.past.push(this.facts);
    this.facts = after;
    return true;
  }
}

const pick = fc.nat({ max: 1000 });
const actionArbitrary = fc.oneof(
  { weight: 2, arbitrary: fc.record({ do: fc.constant('begin' as const), a: pick }) },
  {
    weight: 5,
    arbitrary: fc.record({ do: fc.constant('addPuppy' as const), a: pick, b: fc.nat({ max: 6 }), weighed: fc.boolean() }),
  },
  { weight: 2, arbitrary: fc.record({ do: fc.constant('changePuppy' as const), a: pick, b: fc.nat({ max: 6 }) }) },
  {
    weight: 2,
    arbitrary: fc.record({ do: fc.constantFrom('removePuppy' as const, 'removeLitter' as const, 'arrange' as const), a: pick }),
  },
  { weight: 2, arbitrary: fc.record({ do: fc.constantFrom('setState' as const, 'handOver' as const), a: pick }) },
  {
    weight: 9,
    arbitrary: fc.record({
      do: fc.constant('record' as const),
      a: pick,
      grams: fc.integer({ min: 3000, max: 60_000 }),
      held: fc.boolean(),
    }),
  },
  {
    weight: 6,
    arbitrary: fc.record({
      do: fc.constantFrom('correct' as const, 'withdraw' as const, 'keep' as const),
      a: pick,
      grams: fc.integer({ min: 3000, max: 60_000 }),
    }),
  },
  { weight: 2, arbitrary: fc.record({ do: fc.constant('setRules' as const), a: fc.nat({ max: 3 }), b: fc.nat({ max: 28 }) }) },
  { weight: 1, arbitrary: fc.record({ do: fc.constant('setHouse' as const), a: pick }) },
  { weight: 12, arbitrary: fc.record({ do: fc.constantFrom('undo' as const, 'undo' as const, 'redo' as const) }) },
  { weight: 1, arbitrary: fc.record({ do: fc.constant('reopen' as const) }) },
);
type Action = typeof actionArbitrary extends fc.Arbitrary<infer T> ? T : never;

class Pair {
  model = new Model();
  program: Program;
  readonly open: () => Program;
  constructor(open: () => Program) {
    this.open = open;
    this.program = open();
  }

  /** Sends a command; it must end with that code, and gives the answer when it goes well. */
  async send<N extends OperationName>(name: N, input: InputOf<N>, code: ErrorCode | 'ok') {
    if (code === 'ok') return call(this.program.dispatch, name, input);
    expect(await this.program.dispatch(name, input), name).toMatchObject({ ok: false, error: { code } });
    return null;
  }

  async run(action: Action): Promise<void> {
    const { facts } = this.model;
    const puppies = facts.litters.flatMap((l) => l.puppies);
    switch (action.do) {
      case 'begin': {
        const dam = `Dam ${action.a}`;
        const answer = await this.send('litter.begin', { litter: litterFields(CLOCK, dam), puppies: [] }, 'ok');
        return this.model.command((f) => f.litters.push({ id: answer?.litter.id ?? '', dam, puppies: [] }));
      }
      case 'addPuppy': {
        const litter = at(facts.litters, action.a);
        if (litter === undefined) return;
        const fields = puppyFields(CLOCK, action.b);
        const taken = litter.puppies.some((p) => p.letter === fields.collar.letter);
        const birthWeight = action.weighed ? ({ grams: 350, typed: '350', unit: 'g', source: 'scale' } as const) : null;
        const answer = await this.send(
          'litter.addPuppy',
          { litterId: litter.id, fields, birthWeight },
          taken ? 'conflict' : 'ok',
        );
        if (answer === null) return;
        const { id } = answer.puppy;
        const stored = await call(this.program.dispatch, 'growth.readings', { litterId: litter.id });
        const birth = stored.readings.find((r) => r.puppyId === id);
        expect(birth === undefined).toBe(!action.weighed);
        return this.model.command((f) => {
          const own = f.litters.find((l) => l.id === litter.id)?.puppies ?? [];
          own.push({
            id,
            letter: fields.collar.letter,
            place: Math.max(-1, ...own.map((p) => p.place)) + 1,
            state: 'litter',
            plans: 0,
          });
          if (birth !== undefined)
            f.readings.push({ id: birth.id, puppyId: id, birth: true, grams: 350, held: false, kept: false, by: null });
        });
      }
      case 'changePuppy': {
        const puppy = at(puppies, action.a);
        if (puppy === undefined) return;
        const fields = puppyFields(CLOCK, action.b);
        const mates = facts.litters.find((l) => l.puppies.includes(puppy))?.puppies ?? [];
        const taken = mates.some((p) => p !== puppy && p.letter === fields.collar.letter);
        if ((await this.send('litter.changePuppy', { puppyId: puppy.id, change: fields }, taken ? 'conflict' : 'ok')) === null)
          return;
        const litterId = facts.litters.find((l) => l.puppies.includes(puppy))?.id ?? '';
        const { readings } = await call(this.program.dispatch, 'growth.readings', { litterId });
        return this.model.command((f) => {
          changeOne(f, puppy.id, (p) => (p.letter = fields.collar.letter));
          // A birth weight went along with its birth: a new one took its place, unless it was of that time already.
          for (const old of f.readings.filter((r) => r.puppyId === puppy.id && r.birth && r.by === null)) {
            if (readings.find((r) => r.id === old.id)?.at === fields.bornAt) continue;
            const id = readings.find((r) => r.supersedes === old.id && !r.withdrawn && r.at === fields.bornAt)?.id ?? 'not there';
            f.readings.push({ ...old, id });
            old.by = id;
          }
        });
      }
      case 'removePuppy': {
        const puppy = at(puppies, action.a);
        if (puppy === undefined) return;
        if ((await this.send('litter.removePuppy', { puppyId: puppy.id }, used(facts, puppy) ? 'refused' : 'ok')) === null)
          return;
        return this.model.command((f) => {
          for (const l of f.litters) l.puppies = l.puppies.filter((p) => p.id !== puppy.id);
          f.readings = f.readings.filter((r) => r.puppyId !== puppy.id);
        });
      }
      case 'removeLitter': {
        const litter = at(facts.litters, action.a);
        if (litter === undefined) return;
        const refused = litter.puppies.some((p) => used(facts, p));
        if ((await this.send('litter.remove', { litterId: litter.id }, refused ? 'refused' : 'ok')) === null) return;
        const gone = new Set(litter.puppies.map((p) => p.id));
        return this.model.command((f) => {
          f.litters = f.litters.filter((l) => l.id !== litter.id);
          f.readings = f.readings.filter((r) => !gone.has(r.puppyId));
        });
      }
      case 'arrange': {
        const litter = at(facts.litters, action.a);
        if (litter === undefined || litter.puppies.length === 0) return;
        const order = [...litter.puppies].sort((p, q) => q.place - p.place).map((p) => p.id);
        await this.send('litter.arrange', { litterId: litter.id, puppyIds: order }, 'ok');
        return this.model.command((f) => {
          for (const [place, id] of order.entries()) changeOne(f, id, (p) => (p.place = place));
        });
      }
      case 'setState': {
        const puppy = at(puppies, action.a);
        if (puppy === undefined) return;
        await this.send('litter.setState', { puppyId: puppy.id, state: 'died', on: DAY }, 'ok');
        return this.model.command((f) => changeOne(f, puppy.id, (p) => (p.state = 'died')));
      }
      case 'handOver': {
        const puppy = at(puppies, action.a);
        if (puppy === undefined) return;
        const code = puppy.state === 'died' ? 'refused' : 'ok';
        if ((await this.send('homing.handOver', { puppyId: puppy.id, on: DAY, leaves: true }, code)) === null) return;
        return this.model.command((f) =>
          changeOne(f, puppy.id, (p) => {
            p.state = 'home';
            p.plans += 1;
          }),
        );
      }
      case 'record': {
        const puppy = at(puppies, action.a);
        if (puppy === undefined) return;
        const grams = action.grams / 10;
        const answer = await this.send('growth.record', { puppyId: puppy.id, reading: reading(grams, action.held) }, 'ok');
        const row = {
          id: answer?.reading.id ?? '',
          puppyId: puppy.id,
          birth: false,
          grams,
          held: action.held,
          kept: false,
          by: null,
        };
        return this.model.command((f) => f.readings.push(row));
      }
      case 'correct': {
        const old = at(facts.readings, action.a);
        if (old === undefined) return;
        const grams = action.grams / 10;
        const answer = await this.send(
          'growth.correct',
          { readingId: old.id, reading: reading(grams, false) },
          old.by === null ? 'ok' : 'conflict',
        );
        if (answer === null) return;
        const { id } = answer.reading;
        return this.model.command((f) => {
          changeReading(f, old.id, (r) => (r.by = id));
          f.readings.push({ id, puppyId: old.puppyId, birth: false, grams, held: false, kept: false, by: null });
        });
      }
      case 'withdraw': {
        const old = at(facts.readings, action.a);
        if (old === undefined) return;
        if ((await this.send('growth.withdraw', { readingId: old.id }, old.by === null ? 'ok' : 'conflict')) === null) return;
        return this.model.command((f) => (f.readings = f.readings.filter((r) => r.id !== old.id)));
      }
      case 'keep': {
        const old = at(facts.readings, action.a);
        if (old === undefined) return;
        if ((await this.send('growth.keep', { readingIds: [old.id] }, old.by === null ? 'ok' : 'conflict')) === null) return;
        return this.model.command((f) =>
          changeReading(f, old.id, (r) => {
            r.held = false;
            r.kept = true;
          }),
        );
      }
      case 'setRules': {
        const from = addDays(DAY, action.a);
        await this.send('feeding.setRules', { from, change: { ...DEFAULT_RULES, stepDays: action.b } }, 'ok');
        return this.model.command((f) => (f.rules[from] = action.b));
      }
      case 'setHouse': {
        const breederName = `Breeder ${action.a}`;
        await this.send('people.setHouse', { change: { ...DEFAULT_HOUSE, breederName } }, 'ok');
        return this.model.command((f) => (f.house = breederName));
      }
      case 'undo': {
        const could = this.model.undo();
        return void (await this.send('records.undo', {}, could ? 'ok' : 'nothing-to-undo'));
      }
      case 'redo': {
        const could = this.model.redo();
        return void (await this.send('records.redo', {}, could ? 'ok' : 'nothing-to-redo'));
      }
      case 'reopen':
        this.program.close();
        this.program = this.open();
    }
  }

  /** The stored facts in the model's words. */
  async stored(): Promise<Facts> {
    const { dispatch } = this.program;
    const { litters } = await call(dispatch, 'litter.all', {});
    const facts: Facts = {
      litters: [],
      readings: [],
      rules: {},
      house: (await call(dispatch, 'people.house', {})).house.breederName,
    };
    for (const { litter, puppies } of litters) {
      const { plans } = await call(dispatch, 'homing.handedOver', { litterId: litter.id });
      const own = puppies.map((p) => ({
        id: p.id,
        letter: p.collar.letter,
        place: p.place,
        state: p.state,
        plans: plans.filter((k) => k.puppyId === p.id).length,
      }));
      facts.litters.push({ id: litter.id, dam: litter.dam, puppies: own });
      const { readings } = await call(dispatch, 'growth.readings', { litterId: litter.id });
      for (const r of readings.filter((x) => !x.withdrawn)) {
        const { id, puppyId, grams, held, kept } = r;
        facts.readings.push({ id, puppyId, birth: r.session === 'birth', grams, held, kept, by: r.supersededBy });
      }
    }
    const { versions } = await call(dispatch, 'feeding.rules', {});
    for (const v of versions) if (v.id !== 'defaults') facts.rules[v.from] = v.rules.stepDays;
    return facts;
  }
}

const reading = (grams: number, held: boolean) => readingFields(before(CLOCK, 0, 5), grams, held);

function at<T>(list: readonly T[], index: number): T | undefined {
  return list[index % Math.max(1, list.length)];
}

function used(facts: Facts, puppy: ModelPuppy): boolean {
  return puppy.plans > 0 || facts.readings.some((r) => r.puppyId === puppy.id && !r.birth);
}

function changeOne(facts: Facts, id: string, change: (puppy: ModelPuppy) => void): void {
  for (const puppy of facts.litters.flatMap((l) => l.puppies)) if (puppy.id === id) change(puppy);
}

function changeReading(facts: Facts, id: string, change: (reading: ModelReading) => void): void {
  for (const r of facts.readings) if (r.id === id) change(r);
}

/** In an order that does not depend on who kept it. */
function sorted(facts: Facts): Facts {
  const byId = (a: { id: string }, b: { id: string }) => (a.id < b.id ? -1 : 1);
  return {
    ...facts,
    litters: facts.litters.map((l) => ({ ...l, puppies: [...l.puppies].sort(byId) })).sort(byId),
    readings: [...facts.readings].sort(byId),
  };
}

it('keeps the same facts as a model, whatever is done, undone and done again', async () => {
  await fc.assert(
    fc.asyncProperty(fc.array(actionArbitrary, { minLength: 15, maxLength: 60, size: 'max' }), async (actions) => {
      const { folder, remove } = scratchFolder();
      let n = 0;
      const newId = () => {
        n += 1;
        return `id-${String(n).padStart(6, '0')}`;
      };
      const pair = new Pair(() => openOn(folder, { now: () => CLOCK, newId }));
      try {
        await pair.run({ do: 'begin', a: 0 });
        await pair.run({ do: 'addPuppy', a: 0, b: 0, weighed: true });
        for (const action of actions) {
          await pair.run(action);
          expect(sorted(await pair.stored())).toEqual(sorted(pair.model.facts));
        }
      } finally {
        pair.program.close();
        remove();
      }
    }),
    { numRuns: 12 },
  );
}, 60_000);
