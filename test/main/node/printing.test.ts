/** How paper is made through a real Chromium, with a small page in place of the window: handing over, readiness, letting go. */

import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { chromium } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Result } from '../../../core/contract/result.ts';
import type { PlanDocument } from '../../../core/homing/document.ts';
import { readWindowFiles } from '../../../main/hosting/files.ts';
import { PaperSlots } from '../../../main/hosting/slots.ts';
import { type ChromiumPaper, chromiumPaper, printingBrowser } from '../../../main/node/pdf.ts';
import { createServer, type Served } from '../../../main/node/server.ts';
import { onlyWhere } from '../../only-where.ts';

const browser = await printingBrowser();

const PAGE = `<!doctype html><html lang="en"><head><title>none</title><link rel="icon" href="data:,">
<link rel="stylesheet" href="/assets/print.css"></head><body><script type="module" src="/assets/print.js"></script></body></html>`;
/** Shows the document's name once a sheet, and says what the name asks it to say. */
const SCRIPT = `
const [, slot, paper] = /^#\\/print\\/slot\\/([\\w-]+)\\?paper=(\\w+)$/.exec(location.hash) ?? [];
if (slot) {
  const plan = await (await fetch('/paper/' + slot)).json();
  document.title = plan.title;
  document.documentElement.dataset.size = paper;
  for (const name of [plan.name, plan.name]) {
    const sheet = document.createElement('section');
    sheet.textContent = name + ' on ' + paper;
    document.body.append(sheet);
  }
  await document.fonts.ready;
  document.documentElement.dataset.ready = plan.name === 'Clipped' ? 'clipped' : 'true';
}`;
const STYLE = `@page { size: A4 } @page us { size: letter } section { break-after: page } html[data-size=letter] section { page: us }
section:last-child { break-after: auto }`;

describe.runIf(onlyWhere(browser !== null, 'no Chromium is installed'))('printing', () => {
  const folder = mkdtempSync(join(tmpdir(), 'whelpside-printing-'));
  const slots = new PaperSlots(() => performance.now());
  let server: Served;
  let paper: ChromiumPaper;
  const plan = (name: string) => ({ name, title: `A plan for ${name}` }) as PlanDocument;

  beforeAll(async () => {
    mkdirSync(join(folder, 'assets'));
    writeFileSync(join(folder, 'index.html'), PAGE);
    writeFileSync(join(folder, 'assets/print.js'), SCRIPT);
    writeFileSync(join(folder, 'assets/print.css'), STYLE);
    const dispatch = async (): Promise<Result<unknown>> => ({ ok: true, value: {}, changed: [] });
    server = await createServer({ dispatch, files: readWindowFiles(folder), slots, port: 0 });
    paper = chromiumPaper(browser ?? '', slots, () => server);
  });
  afterAll(async () => {
    await paper.close();
    await server.close();
    rmSync(folder, { recursive: true, force: true });
  });

  // ISO 216: A4 is 210 × 297 mm. ANSI/ASME Y14.1: Letter is 8.5 × 11 in. A point is 1/72 in.
  test.each([
    ['a4', 595, 842],
    ['letter', 612, 792],
  ] as const)('the document reaches the page, and %s is that big', async (size, width, height) => {
    const bytes = await paper.print(plan('Żółta'), size);
    const pdf = await getDocument({ data: new Uint8Array(bytes), verbosity: 0 }).promise;
    expect(pdf.numPages).toBe(2);
    const page = await pdf.getPage(2);
    expect(Math.abs((page.view[2] ?? 0) - width)).toBeLessThanOrEqual(1);
    expect(Math.abs((page.view[3] ?? 0) - height)).toBeLessThanOrEqual(1);
    const { items } = await page.getTextContent();
    expect(items.map((item) => ('str' in item ? item.str : '')).join('')).toBe(`Żółta on ${size}`);
    expect((await pdf.getMetadata()).info).toMatchObject({ Title: 'A plan for Żółta', Language: 'en' });
    expect(await page.getStructTree()).not.toBeNull();
  });

  test('a clipped sheet is refused', async () => {
    await expect(paper.print(plan('Clipped'), 'a4')).rejects.toMatchObject({
      error: { code: 'refused', message: 'a sheet would be clipped' },
    });
  });

  test('two at once; and again after the browser was let go', async () => {
    const both = await Promise.all([paper.print(plan('One'), 'a4'), paper.print(plan('Two'), 'letter')]);
    await paper.close();
    for (const bytes of [...both, await paper.print(plan('Three'), 'a4')]) expect(bytes.length).toBeGreaterThan(1000);
  });

  test('a browser that does not start is no printer, and its words stay here', async () => {
    const said: unknown[] = [];
    const error = console.error;
    console.error = (...words) => said.push(...words);
    const broken = chromiumPaper('/no/such/browser', slots, () => server);
    await expect(broken.print(plan('None'), 'a4')).rejects.toMatchObject({
      error: { code: 'no-printer', message: 'the browser does not start' },
    });
    console.error = error;
    expect(String(said[0])).toContain('/no/such/browser');
  });

  test('the browser finds nothing to complain of: no header it does not know, no policy the page breaks', async () => {
    const own = await chromium.launch({ executablePath: browser ?? '', chromiumSandbox: process.getuid?.() !== 0 });
    try {
      const page = await own.newPage();
      const complaints: string[] = [];
      page.on('console', (message) => complaints.push(message.text()));
      page.on('pageerror', (error) => complaints.push(error.message));
      await page.goto(server.address);
      await page.waitForURL(`${server.origin}/`);
      expect(await page.title()).toBe('none');
      // A style element with the page's nonce, as the component library adds it, holds; one without does not.
      const colours = await page.evaluate(`(() => {
        const paint = (nonce, colour) => {
          const style = document.createElement('style');
          if (nonce) style.nonce = nonce;
          style.textContent = 'body { color: ' + colour + ' }';
          document.head.append(style);
          return getComputedStyle(document.body).color;
        };
        return [paint(document.querySelector('meta[property=csp-nonce]').nonce, 'rgb(1, 2, 3)'), paint('', 'rgb(4, 5, 6)')];
      })()`);
      expect(colours).toEqual(['rgb(1, 2, 3)', 'rgb(1, 2, 3)']);
      expect(complaints).toEqual([expect.stringContaining('violates the following Content Security Policy directive')]);
    } finally {
      await own.close();
    }
  });
});
