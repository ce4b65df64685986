/**
 * The sentences of the window, in the language of the house. Read them while drawing, never while a module loads: a language
 * that is chosen later has to reach every one of them.
 */
import { type Catalogue, catalogueOf } from '../../core/words/catalogue.ts';

export const words: Catalogue = catalogueOf('en');
