/** The whole program, driven through its browser host. */
import { defineConfig } from '@playwright/test';
import { BROWSER_ARGS, findBrowser, SANDBOX } from '../browser.ts';

// Workers read this file again: the first reading leaves its find in the environment.
process.env['CHROMIUM_PATH'] ??= (await findBrowser()).executablePath;

/** The zone in which it is past eight in the morning right now, so that the tests see the same morning at whatever hour they run. */
function morningZone(): string {
  const ahead = 8 - new Date().getUTCHours();
  const hours = ahead < -12 ? ahead + 24 : ahead;
  // The signs of these names are the other way round: Etc/GMT-8 is eight hours ahead of Greenwich.
  return hours === 0 ? 'Etc/GMT' : `Etc/GMT${hours > 0 ? '-' : '+'}${Math.abs(hours)}`;
}

// The tests, the host they start and the browser all take the zone from here.
process.env['TZ'] = process.env['WHELPSIDE_TEST_ZONE'] ??= morningZone();

export default defineConfig({
  testDir: '.',
  outputDir: '../../test-results/e2e',
  workers: 1,
  // A flake is a bug.
  retries: 0,
  forbidOnly: true,
  timeout: 60_000,
  expect: { timeout: 10_000 },
  reporter: 'list',
  use: {
    browserName: 'chromium',
    timezoneId: process.env['TZ'],
    // Texts are British English; dates in native fields are the browser's own.
    locale: 'en-GB',
    screenshot: 'only-on-failure',
    trace: 'retain-on-failure',
    launchOptions: { chromiumSandbox: SANDBOX, args: [...BROWSER_ARGS], executablePath: process.env['CHROMIUM_PATH'] ?? '' },
  },
});
