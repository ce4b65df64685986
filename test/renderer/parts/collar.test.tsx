import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';
import { COLLAR_COLOURS, COLLAR_PATTERNS, USUAL_COLLARS } from '../../../core/litter/collar.ts';
import { CollarBand, CollarRibbon } from '../../../renderer/parts/CollarBand.tsx';
import { collarLabel, collarWords } from '../../../renderer/parts/collar-words.ts';
import { LevelMark } from '../../../renderer/parts/LevelMark.tsx';
import { Tally } from '../../../renderer/parts/Tally.tsx';

const dock = { letter: 'D', colour: 'green', pattern: 'zigzag' } as const;
/** React's ids differ from one drawing to the next; the drawing itself must not. */
const drawn = (markup: string) => markup.replace(/aria-label="[^"]*"/g, '').replace(/_[a-zA-Z0-9]+_/g, 'id');

describe('the collar', () => {
  it('is a different drawing for every colour and pattern', () => {
    const all = COLLAR_COLOURS.flatMap((colour) =>
      COLLAR_PATTERNS.map((pattern) => drawn(renderToStaticMarkup(<CollarBand collar={{ letter: 'A', colour, pattern }} />))),
    );
    expect(new Set(all).size).toBe(COLLAR_COLOURS.length * COLLAR_PATTERNS.length);
  });

  it('shows its letter and says letter, colour and pattern', () => {
    const markup = renderToStaticMarkup(<CollarBand collar={dock} />);
    expect(markup).toContain('>D</text>');
    expect(markup).toContain('role="img"');
    expect(markup).toContain('aria-label="D, green zigzag"');
  });

  it('is hidden from readers when its name stands beside it', () => {
    const markup = renderToStaticMarkup(<CollarBand collar={dock} label={null} />);
    expect(markup).toContain('aria-hidden="true"');
    expect(markup).not.toContain('role="img"');
  });

  it('is never under 16 px high and always 2.5 times as wide', () => {
    expect(renderToStaticMarkup(<CollarBand collar={dock} height={9} />)).toContain('width="40" height="16"');
    expect(renderToStaticMarkup(<CollarBand collar={dock} height={38} />)).toContain('width="95" height="38"');
  });

  it('is the same fabric laid flat on paper', () => {
    for (const collar of USUAL_COLLARS) {
      const fills = (markup: string) => [...new Set(markup.match(/#[0-9A-F]{6}/g) ?? [])].sort();
      expect(fills(renderToStaticMarkup(<CollarRibbon collar={collar} />))).toEqual(
        fills(renderToStaticMarkup(<CollarBand collar={collar} />)),
      );
    }
  });

  it('is said with the name when there is one', () => {
    expect(collarWords(dock)).toBe('green zigzag');
    expect(collarLabel(dock, 'Dock')).toBe('D, Dock, green zigzag');
    expect(collarLabel(dock, 'D')).toBe('D, green zigzag');
  });
});

describe('the level', () => {
  it('has a shape of its own for each level, and the word or a name for readers', () => {
    const shapes = (['steady', 'watch', 'act'] as const).map((level) => renderToStaticMarkup(<LevelMark level={level} />));
    expect(new Set(shapes.map((s) => s.replace(/steady|watch|act/g, ''))).size).toBe(3);
    expect(shapes[1]).toContain('watch</span>');
    expect(renderToStaticMarkup(<LevelMark level="act" word={false} />)).toContain('aria-label="act"');
  });
});

describe('the tally', () => {
  it('has one mark for each puppy, the done ones strong', () => {
    const markup = renderToStaticMarkup(<Tally done={6} of={8} />);
    expect(markup.match(/class="done"/g)).toHaveLength(6);
    expect(markup.match(/class="rest"/g)).toHaveLength(2);
    expect(markup).toContain('6 of 8 weighed');
  });
});
