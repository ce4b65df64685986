/** A thaw list that is longer than a sheet goes on over the next: nothing is left off. */
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { thawSheets } from '../../renderer/print/ThawListPaper.tsx';

const row = (what: string) => ({ out: '', what, ready: '', useBy: '', official: '', who: '' });

it('holds every row once and in order, never more than fit on a sheet, each under the heading of its day', () => {
  fc.assert(
    fc.property(fc.array(fc.integer({ min: 1, max: 20 }), { minLength: 1, maxLength: 7 }), (sizes) => {
      const days = sizes.map((n, d) => ({ heading: `day ${d}`, rows: Array.from({ length: n }, (_, i) => row(`${d} ${i}`)) }));
      const sheets = thawSheets(days);
      expect(sheets.flat().flatMap((day) => day.rows)).toEqual(days.flatMap((day) => day.rows));
      for (const sheet of sheets) {
        expect(sheet.reduce((sum, day) => sum + day.rows.length, 0)).toBeLessThanOrEqual(14);
        for (const day of sheet) for (const { what } of day.rows) expect(day.heading).toBe(`day ${what.split(' ')[0]}`);
      }
    }),
  );
});
