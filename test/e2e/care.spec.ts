/** The page Care as she uses it: chips scanned twice or typed twice, by keyboard alone. */
import type { Page } from '@playwright/test';
import { expect, type House, open, openDemo, test } from './host.ts';

async function newLitter(page: Page, house: House): Promise<void> {
  await open(page, house);
  await page.getByRole('link', { name: 'Begin a litter' }).click();
  await page.getByLabel('dam', { exact: true }).fill('Marjoram');
  await page.getByLabel('puppies so far').fill('3');
  await page.getByLabel('puppies so far').press('Enter');
  await expect(page.getByRole('heading', { level: 1, name: 'Puppies' })).toBeVisible();
  await page.getByRole('link', { name: 'Care', exact: true }).click();
  await expect(page.getByRole('heading', { level: 1, name: 'Care' })).toBeVisible();
}

const number = (page: Page, name: string) => page.getByLabel(`${name}, number of the chip`);
const row = (page: Page, name: string) =>
  page.locator('.care-table tbody tr').filter({ has: page.locator('th', { hasText: name }) });
/** As a reader that types: what it reads, and Enter. */
const scan = (page: Page, line: string) => page.keyboard.type(`${line}\n`);

test('three puppies are chipped: a reader, a slip, a number twice, a test number; undo; nothing is lost', async ({
  page,
  house,
  quiet,
}) => {
  await newLitter(page, house);
  await page.getByLabel('by', { exact: true }).fill('the practice on the green');
  await number(page, 'A').focus();
  await scan(page, 'LA 982 000001088420');
  await expect(row(page, 'A')).toContainText(/982\s0000\s0108\s8420 maker’s code 982/);
  await expect(page.getByLabel('A, the same number again')).toBeFocused();
  await scan(page, 'LA 982 000001088421');
  await expect(row(page, 'A')).toContainText('The two numbers are not the same. Scan the chip once more.');
  await scan(page, 'LA 982 000001088420');
  await expect(page.getByText('1 of 3 have their number')).toBeVisible();
  await expect(row(page, 'A').getByLabel('A, who put the chip in')).toHaveValue('the practice on the green');

  await expect(number(page, 'B'), 'the next puppy is in hand').toBeFocused();
  await scan(page, '98200000108842');
  await expect(row(page, 'B')).toContainText('14 figures; a chip’s number has 15.');
  await page.keyboard.press('Escape');
  await scan(page, '982000001088420');
  await scan(page, '982000001088420');
  await expect(row(page, 'B')).toContainText('Another puppy has this number.');
  await number(page, 'B').focus();
  await page.keyboard.press('Escape');
  await scan(page, '999000000000001');
  await scan(page, '999000000000001');
  await expect(row(page, 'B')).toContainText('A number that begins with 999 is for tests only');
  await number(page, 'B').focus();
  await page.keyboard.press('Escape');
  await scan(page, '040 0000 0000 0123');
  await scan(page, '040000000000123');
  await expect(row(page, 'B')).toContainText(/040\s0000\s0000\s0123/);
  await expect(row(page, 'B')).toContainText('country code: Austria');

  await row(page, 'A').getByRole('button', { name: 'Take A’s chip away' }).click();
  await expect(page.getByText('1 of 3 have their number')).toBeVisible();
  await page.getByRole('heading', { level: 1 }).click();
  await page.keyboard.press('ControlOrMeta+z');
  await expect(page.getByText('2 of 3 have their number')).toBeVisible();

  await house.kill();
  await page.goto('about:blank');
  await page.goto(await house.start());
  await expect(page.getByRole('heading', { level: 1, name: 'Litters' })).toBeVisible();
  quiet.length = 0; // the browser rightly complains of the lost connection
  await page.getByRole('link', { name: 'Care', exact: true }).click();
  await expect(row(page, 'A')).toContainText(/982\s0000\s0108\s8420/);
  await expect(row(page, 'B')).toContainText(/040\s0000\s0000\s0123/);
});

test('an invented puppy may have a test number', async ({ page, house }) => {
  await openDemo(page, house);
  await page
    .getByRole('link', { name: /^Yarrow/ })
    .first()
    .click();
  await page.getByRole('link', { name: 'Care', exact: true }).click();
  await number(page, 'Nettle').focus();
  await scan(page, '999000000000001');
  await scan(page, '999000000000001');
  await expect(row(page, 'Nettle')).toContainText('a test number, not for animals');
});

test('a dose is worked out for each puppy from the label that she copies, and refused where the label or the level says so', async ({
  page,
  house,
}) => {
  await openDemo(page, house);
  await page
    .getByRole('link', { name: /^Yarrow/ })
    .first()
    .click();
  await page.getByRole('link', { name: 'Care', exact: true }).click();
  const write = (label: string, text: string) => page.getByLabel(label, { exact: true }).fill(text);
  await expect(page.getByText('Write down dose, strength and finest mark.')).toBeVisible();
  await write('dose', 'fifty');
  await expect(page.getByText('50', { exact: false }).first()).toBeVisible();
  await write('dose', '50');
  await write('strength', '100');
  await write('finest mark', '0.1');
  const doses = page.locator('.care-doses tbody tr');
  await expect(doses).toHaveCount(8);
  // Each figure from the weight beside it, reckoned here again.
  for (const cells of await doses.evaluateAll((rows) => rows.map((r) => [...r.querySelectorAll('td')].map((c) => c.innerText)))) {
    if (cells.length === 1) continue;
    const grams = Number((cells[0] ?? '').replace(/\D/g, ''));
    const exact = Number(/[\d.]+/.exec(cells[1] ?? '')?.[0]);
    expect(exact).toBeCloseTo(((grams / 1000) * 50) / 100, 3);
    const drawn = Number(/[\d.]+/.exec(cells[2] ?? '')?.[0]);
    expect(Math.abs(drawn - exact)).toBeLessThanOrEqual(0.0505);
    expect(Number(/[\d.]+/.exec(cells[3] ?? '')?.[0])).toBeCloseTo((drawn * 100) / (grams / 1000), 1);
  }
  await write('not under, days', '300');
  await expect(doses.first()).toContainText('Not under the label’s age');
  await write('not under, days', '');
  await page.getByLabel('strength is in').selectOption('%');
  await expect(page.getByText('1000.0 mg in a millilitre')).toBeVisible();
  await write('dose for light ones', '100');
  await expect(page.getByText('The second dose needs both')).toBeVisible();
});
