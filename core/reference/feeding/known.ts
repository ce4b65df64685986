/** How a figure is known: seen in the source's own text, as quoted elsewhere, from memory, computed from seen figures, or custom. */
export type Known = 'seen' | 'second-hand' | 'from memory' | 'computed' | 'common practice';
