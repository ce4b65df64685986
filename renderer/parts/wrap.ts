import type { Measure } from './measure.ts';

/** Breaks a text between words into lines no wider than `width`; the first line may be narrower. A long word stands alone. */
export function wrapText(text: string, size: number, width: number, measure: Measure, firstWidth = width): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ').filter((w) => w !== '')) {
    const longer = line === '' ? word : `${line} ${word}`;
    const room = lines.length === 0 ? firstWidth : width;
    if (line === '' ? lines.length > 0 || measure(longer, size) <= room : measure(longer, size) <= room) {
      line = longer;
    } else {
      lines.push(line);
      line = word;
    }
  }
  return line === '' ? lines : [...lines, line];
}
