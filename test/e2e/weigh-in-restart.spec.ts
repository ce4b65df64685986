/** A host that dies in the middle of a weigh-in and is started again at the same address, with another key. */
import type { Page } from '@playwright/test';
import { expect, type House, open, test } from './host.ts';

const HAND = 'input.weight-field';
const FIRST = [412, 398, 405, 421, 388, 430];
const AFTER = [402, 415, 409, 396, 418, 407, 411, 399];

async function fourteen(page: Page, house: House): Promise<void> {
  test.slow(); // fourteen times the whole litter is reckoned anew, and the host is waited for
  await open(page, house);
  await page.getByRole('link', { name: 'Begin a litter' }).click();
  await page.getByLabel('dam', { exact: true }).fill('Comfrey');
  await page.getByLabel('puppies so far').fill('14');
  await page.getByRole('button', { name: /begin/i }).click();
  await expect(page.getByRole('heading', { level: 1, name: 'Puppies' })).toBeVisible();
  await page.getByRole('link', { name: 'Weigh-in', exact: true }).click();
  await expect(page.locator(HAND)).toBeFocused();
  for (const grams of FIRST) await enter(page, grams);
  await expect(page.locator('.foot .undo')).toContainText(String(FIRST.at(-1)));
}

async function enter(page: Page, grams: number): Promise<void> {
  await page.keyboard.type(String(grams));
  await page.keyboard.press('Enter');
}

async function weightsAreWritten(page: Page): Promise<void> {
  await expect(page.getByRole('alert')).toHaveCount(0);
  await expect(page.locator('.weigh-in-table tr.not-in-file')).toHaveCount(0);
  await expect(page.locator('.weigh-in-table tbody td.weight')).toHaveText([...FIRST, ...AFTER].map(String));
}

test('the numbers of a window whose key is no longer good come back once the address is opened in it', async ({
  page,
  house,
  quiet,
}) => {
  await fourteen(page, house);
  const { origin } = new URL(house.address);
  await house.kill();
  for (const grams of AFTER.slice(0, 4)) await enter(page, grams);
  const address = await house.start();
  expect(new URL(address).origin, 'the port of last time is taken again').toBe(origin);
  for (const grams of AFTER.slice(4)) await enter(page, grams);
  // The window says plainly what to do, and the numbers stay in sight.
  await page.getByRole('button', { name: 'Try now' }).click();
  await expect(page.getByRole('alert')).toContainText('8 weights are not written yet.');
  await expect(page.getByRole('alert')).toContainText('Whelpside was started again');
  await expect(page.locator('.weigh-in-table tr.not-in-file')).toHaveCount(8);
  // Loaded again without the new key: shut, and it says that nothing is lost.
  await page.reload();
  await expect(page.getByText('kept in this window')).toBeVisible();
  await page.goto(address);
  await page.getByRole('link', { name: 'Weigh-in', exact: true }).click();
  await weightsAreWritten(page);
  quiet.length = 0; // the browser rightly complains of the lost connection
});

test('a window left open goes on by itself as soon as the new address is open beside it', async ({
  page,
  house,
  quiet,
  context,
}) => {
  await fourteen(page, house);
  await house.kill();
  for (const grams of AFTER) await enter(page, grams);
  await expect(page.getByRole('alert').first()).toContainText('8 weights are not written yet.');
  const beside = await context.newPage();
  await beside.goto(await house.start());
  await expect(beside.getByRole('heading', { level: 1 })).toBeVisible();
  await weightsAreWritten(page);
  quiet.length = 0; // the browser rightly complains of the lost connection
});
