/** What is said before there is anything to say: no weights, one weight, a puppy that died. And the hand on the keyboard. */
import { expect, open, openDemo, test } from './host.ts';

const HAND = 'input.weight-field';

test('nobody is called steady before the second weight', async ({ page, house }) => {
  await open(page, house);
  await page.getByRole('link', { name: 'Begin a litter' }).press('Enter');
  await expect(page.getByLabel('dam', { exact: true })).toBeFocused();
  await page.keyboard.type('Sorrel');
  await page.getByLabel('puppies so far').fill('17');
  await expect(page.getByText(/0 to 16/)).toBeVisible();
  await page.getByLabel('puppies so far').fill('3');
  await page.keyboard.press('Enter');
  await expect(page.getByLabel(/birth weight/i)).toHaveCount(3);

  await page.getByRole('link', { name: 'Growth', exact: true }).press('Enter');
  const table = page.locator('.growth-table tbody');
  await expect(table.getByText('not weighed yet')).toHaveCount(3);
  await expect(table.getByText('steady')).toHaveCount(0);

  await page.getByRole('link', { name: 'Weigh-in', exact: true }).press('Enter');
  await expect(page.locator(HAND)).toBeFocused();
  // What cannot be read is selected: typing over it is enough.
  await page.keyboard.type('abc');
  await page.keyboard.press('Enter');
  await expect(page.getByText('abc cannot be read as a weight.')).toBeVisible();
  for (const grams of [412, 398, 405]) {
    await page.keyboard.type(String(grams));
    await page.keyboard.press('Enter');
  }
  await expect(page.getByText('All three weighed.')).toBeVisible();
  await page.getByRole('link', { name: 'To Today' }).press('Enter');
  await expect(page.getByText('Weighed once. Who keeps up shows from the second weight on.')).toBeVisible();
  await expect(page.getByText('Everyone is steady.')).toHaveCount(0);
  await page.getByRole('link', { name: 'Litters', exact: true }).press('Enter');
  await expect(page.locator('.litters').getByText('weighed once')).toBeVisible();
});

test('a puppy that died keeps its record and is promised nothing', async ({ page, house }) => {
  await openDemo(page, house);
  await page
    .getByRole('link', { name: /^Comfrey/ })
    .first()
    .press('Enter');
  await page.getByRole('link', { name: 'Puppies', exact: true }).press('Enter');
  await page.getByLabel('Fennel, now').focus();
  await page.keyboard.type('died');
  await page.keyboard.press('Enter');
  await expect(page.locator('.foot .undo')).toContainText('Fennel: died');
  await expect(page.locator('#margin')).not.toContainText('Fennel');

  await page.getByRole('link', { name: /^Growth/ }).press('Enter');
  await page.locator('.growth-table').getByRole('link', { name: 'Fennel' }).press('Enter');
  await page.getByRole('link', { name: 'Notes and facts' }).press('Enter');
  const said = page.locator('main');
  await expect(said).toContainText('lived 9 days');
  await expect(said).toContainText('died');
  await expect(said.getByRole('link', { name: 'Preview the go-home plan' })).toHaveCount(0);
  await expect(said.getByRole('heading', { name: 'Meal ladder' })).toHaveCount(0);
  await expect(said.getByRole('heading', { name: 'Forecast' })).toHaveCount(0);
  // What was said of it while it was weighed here still stands, with the reason.
  await expect(page.locator('.puppy-log tbody tr').first()).toContainText('act');
  await expect(said).not.toContainText('No longer weighed here');
});

test('undo and redo of a doubtful weight by key, and the foot forgets what was undone', async ({ page, house }) => {
  await openDemo(page, house);
  await page
    .getByRole('link', { name: /^Yarrow/ })
    .first()
    .press('Enter');
  await page.getByRole('link', { name: 'Weigh-in', exact: true }).press('Enter');
  await page.getByRole('button', { name: 'another day or time' }).press('Enter');
  await page.getByLabel('time of day').selectOption('evening');
  await page.getByRole('button', { name: 'Go', exact: true }).click();
  await expect(page.locator(HAND)).toBeFocused();
  // This morning's weights stand in the column, so it is not called yesterday's.
  await expect(page.locator('.weigh-in-table thead')).toContainText('before, g');
  await page.keyboard.type('4300');
  await page.keyboard.press('Enter');
  await expect(page.locator('.foot .said')).toContainText('apart');
  await page.keyboard.press('ControlOrMeta+z');
  await expect(page.locator('tr.in-hand')).toContainText('Rowan');
  await expect(page.locator('.foot .said')).not.toContainText('apart');
  await page.keyboard.type('42670');
  await page.keyboard.press('Enter');
  await expect(page.locator('.foot .undo')).toContainText('42 670');
  await page.keyboard.press('ControlOrMeta+z');
  await expect(page.locator(HAND)).toHaveValue('');
  await page.keyboard.press('ControlOrMeta+y');
  await expect(page.locator(HAND)).toHaveValue('42670');
  // Something stands in the field, and still both go by key.
  await page.keyboard.press('ControlOrMeta+z');
  await expect(page.locator(HAND)).toHaveValue('');
});

test('a plan is handed over by keyboard, and the hand stays where it was', async ({ page, house }) => {
  await openDemo(page, house);
  await page
    .getByRole('link', { name: /^Yarrow/ })
    .first()
    .press('Enter');
  await page.getByRole('link', { name: 'Homes', exact: true }).press('Enter');
  await page.getByRole('link', { name: 'Print all plans' }).press('Enter');
  // The same finding is said once for the whole litter.
  await expect(page.getByText(/So too, each with its own figures: /).first()).toBeVisible();
  await page.getByRole('link', { name: /^Back to Homes/ }).press('Enter');
  await page.getByRole('link', { name: 'Preview the plan of Rowan' }).press('Enter');
  const handOver = page.getByRole('button', { name: 'Hand over' });
  await expect(handOver).toBeEnabled();
  await handOver.press('Enter');
  await expect(page.getByRole('button', { name: 'File this copy' })).toBeFocused();
  await page.keyboard.press('Enter');
  await expect(page.getByText('Kept. Rowan is marked gone home today.')).toBeVisible();
  await expect(handOver).toBeFocused();
});
