/** The weigh-in as she does it: by keyboard, one hand, no mouse. */
import { expect, open, openDemo, test } from './host.ts';

const HAND = 'input.weight-field';
/** Longer than a second Enter is taken for the same press. */
const A_MOMENT = 600;

test('a first litter by keyboard only: begin, collars, weights, a doubt, a mistake, undo, and a plug pulled', async ({
  page,
  house,
  quiet,
}) => {
  await open(page, house);
  await page.getByRole('link', { name: 'Begin a litter' }).focus();
  await page.keyboard.press('Enter');
  await page.getByLabel('dam', { exact: true }).focus();
  await page.keyboard.type('Marjoram');
  await page.getByLabel('puppies so far').focus();
  await page.keyboard.press('ControlOrMeta+a');
  await page.keyboard.type('10');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { level: 1, name: 'Puppies' })).toBeVisible();
  await expect(page.getByLabel(/birth weight/i)).toHaveCount(10);

  await page.getByRole('link', { name: 'Weigh-in', exact: true }).click();
  await expect(page.locator(HAND)).toBeFocused();
  // Ten puppies need the digits and ten Enters, nothing else.
  for (const grams of [412, 398, 405, 421, 388, 430, 402, 415, 409, 396]) {
    await page.keyboard.type(String(grams));
    await page.keyboard.press('Enter');
  }
  await expect(page.getByText('All ten weighed.')).toBeVisible();
  await expect(page.getByRole('link', { name: 'To Today' })).toBeFocused();
  // The foot names the last weight once it is on the disk; before that it would pass through the others.
  await expect(page.locator('.foot .undo')).toContainText('396');

  // Undo is one key and returns to the last puppy.
  await page.keyboard.press('ControlOrMeta+z');
  await expect(page.locator('.foot .undo')).toContainText('409');
  await page.keyboard.press('ControlOrMeta+y');
  await expect(page.locator('.foot .undo')).toContainText('396');

  // The plug is pulled; everything that was acknowledged is there.
  await house.kill();
  await page.goto(await house.start());
  quiet.length = 0; // the browser rightly complains of the lost connection
  await page.getByRole('link', { name: 'Weigh-in', exact: true }).click();
  await expect(page.getByText('10 of 10 weighed').first()).toBeAttached();
  await page.keyboard.press('ControlOrMeta+z');
  await expect(page.locator('.foot .undo')).toContainText('409');
});

test('doubt, guess, keep, mistake, units, passing over, order, another day', async ({ page, house }) => {
  await openDemo(page, house);
  await page
    .getByRole('link', { name: /^Yarrow/ })
    .first()
    .click();
  await page.getByRole('link', { name: 'Weigh-in', exact: true }).click();
  await page.getByRole('button', { name: 'another day or time' }).click();
  await page.getByLabel('time of day').selectOption('evening');
  await page.getByRole('button', { name: 'Go', exact: true }).click();
  await expect(page.locator(HAND)).toBeFocused();
  const row = page.locator('tr.in-hand');
  const first = (await row.locator('th').innerText()).split('\n')[0] ?? '';
  const before = Number((await row.locator('td').nth(1).innerText()).replace(/\D/g, ''));
  expect(before).toBeGreaterThan(2000);

  // A nought missing: asked in place, Space takes the guess.
  await page.keyboard.type(String(Math.round((before + 20) / 10)));
  await page.keyboard.press('Enter');
  await expect(row).toContainText('tenth');
  await expect(row.locator('th')).toContainText(first);
  await page.keyboard.press(' ');
  await expect(row.locator('th')).not.toContainText(first);
  await expect(page.getByText('1 of 8 weighed').first()).toBeAttached();

  // A doubtful number is kept by one more Enter.
  const second = (await row.locator('th').innerText()).split('\n')[0] ?? '';
  const other = Number((await row.locator('td').nth(1).innerText()).replace(/\D/g, ''));
  await page.keyboard.type(String(other * 2));
  await page.keyboard.press('Enter');
  await expect(row.locator('.fact')).toBeVisible();
  await page.waitForTimeout(A_MOMENT);
  await page.keyboard.press('Enter');
  await expect(row.locator('th')).not.toContainText(second);
  await expect(page.getByText('2 of 8 weighed').first()).toBeAttached();

  // Not a weight: a sentence, and what was typed stays.
  await page.keyboard.type('4l2');
  await page.keyboard.press('Enter');
  await expect(row).toContainText('There is a letter l in 4l2.');
  await expect(page.locator(HAND)).toHaveValue('4l2');
  await page.keyboard.press('ControlOrMeta+z');
  await expect(page.locator(HAND)).toHaveValue('');

  // Pounds and ounces as people write them.
  const third = Number((await row.locator('td').nth(1).innerText()).replace(/\D/g, ''));
  const pounds = Math.floor(third / 453.59237);
  await page.keyboard.type(`${pounds} lb ${Math.round((third / 453.59237 - pounds) * 16)}`);
  await page.keyboard.press('Enter');
  await expect(page.getByText('3 of 8 weighed').first()).toBeAttached();

  // Passed over: an empty Enter goes on, and the loop comes back to it.
  const passed = (await row.locator('th').innerText()).split('\n')[0] ?? '';
  await page.waitForTimeout(A_MOMENT);
  await page.keyboard.press('Enter');
  await expect(row.locator('th')).not.toContainText(passed);

  // The order is changed with Alt and the arrows.
  const names = async () => page.locator('.weigh-in-table tbody th').allInnerTexts();
  const orderBefore = await names();
  await page.keyboard.press('Alt+ArrowDown');
  await expect.poll(async () => JSON.stringify(await names())).not.toBe(JSON.stringify(orderBefore));

  // The drift line moves while typing.
  const drift = page.locator('.weigh-in-drift');
  const still = await drift.innerHTML();
  const own = Number((await row.locator('td').nth(1).innerText()).replace(/\D/g, ''));
  await page.keyboard.type(String(own + 60));
  await expect.poll(() => drift.innerHTML()).not.toBe(still);
});

test('a weight is kept on screen when the program does not answer', async ({ page, house, quiet }) => {
  await openDemo(page, house);
  await page
    .getByRole('link', { name: /^Yarrow/ })
    .first()
    .click();
  await page.getByRole('link', { name: 'Weigh-in', exact: true }).click();
  await page.getByRole('button', { name: 'another day or time' }).click();
  await page.getByLabel('time of day').selectOption('evening');
  await page.getByRole('button', { name: 'Go', exact: true }).click();
  const row = page.locator('tr.in-hand');
  const before = (await row.locator('td').nth(1).innerText()).replace(/\D/g, '');
  await house.kill();
  await page.keyboard.type(before);
  await page.keyboard.press('Enter');
  await expect(page.locator('.foot')).toContainText('does not answer');
  // It stays in its own row, plainly not written, and the row in hand goes on.
  await expect(page.getByRole('alert')).toContainText('One weight is not written yet.');
  const done = page.locator('.weigh-in-table tr.not-in-file');
  await expect(done).toHaveCount(1);
  await expect(done).toContainText('not written yet');
  expect((await done.locator('td.weight').innerText()).replace(/\D/g, '')).toBe(before);
  quiet.length = 0; // the browser rightly complains of the lost connection
});

test('fourteen weights typed into a host that is gone stay with their puppies, whatever page is open', async ({
  page,
  house,
  quiet,
}) => {
  await open(page, house);
  await page.getByRole('link', { name: 'Begin a litter' }).click();
  await page.getByLabel('dam', { exact: true }).fill('Comfrey');
  await page.getByLabel('puppies so far').fill('14');
  await page.getByRole('button', { name: /begin/i }).click();
  await expect(page.getByRole('heading', { level: 1, name: 'Puppies' })).toBeVisible();
  await page.getByRole('link', { name: 'Weigh-in', exact: true }).click();
  await expect(page.locator(HAND)).toBeFocused();
  await house.kill();
  const typed = Array.from({ length: 14 }, (_, i) => 400 + 3 * i);
  for (const grams of typed) {
    await page.keyboard.type(String(grams));
    await page.keyboard.press('Enter');
  }
  await expect(page.getByRole('alert').first()).toContainText('14 weights are not written yet.');
  const weights = () => page.locator('.weigh-in-table tbody td.weight').allInnerTexts();
  expect((await weights()).map((t) => Number(t.replace(/\D/g, '')))).toEqual(typed);
  // Leaving the page and coming back keeps them.
  await page.getByRole('link', { name: 'Help', exact: true }).click();
  await page.getByRole('link', { name: 'Weigh-in', exact: true }).click();
  await expect(page.getByRole('alert').first()).toContainText('14 weights are not written yet.');
  // One that was wrong is typed over in its own row before any of it is written.
  await page.locator('.collar-button').nth(3).click();
  await page.keyboard.type('512');
  await page.keyboard.press('Enter');
  typed[3] = 512;
  await expect(page.getByRole('alert').first()).toContainText('14 weights');
  expect((await weights()).map((t) => Number(t.replace(/\D/g, ''))).sort()).toEqual([...typed].sort());
  quiet.length = 0; // the browser rightly complains of the lost connection
});

test('typing after a question is a new number; a weigh-in begun before two goes on after it', async ({ page, house }) => {
  await openDemo(page, house);
  await page
    .getByRole('link', { name: /^Yarrow/ })
    .first()
    .click();
  const lunch = new Date();
  lunch.setHours(13, 52, 0, 0);
  // The next day at lunch.
  await page.clock.setFixedTime(new Date(lunch.getTime() + 86_400_000));
  await page.getByRole('link', { name: 'Today', exact: true }).click();
  await page.getByRole('link', { name: 'Weigh-in', exact: true }).click();
  const row = page.locator('tr.in-hand');
  await expect(page.locator('main header')).toContainText('morning');
  const before = Number((await row.locator('td').nth(1).innerText()).replace(/\D/g, ''));
  await page.keyboard.type(String(Math.round((before + 40) / 10)));
  await page.keyboard.press('Enter');
  await expect(row).toContainText('tenth');
  await page.keyboard.type(String(before + 40));
  await expect(page.locator(HAND)).toHaveValue(String(before + 40));
  await page.keyboard.press('Enter');
  await expect(page.getByText('1 of 8 weighed').first()).toBeAttached();
  // Two o'clock passes with seven puppies to go: it is still the morning's weigh-in, and nobody is asked for twice.
  await page.clock.setFixedTime(new Date(lunch.getTime() + 86_400_000 + 20 * 60_000));
  await page.waitForTimeout(A_MOMENT);
  const second = Number((await row.locator('td').nth(1).innerText()).replace(/\D/g, ''));
  await page.keyboard.type(String(second + 40));
  await page.keyboard.press('Enter');
  await expect(page.getByText('2 of 8 weighed').first()).toBeAttached();
  await expect(page.locator('main header')).toContainText('morning');
  // A day back is one key, and loud; back to now is one key, and what was left half done is said until then.
  await page.keyboard.press('PageUp');
  await expect(page.locator('.other-day')).toContainText('Not the weigh-in of now.');
  await expect(page.locator('.half-done')).toContainText('2 of 8 weighed');
  await page.getByRole('button', { name: 'Go on with it' }).click();
  await expect(page.getByText('2 of 8 weighed').first()).toBeAttached();
});
