/** The sexes and size classes that published tables are kept for. */
export const SIZE_CLASSES = ['toy', 'small', 'medium', 'large', 'giant'] as const;
export type SizeClass = (typeof SIZE_CLASSES)[number];
/** `unseen` until somebody looked: at whelping the weight comes first. */
export const SEXES = ['dog', 'bitch', 'unseen'] as const;
export type Sex = (typeof SEXES)[number];
