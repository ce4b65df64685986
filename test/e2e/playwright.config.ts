/** The whole program, driven through its browser host. */
import { defineConfig } from '@playwright/test';
import { BROWSER_ARGS, findBrowser, SANDBOX } from '../browser.ts';

// Workers read this file again: the first reading leaves its find in the environment.
process.env['CHROMIUM_PATH'] ??= (await findBrowser()).executablePath;

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
    // Texts are British English; dates in native fields are the browser's own.
    locale: 'en-GB',
    screenshot: 'only-on-failure',
    trace: 'retain-on-failure',
    launchOptions: { chromiumSandbox: SANDBOX, args: [...BROWSER_ARGS], executablePath: process.env['CHROMIUM_PATH'] ?? '' },
  },
});
