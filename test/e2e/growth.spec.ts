/** What she sees at once: who slips and why, who is small but steady; a puppy's page; the record of a reading; a house rule. */
import { expect, openDemo, test } from './host.ts';

test('the fading puppy of the young litter is named with reason, what to do and whom to call', async ({ page, house }) => {
  await openDemo(page, house);
  await page.getByRole('link', { name: 'Records', exact: true }).click();
  await page.getByRole('link', { name: 'Your house', exact: true }).click();
  await page.getByLabel('your vet, by phone').fill('555-0188');
  await page.getByLabel('your vet, by phone').press('Enter');
  await page.locator('#margin').getByRole('link', { name: /Today/ }).click();
  const look = page.locator('.flagged').first();
  await expect(look.getByRole('heading', { name: 'Look at Fennel' })).toBeVisible();
  await expect(look).toContainText('act');
  await expect(look).toContainText(/Since \w+.*\d+\sg a day/);
  await expect(look).toContainText('Call your vet');
  await expect(look).toContainText('555-0188');
  await expect(page.locator('main')).toContainText('The other five are steady.');
  await look.getByRole('link', { name: 'Weigh Fennel' }).click();
  await expect(page.locator('tr.in-hand')).toContainText('Fennel');
  await expect(page.getByLabel('Weight of Fennel')).toBeFocused();
});

test('the small but steady one is left in peace, and the litter has its meals', async ({ page, house }) => {
  await openDemo(page, house);
  await page
    .getByRole('link', { name: /^Yarrow/ })
    .first()
    .click();
  await expect(page.locator('main')).toContainText('Everyone is steady.');
  await expect(page.locator('main')).toContainText(/Nettle is the smallest and has kept her place/);
  await expect(page.locator('main')).toContainText('13:00');
});

test('a puppy has its charts, its table, and a record in which nothing is lost', async ({ page, house }) => {
  await openDemo(page, house);
  await page
    .getByRole('link', { name: /^Yarrow/ })
    .first()
    .click();
  await page.getByRole('link', { name: 'Growth', exact: true }).click();
  await page.locator('main').getByRole('link', { name: 'Nettle' }).last().click();
  await expect(page.getByRole('heading', { level: 1, name: 'Nettle' })).toBeVisible();
  await expect(page.locator('canvas')).toHaveCount(2);
  await page.getByRole('button', { name: 'whole record' }).click();
  expect(await page.locator('table.record tbody tr').count()).toBeGreaterThan(60);

  // A mended weight: the old one is struck through, not gone.
  await page.getByRole('link', { name: 'Weigh-in', exact: true }).click();
  await page.getByRole('button', { name: 'another day or time' }).click();
  await page.getByLabel('time of day').selectOption('evening');
  await page.getByRole('button', { name: 'Go', exact: true }).click();
  await page.getByRole('button', { name: 'Take Nettle in hand' }).click();
  const row = page.locator('tr.in-hand');
  const before = Number((await row.locator('td').nth(1).innerText()).replace(/\D/g, ''));
  await page.keyboard.type(String(before + 10));
  await page.keyboard.press('Enter');
  await expect(row).not.toContainText('Nettle');
  await page.getByRole('button', { name: 'Take Nettle in hand' }).click();
  await expect(page.getByLabel('Weight of Nettle')).toHaveValue(String(before + 10));
  await page.keyboard.press('ControlOrMeta+a');
  await page.keyboard.type(String(before + 14));
  await page.keyboard.press('Enter');
  await page.getByRole('link', { name: 'Growth', exact: true }).click();
  await page.locator('main').getByRole('link', { name: 'Nettle' }).last().click();
  await expect(page.locator('table.record .struck')).toHaveCount(1);
  await expect(page.locator('table.record')).toContainText('replaced');
});
