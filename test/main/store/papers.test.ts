import { mkdirSync, readdirSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { isBareName, readPaper, safeStem, writePaper } from '../../../main/store/papers.ts';
import { scratchFolder } from '../open.ts';

let folder: string;
let remove: () => void;
beforeEach(() => {
  ({ folder, remove } = scratchFolder());
});
afterEach(() => remove());

const bytes = (text: string) => new TextEncoder().encode(text);

describe('papers', () => {
  it('are never written over, and leave nothing half made', () => {
    const names = ['one', 'two', 'three'].map((text) => writePaper(folder, 'Vetch go-home plan 2026-05-02', bytes(text)));
    expect(names).toEqual([
      'Vetch go-home plan 2026-05-02.pdf',
      'Vetch go-home plan 2026-05-02 (2).pdf',
      'Vetch go-home plan 2026-05-02 (3).pdf',
    ]);
    expect(readdirSync(join(folder, 'papers')).sort()).toEqual([...names].sort());
    expect(readPaper(folder, names[1] ?? '')?.toString()).toBe('two');
  });

  it.each([
    ['Vetch go-home plan', 'Vetch go-home plan'],
    ['../../etc/passwd plan', 'etc passwd plan'],
    ['...hidden', 'hidden'],
    ['a/b\\c:d*e?f"g<h>i|j%k', 'a b c d e f g h i j k'],
    ['Pup\u0000py\u202e\n plan. ', 'Pup py plan'],
    ['Žofka 小犬 plan', 'Žofka 小犬 plan'],
    [' . ', 'go-home plan'],
  ])('name %j is safe', (stem, safe) => {
    expect(safeStem(stem)).toBe(safe);
  });

  it('have names of a length that every system takes', () => {
    expect(Buffer.byteLength(`${safeStem(`${'小'.repeat(120)} go-home plan 2026-05-02`)} (99).pdf`)).toBeLessThan(256);
    expect(safeStem(`${'x'.repeat(120)} go-home plan 2026-05-02`)).toMatch(/ go-home plan 2026-05-02$/);
  });

  it('are read by bare name only', () => {
    mkdirSync(join(folder, 'papers', 'folder.pdf'), { recursive: true });
    writeFileSync(join(folder, 'secret.pdf'), 'secret');
    for (const name of [
      '../secret.pdf',
      '..\\secret.pdf',
      '/secret.pdf',
      'papers/../secret.pdf',
      '.pdf',
      '.x.pdf',
      'a.txt',
      'a\u0000.pdf',
      'C:a.pdf',
      '',
    ]) {
      expect(isBareName(name), name).toBe(false);
      expect(readPaper(folder, name), name).toBeNull();
    }
    expect(readPaper(folder, 'folder.pdf')).toBeNull();
    if (process.platform !== 'win32') {
      symlinkSync(join(folder, 'secret.pdf'), join(folder, 'papers', 'link.pdf'));
      expect(readPaper(folder, 'link.pdf')).toBeNull();
    }
  });
});
