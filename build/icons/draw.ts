/** Draws icon.png from icon.svg in the tests' browser: `node build/icons/draw.ts`, after a change to the drawing. */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { chromium } from '@playwright/test';
import { BROWSER_ARGS, findBrowser, SANDBOX } from '../../test/browser.ts';

const SIZE = 1024;
const at = (name: string) => fileURLToPath(new URL(name, import.meta.url));

const { executablePath = '' } = await findBrowser();
const browser = await chromium.launch({ executablePath, chromiumSandbox: SANDBOX, args: [...BROWSER_ARGS] });
const page = await browser.newPage({ viewport: { width: SIZE, height: SIZE } });
await page.setContent(`<style>body { margin: 0 } svg { display: block }</style>${readFileSync(at('icon.svg'), 'utf8')}`);
await page.screenshot({ path: at('icon.png'), omitBackground: true });
await browser.close();
