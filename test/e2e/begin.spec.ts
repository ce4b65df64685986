/** Beginning a litter of fourteen by keyboard, and weighing it. */
import type { Page } from '@playwright/test';
import { expect, open, test } from './host.ts';

const HAND = 'input.weight-field';
const BORN = [412, 398, 405, 421, 388, 430, 402, 415, 409, 396, 418, 407, 411, 399];
const SEX = 'dbbdbdbdbbdbdb';

/** Presses keys one by one, and counts them. */
function counting(page: Page) {
  let pressed = 0;
  const key = async (name: string) => {
    pressed += 1;
    await page.keyboard.press(name);
  };
  return {
    key,
    type: async (text: string) => {
      for (const letter of text) await key(letter);
    },
    pressed: () => pressed,
  };
}

test('fourteen puppies with sex and birth weight in under 120 keys, taken back in one step', async ({ page, house }) => {
  await open(page, house);
  await page.getByRole('link', { name: 'Begin a litter' }).press('Enter');
  await expect(page.getByLabel('dam', { exact: true })).toBeFocused();
  const { key, type, pressed } = counting(page);
  await type('Comfrey');
  const count = page.getByLabel('puppies so far');
  while (!(await count.evaluate((field) => field === document.activeElement))) await key('Tab');
  await type('14');
  await key('Tab');
  for (const [i, grams] of BORN.entries()) {
    await key(SEX.charAt(i));
    await key('Enter');
    await type(String(grams));
    await key('Enter');
  }
  await expect(page.getByRole('button', { name: 'Begin this litter' })).toBeFocused();
  await key('Enter');
  await expect(page.getByRole('heading', { level: 1, name: 'Puppies' })).toBeVisible();
  expect(pressed()).toBeLessThan(120);
  await expect(page.getByLabel('C, sex')).toHaveValue('bitch');
  await expect(page.getByLabel('P, sex')).toHaveValue('bitch');
  await expect(page.getByLabel('P, birth weight')).toHaveValue('399');
  await page.getByRole('heading', { level: 1 }).click();
  await page.keyboard.press('ControlOrMeta+z');
  await page.getByRole('link', { name: 'Litters', exact: true }).first().click();
  await expect(page.getByText('Nothing is written here yet.')).toBeVisible();
  await page.keyboard.press('ControlOrMeta+y');
  await expect(page.getByText('One in the house')).toBeVisible();
  await expect(page.locator('main').getByRole('link', { name: 'Weigh-in, this morning' })).toBeVisible();
});

test('a sex that was not seen waits, and the breed says which growth it means', async ({ page, house }) => {
  await open(page, house);
  await page.getByRole('link', { name: 'Begin a litter' }).press('Enter');
  await page.getByLabel('dam', { exact: true }).fill('Sorrel');
  await page.getByLabel('breed', { exact: true }).fill('great dane');
  await expect(page.getByText('grows as giant, over 45 kg')).toBeVisible();
  await expect(page.getByLabel('size when grown')).toHaveValue('giant');
  await page.getByLabel('puppies so far').fill('2');
  await page.getByLabel('A, birth weight').fill('520');
  await page.getByRole('button', { name: 'Begin this litter' }).press('Enter');
  await expect(page.getByRole('heading', { level: 1, name: 'Puppies' })).toBeVisible();
  await expect(page.getByLabel('A, sex')).toHaveValue('unseen');
  await page.getByLabel('A, sex').selectOption('bitch');
  await page.getByRole('link', { name: 'Weigh-in', exact: true }).click();
  await expect(page.locator('tr.in-hand')).toContainText('bitch');
  await page.locator('.weigh-in-table').getByText('blue stripe').click();
  await expect(page.locator('tr.in-hand')).toContainText('sex not seen yet');
});

for (const [what, size] of [
  ['1280 by 800', { width: 1280, height: 800 }],
  ['200 %', { width: 640, height: 400 }],
  ['a telephone', { width: 390, height: 844 }],
] as const) {
  test(`fourteen at the weigh-in, the row in hand never out of sight: ${what}`, async ({ page, house }) => {
    test.slow(); // fourteen times the whole litter is reckoned anew
    await page.setViewportSize(size);
    await open(page, house);
    await page.getByRole('link', { name: 'Begin a litter' }).click();
    await page.getByLabel('dam', { exact: true }).fill('Comfrey');
    await page.getByLabel('puppies so far').fill('14');
    await page.getByRole('button', { name: 'Begin this litter' }).click();
    await expect(page.getByRole('heading', { level: 1, name: 'Puppies' })).toBeVisible();
    await page.evaluate(() => {
      window.location.hash = window.location.hash.replace('puppies', 'weigh-in');
    });
    const hand = page.locator(HAND);
    await expect(hand).toBeFocused();
    for (const [i, grams] of BORN.entries()) {
      // One very wrong weight, kept: the others keep their room on the drift line.
      await page.keyboard.type(String(i === 4 ? 1150 : grams));
      await page.keyboard.press('Enter');
      if (i === BORN.length - 1) break;
      await expect(page.locator('.weighed-count .big')).toHaveText(String(i + 1));
      await expect(hand).toBeInViewport({ ratio: 1 });
      if (size.width > 1000) await expect(page.locator('.weigh-in-drift')).toBeInViewport();
    }
    await page.screenshot({ path: test.info().outputPath('fourteen.png') });
    // A done row is taken up again by its letter, by its name and by its number.
    await page.locator('.weigh-in-table tr.done td.weight button').first().click();
    await expect(hand).toHaveValue('412');
    await page.keyboard.press('ControlOrMeta+a');
    await page.keyboard.type('c');
    await page.keyboard.press('Enter');
    await expect(hand).toHaveValue('405');
    await page.keyboard.press('ArrowUp');
    await expect(hand).toHaveValue('398');
  });
}
