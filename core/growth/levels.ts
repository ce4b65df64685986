/** Three levels. A level is entered at its mark and left well under it, so that it does not flicker. */

export type Level = 'steady' | 'watch' | 'act';

export interface Marks {
  readonly watch: number;
  readonly act: number;
}

/** The marks of a litter of six: set on invented litters (`npm run bench:growth`), for about one watch and a third of an act in eight weeks without trouble. */
const SIX_MARKS: Marks = { watch: 2.05, act: 2.49 };
export const LITTER_MARKS: Marks = { watch: 1.6, act: 1.85 };
const USUAL_LITTER = 6;
const BY_SIZE = 0.3;

/** More puppies are more chances of a false alarm: the marks rise with the litter, so that its breeder is not called more often. */
export function puppyMarks(puppies: number): Marks {
  const shift = BY_SIZE * Math.log(Math.max(1, puppies) / USUAL_LITTER);
  return { watch: SIX_MARKS.watch + shift, act: SIX_MARKS.act + shift };
}

const KEPT_BELOW = 0.4;

export function levelAfter(before: Level, score: number, marks: Marks): Level {
  if (score >= marks.act || (before === 'act' && score >= marks.act - KEPT_BELOW)) return 'act';
  if (score >= marks.watch || (before !== 'steady' && score >= marks.watch - KEPT_BELOW)) return 'watch';
  return 'steady';
}

export function worse(a: Level, b: Level): Level {
  if (a === 'act' || b === 'act') return 'act';
  return a === 'watch' || b === 'watch' ? 'watch' : 'steady';
}
