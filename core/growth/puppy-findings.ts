/** What the weights say of a puppy or of the whole litter, and what to do, as codes and numbers; the words say it. */
import type { LocalTime } from '../calendar/clock.ts';
import type { Sex } from '../reference/classes.ts';
import { deathsToDay21, type VeryLow } from './birth-class.ts';

/** Gains in grams per day since the last good weighing, and what reference and littermates let expect; `at` is the last weighing. */
export interface Gains {
  readonly since: LocalTime;
  readonly at: LocalTime;
  readonly actual: number;
  readonly expected: number;
}

export type ShortGain = Gains & { readonly code: 'losing' | 'no-gain' | 'gain-short' };

/** Grams per day, of either sign, that are neither gain nor loss. */
const NO_GAIN = 0.5;

/** Weights in grams, gains in grams per day. */
export type PuppyFinding =
  | { readonly code: 'not-weighed' }
  /** It has left or died. */
  | { readonly code: 'left' }
  | { readonly code: 'weighed-once' }
  /** `days` whole days in the same place among the littermates. */
  | { readonly code: 'smallest-in-place'; readonly name: string; readonly sex: Sex; readonly days: number }
  /** Steady; `gain` is negative for a loss that is nothing unusual, `standing` ln of weight over the littermates' middle. */
  | { readonly code: 'steady-gain'; readonly gain: number; readonly standing: number | null }
  | (ShortGain & { readonly sex: Sex })
  /** Over hours, or where no gain was to be expected: `grams` is the change itself, under 0. */
  | { readonly code: 'lost'; readonly sex: Sex; readonly since: LocalTime; readonly at: LocalTime; readonly grams: number }
  | ({ readonly code: 'gaining-again'; readonly sex: Sex } & Omit<Gains, 'expected'>)
  /** In trouble since before the weights that can be compared. */
  | { readonly code: 'not-as-expected' }
  | {
      readonly code: 'under-birth-weight';
      readonly grams: number;
      readonly birth: number;
      /** Whole percent. */
      readonly percent: number;
    }
  | {
      readonly code: 'born-small';
      readonly birth: number;
      readonly veryLow: VeryLow | null;
      /** Published deaths to day 21 of such puppies, in percent; null where none were published for the breed. */
      readonly deaths: number | null;
    };

export type LitterFinding =
  | { readonly code: 'nobody-weighed' }
  | { readonly code: 'growing' }
  /** The middle of the puppies' gains. */
  | ShortGain
  | { readonly code: 'gaining-again' };

export function shortGain(gains: Gains): ShortGain {
  const code = gains.actual < -NO_GAIN ? 'losing' : gains.actual < NO_GAIN ? 'no-gain' : 'gain-short';
  return { code, ...gains };
}

/** The published deaths are for the explanation; the level asks only for a closer look. */
export function bornSmall(birth: number, veryLow: VeryLow | null): PuppyFinding {
  const deaths = veryLow?.by === 'thresholds' ? deathsToDay21('very-low', veryLow.breed) : null;
  return { code: 'born-small', birth, veryLow, deaths };
}

/** Things to do for one puppy. Common practice, no source; they do not replace the vet. */
export type PuppyTodo =
  | 'weigh-now'
  | 'weigh-in-6-to-12-hours'
  | 'weigh-every-6-hours'
  | 'warm-before-milk'
  | 'warm-and-quiet'
  | 'see-suckle'
  | 'see-eat'
  | 'call-vet-if-no-better'
  | 'call-vet-now'
  /** While it is still possible: it looks just like fading until it catches up. After the vet, lest it reassure. */
  | 'may-be-late';

/** Things to do for the whole litter. Common practice, no source. */
export type LitterTodo =
  | 'look-at-dam'
  | 'check-scale'
  | 'check-warmth'
  | 'weigh-all-in-6-to-12-hours'
  | 'weigh-all-in-6-hours'
  | 'call-vet-if-they-are-no-better'
  | 'call-vet-for-all';

/** Younger ones cannot digest while they are chilled. Days. */
const CHILLS_UNTIL = 28;
/** Two weeks and younger puppies are told apart from those that eat. Days. */
const SUCKS_UNTIL = 24;

/** In order. */
export function puppyTodo(level: 'watch' | 'act', ageDays: number, mayBeLate: boolean): PuppyTodo[] {
  const care: PuppyTodo[] = [
    ageDays < CHILLS_UNTIL ? 'warm-before-milk' : 'warm-and-quiet',
    ageDays < SUCKS_UNTIL ? 'see-suckle' : 'see-eat',
  ];
  const late: PuppyTodo[] = mayBeLate ? ['may-be-late'] : [];
  return level === 'watch'
    ? ['weigh-now', 'weigh-in-6-to-12-hours', ...care, 'call-vet-if-no-better', ...late]
    : ['weigh-now', 'weigh-every-6-hours', ...care, 'call-vet-now', ...late];
}

/** In order: the dam before the puppies. */
export function litterTodo(level: 'watch' | 'act'): LitterTodo[] {
  return [
    'look-at-dam',
    'check-scale',
    'check-warmth',
    ...(level === 'watch'
      ? (['weigh-all-in-6-to-12-hours', 'call-vet-if-they-are-no-better'] as const)
      : (['weigh-all-in-6-hours', 'call-vet-for-all'] as const)),
  ];
}
