import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';
import { date } from '../../../core/calendar/day.ts';
import { DriftLine, type DriftPoint } from '../../../renderer/parts/DriftLine.tsx';
import { MealLadder } from '../../../renderer/parts/ladder/MealLadder.tsx';

const heath: DriftPoint = {
  puppyId: 'puppy-heath',
  name: 'Heath',
  collar: { letter: 'H', colour: 'pink', pattern: 'zigzag' },
  standing: Math.log(0.887),
  before: Math.log(0.883),
  level: 'steady',
  sentence: null,
  weighedNow: true,
};
const dock: DriftPoint = {
  ...heath,
  puppyId: 'puppy-dock',
  name: 'Dock',
  collar: { letter: 'D', colour: 'green', pattern: 'zigzag' },
  standing: Math.log(0.936),
  before: Math.log(0.977),
  level: 'watch',
  sentence: 'Since Tuesday about 60 % less gain than expected.',
  weighedNow: false,
};

/** Rows of the table that follows a picture, as plain text. */
function rows(markup: string): string[][] {
  return [...markup.matchAll(/<tr>(.*?)<\/tr>/g)].map((row) =>
    [...(row[1] ?? '').matchAll(/<t[hd][^>]*>(.*?)<\/t[hd]>/g)].map((cell) => cell[1] ?? ''),
  );
}

describe('the pictures for those who do not see them', () => {
  it('says where each puppy stands, stood, and why', () => {
    const table = rows(renderToStaticMarkup(<DriftLine points={[heath, dock]} medianGrams={2312} unit="g" />));
    expect(table.slice(1)).toEqual([
      ['H, Heath, pink zigzag', 'steady', '11\u00a0% under the middle', '12\u00a0% under the middle', ''],
      [
        'D, Dock, green zigzag',
        'watch',
        '6\u00a0% under the middle',
        '2\u00a0% under the middle',
        'Since Tuesday about 60 % less gain than expected. not weighed yet; where it stood last',
      ],
    ]);
  });

  it('holds a single puppy against its own line', () => {
    const table = rows(renderToStaticMarkup(<DriftLine points={[{ ...dock, before: 0 }]} medianGrams={612} unit="g" single />));
    expect(table[1]?.slice(2, 4)).toEqual(['6\u00a0% under its line', 'on its line']);
  });

  it('says so when nobody can be placed', () => {
    expect(renderToStaticMarkup(<DriftLine points={[]} medianGrams={null} unit="g" />)).toContain('weigh the puppies first');
  });

  it('lists every tread of the ladder on screen; on paper the plan has its own table', () => {
    const steps = [
      { fromDay: 56, untilDay: 63, dayGrams: 270, meals: { morning: 90, midday: 90, evening: 90 }, changing: false },
      { fromDay: 63, untilDay: 70, dayGrams: 300, meals: { morning: 150, evening: 150 }, changing: false },
    ];
    const table = rows(renderToStaticMarkup(<MealLadder steps={steps} born={date('2026-09-26')} nowDay={56} unit="g" />));
    expect(table).toEqual([
      ['Age', 'From', 'A day', 'morning', 'midday', 'evening'],
      ['8 weeks', '21 November 2026', '270\u00a0g', '90\u00a0g', '90\u00a0g', '90\u00a0g'],
      ['9 weeks', '28 November 2026', '300\u00a0g', '150\u00a0g', 'none', '150\u00a0g'],
    ]);
    const paper = renderToStaticMarkup(<MealLadder steps={steps} born={date('2026-09-26')} nowDay={56} unit="g" paper />);
    expect(rows(paper)).toEqual([]);
    expect(paper).toContain('three meals a day');
  });
});
