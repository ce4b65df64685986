/**
 * A name beside figures in one sentence. A name written from right to left would turn the figures after it round; the
 * marks of Unicode (UAX #9, first strong isolate) keep it to itself. Any other name stays as it is.
 */
export function isolated(name: string): string {
  return RIGHT_TO_LEFT.test(name) ? `\u2068${name}\u2069` : name;
}

const RIGHT_TO_LEFT =
  /[\p{Script=Hebrew}\p{Script=Arabic}\p{Script=Syriac}\p{Script=Thaana}\p{Script=Nko}\u200f\u202b\u202e\u2067]/u;
