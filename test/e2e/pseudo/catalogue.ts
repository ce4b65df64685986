/**
 * A language that nobody speaks: every English sentence, two fifths longer and between marks. What stands on a page without marks is in no
 * catalogue; what does not fit is too narrow for German. Takes the place of the English catalogue in a build of its own.
 */
import { ENGLISH as REAL } from '../../../core/words/en/catalogue.ts';

/** Figures with their units stay as they are: they are read back, and are as long in every language. */
const HOLDS_A_WORD = /\p{L}{3}/u;

/** Whether the text is one marked sentence, and not a sentence that begins with one. */
function isMarked(text: string): boolean {
  let depth = 0;
  for (const [at, letter] of [...text].entries()) {
    if (letter === '⟦') depth += 1;
    else if (letter === '⟧') depth -= 1;
    if (depth === 0) return at === [...text].length - 1 && letter === '⟧';
  }
  return false;
}

function marked(text: string): string {
  if (!HOLDS_A_WORD.test(text) || isMarked(text)) return text;
  const more = Math.ceil(text.length * 0.4);
  // Short pieces, so that a long sentence can still be broken over lines.
  return `⟦${text}${' ~~~~'.repeat(Math.ceil(more / 5)).slice(0, more)}⟧`;
}

function pseudo(value: unknown): unknown {
  if (typeof value === 'string') return marked(value);
  if (typeof value === 'function') return (...figures: unknown[]) => pseudo(value(...figures));
  if (Array.isArray(value)) return value.map(pseudo);
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, pseudo(inner)]));
}

export const ENGLISH = pseudo(REAL) as typeof REAL;
