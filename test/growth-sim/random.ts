/** Repeatable randomness: the same seed gives the same litters. Mulberry32, and normal values by Box and Muller. */

export interface Random {
  /** Uniform in [0, 1). */
  unit(): number;
  between(low: number, high: number): number;
  whole(low: number, high: number): number;
  normal(sd: number): number;
  chance(p: number): boolean;
  pick<T>(list: readonly T[]): T;
}

export function random(seed: number): Random {
  let state = (seed * 2654435761) >>> 0;
  const unit = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
  const normal = (sd: number): number => sd * Math.sqrt(-2 * Math.log(1 - unit())) * Math.cos(2 * Math.PI * unit());
  return {
    unit,
    normal,
    between: (low, high) => low + (high - low) * unit(),
    whole: (low, high) => low + Math.floor((high - low + 1) * unit()),
    chance: (p) => unit() < p,
    pick: (list) => {
      const item = list[Math.floor(unit() * list.length)];
      if (item === undefined) throw new RangeError('nothing to pick from');
      return item;
    },
  };
}
