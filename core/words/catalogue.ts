/** What a language must be able to say, and which languages there are. */
import type { Language } from '../units/language.ts';
import { ENGLISH } from './en/catalogue.ts';

/** The shape of a catalogue: a sentence for each of the English ones, from the same figures. */
type Spoken<T> = T extends string
  ? string
  : T extends (...figures: infer A) => infer R
    ? (...figures: A) => Spoken<R>
    : { readonly [K in keyof T]: Spoken<T[K]> };
export type Catalogue = Spoken<typeof ENGLISH>;

const CATALOGUES: Readonly<Record<Language, Catalogue>> = { en: ENGLISH };

export function catalogueOf(language: Language): Catalogue {
  return CATALOGUES[language];
}
