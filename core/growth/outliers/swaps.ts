/** Two weights exchanged: each too far from its own puppy, both close when they change places. */
import { commonMove } from '../kalman-filter.ts';

/** One weight beside what was expected of its puppy. Log units. */
export interface Suspect {
  /** Its row in the session. */
  readonly at: number;
  readonly ln: number;
  /** Over what its own past, and its future when that is known, let expect; what the litter did is not taken off yet. */
  readonly off: number;
  readonly sd: number;
  /** The person said that it is right, or it was exchanged already. */
  readonly fixed: boolean;
}

/** What every counted row of the session was off by. */
export type Offs = readonly { readonly at: number; readonly off: number }[];

const LEAST_Z = 2;
const MOST_Z_AFTER = 2.6;
/** When the weights were far apart the rest may be larger, but only this share of what it was. */
const REST = 0.3;
const GAIN = 12;
const GAIN_LOOKING_BACK = 11;
const PAIRS = 15;

/** Pairs of rows to exchange, no row twice, the clearest first. Looking back, the next readings are known too. */
export function swapsIn(suspects: readonly Suspect[], offs: Offs, lookingBack: boolean): [number, number][] {
  const n = suspects.length;
  const pairs = (n * (n - 1)) / 2;
  const least = (lookingBack ? GAIN_LOOKING_BACK : GAIN) + (pairs > PAIRS ? 4 * Math.log(pairs / PAIRS) : 0);
  const found: { a: number; b: number; gain: number }[] = [];
  suspects.forEach((one, i) => {
    for (const two of suspects.slice(i + 1)) {
      if (one.fixed || two.fixed) continue;
      const gain = gainOfExchange(one, two, offs);
      if (gain !== null && gain > least) found.push({ a: one.at, b: two.at, gain });
    }
  });
  const taken = new Set<number>();
  return found
    .sort((x, y) => y.gain - x.gain)
    .flatMap(({ a, b }): [number, number][] => {
      if (taken.has(a) || taken.has(b)) return [];
      taken.add(a).add(b);
      return [[a, b]];
    });
}

/** How much better the two read the other way round, in squared standard deviations; null when they do not fit so either. */
export function gainOfExchange(one: Suspect, two: Suspect, offs: Offs): number | null {
  // The two themselves tell nothing about the litter while they may be exchanged.
  const common = commonMove(offs.flatMap((o) => (o.at === one.at || o.at === two.at ? [] : [o.off])));
  const apart = two.ln - one.ln;
  const z1 = (one.off - common) / one.sd;
  const z2 = (two.off - common) / two.sd;
  const after1 = (one.off - common + apart) / one.sd;
  const after2 = (two.off - common - apart) / two.sd;
  if (z1 * z2 >= 0 || Math.min(Math.abs(z1), Math.abs(z2)) < LEAST_Z) return null;
  if (
    Math.abs(after1) >= Math.max(MOST_Z_AFTER, REST * Math.abs(z1)) ||
    Math.abs(after2) >= Math.max(MOST_Z_AFTER, REST * Math.abs(z2))
  )
    return null;
  return z1 * z1 + z2 * z2 - after1 * after1 - after2 * after2;
}
