/**
 * Every page, in both themes, at 1280×800, at 200 % zoom (640 CSS px) and on a telephone's width: nothing found by axe (WCAG 2.2 AA),
 * no sideways scrolling, one heading of the first rank. Pictures go to test-results/screens to be looked at.
 */
import { mkdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from '@playwright/test';
import { expect, openDemo, test } from './host.ts';

const SCREENS = fileURLToPath(new URL('../../test-results/screens/', import.meta.url));
const SIZES = [
  { name: 'full', width: 1280, height: 800 },
  { name: 'zoomed', width: 640, height: 400 },
  { name: 'telephone', width: 390, height: 844 },
] as const;

async function places(page: Page): Promise<{ name: string; hash: string }[]> {
  const hashes = await page.locator('#margin a').evaluateAll((links) => links.map((a) => a.getAttribute('href') ?? ''));
  const litter = /#\/litter\/([^/]+)/.exec(hashes.find((h) => h.includes('/litter/')) ?? '')?.[1];
  await page.goto(`${new URL(page.url()).origin}/#/litter/${litter}/growth`);
  const puppy = await page.locator('main a[href*="/puppy/"]').first().getAttribute('href');
  const puppyId = /#\/puppy\/([^/]+)/.exec(puppy ?? '')?.[1];
  const inLitter = [...new Set(hashes.filter((h) => h.includes(`/litter/${litter}/`)).map((h) => h.replace(/\?.*/, '')))];
  return [
    { name: 'litters', hash: '#/litters' },
    { name: 'begin', hash: '#/begin' },
    ...inLitter.map((hash) => ({ name: `litter-${hash.split('/').at(-1)}`, hash })),
    ...['notes', 'weight', 'gain', 'standing'].map((view) => ({ name: `puppy-${view}`, hash: `#/puppy/${puppyId}/${view}` })),
    ...hashes.filter((h) => /^#\/[a-z-]+$/.test(h) && h !== '#/litters').map((hash) => ({ name: hash.slice(2), hash })),
    { name: 'food-new', hash: '#/foods/new' },
    { name: 'food-shipped', hash: '#/foods/food-generic-mix' },
    { name: 'week-house', hash: '#/week' },
    { name: 'week-litter', hash: `#/week/${litter}` },
    { name: 'nowhere', hash: '#/no-such-page' },
  ];
}

async function settled(page: Page): Promise<void> {
  await expect(page.getByRole('heading', { level: 1 })).toHaveCount(1);
  await page.evaluate(() =>
    document.fonts.ready.then(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)))),
  );
}

for (const theme of ['day', 'night'] as const) {
  test(`every page reads well by ${theme}`, async ({ page, house }) => {
    test.setTimeout(240_000);
    await openDemo(page, house);
    mkdirSync(SCREENS, { recursive: true });
    const all = await places(page);
    expect(all.length).toBeGreaterThan(12);
    const now = await page.evaluate(() => document.documentElement.dataset['theme']);
    if (now !== theme) await page.getByRole('button', { name: theme === 'night' ? 'Night lamp' : 'Day paper' }).click();
    for (const size of SIZES) {
      await page.setViewportSize(size);
      for (const place of all) {
        await page.evaluate((hash) => {
          window.location.hash = hash;
        }, place.hash);
        await settled(page);
        expect(await page.evaluate(() => document.documentElement.dataset['theme'])).toBe(theme);
        const sideways = await page.evaluate(() => {
          const main = document.querySelector('main');
          return Math.max(
            document.documentElement.scrollWidth - window.innerWidth,
            main === null ? 0 : main.scrollWidth - main.clientWidth,
          );
        });
        expect.soft(sideways, `${place.name} at ${size.name} scrolls sideways`).toBeLessThanOrEqual(0);
        await page.screenshot({ path: `${SCREENS}${theme}-${size.name}-${place.name}.png` });
        if (size.name === 'telephone') continue;
        const found = await new AxeBuilder({ page }).withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa']).analyze();
        const faults = found.violations.map((v) => `${v.id}: ${v.nodes.map((n) => n.target.join(' ')).join(', ')}`);
        expect.soft(faults, `${place.name} at ${size.name} by ${theme}`).toEqual([]);
      }
    }
  });
}

test('the window is walked by keyboard: Esc to the margin, arrows, a first letter, Enter, back', async ({ page, house }) => {
  await openDemo(page, house);
  await page
    .getByRole('link', { name: /^Yarrow/ })
    .first()
    .focus();
  await page.keyboard.press('Enter');
  // The page takes the focus once it has changed; an Esc before that still leaves the margin.
  await expect(page.locator('main')).toBeFocused();
  await page.keyboard.press('Escape');
  await expect(page.locator('#margin a[aria-current="page"]')).toBeFocused();
  await page.keyboard.press('g');
  await expect(page.getByRole('link', { name: 'Growth', exact: true })).toBeFocused();
  await page.keyboard.press('ArrowUp');
  await expect(page.getByRole('link', { name: 'Weigh-in', exact: true })).toBeFocused();
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { level: 1, name: 'Weigh-in' })).toBeVisible();
  await expect(page.getByRole('link', { name: 'To Today' })).toBeFocused();
  await page.keyboard.press('Escape');
  await expect(page.locator('#margin a[aria-current="page"]')).toBeFocused();
  await page.keyboard.press('r');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { level: 1, name: 'Records' })).toBeVisible();
});
