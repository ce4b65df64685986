/** One outside check: data that names its source, and the call into `core` that has to give the expected value. */

/** How the expected value is known. `seen` in the source's own text, `second-hand` as quoted elsewhere, `computed` from a seen formula. */
export type Known = 'seen' | 'second-hand' | 'from memory' | 'computed' | 'common practice';

export type Value = number | string | boolean | null | readonly (number | string | boolean | null)[];

export interface EvidenceRow<I = never> {
  /** Row of the check tables, such as `growth 24`; a letter follows where a row holds several checks. */
  readonly id: string;
  readonly quantity: string;
  readonly inputs: I;
  readonly expected: Value;
  /** Allowed absolute difference of each number; `exact` for words, whole numbers and dates. */
  readonly tolerance: number | 'exact';
  /** In full: author, year, title or journal, table or section; or `common practice, no source`. */
  readonly source: string;
  readonly known: Known;
  /** Calls the code that the program uses, or a method that the tests compare it with; then `quantity` says so. */
  readonly run: (inputs: I) => Value;
}

/** Keeps the type of `inputs` tied to `run` while rows of many kinds share one list. */
export function row<const I>(r: EvidenceRow<I>): EvidenceRow {
  return r as unknown as EvidenceRow;
}

export interface Outcome {
  readonly row: EvidenceRow;
  readonly got: Value | Error;
  readonly ok: boolean;
}

/** Runs one row; a thrown error is an outcome, not a crash. */
export function check(r: EvidenceRow): Outcome {
  try {
    const got = r.run(r.inputs);
    return { row: r, got, ok: agrees(r.expected, got, r.tolerance) };
  } catch (error) {
    return { row: r, got: error instanceof Error ? error : new Error(String(error)), ok: false };
  }
}

function agrees(expected: Value, got: Value, tolerance: number | 'exact'): boolean {
  if (Array.isArray(expected) || Array.isArray(got)) {
    if (!Array.isArray(expected) || !Array.isArray(got) || expected.length !== got.length) return false;
    return expected.every((e, i) => agrees(e, got[i] as Value, tolerance));
  }
  if (typeof expected === 'number' && typeof got === 'number' && tolerance !== 'exact') {
    return Math.abs(expected - got) <= tolerance * (1 + 1e-12);
  }
  return Object.is(expected, got);
}
