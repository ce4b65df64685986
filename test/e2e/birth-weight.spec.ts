/** A very light newborn of a breed without published limits: the usual birth weight is written down, and the watch follows. */
import { AxeBuilder } from '@axe-core/playwright';
import { expect, open, test } from './host.ts';

const HAND = 'input.weight-field';
const USUAL = 'usual birth weight of the breed';

test('the usual birth weight is written down, a small newborn is weighed, and Today has it at watch', async ({ page, house }) => {
  await open(page, house);
  await page.getByRole('link', { name: 'Begin a litter' }).press('Enter');
  await expect(page.getByLabel('dam', { exact: true })).toBeFocused();
  await page.keyboard.type('Sorrel');
  // 04:30 of the same morning: the first weights are birth weights.
  await page.getByLabel('at', { exact: true }).fill('04:30');
  const breed = page.getByLabel('breed', { exact: true });
  const usual = page.getByLabel(USUAL);
  await expect(usual).toHaveCount(0);
  await breed.fill('Labrador Retriever');
  await expect(usual).toHaveCount(0);
  await breed.fill('Pug');
  await expect(page.getByText('left empty, the 152.5 g of one small study counts')).toBeVisible();
  await breed.fill('Mudi');
  await expect(page.getByText('one small study')).toHaveCount(0);
  await breed.press('Tab');
  await expect(usual).toBeFocused();
  await usual.fill('2400');
  await page.getByLabel('puppies so far').fill('3');
  await page.getByLabel('puppies so far').press('Enter');
  await expect(page.getByText('It has to be from 40 g to 1500 g.')).toBeVisible();
  await expect(usual).toBeFocused();
  await usual.fill('240');
  const found = await new AxeBuilder({ page }).withTags(['wcag2a', 'wcag2aa', 'wcag21aa', 'wcag22aa']).analyze();
  expect(found.violations.map((v) => `${v.id}: ${v.nodes.map((n) => n.target.join(' ')).join(', ')}`)).toEqual([]);
  await usual.press('Enter');
  await expect(page.getByLabel(/birth weight/i)).toHaveCount(4);
  await expect(page.getByLabel(USUAL)).toHaveValue('240 g');

  await page.getByRole('link', { name: 'Weigh-in', exact: true }).press('Enter');
  await expect(page.locator(HAND)).toBeFocused();
  for (const grams of [238, 244, 152]) {
    await page.keyboard.type(String(grams));
    await page.keyboard.press('Enter');
  }
  await expect(page.getByText('All three weighed.')).toBeVisible();
  await page.getByRole('link', { name: 'To Today' }).press('Enter');
  const flagged = page.locator('.flagged');
  await expect(flagged).toHaveCount(1);
  await expect(flagged).toContainText('watch');
  await expect(flagged).toContainText('152 g at birth is very little for the breed (under two thirds of the usual 240 g).');

  await flagged.getByRole('link', { name: /^Look at/ }).press('Enter');
  await page.getByRole('link', { name: 'Notes and facts' }).press('Enter');
  const why = page.locator('dl.facts').getByRole('button', { name: 'under two thirds of the usual' });
  await why.focus();
  await expect(page.locator('.foot')).toContainText('You wrote 240 g as the usual birth weight of the breed');
  await expect(page.locator('.foot')).toContainText('two thirds of it is 160 g');

  // A heavier breed than was thought: the figure is mended, and the same weights are judged anew.
  await page.getByRole('link', { name: 'Puppies', exact: true }).press('Enter');
  await page.getByLabel(USUAL).fill('2l0');
  await page.getByLabel(USUAL).press('Enter');
  await expect(page.getByText('There is a letter l in 2l0.')).toBeVisible();
  await page.getByLabel(USUAL).fill('200');
  await page.getByLabel(USUAL).press('Enter');
  await expect(page.locator('.foot .undo')).toContainText('Litter of Sorrel changed');
  await page.locator('#margin').getByRole('link', { name: /Today/ }).press('Enter');
  await expect(page.locator('.flagged')).toHaveCount(0);
});
