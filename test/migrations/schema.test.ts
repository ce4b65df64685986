import { existsSync } from 'node:fs';
import Database from 'better-sqlite3';
import { describe, expect, it } from 'vitest';
import { MIGRATIONS, runStep } from '../../main/store/migrations.ts';

const RENEW = 'npx vitest run --config build/vitest.config.ts test/migrations/schema.test.ts --update';

/** The shape as SQLite keeps it, in a stable order. */
function shapeAfter(steps: number): string {
  const db = new Database(':memory:');
  for (const step of MIGRATIONS.slice(0, steps)) runStep(db, step);
  const rows = db
    .prepare<[], { sql: string }>(
      "SELECT sql FROM sqlite_schema WHERE sql IS NOT NULL AND name NOT LIKE 'sqlite_%' ORDER BY type DESC, name",
    )
    .all();
  db.close();
  return `${rows.map((r) => `${r.sql};`).join('\n\n')}\n`;
}

describe('the shape of the data file', () => {
  it('is the frozen one: a change needs a new step, not another old one', async () => {
    await expect(shapeAfter(MIGRATIONS.length), `after a new step it is made again by: ${RENEW}`).toMatchFileSnapshot(
      './schema.txt',
    );
  });

  it('counts its steps up by one, each with a test of its own', () => {
    for (const [index, step] of MIGRATIONS.entries()) {
      expect(step.version).toBe(index + 1);
      const test = new URL(`./${String(step.version).padStart(3, '0')}.test.ts`, import.meta.url);
      expect(existsSync(test), test.pathname).toBe(true);
    }
  });

  it('has only strict tables', () => {
    for (const table of shapeAfter(MIGRATIONS.length).match(/CREATE TABLE[^;]*/g) ?? []) expect(table).toMatch(/\) STRICT$/);
  });
});
