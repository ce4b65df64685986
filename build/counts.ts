/** Counts what the test runners report, suite by suite. */
import { existsSync, readFileSync } from 'node:fs';
import { relative } from 'node:path';

export interface Count {
  passed: number;
  failed: number;
  skipped: number;
}

/** Counts by suite name. */
export type Counts = Map<string, Count>;

type Verdict = keyof Count;

export function add(counts: Counts, suite: string, verdict: Verdict, by = 1): void {
  const count = counts.get(suite) ?? { passed: 0, failed: 0, skipped: 0 };
  count[verdict] += by;
  counts.set(suite, count);
}

export function total(counts: Counts): Count {
  const sum: Count = { passed: 0, failed: 0, skipped: 0 };
  for (const count of counts.values()) {
    sum.passed += count.passed;
    sum.failed += count.failed;
    sum.skipped += count.skipped;
  }
  return sum;
}

/** The table of the suites and, as the last line, the sum: "12 passed, 0 failed". */
export function summary(counts: Counts): string {
  const width = Math.max(5, ...[...counts.keys()].map((name) => name.length));
  const cell = (value: number | string) => String(value).padStart(8);
  const lines = [`${'suite'.padEnd(width)}${cell('passed')}${cell('failed')}${cell('skipped')}`];
  for (const [name, { passed, failed, skipped }] of counts)
    lines.push(`${name.padEnd(width)}${cell(passed)}${cell(failed)}${cell(skipped)}`);
  const { passed, failed, skipped } = total(counts);
  return `${lines.join('\n')}\n\n${passed} passed, ${failed} failed${skipped > 0 ? `, ${skipped} skipped` : ''}`;
}

interface VitestReport {
  testResults: { name: string; status: string; assertionResults: { status: string }[] }[];
}

/** Adds vitest's JSON report; a suite is the folder under `test/`. A file that did not load counts as one failure. */
export function addVitest(counts: Counts, report: VitestReport, testFolder: string): void {
  for (const file of report.testResults) {
    const suite = relative(testFolder, file.name).split(/[/\\]/)[0] ?? file.name;
    for (const { status } of file.assertionResults) add(counts, suite, verdictOf(status));
    if (file.status === 'failed' && !file.assertionResults.some(({ status }) => status === 'failed'))
      add(counts, suite, 'failed');
  }
}

function verdictOf(status: string): Verdict {
  if (status === 'passed') return 'passed';
  return status === 'failed' ? 'failed' : 'skipped';
}

interface PlaywrightReport {
  stats: { expected: number; unexpected: number; flaky: number; skipped: number };
  errors: unknown[];
}

/** Adds Playwright's JSON report. Errors outside any test count as one failure; so does a flake, there being no second tries. */
export function addPlaywright(counts: Counts, report: PlaywrightReport, suite: string): void {
  const { expected, unexpected, flaky, skipped } = report.stats;
  add(counts, suite, 'passed', expected);
  add(counts, suite, 'failed', unexpected + flaky + (report.errors.length > 0 ? 1 : 0));
  add(counts, suite, 'skipped', skipped);
}

/** The report as the runner wrote it; null when it wrote none. */
export function readReport<T>(path: string): T | null {
  return existsSync(path) ? (JSON.parse(readFileSync(path, 'utf8')) as T) : null;
}
