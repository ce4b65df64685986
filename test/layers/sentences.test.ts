/** Nothing that people read stands outside the catalogues. */
import { globSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it, test } from 'vitest';
import { sentenceComplaints, visibleIn } from './sentences.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));

/** `@{` stands for the start of a placeholder. */
const texts = (code: string) => visibleIn('x.tsx', code.replaceAll('@{', '$' + '{')).map((v) => v.text);

describe('what is seen as said', () => {
  test.each([
    ["const a = 'Weigh again now.';", ['Weigh again now.']],
    ['const a = `@{n} puppies weighed`;', ['# puppies weighed']],
    ['const a = <p>Weighed</p>;', ['Weighed']],
    ['const a = <p aria-label="close">{x}</p>;', ['close']],
    ['const a = <Field hint="in whole days" name="day" />;', ['in whole days']],
    ["const a = <b>{ok ? 'all is well' : null}</b>;", ['all is well']],
    ["const a = { title: 'the whole week' };", ['the whole week']],
    ["say(`kept as @{f('the old one')}`);", ['kept as #', 'the old one']],
  ])('%s', (code, said) => {
    expect(texts(code)).toEqual(said);
  });

  test.each([
    "import a from './two words.ts';",
    "throw new RangeError('not a real date');",
    "const e = new ContractFailure('bad-input', 'no such puppy');",
    "const error = { code: 'gone', message: 'no such puppy' };",
    "const code = 'gain-short';",
    'const a = <p className="line finding">{x}</p>;',
    'const a = <path d={`M@{x} @{y}V@{z}`} transform={`translate(@{x}px, @{y}px)`} />;',
    "type T = 'two words' | 'three small words';",
    "schema.refine(ok, 'must not be empty here');",
    'const a = /two words/;',
    "const a = 'YYYY-MM';",
  ])('silent: %s', (code) => {
    expect(texts(code)).toEqual([]);
  });

  it('names the line', () => {
    expect(visibleIn('x.ts', "\n\nconst a = 'Weigh again.';")).toEqual([{ path: 'x.ts', line: 3, text: 'Weigh again.' }]);
  });

  it('complains of a sentence anywhere, and of no catalogue', () => {
    const found = ['core/growth/x.ts', 'core/words/en/x.ts', 'core/food/x.ts'].map((path) => ({
      path,
      line: 1,
      text: 'no milk',
    }));
    expect(sentenceComplaints(found)).toEqual([
      'core/growth/x.ts:1 says “no milk”: put it into core/words',
      'core/food/x.ts:1 says “no milk”: put it into core/words',
    ]);
  });
});

it('every sentence of core and of the window stands in a catalogue', () => {
  const paths = [...globSync('core/**/*.ts', { cwd: root }), ...globSync('renderer/**/*.{ts,tsx}', { cwd: root })];
  const found = paths.flatMap((path) => visibleIn(path.replaceAll('\\', '/'), readFileSync(join(root, path), 'utf8')));
  expect(found.filter((v) => v.path.startsWith('core/words/')).length).toBeGreaterThan(500);
  expect(sentenceComplaints(found)).toEqual([]);
});
