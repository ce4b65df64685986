/** How much the weights of a puppy can say: one weight alone shows no gain, so nobody is called steady for it. */
import { DAY_MS } from '../../core/calendar/durations.ts';
import type { GrowthInput } from '../../core/growth/input.ts';

export type WeighingsCount = 'none' | 'once' | 'more';

/** A birth weight says something of the gain to the next weight for about this long. */
const BIRTH_SERVES_MS = 3 * DAY_MS;

/** Counted weights of one puppy: none, one, or more. Weights in question do not count, nor a birth weight of long before. */
export function weighingsCount(input: GrowthInput, puppyId: string): WeighingsCount {
  const own = input.readings.filter((r) => r.puppyId === puppyId && !r.held);
  const latest = own.reduce((t, r) => Math.max(t, r.instant), 0);
  const serving = own.filter((r) => r.session !== 'birth' || latest - r.instant < BIRTH_SERVES_MS);
  return serving.length === 0 ? 'none' : serving.length === 1 ? 'once' : 'more';
}
