/** A weight mended where it is seen: on a puppy's page, in Growth's table, on Today. */
import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from '@playwright/test';
import { expect, open, test } from './host.ts';

async function threeWeighed(page: Page): Promise<void> {
  await page.getByRole('link', { name: 'Begin a litter' }).click();
  await page.getByLabel('dam', { exact: true }).fill('Sorrel');
  await page.getByLabel('at', { exact: true }).fill('04:30');
  await page.getByLabel('puppies so far').fill('3');
  for (const [letter, grams] of [
    ['A', 402],
    ['B', 512],
    ['C', 455],
  ] as const)
    await page.getByLabel(`${letter}, birth weight`).fill(String(grams));
  await page.getByRole('button', { name: 'Begin this litter' }).click();
  await expect(page.getByRole('heading', { level: 1, name: 'Puppies' })).toBeVisible();
  await page.getByRole('link', { name: 'Weigh-in', exact: true }).click();
  for (const grams of [405, 516, 459]) {
    await page.keyboard.type(String(grams));
    await page.keyboard.press('Enter');
  }
  await expect(page.getByText('All three weighed.')).toBeVisible();
}

test('corrected, moved, given away and struck out, with its history', async ({ page, house }) => {
  await open(page, house);
  await threeWeighed(page);
  await page.getByRole('link', { name: 'Growth', exact: true }).click();
  // In Growth's table.
  await page.getByRole('button', { name: /^Correct A, 405/ }).press('Enter');
  const mend = page.locator('form.mend');
  await expect(mend.getByLabel('weight')).toBeFocused();
  await page.keyboard.type('407');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('button', { name: /^Correct A, 407/ })).toBeVisible();
  // On the puppy's page, with what stood there before.
  await page.getByRole('link', { name: 'A', exact: true }).click();
  await page.getByRole('button', { name: /^Correct 407/ }).click();
  await expect(mend.locator('.struck')).toContainText('405');
  const found = await new AxeBuilder({ page }).withTags(['wcag2a', 'wcag2aa', 'wcag21aa', 'wcag22aa']).analyze();
  expect(found.violations.map((v) => `${v.id}: ${v.nodes.map((n) => n.target.join(' ')).join(', ')}`)).toEqual([]);
  // A day that has not come is refused in place, and nothing is lost.
  await mend.getByLabel('weight').fill('4O7');
  await page.keyboard.press('Enter');
  await expect(mend.getByRole('alert')).toContainText('letter');
  await mend.getByLabel('weight').fill('407');
  await mend.getByLabel('puppy').selectOption({ label: 'C' });
  await mend.getByRole('button', { name: 'Write it so' }).click();
  await expect(mend).toHaveCount(0);
  await expect(page.getByRole('button', { name: /^Correct 407/ })).toHaveCount(0);
  await expect(page.locator('.record')).toContainText('taken back');
  await page.getByRole('link', { name: 'C', exact: true }).click();
  await page.getByRole('button', { name: /^Correct 407/ }).click();
  await mend.getByRole('button', { name: 'Strike it out' }).click();
  await expect(page.locator('.record .struck')).toContainText('407');
});

test('what is in question on Today is answered there', async ({ page, house }) => {
  await open(page, house);
  await threeWeighed(page);
  await page.locator('.weigh-in-table tr.done td.weight button').first().click();
  await page.keyboard.type('4050');
  await page.keyboard.press('Enter');
  await expect(page.locator('tr.in-hand .fact')).toBeVisible();
  await page.getByRole('link', { name: 'Today', exact: true }).click();
  await expect(page.locator('.questions')).toContainText('held out');
  await page.getByRole('button', { name: 'Answer it' }).press('Enter');
  await expect(page.locator('form.mend').getByLabel('weight')).toBeFocused();
  await page.keyboard.type('405');
  await page.keyboard.press('Enter');
  await expect(page.locator('.questions')).toHaveCount(0);
  await expect(page.locator('.foot .undo')).toContainText('corrected');
});
