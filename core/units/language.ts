/** Languages that a house, a buyer or a kept paper can have. What they say stands in `core/words`. */
import { z } from 'zod';

const LANGUAGES = ['en'] as const;
export const languageSchema = z.enum(LANGUAGES);
export type Language = z.infer<typeof languageSchema>;
