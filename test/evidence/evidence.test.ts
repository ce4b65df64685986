import { describe, expect, it } from 'vitest';
import { allRows } from './all.ts';
import { check } from './row.ts';

describe('outside checks', () => {
  it('has rows, each with its own id and a source', () => {
    expect(allRows.length).toBeGreaterThan(30);
    expect(new Set(allRows.map((r) => r.id)).size).toBe(allRows.length);
    for (const r of allRows) expect(r.source.length, r.id).toBeGreaterThan(5);
  });

  it.each(allRows.map((r) => [r.id, r] as const))('%s', (_id, r) => {
    const outcome = check(r);
    expect(outcome.ok, `${r.quantity}: expected ${String(r.expected)}, got ${String(outcome.got)}`).toBe(true);
  });
});
