/** What `npm start` and `npm test` understand, decide and count. */
import { describe, expect, it } from 'vitest';
import { addPlaywright, addVitest, type Counts, summary, total } from '../../build/counts.ts';
import { noWindowBecause } from '../../build/electron.ts';
import { readOptions } from '../../build/options.ts';

describe('the arguments of npm start', () => {
  it('go on to the host, the folder seen from where the command was typed', () => {
    expect(readOptions(['--data', 'litters', '--demo', '--port', '8080'], '/home/her')).toEqual({
      help: false,
      browser: false,
      hostArguments: ['--data', '/home/her/litters', '--demo', '--port', '8080'],
    });
    expect(readOptions(['--browser', '--no-open', '--data=/elsewhere'], '/home/her')).toEqual({
      help: false,
      browser: true,
      hostArguments: ['--data', '/elsewhere', '--no-open'],
    });
    expect(readOptions([], '/home/her')).toEqual({ help: false, browser: false, hostArguments: [] });
  });

  it.each([
    [['--dta', 'x'], "Unknown option '--dta'"],
    [['litters'], "Unexpected argument 'litters'"],
    [['--data'], "'--data <value>' argument missing"],
    [['--data='], '--data needs a folder'],
    [['--port', 'x'], '--port needs a number from 0 to 65535, not "x"'],
    [['--port', '65536'], '--port needs a number from 0 to 65535, not "65536"'],
  ])('are refused in one sentence: %s', (args, sentence) => {
    expect(readOptions(args, '/home/her')).toContain(sentence);
  });
});

describe('the desktop window', () => {
  it('is not tried on Linux without a display or as root', () => {
    expect(noWindowBecause('linux', {}, 1000)).toBe('there is no display');
    expect(noWindowBecause('linux', { DISPLAY: '' }, 1000)).toBe('there is no display');
    expect(noWindowBecause('linux', { DISPLAY: ':0' }, 0)).toBe('Electron does not run as root');
    expect(noWindowBecause('linux', { WAYLAND_DISPLAY: 'wayland-0' }, 1000)).toBeNull();
    expect(noWindowBecause('darwin', {}, 501)).toBeNull();
    expect(noWindowBecause('win32', {}, undefined)).toBeNull();
  });
});

describe('the count', () => {
  it('takes vitest by folder, and a file that did not load as a failure', () => {
    const counts: Counts = new Map();
    const file = (path: string, status: string, ...verdicts: string[]) => ({
      name: `/repo/test/${path}`,
      status,
      assertionResults: verdicts.map((verdict) => ({ status: verdict })),
    });
    const testResults = [
      file('core/growth/a.test.ts', 'failed', 'passed', 'failed'),
      file('core/b.test.ts', 'passed', 'passed', 'skipped'),
      file('main/c.test.ts', 'failed'),
    ];
    addVitest(counts, { testResults }, '/repo/test');
    expect(counts.get('core')).toEqual({ passed: 2, failed: 1, skipped: 1 });
    expect(counts.get('main')).toEqual({ passed: 0, failed: 1, skipped: 0 });
    expect(total(counts)).toEqual({ passed: 2, failed: 2, skipped: 1 });
  });

  it('takes a flake and an error outside the tests of Playwright as failures', () => {
    const counts: Counts = new Map();
    addPlaywright(counts, { stats: { expected: 3, unexpected: 1, flaky: 1, skipped: 0 }, errors: [{}] }, 'e2e');
    expect(counts.get('e2e')).toEqual({ passed: 3, failed: 3, skipped: 0 });
  });

  it('ends with one line over all suites, with the skipped ones only when there are any', () => {
    const counts: Counts = new Map([['core', { passed: 12, failed: 0, skipped: 0 }]]);
    expect(summary(counts).split('\n').at(-1)).toBe('12 passed, 0 failed');
    counts.set('e2e', { passed: 1, failed: 2, skipped: 3 });
    expect(summary(counts).split('\n').at(-1)).toBe('13 passed, 2 failed, 3 skipped');
  });
});
