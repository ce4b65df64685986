/** `npm run -s evidence`: every outside check, one line each, with expected and got. Exit 1 when one fails. */
import { allRows } from './all.ts';
import { check, type Value } from './row.ts';

function show(v: Value | Error): string {
  if (v instanceof Error) return `error: ${v.message}`;
  if (Array.isArray(v)) return v.map(show).join(' ');
  return typeof v === 'number' ? String(Number(v.toPrecision(8))) : String(v);
}

let failed = 0;
const outcomes = allRows.map(check);
for (const { row, got, ok } of outcomes) {
  if (!ok) failed += 1;
  const tolerance = row.tolerance === 'exact' ? '' : ` ±${row.tolerance}`;
  console.log(
    `${ok ? 'ok  ' : 'FAIL'} ${row.id}: ${row.quantity}: expected ${show(row.expected)}${tolerance}, got ${show(got)} [${row.known}; ${row.source}]`,
  );
}
console.log(`${outcomes.length} checks, ${failed} failed`);
process.exitCode = failed > 0 ? 1 : 0;
