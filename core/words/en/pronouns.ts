/** He and she: how a puppy is spoken of. */
import type { Sex } from '../../reference/classes.ts';

export interface Pronouns {
  readonly they: 'he' | 'she' | 'it';
  readonly them: 'him' | 'her' | 'it';
  readonly their: 'his' | 'her' | 'its';
}

/** "she", "her", "her" for a bitch, "he", "him", "his" for a dog; "it" while nobody looked. */
export function pronouns(sex: Sex): Pronouns {
  if (sex === 'unseen') return { they: 'it', them: 'it', their: 'its' };
  return sex === 'bitch' ? { they: 'she', them: 'her', their: 'her' } : { they: 'he', them: 'him', their: 'his' };
}
