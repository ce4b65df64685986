/** A reading against those before and after it: what the newest session says about the one before. */
import { deviation, type Innovation } from '../kalman-filter.ts';
import { type CleanRow, type Draft, exchange, filterFrom, readingBefore, setRow, takeBack, withoutReading } from './draft.ts';
import { jumps } from './mistyped.ts';
import { gainOfExchange, type Offs, type Suspect, swapsIn } from './swaps.ts';

const BACK_SDS = 4.8;
/** Exchanged weights are taken back when the next reading makes that so much likelier. */
const BACK_AGAIN = 6;
const BACK_FLOOR = 0.045;
const BACK_DAYS = 4;

interface Middle extends Suspect {
  readonly dev: number;
  readonly z: number;
  readonly k: number;
}

/** The middle of three against its neighbours, for each puppy of the newest session. */
export function lookBack(draft: Draft, k: number): { count: number; sum: number } {
  const middles = (draft.sessions[k]?.rows ?? []).flatMap((row, at) => {
    const m = middleOfThree(draft, k, row, draft.steps[k]?.innovations[at] ?? null);
    return m === null ? [] : [m];
  });
  const changed = new Set<number>();
  for (const j of new Set(middles.map((m) => m.k))) {
    const there = middles.filter((m) => m.k === j);
    const offs = offsAt(draft, j);
    for (const [a, b] of swapsIn(there, offs, true)) {
      exchange(draft, j, a, b);
      changed.add(j);
    }
    if (takeBackExchanges(draft, j, there, offs)) changed.add(j);
  }
  let sum = 0;
  for (const m of middles) {
    sum += Math.min(9, m.z * m.z);
    const row = draft.sessions[m.k]?.rows[m.at];
    if (row?.verdict !== 'counts' || m.fixed || Math.abs(m.z) <= BACK_SDS || Math.abs(m.dev) <= BACK_FLOOR) continue;
    setRow(draft, m.k, m.at, { used: null, verdict: 'mistyped' });
    changed.add(m.k);
  }
  if (changed.size > 0) filterFrom(draft, Math.min(...changed));
  return { count: middles.length, sum };
}

/** What the counted rows of a session were off by. */
function offsAt(draft: Draft, k: number): Offs {
  return (draft.sessions[k]?.rows ?? []).flatMap((row, at) => {
    const i = draft.steps[k]?.innovations[at] ?? null;
    return i === null || row.used === null ? [] : [{ at, off: i.off }];
  });
}

/** Exchanged weights that the next reading says were right as typed. */
function takeBackExchanges(draft: Draft, j: number, there: readonly Middle[], offs: Offs): boolean {
  let changed = false;
  const rows = draft.sessions[j]?.rows ?? [];
  for (const one of there) {
    const row = rows[one.at];
    const two = there.find((m) => rows[m.at]?.reading.id === row?.partner && m.at > one.at);
    const other = two === undefined ? undefined : rows[two.at];
    if (row?.verdict !== 'exchanged' || other?.verdict !== 'exchanged' || two === undefined) continue;
    if ((gainOfExchange(one, two, offs) ?? 0) < BACK_AGAIN) continue;
    takeBack(draft, { k: j, a: one.at, b: two.at });
    changed = true;
  }
  return changed;
}

function middleOfThree(draft: Draft, k: number, row: CleanRow, now: Innovation | null): Middle | null {
  // Somebody said that the jump is right: then the weight before it is not to blame for it.
  const settled = now !== null && (row.anew || (row.reading.kept && jumps(now)));
  const before = row.used === null || now === null || settled ? null : readingBefore(draft, k, row.index);
  if (
    before === null ||
    now === null ||
    row.used === null ||
    before.row.used === null ||
    before.row.anew ||
    row.ageDays - before.row.ageDays > BACK_DAYS
  )
    return null;
  const was = draft.steps[before.k]?.innovations[before.at] ?? null;
  const without = withoutReading(draft, before.k, k, row);
  if (was === null || without === null) return null;
  const later = Math.log(row.used) - without.level - now.common;
  const compared = now.sd ** 2 - now.prediction.vLevel - now.weighing;
  const vBefore = was.sd ** 2 - was.weighing;
  const vLater = now.weighing + now.prediction.drift + compared;
  const toward = (later * vBefore) / (vBefore + vLater);
  const sd = Math.sqrt((vBefore * vLater) / (vBefore + vLater) + was.weighing);
  const dev = deviation(was).dev - toward;
  return {
    k: before.k,
    at: before.at,
    ln: Math.log(before.row.used),
    off: was.off - toward,
    sd,
    dev,
    z: dev / sd,
    fixed: before.row.reading.kept || before.row.settled || before.row.verdict === 'exchanged',
  };
}
