/** The invented litter in the middle of weaning: whom to watch, who holds, what was eaten, its dam; and nothing of it stays. */
import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from '@playwright/test';
import { expect, openDemo, test } from './host.ts';

async function nothingToComplainOf(page: Page): Promise<void> {
  const found = await new AxeBuilder({ page }).withTags(['wcag2a', 'wcag2aa', 'wcag21aa', 'wcag22aa']).analyze();
  expect(found.violations.map((v) => `${v.id}: ${v.nodes.map((n) => n.target.join(' ')).join(', ')}`)).toEqual([]);
}

test('a litter in weaning has a day like any other: watch, meals, steps, dam', async ({ page, house }) => {
  await openDemo(page, house);
  await expect(page.getByText('Three in the house')).toBeVisible();
  await page
    .getByRole('link', { name: /^Betony/ })
    .first()
    .click();
  await expect(page.locator('.flagged')).toHaveCount(1);
  await expect(page.getByRole('heading', { name: 'Look at Willow' })).toBeVisible();
  await expect(page.locator('.today-others')).toHaveText(
    /^The other four are steady\. Lovage: \d+\sg a day, \d+\s% under the middle\.$/,
  );
  const meals = page.locator('.meals-part');
  await expect(meals.locator('.meal-done')).toHaveCount(1);
  await expect(meals.locator('.meal-next')).toContainText('13:00');
  await expect(meals).toContainText('Willow: Soft');
  await nothingToComplainOf(page);

  await page.getByRole('link', { name: 'Weaning', exact: true }).click();
  await expect(page.locator('.weaning-hold')).toHaveText(/Willow holds at 15\s% until her gain is back/);
  await expect(page.locator('.dam-figures')).toContainText('kcal a day');
  await expect(
    page
      .locator('main .part .line')
      .filter({ hasText: /midday meal/i })
      .first(),
  ).toContainText(/left/);
  await nothingToComplainOf(page);

  await page.getByRole('link', { name: 'All about her' }).click();
  await expect(page.getByRole('heading', { level: 1, name: 'Betony, the dam' })).toBeVisible();
  await expect(page.locator('.dam-curve .line')).toHaveCount(9);
  await nothingToComplainOf(page);
});

test('the invented litters go, and their dams and diary with them', async ({ page, house }) => {
  await openDemo(page, house);
  await page.getByRole('button', { name: 'Remove them without a trace' }).click();
  await page.getByRole('button', { name: 'Remove them', exact: true }).click();
  await expect(page.getByRole('button', { name: 'Look round three invented litters' })).toBeVisible();
  await expect(page.locator('#window')).not.toContainText(/Yarrow|Comfrey|Betony|Willow/);
  // They come again with the same plan and dam, as on the first day.
  await page.getByRole('button', { name: 'Look round three invented litters' }).click();
  await page
    .getByRole('link', { name: /^Betony/ })
    .first()
    .click();
  await page.getByRole('link', { name: 'Weaning', exact: true }).click();
  await expect(page.locator('.weaning-hold')).toHaveCount(1);
  await expect(page.locator('.dam-curve .line')).toHaveCount(9);
});
