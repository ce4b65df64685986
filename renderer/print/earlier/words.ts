/** Versions 1 and 2 of the plan were printed in English only. */
import { catalogueOf } from '../../../core/words/catalogue.ts';

export const words = catalogueOf('en');
