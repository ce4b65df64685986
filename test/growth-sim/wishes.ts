/** A breeder who does what a flag asks for: weigh this puppy again within 6 to 12 hours, at a time when people are up. */
import { fromLocalMinutes, localMinutes } from '../../core/calendar/clock.ts';
import { historyOf } from '../../core/growth/history.ts';
import type { GrowthReading } from '../../core/growth/input.ts';
import { sessionsOf } from '../../core/growth/sessions.ts';
import type { SimLitter } from './simulate.ts';

const HOUR = 3_600_000;
const AFTER = 7 * HOUR;
/** The usual round is near enough then. */
const SOON = 9 * HOUR;
const UP = { from: 6, to: 22.5 };

/** The same litter with the weights that the program asked for along the way. */
export function asWished(sim: SimLitter): SimLitter {
  const rounds = sessionsOf(sim.input);
  const readings: GrowthReading[] = [];
  rounds.forEach((round, k) => {
    readings.push(...round.rows.map((r) => r.reading));
    const next = rounds[k + 1]?.instant ?? Number.POSITIVE_INFINITY;
    let asked = flaggedNow(sim, readings);
    for (let at = round.instant + AFTER; at + SOON - AFTER < next && asked.length > 0 && k > 0; at += AFTER) {
      if (next === Number.POSITIVE_INFINITY || !isUp(round.rows[0]?.reading, at)) return;
      const again = asked.flatMap((id, i) => sim.weighAgain(id, at + i * 60_000) ?? []);
      if (again.length === 0) return;
      readings.push(...again);
      asked = flaggedNow(sim, readings);
    }
  });
  return { ...sim, input: { ...sim.input, readings } };
}

/** The puppies of the last session that stand at watch or act. */
function flaggedNow(sim: SimLitter, readings: readonly GrowthReading[]): string[] {
  const known = historyOf({ ...sim.input, readings }).at(-1);
  const rows = known?.cleaned.sessions.at(-1)?.rows ?? [];
  return rows.filter((r) => (known?.puppies[r.index]?.level ?? 'steady') !== 'steady').map((r) => r.puppy.id);
}

function isUp(of: GrowthReading | undefined, instant: number): boolean {
  if (of === undefined) return false;
  const at = fromLocalMinutes(localMinutes(of.at) + (instant - of.instant) / 60_000);
  const hour = Number(at.slice(11, 13)) + Number(at.slice(14, 16)) / 60;
  return hour >= UP.from && hour < UP.to;
}
