/** Which texts of a page are data and not sentences: names of the invented litters, published sources, names of published foods. */
import { globSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';

const ROOT = fileURLToPath(new URL('../../..', import.meta.url));

function strings(value: unknown): string[] {
  if (typeof value === 'string') return [value];
  return typeof value === 'object' && value !== null ? Object.values(value).flatMap(strings) : [];
}

/** Longest first, so that a name inside another does not tear it. */
export async function dataTexts(): Promise<string[]> {
  const demo = JSON.parse(readFileSync(join(ROOT, 'main/service/demo-litters.json'), 'utf8'));
  const tables = await Promise.all(
    globSync('core/reference/**/*.ts', { cwd: ROOT }).map((path) => import(pathToFileURL(join(ROOT, path)).href)),
  );
  const all = [...strings(demo), ...strings(tables.map((table) => ({ ...table })))];
  return [...new Set(all)].filter((text) => /\p{L}{3}/u.test(text)).toSorted((a, b) => b.length - a.length);
}

/** What is left of a text without sentences between marks and without data. */
export function unspoken(text: string, data: readonly string[]): string {
  let left = text;
  for (let before = ''; before !== left; ) {
    before = left;
    left = left.replace(/⟦[^⟦⟧]*⟧/g, ' ');
  }
  // A sentence broken over lines of a picture: its first lines have no end, its last no beginning.
  left = left.replace(/⟦.*$/, ' ').replace(/^.*⟧/, ' ');
  for (const name of data) left = left.replaceAll(name, ' ');
  return left.replace(/\s+/g, ' ').trim();
}
