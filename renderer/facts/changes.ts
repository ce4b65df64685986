/** Changes to a litter and its puppies, one field at a time. Each answers null when saved, else a sentence for the field. */

import { clockOf, dateOf, type LocalTime, localMinutes, localTime } from '../../core/calendar/clock.ts';
import { addDays, type CivilDate, daysBetween } from '../../core/calendar/day.ts';
import { DAY_MINUTES } from '../../core/calendar/durations.ts';
import type { PuppyChange } from '../../core/contract/litter.ts';
import { nextCollar } from '../../core/litter/collar.ts';
import {
  isCurrent,
  type Litter,
  type LitterFields,
  type Puppy,
  type PuppyFields,
  type PuppyState,
  type Reading,
} from '../../core/litter/litter.ts';
import { call } from '../data/host.ts';
import { instantOf, now } from '../data/now.ts';
import { inOrder, run } from '../data/query.ts';
import type { TypedMass } from '../parts/form/read.ts';
import { useWindow } from '../state/window.ts';
import { words } from '../state/words.ts';
import type { LitterFacts } from './useLitter.ts';

const OLDEST_DAYS = 30 * 366;

/** Why a time cannot be that of a whelping, or null. */
export function whelpingFault(at: LocalTime): string | null {
  if (instantOf(at) > now().instant) return words.begin.whelpedFuture;
  return daysBetween(dateOf(at), dateOf(now().local)) > OLDEST_DAYS ? words.begin.whelpedLongAgo : null;
}

export async function changeLitter(litterId: string, change: Partial<LitterFields>): Promise<string | null> {
  const done = await run('litter.change', { litterId, change }, { quiet: true });
  if (done.ok) return null;
  if (done.error.field === 'change.whelpedInstant') return words.begin.weighedBefore;
  useWindow.getState().setFailure(done.error);
  return words.form.notSaved;
}

/** The day or the clock of the whelping; the other part stays. */
export async function changeWhelping(litterId: string, at: LocalTime): Promise<string | null> {
  return whelpingFault(at) ?? changeLitter(litterId, { whelpedAt: at, whelpedInstant: instantOf(at) });
}

/** A birth that is moved takes its birth weight along. */
export async function changePuppy(puppyId: string, change: PuppyChange): Promise<string | null> {
  const done = await run('litter.changePuppy', { puppyId, change }, { quiet: true });
  if (done.ok) return null;
  if (done.error.code === 'conflict' && change.collar?.letter !== undefined)
    return words.puppies.letterTaken(change.collar.letter);
  useWindow.getState().setFailure(done.error);
  return words.form.notSaved;
}

/** Its birth weight: the standing reading of birth, if any. */
export function birthReading(puppyId: string, readings: readonly Reading[]): Reading | null {
  return readings.find((r) => r.puppyId === puppyId && r.session === 'birth' && isCurrent(r)) ?? null;
}

/** A birth is within a day before and three days after the whelping began; the program refuses others. */
function fitsWhelping(at: LocalTime, whelpedAt: LocalTime): boolean {
  const after = localMinutes(at) - localMinutes(whelpedAt);
  return after >= -DAY_MINUTES && after <= 3 * DAY_MINUTES;
}

/** Moves its birth, and its birth weight with it. */
export async function changeBorn(puppy: Puppy, whelpedAt: LocalTime, at: LocalTime): Promise<string | null> {
  if (instantOf(at) > now().instant) return words.puppies.bornFuture;
  if (!fitsWhelping(at, whelpedAt)) return words.puppies.bornFar;
  return changePuppy(puppy.id, { bornAt: at, bornInstant: instantOf(at) });
}

/** Writes, corrects or (empty) takes back a birth weight. */
export async function changeBirthWeight(puppy: Puppy, birth: Reading | null, mass: TypedMass | null): Promise<string | null> {
  const done = await sendBirthWeight(puppy, birth, mass);
  return done === null || done.ok ? null : words.form.notSaved;
}

function sendBirthWeight(puppy: Puppy, birth: Reading | null, mass: TypedMass | null) {
  if (mass === null) return birth === null ? null : run('growth.withdraw', { readingId: birth.id });
  const at = birth?.at ?? puppy.bornAt;
  const instant = birth?.instant ?? puppy.bornInstant;
  const reading = { ...mass, at, instant, session: 'birth', source: 'keyboard', held: false } as const;
  return birth === null
    ? run('growth.record', { puppyId: puppy.id, reading })
    : run('growth.correct', { readingId: birth.id, reading });
}

export async function changeState(puppy: Puppy, state: PuppyState, on: CivilDate | null): Promise<string | null> {
  if (on !== null && on < dateOf(puppy.bornAt)) return words.puppies.stateBefore;
  if (on !== null && on > dateOf(now().local)) return words.puppies.stateFuture;
  const done = await run('litter.setState', { puppyId: puppy.id, state, on });
  return done.ok ? null : words.form.notSaved;
}

/** A new puppy with the next usual collar, born now while she whelps, else with the litter. Null when all collars are given. */
export function addPuppy(litterId: string): Promise<string | null> {
  return inOrder(async (run) => {
    const all = await call('litter.all', {});
    if (!all.ok) useWindow.getState().setFailure(all.error);
    const facts = all.ok ? all.value.litters.find((l) => l.litter.id === litterId) : undefined;
    const collar = facts === undefined ? null : nextCollar(facts.puppies.map((p) => p.collar));
    if (facts === undefined || collar === null) return null;
    const { litter, puppies } = facts;
    const whelping = localMinutes(now().local) - localMinutes(litter.whelpedAt) < 2 * DAY_MINUTES;
    const born = whelping ? now() : { local: litter.whelpedAt, instant: litter.whelpedInstant };
    const fields: PuppyFields = {
      collar,
      callName: '',
      sex: 'unseen',
      markings: '',
      birthOrder: Math.min(30, 1 + Math.max(0, ...puppies.map((p) => p.birthOrder))),
      bornAt: born.local,
      bornInstant: born.instant,
    };
    const done = await run('litter.addPuppy', { litterId, fields, birthWeight: null });
    return done.ok ? done.value.puppy.id : null;
  });
}

/** Puppies whose birth no longer fits the whelping: its day was mended after they were written down. */
export function bornAnotherDay(facts: LitterFacts): Puppy[] {
  return facts.puppies.filter((p) => !fitsWhelping(p.bornAt, facts.litter.whelpedAt));
}

/** Moves puppies to the day of the whelping, all at once, each keeping its clock: after midnight is the next day. */
export async function moveToWhelping(puppies: readonly Puppy[], { id, whelpedAt }: Litter): Promise<void> {
  const births = puppies.map((puppy) => {
    const sameDay = localTime(`${dateOf(whelpedAt)}T${clockOf(puppy.bornAt)}`);
    const nextDay = localTime(`${addDays(dateOf(whelpedAt), 1)}T${clockOf(puppy.bornAt)}`);
    const at = sameDay >= whelpedAt ? sameDay : instantOf(nextDay) <= now().instant ? nextDay : whelpedAt;
    return { puppyId: puppy.id, bornAt: at, bornInstant: instantOf(at) };
  });
  await run('litter.moveBirths', { litterId: id, births });
}
