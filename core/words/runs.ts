/** Sentences of the paper with strong and official words in them. */
import type { Run } from '../homing/earlier-plan.ts';

/** `*strong*` and `_official_` words as runs; everything else is plain. No name or figure may hold these marks. */
export function runsOf(text: string): Run[] {
  return text
    .split(/(\*[^*]+\*|_[^_]+_)/)
    .filter((part) => part !== '')
    .map((part) => {
      if (part.startsWith('*')) return { text: part.slice(1, -1), as: 'strong' };
      return part.startsWith('_') ? { text: part.slice(1, -1), as: 'official' } : { text: part, as: 'plain' };
    });
}
