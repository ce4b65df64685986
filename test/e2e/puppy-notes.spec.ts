/** What stands on a puppy's page beside its weights: birth weight, milestones, what was seen, the published upper edge. */
import { AxeBuilder } from '@axe-core/playwright';
import { expect, openDemo, test } from './host.ts';

test('the fading puppy has its record of what was seen, and Today says by when to weigh again', async ({ page, house }) => {
  await openDemo(page, house);
  await page.locator('#margin').getByRole('link', { name: /Today/ }).click();
  await expect(page.locator('.flagged').first()).toContainText(/Weigh again by \d\d:\d\d( tomorrow)?\./);
  await page.getByRole('link', { name: 'Look at Fennel' }).click();
  const seen = page.getByRole('table', { name: 'What was seen' });
  await expect(seen.getByRole('row').nth(1)).toContainText('act');
  await expect(seen.getByRole('row').nth(1)).toContainText(/\d+\sg a day/);
  const found = await new AxeBuilder({ page }).withTags(['wcag2a', 'wcag2aa', 'wcag21aa', 'wcag22aa']).analyze();
  expect(found.violations.map((v) => `${v.id}: ${v.nodes.map((n) => n.target.join(' ')).join(', ')}`)).toEqual([]);
});

test('birth weight, milestones and their sources; the published upper edge on demand', async ({ page, house }) => {
  await openDemo(page, house);
  await page
    .getByRole('link', { name: /^Yarrow/ })
    .first()
    .click();
  await page.getByRole('link', { name: 'Growth', exact: true }).click();
  await page.locator('main').getByRole('link', { name: 'Rowan' }).last().click();
  await page.getByRole('link', { name: 'Notes and facts' }).click();
  const facts = page.locator('dl.facts');
  await facts.getByRole('button', { name: /twice its birth weight on day \d+, three times on day \d+/ }).focus();
  await expect(page.locator('.foot')).toContainText('A note, never an alarm.');
  await facts.getByRole('button', { name: /usual in this litter|for the breed/ }).focus();
  await expect(page.locator('.foot')).toContainText(/mean/i);
  await expect(page.getByText('Steady at every weighing, and no weight was asked about.')).toBeVisible();

  await page.getByRole('link', { name: 'Weight', exact: true }).click();
  const toggle = page.getByRole('button', { name: 'show the most that a newborn grows' });
  await toggle.press('Enter');
  await expect(page.getByRole('button', { name: 'leave out the most that a newborn grows' })).toHaveAttribute(
    'aria-pressed',
    'true',
  );
  await page.getByRole('button', { name: 'where it comes from' }).focus();
  await expect(page.locator('.foot')).toContainText('Alves 2020');
});
