/** What the three sheets hold as a document: headings, tables with headers, pictures with words, the safety sentences. */
import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';
import { planDocument } from '../../core/words/plan-paper.ts';
import { PlanPaper } from '../../renderer/print/PlanPaper.tsx';
import { type Choices, planFacts } from '../core/homing/facts.ts';

const sheets = (choices: Choices = {}, paper: 'a4' | 'letter' = 'a4') =>
  renderToStaticMarkup(<PlanPaper document={planDocument(planFacts(choices))} paper={paper} />);
const textOf = (html: string) =>
  html
    .replace(/<[^>]+>/g, ' ')
    .replace(/&#x27;/g, '’')
    .replace(/\s+/g, ' ');

describe.each([['a4'], ['letter']] as const)('on %s', (paper) => {
  const html = sheets({}, paper);

  it('is three sheets, each with name, day of printing and number', () => {
    expect(html.match(/class="sheet /g)).toHaveLength(3);
    expect(html).toContain(`data-paper="${paper}"`);
    for (const n of [1, 2, 3]) expect(html).toContain(`sheet ${n} of 3`);
    expect(textOf(html).match(/Tansy’s go-home plan · printed 21\s?November 2026/g)).toHaveLength(3);
  });

  it('has one first heading and words for every picture', () => {
    expect(html.match(/<h1/g)).toHaveLength(1);
    for (const svg of html.match(/<svg[^>]*>/g) ?? []) expect(svg).toMatch(/role="img" aria-label="[^"]+"|aria-hidden="true"/);
    expect(html).toMatch(/aria-label="Meal ladder: from 330\s?g a day/);
    expect(html).toMatch(/aria-label="Collar: green, zigzag, letter D"/);
  });

  it('has real tables: captions, and a scope on every header', () => {
    expect(html.match(/<table/g)?.length).toBe(html.match(/<caption/g)?.length);
    for (const th of html.match(/<th\b[^>]*>/g) ?? []) expect(th).toMatch(/scope="(col|row|rowgroup)"/);
  });
});

describe('whatever the facts', () => {
  it.each<[string, Choices]>([
    ['eight weeks', {}],
    ['no weight', { weighed: -1 }],
    ['a grown dog', { age: 900, weighed: 100 }],
    ['a longer keeping rule', { rules: { keepHours: 72 } }],
  ])('%s: the cautions are on the paper', (_, choices) => {
    const text = textOf(sheets(choices));
    for (const caution of [
      /Should not handle raw food: children under 5, pregnant women, older people, anyone with weak immunity/,
      /Freezing does not kill bacteria/,
      /bones of any size are unsafe/,
      /24 hours \(UK, Ireland\), 48 at most \(US\)/,
      /Never thaw on the counter/,
      /The vet, now/,
      /The vet, today/,
      /Poisons of the kitchen/,
      /Your vet knows your puppy/,
    ]) {
      expect(text).toMatch(caution);
    }
  });

  it('without a weight there is no amount, and room to write weights', () => {
    const text = textOf(sheets({ weighed: -1 }));
    expect(text).toContain('No weight is written down yet');
    expect(text).not.toContain('a day until');
    expect(text).toContain('weighs (write)');
  });

  it('names that look like markup stay text', () => {
    const html = sheets({ puppy: { callName: '<script>alert(1)</script>' } });
    expect(html).not.toContain('<script');
    expect(html).toContain('&lt;script&gt;');
  });
});
