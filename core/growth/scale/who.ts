/** Which puppy is on the scale, by what it weighs. A guess to be asked about, never acted on. */
import { expectedAt } from '../doubt.ts';
import type { GrowthInput } from '../input.ts';

/** In standard deviations of what was expected: the one in hand does not fit, one other does, and no third one nearly. */
const NOT_THIS_ONE = 3;
const THAT_ONE = 1.5;
const NOT_A_THIRD = 2.5;
/** A spread of less is not believed, in log units. */
const LEAST_SD = 0.02;

export interface OtherPuppy {
  readonly puppyId: string;
  /** What was expected of it, and of the one in hand, in grams. */
  readonly expectedGrams: number;
  readonly inHandGrams: number;
}

/** Another puppy that a weight fits much better than the one in hand; null when none, or when more than one does. */
export function likelierPuppy(
  input: GrowthInput,
  inHandId: string,
  otherIds: readonly string[],
  instant: number,
  grams: number,
): OtherPuppy | null {
  const own = suits(input, inHandId, instant, grams);
  if (own === null || own.off <= NOT_THIS_ONE) return null;
  const others = otherIds
    .filter((id) => id !== inHandId)
    .flatMap((id) => {
      const f = suits(input, id, instant, grams);
      return f === null ? [] : [{ id, ...f }];
    })
    .toSorted((a, b) => a.off - b.off);
  const [best, next] = others;
  if (best === undefined || best.off > THAT_ONE || (next !== undefined && next.off < NOT_A_THIRD)) return null;
  return { puppyId: best.id, expectedGrams: best.expected, inHandGrams: own.expected };
}

function suits(input: GrowthInput, puppyId: string, instant: number, grams: number): { off: number; expected: number } | null {
  const e = expectedAt(input, puppyId, instant);
  if (e === null) return null;
  // The range of `expectedAt` is three standard deviations to either side.
  const sd = Math.max(LEAST_SD, Math.log(e.high / e.low) / 6);
  return { off: Math.abs(Math.log(grams / e.grams)) / sd, expected: e.grams };
}
