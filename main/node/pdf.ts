/**
 * Paper through an installed Chromium: a browser of our own opens the very page that the window previews, with the
 * document in a one-time slot, and prints it. One browser is kept for further sheets and let go when idle.
 */
import { accessSync, constants } from 'node:fs';
import { createRequire } from 'node:module';
import type { Browser } from 'playwright-core';
import type { PaperDocument } from '../../core/contract/paper.ts';
import { ContractFailure } from '../../core/contract/result.ts';
import { finishPdf } from '../hosting/finish-pdf.ts';
import { printRoute, READY_WITHIN, requireWhole } from '../hosting/printed.ts';
import type { PaperSlots } from '../hosting/slots.ts';
import type { PaperPort } from '../service/program.ts';
import { SECRET_ITEM } from './door.ts';
import { findBrowser } from './find-browser.ts';

const IDLE_MILLISECONDS = 30_000;

/** Where the page is and what lets our browser in. */
export interface PrintingPlace {
  readonly origin: string;
  readonly cookie: { readonly name: string; readonly value: string };
  readonly secret: string;
}

export interface ChromiumPaper extends PaperPort {
  close(): Promise<void>;
}

function runs(path: string): boolean {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}

function hasDriver(): boolean {
  try {
    createRequire(import.meta.url).resolve('playwright-core');
    return true;
  } catch {
    return false;
  }
}

/** The browser to print with on this machine, or null when there is none or nothing to drive it with. */
export async function printingBrowser(): Promise<string | null> {
  if (!hasDriver()) return null;
  const found = findBrowser({ platform: process.platform, env: process.env, runs });
  if (found !== null || process.env['CHROMIUM_PATH']) return found;
  const { chromium } = await import('playwright-core');
  const downloaded = chromium.executablePath();
  return runs(downloaded) ? downloaded : null;
}

class Printer implements ChromiumPaper {
  readonly #path: string;
  readonly #slots: PaperSlots;
  readonly #place: () => PrintingPlace;
  #browser: Promise<Browser> | null = null;
  #idle: NodeJS.Timeout | null = null;
  #printing = 0;

  constructor(path: string, slots: PaperSlots, place: () => PrintingPlace) {
    this.#path = path;
    this.#slots = slots;
    this.#place = place;
  }

  async print(document: PaperDocument, paper: 'a4' | 'letter', author = ''): Promise<Uint8Array> {
    this.#printing += 1;
    if (this.#idle !== null) clearTimeout(this.#idle);
    const slot = this.#slots.put(document);
    try {
      return await finishPdf(await this.#printSlot(await this.#started(), slot, paper), author);
    } finally {
      this.#slots.drop(slot);
      this.#printing -= 1;
      if (this.#printing === 0) this.#idle = setTimeout(() => void this.close(), IDLE_MILLISECONDS).unref();
    }
  }

  async close(): Promise<void> {
    const browser = this.#browser;
    this.#browser = null;
    if (this.#idle !== null) clearTimeout(this.#idle);
    await browser?.then((b) => b.close()).catch(() => undefined);
  }

  async #started(): Promise<Browser> {
    if (this.#browser !== null && (await this.#browser.then((b) => b.isConnected()).catch(() => false))) return this.#browser;
    this.#browser = this.#launch();
    return this.#browser;
  }

  async #launch(): Promise<Browser> {
    try {
      const { chromium } = await import('playwright-core');
      return await chromium.launch({
        executablePath: this.#path,
        // Chromium refuses its own sandbox to root and to nobody else.
        chromiumSandbox: process.getuid?.() !== 0,
        handleSIGINT: false,
        handleSIGTERM: false,
        handleSIGHUP: false,
      });
    } catch (error) {
      // Its own words hold paths of this machine: they go to the terminal, not to the window.
      console.error(error instanceof Error ? error.message : error);
      throw new ContractFailure('no-printer', 'the browser does not start');
    }
  }

  async #printSlot(browser: Browser, slot: string, paper: 'a4' | 'letter'): Promise<Uint8Array> {
    const { origin, cookie, secret } = this.#place();
    const context = await browser.newContext({ acceptDownloads: false, serviceWorkers: 'block' });
    try {
      await context.addCookies([{ ...cookie, url: origin, httpOnly: true, sameSite: 'Strict' }]);
      await context.addInitScript(([item, value]) => sessionStorage.setItem(item, value), [SECRET_ITEM, secret] as const);
      const page = await context.newPage();
      await page.goto(`${origin}/${printRoute(slot, paper)}`);
      const root = page.locator('html[data-ready]');
      await root.waitFor({ state: 'attached', timeout: READY_WITHIN }).catch(() => requireWhole(null));
      requireWhole(await root.getAttribute('data-ready'));
      return await page.pdf({ preferCSSPageSize: true, printBackground: true, tagged: true, outline: true });
    } finally {
      await context.close();
    }
  }
}

/**
 * A printer with the browser at `path`. `place` is asked at each print, for the server starts after the program.
 * `print` throws a ContractFailure: `no-printer` when the browser does not start, `refused` when a sheet would be
 * clipped, `internal` when the page is not ready in time.
 */
export function chromiumPaper(path: string, slots: PaperSlots, place: () => PrintingPlace): ChromiumPaper {
  return new Printer(path, slots, place);
}
