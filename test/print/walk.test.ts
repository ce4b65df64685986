/**
 * Plans of every size of dog, in grams and in ounces, with two to five meals, on A4 and on Letter, with names of forty letters, through a real
 * Chromium: every box of text stands on its sheet, over no other, in 10 pt or more.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import react from '@vitejs/plugin-react';
import { type Browser, chromium, type Page } from 'playwright-core';
import { build } from 'vite';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { classOfAdult } from '../../core/growth/forecast.ts';
import type { PlanDocument } from '../../core/homing/document.ts';
import { planDocument } from '../../core/words/plan-paper.ts';
import { readWindowFiles } from '../../main/hosting/files.ts';
import { PaperSlots } from '../../main/hosting/slots.ts';
import { printingBrowser } from '../../main/node/pdf.ts';
import { createServer, type Served } from '../../main/node/server.ts';
import { type Choices, planFacts } from '../core/homing/facts.ts';
import { onlyWhere } from '../only-where.ts';

const PAGE = fileURLToPath(new URL('./walk/', import.meta.url));
const path = await printingBrowser();

/** Forty letters, in several words and in one. */
const NAMES = ['Wilhelmina Augusta of the Long Hollow Mi', 'Donaudampfschifffahrtskapitaenskajuetenw'] as const;
const UNITS = ['g', 'lboz'] as const;
const MEALS = [2, 3, 4, 5] as const;
/** So many plans are drawn at a time. */
const AT_ONCE = 8;
/** Grown weights in kg: close where figures grow longer, wider where they do not. */
const SIZES = [1, 2, 3, 4, 6, 8, 10, 12, 15, 18, 22, 26, 30, 35, 40, 45, 50, 60, 70, 80] as const;
/** Those that are walked with every unit and every number of meals; the others take them in turn. */
const WHOLE: readonly number[] = [1, 12, 80];

/** Of a dog that weighs so much grown; the readings of the invented litter are those of one of 22 kg. */
function planOf(adultKg: number, unit: (typeof UNITS)[number], meals: (typeof MEALS)[number]): PlanDocument {
  // Two meals do not begin before three months.
  const age = meals === 2 ? 112 : 56;
  const four = meals >= 4 ? 16 : 0;
  const two = meals === 2 ? 3 : 6;
  const choices: Choices = {
    count: 1,
    place: 0,
    age,
    scale: (adultKg / 22) ** 0.85,
    litter: { adultDogKg: adultKg, adultBitchKg: adultKg, sizeClass: classOfAdult(adultKg) },
    puppy: { callName: NAMES[adultKg % 2 === 0 ? 0 : 1], markings: 'a white blaze, white toes on the left fore' },
    house: { massUnit: unit, vetOutOfHours: '+44 1632 960 199' },
    rules: {
      fourMealsUntilWeeks: four,
      smallFourMealsUntilWeeks: four,
      twoMealsFromMonths: two,
      smallTwoMealsFromMonths: two,
    },
  };
  const plan = planDocument(planFacts(choices));
  const whole = { ...plan, title: `${adultKg} kg, ${unit}, ${meals} meals` };
  return meals === 5 ? withFifth(whole) : whole;
}

/** The rules of today's program go to four meals a day; the paper takes more. */
function withFifth(plan: PlanDocument): PlanDocument {
  const bowl = plan.week?.bowls.at(-1);
  if (plan.week === null || bowl === undefined) throw new Error('no bowls');
  return {
    ...plan,
    week: { ...plan.week, bowls: [...plan.week.bowls, { ...bowl, name: 'night' }] },
    table: {
      ...plan.table,
      columns: [...plan.table.columns, { name: 'night', head: 'night' }],
      groups: plan.table.groups.map((g) => ({
        ...g,
        rows: g.rows.map((r) => (r.dayGrams === null ? r : { ...r, meals: { ...r.meals, night: r.meals.evening ?? 0 } })),
      })),
    },
  };
}

describe.runIf(onlyWhere(path !== null, 'no Chromium is installed'))('every plan', () => {
  const folder = mkdtempSync(join(tmpdir(), 'whelpside-walk-'));
  let server: Served;
  let browser: Browser;
  let page: Page;

  beforeAll(async () => {
    await build({
      root: PAGE,
      configFile: false,
      logLevel: 'warn',
      plugins: [react()],
      build: { outDir: folder, emptyOutDir: true, assetsInlineLimit: 0, chunkSizeWarningLimit: 4_000 },
    });
    const slots = new PaperSlots(() => performance.now());
    server = await createServer({
      dispatch: async () => ({ ok: true, value: {}, changed: [] }),
      files: readWindowFiles(folder),
      slots,
      port: 0,
    });
    browser = await chromium.launch({ executablePath: path ?? '', chromiumSandbox: process.getuid?.() !== 0 });
    page = await browser.newPage({ viewport: { width: 900, height: 1200 } });
    await page.goto(server.address);
    await page.locator('html[data-loaded]').waitFor({ state: 'attached' });
  }, 60_000);
  afterAll(async () => {
    await browser?.close();
    await server?.close();
    rmSync(folder, { recursive: true, force: true });
  });

  it.each(['a4', 'letter'] as const)(
    'of a dog of 1 to 80 kg, in grams and ounces, with two to five meals, stands on its sheets of %s',
    async (paper) => {
      const ways = UNITS.flatMap((unit) => MEALS.map((meals) => ({ unit, meals })));
      const all = SIZES.flatMap((kg, i) =>
        ways.filter((_, way) => WHOLE.includes(kg) || way === i % ways.length).map(({ unit, meals }) => planOf(kg, unit, meals)),
      );
      expect(all).toHaveLength(SIZES.length - WHOLE.length + WHOLE.length * ways.length);
      const complaints: string[] = [];
      for (let at = 0; at < all.length; at += AT_ONCE)
        complaints.push(
          ...(await page.evaluate(([some, on]) => window.walk(some, on), [all.slice(at, at + AT_ONCE), paper] as const)),
        );
      expect(complaints).toEqual([]);
    },
    300_000,
  );
});
