import { describe, expect, it } from 'vitest';
import { COLLAR_LETTERS, nextCollar, USUAL_COLLARS } from '../../../core/litter/collar.ts';

describe('usual collars', () => {
  it('has one for each letter, no two alike in colour and pattern', () => {
    expect(USUAL_COLLARS.map((c) => c.letter)).toEqual([...COLLAR_LETTERS]);
    expect(new Set(USUAL_COLLARS.map((c) => `${c.colour} ${c.pattern}`)).size).toBe(USUAL_COLLARS.length);
  });

  it('gives the first free letter, and none when all are taken', () => {
    expect(nextCollar([])?.letter).toBe('A');
    expect(nextCollar(USUAL_COLLARS.filter((c) => c.letter !== 'D'))?.letter).toBe('D');
    expect(nextCollar(USUAL_COLLARS)).toBeNull();
  });
});
