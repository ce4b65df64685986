/** The freezer as she uses it: a delivery by keyboard, the list ticked off, what went wrong written down, counted, printed. */
import type { Page } from '@playwright/test';
import { expect, open, openDemo, test } from './host.ts';

async function toFreezer(page: Page) {
  await page.locator('#margin').getByRole('link', { name: 'Freezer', exact: true }).click();
  await expect(page.getByRole('heading', { level: 1, name: 'Freezer' })).toBeVisible();
}

/** By keyboard alone: number, weight, Enter. */
async function putIn(page: Page, count: string, weight: string) {
  await page.getByLabel('packs', { exact: true }).focus();
  await page.keyboard.type(count);
  await page.keyboard.press('Tab');
  await page.keyboard.press('ControlOrMeta+a');
  await page.keyboard.type(weight);
  await page.keyboard.press('Enter');
}

const boxes = (page: Page) => page.getByRole('checkbox', { name: /^Take out now/ });

test('a delivery by keyboard, the thaw list ticked off, undo, and the same rows on Today', async ({ page, house }) => {
  await openDemo(page, house);
  await toFreezer(page);
  await page.getByRole('button', { name: 'Put packs in' }).click();
  await expect(page.getByLabel('packs', { exact: true })).toBeFocused();

  // What cannot be gets a sentence in its place, and nothing typed is lost.
  await putIn(page, 'ten', '500');
  await expect(page.getByText('Write a number, like 10.')).toBeVisible();
  await expect(page.getByLabel('packs', { exact: true })).toHaveValue('ten');
  await page.getByLabel('packs', { exact: true }).fill('');
  await putIn(page, '40', '500');
  await expect(page.getByText('40 packs complete mix, generic of 500 g put in.')).toBeVisible();
  await expect(page.getByLabel('packs', { exact: true })).toBeFocused();
  await expect(page.locator('.title')).toContainText('20.0 kg');

  // Nothing is thawed yet: the page says which meals come too soon, and what cold water can do.
  await expect(page.getByText('Look at this first')).toBeVisible();
  const tooSoon = page.locator('.freezer-urgent .line', { hasText: /13:00: .* will not be thawed in time/ });
  await expect(tooSoon.first()).toContainText('Into cold water by');

  // Ticked: the pack's clock starts, the row moves up to what is out.
  const before = await boxes(page).count();
  expect(before).toBeGreaterThan(0);
  await boxes(page).first().focus();
  await page.keyboard.press('Space');
  await expect(page.locator('.thaw-out').first()).toContainText(/ready tomorrow 08:10; use by .* 08:10/);
  await expect(page.locator('.foot .undo')).toContainText('taken out to thaw');
  const stock = page.locator('.stock tbody tr').first();
  const left = await stock.innerText();
  await page.keyboard.press('ControlOrMeta+z');
  await expect(page.locator('.thaw-out')).toHaveCount(0);
  await expect(stock).not.toHaveText(left);
  await page.keyboard.press('ControlOrMeta+y');
  await expect(page.locator('.thaw-out').first()).toBeVisible();

  await page
    .getByRole('link', { name: /^Yarrow/ })
    .first()
    .click();
  const today = page.locator('section', { hasText: 'Out of the freezer today' }).last();
  const rows = await today.getByRole('checkbox').count();
  expect(rows).toBeGreaterThan(0);
  await today.getByRole('checkbox').first().focus();
  await page.keyboard.press('Space');
  await expect(today.getByRole('checkbox')).toHaveCount(rows - 1);
});

test('a pack left on the counter gets two hours, and none is ever planned there', async ({ page, house }) => {
  await open(page, house);
  await toFreezer(page);
  await page.getByRole('button', { name: 'Put packs in' }).click();
  // Frozen last week.
  const frozen = page.getByLabel('frozen on');
  const lastWeek = new Date(`${await frozen.inputValue()}T12:00:00Z`);
  lastWeek.setUTCDate(lastWeek.getUTCDate() - 7);
  await frozen.fill(lastWeek.toISOString().slice(0, 10));
  await putIn(page, '3', '1 lb');
  await expect(page.getByText('3 packs complete mix, generic of 454 g put in.')).toBeVisible();

  await page.getByLabel('thawed', { exact: true }).selectOption('counter');
  await expect(page.getByText('Never on the counter. Officially', { exact: false })).toBeVisible();
  const since = page.getByLabel('out since');
  const morning = await since.inputValue();
  await since.fill(morning.replace(/T.*/, 'T23:00'));
  await page.getByRole('button', { name: 'Write it down' }).click();
  await expect(page.getByText('Nothing is planned to thaw on the counter')).toBeVisible();
  await expect(page.locator('.thaw-out')).toHaveCount(0);

  await since.fill(morning.replace(/T.*/, 'T07:30'));
  await page.getByRole('button', { name: 'Write it down' }).click();
  await expect(page.getByText('written down, use by today 09:30')).toBeVisible();
  await expect(page.locator('.thaw-out')).toContainText('on the counter');
  await expect(page.getByText('2 days in the refrigerator', { exact: false }).first()).toBeVisible();

  // Left from yesterday evening: past its time, told apart, thrown away.
  await page.getByLabel('thawed', { exact: true }).selectOption('counter');
  const yesterday = new Date(`${morning}:00Z`);
  yesterday.setUTCDate(yesterday.getUTCDate() - 1);
  await since.fill(`${yesterday.toISOString().slice(0, 10)}T20:00`);
  await page.getByRole('button', { name: 'Write it down' }).click();
  const urgent = page.locator('.freezer-urgent');
  await expect(urgent).toContainText('past its time since yesterday 22:00');
  await urgent.getByRole('button', { name: 'Thrown away' }).first().click();
  await expect(urgent.getByText('past its time since')).toHaveCount(0);
});

test('dogs, portions, counting, packs given away, a longer rule, and the paper', async ({ page, house }) => {
  await open(page, house);
  await toFreezer(page);
  await page.getByRole('button', { name: 'Put packs in' }).click();
  await page.getByLabel('can be cut in').fill('4');
  await page.getByLabel('price of one').fill('3.20');
  await putIn(page, '12', '454');
  await page.getByRole('button', { name: 'Another dog' }).click();
  await page.getByLabel('name', { exact: true }).fill('Wren');
  await page.getByLabel('amount a day').fill('120');
  await page.getByLabel('meals a day').fill('3');
  await page.getByLabel('meals a day').press('Enter');
  await expect(page.getByText('120 g a day of complete mix, generic in 3 meals')).toBeVisible();

  // A block for a small dog is planned by the quarter.
  await expect(page.locator('.thaw-table')).toContainText('a quarter of a pack');
  await expect(page.locator('.thaw-table')).toContainText('Wren');
  await expect(page.locator('.thaw-table')).toContainText('cut in 4 half frozen');

  // Two are given away, then the freezer is counted.
  await page.getByRole('button', { name: /^Show the packs/ }).click();
  await page.getByLabel('how many').fill('2');
  await page.getByRole('button', { name: 'given away' }).click();
  await expect(page.locator('.stock tbody tr').first()).toContainText('10');
  await page.getByRole('button', { name: 'Count the freezer' }).click();
  await page.getByLabel(/^really there/).fill('x');
  await page.getByRole('button', { name: 'Save the count' }).click();
  await expect(page.getByText(/Write a number/)).toBeVisible();
  await page.getByLabel(/^really there/).fill('8');
  await page.getByRole('button', { name: 'Save the count' }).click();
  await expect(page.locator('.stock tbody tr').first()).toContainText('8');
  await expect(page.locator('.foot .undo')).toContainText('Freezer counted');

  // A house rule longer than the official time is kept, and the official one stands beside it.
  await page.locator('#margin').getByRole('link', { name: 'House rules', exact: true }).click();
  await page.getByLabel('Use within, once thawed').fill('72');
  await page.getByLabel('Use within, once thawed').press('Enter');
  await toFreezer(page);
  await expect(page.locator('.title')).toContainText('longer than the official time');
  await expect(page.locator('.thaw-table')).toContainText('official: use by');

  await page.getByRole('link', { name: 'Labels to print' }).click();
  await expect(page.locator('html')).toHaveAttribute('data-ready', 'true');
  await expect(page.locator('.label-by').first()).toContainText('use by');
  const first = page.getByLabel('first free label');
  await first.fill('4');
  await expect(page.locator('.label')).not.toHaveCount(0);
  await expect(page.locator('.label[aria-hidden="true"]')).toHaveCount(3);
  await page.getByLabel('plain paper').check();
  await expect(page.locator('html')).toHaveAttribute('data-ready', 'true');
  // The choice stands in the address, so it is marked a moment after the click.
  await page.getByLabel('US Letter').click();
  await expect(page.getByLabel('US Letter')).toBeChecked();
  await expect(page.locator('html')).toHaveAttribute('data-ready', 'true');
  await page.getByRole('link', { name: 'Back to the freezer' }).click();
  await page.getByRole('link', { name: 'Print the thaw list' }).click();
  await expect(page.locator('html')).toHaveAttribute('data-ready', 'true');
  await expect(page.locator('.thaw-paper')).toContainText('Wren');
});
