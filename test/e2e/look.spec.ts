/**
 * Every page, in both themes, at 1280×800, at 200 % zoom (640 CSS px) and on a telephone's width: nothing found by axe (WCAG 2.2 AA),
 * no sideways scrolling, one heading of the first rank. Pictures go to test-results/screens to be looked at.
 */
import { mkdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { AxeBuilder } from '@axe-core/playwright';
import { expect, openDemo, test } from './host.ts';
import { places, SIZES, settled } from './places.ts';

const SCREENS = fileURLToPath(new URL('../../test-results/screens/', import.meta.url));
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
