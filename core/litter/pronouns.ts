/** He and she: how a puppy is spoken of. */
import type { Sex } from '../reference/classes.ts';

export interface Pronouns {
  readonly they: 'he' | 'she';
  readonly them: 'him' | 'her';
  readonly their: 'his' | 'her';
}

/** "she", "her", "her" for a bitch, "he", "him", "his" for a dog. */
export function pronouns(sex: Sex): Pronouns {
  return sex === 'bitch' ? { they: 'she', them: 'her', their: 'her' } : { they: 'he', them: 'him', their: 'his' };
}
