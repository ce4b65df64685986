/** What the two sheets of a plan of version 1 hold when it is printed again: headings, tables with headers, pictures with words. */
import { readFileSync } from 'node:fs';
import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';
import { earlierPlanSchema } from '../../../core/homing/earlier-plan.ts';
import { EarlierPaper } from '../../../renderer/print/earlier/EarlierPaper.tsx';

const KEPT = new URL('../../fixtures/plans/', import.meta.url);
const sheets = (name: string, paper: 'a4' | 'letter' = 'a4') =>
  renderToStaticMarkup(
    <EarlierPaper
      document={earlierPlanSchema.parse(JSON.parse(readFileSync(new URL(`${name}.json`, KEPT), 'utf8')))}
      paper={paper}
    />,
  );
const textOf = (html: string) =>
  html
    .replace(/<[^>]+>/g, ' ')
    .replace(/&#x27;/g, '’')
    .replace(/\s+/g, ' ');

describe.each([['a4'], ['letter']] as const)('on %s', (paper) => {
  const html = sheets('eight-weeks', paper);

  it('is two sheets, each with name, day of printing and number', () => {
    expect(html.match(/class="sheet"/g)).toHaveLength(2);
    expect(html).toContain(`data-paper="${paper}"`);
    for (const n of [1, 2]) expect(html).toContain(`sheet ${n} of 2`);
    expect(textOf(html).match(/Tansy’s go-home plan · printed 21\s?November 2026/g)).toHaveLength(2);
  });

  it('has one first heading and words for every picture', () => {
    expect(html.match(/<h1/g)).toHaveLength(1);
    for (const svg of html.match(/<svg[^>]*>/g) ?? []) expect(svg).toMatch(/role="img" aria-label="[^"]+"|aria-hidden="true"/);
    expect(html).toMatch(/aria-label="Meal ladder: from 222\s?g a day/);
    expect(html).toMatch(/aria-label="Weights of Tansy by age in kg/);
  });

  it('has real tables: captions, and a scope on every header', () => {
    expect(html.match(/<table/g)?.length).toBe(html.match(/<caption/g)?.length);
    for (const th of html.match(/<th\b[^>]*>/g) ?? []) expect(th).toMatch(/scope="(col|row|rowgroup)"/);
  });
});

describe('whatever was kept', () => {
  it.each([['eight-weeks'], ['ounces'], ['long-keep']])('%s: the cautions are on the paper', (name) => {
    const text = textOf(sheets(name));
    for (const caution of [
      /Should not handle raw food: children under 5, pregnant women, older people, anyone with weak immunity/,
      /Freezing does not kill bacteria/,
      /bones of any size are unsafe/,
      /24 hours \(UK, Ireland\), 48 at most \(US\)/,
      /Never thaw on the counter/,
      /Call the vet today/,
      /Your vet knows your puppy/,
    ]) {
      expect(text).toMatch(caution);
    }
  });
});
