/** Last year's spreadsheet comes in, everything goes out, and a new computer takes it up. */
import { mkdirSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from '@playwright/test';
import writeXlsx from 'write-excel-file/node';
import { expect, open, test, thisMorning } from './host.ts';

const SCREENS = fileURLToPath(new URL('../../test-results/screens/', import.meta.url));

/** A day so many days ago, in figures. */
function ago(days: number): { iso: string; dots: string } {
  const d = thisMorning();
  d.setDate(d.getDate() - days);
  const [day, month] = [d.getDate(), d.getMonth() + 1].map((n) => String(n).padStart(2, '0'));
  return { iso: `${d.getFullYear()}-${month}-${day}`, dots: `${day}.${month}.${d.getFullYear()}` };
}

async function toImport(page: Page): Promise<void> {
  await page.getByRole('link', { name: 'Records', exact: true }).click();
  await page.getByRole('link', { name: 'Import weights' }).click();
  await expect(page.getByRole('heading', { level: 1, name: 'Import weights' })).toBeVisible();
}

const choose = (page: Page, name: string, content: string | Buffer) =>
  page.getByLabel('file', { exact: true }).setInputFiles({ name, mimeType: 'text/csv', buffer: Buffer.from(content) });

const counts = (page: Page) => page.locator('.import-counts');

test('a grid with decimal commas is understood, asked about, taken in at once and taken back at once', async ({
  page,
  house,
}) => {
  await open(page, house);
  await toImport(page);
  const rows = [
    'Tag;Elder;Clover',
    `${ago(4).dots};0,412;0,398`,
    `${ago(3).dots};0,43;0,41O`,
    `${ago(2).dots};0,455;0,432`,
    `31.2.2026;0,47;0,44`,
  ];
  await page.getByLabel('or pasted').fill(rows.join('\n').replace('Tag', 'day'));
  await expect(page.getByLabel('the table is')).toHaveValue('days-down');
  await page.getByLabel('dam', { exact: true }).fill('Marjoram');
  await page.getByLabel('whelped on').fill(ago(6).iso);
  // Nought point four grams is no puppy: the unit is asked about.
  await expect(page.getByText('Is the unit right?')).toBeVisible();
  await page.getByLabel('numbers alone are in').selectOption('kg');
  await expect(counts(page)).toHaveText('5 weights are good, 3 refused.');
  await expect(page.getByText('There is a letter o in 0,41O.')).toBeVisible();
  await expect(page.getByText('“31.2.2026” cannot be read as a day.')).toHaveCount(2);
  await page.getByLabel('Clover is').selectOption('new');
  await page.getByLabel('Clover, sex').selectOption('bitch');

  mkdirSync(SCREENS, { recursive: true });
  for (const size of [
    { width: 1280, height: 800 },
    { width: 640, height: 400 },
  ]) {
    for (const theme of ['Night lamp', 'Day paper']) {
      await page.setViewportSize({ width: 1280, height: 800 });
      await page.getByRole('button', { name: theme }).click();
      await page.setViewportSize(size);
      const sideways = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
      expect(sideways, `${size.width} scrolls sideways`).toBeLessThanOrEqual(0);
      const found = await new AxeBuilder({ page }).withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa']).analyze();
      expect(found.violations.map((v) => `${v.id}: ${v.nodes.map((n) => n.target.join(' ')).join(', ')}`)).toEqual([]);
      await page.screenshot({
        path: `${SCREENS}import-${size.width}-${theme === 'Night lamp' ? 'night' : 'day'}.png`,
        fullPage: true,
      });
    }
  }
  await page.setViewportSize({ width: 1280, height: 800 });

  // Looking something up loses nothing.
  await page.getByRole('link', { name: 'Help', exact: true }).click();
  await toImport(page);
  await page.getByRole('button', { name: 'Import 5 weights' }).click();
  await expect(page.getByRole('heading', { level: 1, name: 'Growth' })).toBeVisible();
  await expect(page.locator('.foot .undo')).toContainText('Weights of Marjoram’s litter taken in');
  await page.keyboard.press('ControlOrMeta+z');
  await page.getByRole('link', { name: 'Litters', exact: true }).click();
  await expect(page.getByText('Nothing is written here yet.')).toBeVisible();
  await page.keyboard.press('ControlOrMeta+y');
  await expect(page.getByRole('main').getByText('Marjoram').first()).toBeVisible();
});

test('dates that can be read two ways are asked about, never guessed', async ({ page, house }) => {
  await open(page, house);
  await toImport(page);
  await choose(page, 'two-ways.csv', 'puppy,date,grams\nA,03/04/2026,412\nA,05/04/2026,440\n');
  await page.getByLabel('dam', { exact: true }).fill('Sorrel');
  await page.getByLabel('whelped on').fill('2026-03-01');
  await expect(counts(page)).toHaveText('0 weights are good, 2 refused.');
  await expect(page.getByRole('button', { name: 'Nothing to import yet' })).toBeDisabled();
  await page.getByLabel('month first').check();
  await expect(page.getByText('The weights are from 4 March 2026 to 4 May 2026')).toBeVisible();
  await page.getByLabel('day first').check();
  await expect(page.getByText('The weights are from 3 April 2026 to 5 April 2026')).toBeVisible();
  await expect(counts(page)).toHaveText('2 weights are good.');
});

test('hostile names are shown as text; what goes out comes in again and is known', async ({ page, house }) => {
  await open(page, house);
  await toImport(page);
  const names = ['<img src=x onerror=alert(1)>', '=HYPERLINK("http://x","y")', '@SUM(A1)', '\u202eelder'];
  const csv = [
    'puppy,date,time,weight',
    ...names.map((n, i) => `"${n.replaceAll('"', '""')}",${ago(2).iso},07:1${i},${400 + i}`),
  ].join('\r\n');
  await choose(page, 'names.csv', csv);
  await page.getByLabel('dam', { exact: true }).fill('=1+1');
  await page.getByLabel('whelped on').fill(ago(6).iso);
  await page.getByRole('button', { name: 'Import 4 weights' }).click();
  await expect(page.getByRole('heading', { level: 1, name: 'Growth' })).toBeVisible();
  await page.getByRole('link', { name: 'Puppies', exact: true }).click();
  await expect(page.locator(`input[value='${names[0]}']`)).toHaveCount(1);
  expect(await page.locator('main img').count()).toBe(0);

  await page.getByRole('link', { name: 'Records', exact: true }).click();
  await page.getByRole('button', { name: 'Save: Weights' }).click();
  const down = page.waitForEvent('download');
  await page.getByRole('button', { name: /weights\.csv/ }).click();
  const file = readFileSync(await (await down).path(), 'utf8');
  expect(file).toContain(`"'=HYPERLINK(""http://x"",""y"")"`);
  expect(file).toContain(`"'@SUM(A1)"`);
  const [kept] = readdirSync(join(house.folder, 'exports'));
  expect(readFileSync(join(house.folder, 'exports', kept ?? ''), 'utf8')).toBe(file);

  await page.getByRole('link', { name: 'Import weights' }).click();
  await choose(page, 'again.csv', file);
  await expect(counts(page)).toHaveText('0 weights are good, 4 there already.');
});

test('a workbook is read, large or small, and doubtful weights can be left out', async ({ page, house }) => {
  await open(page, house);
  await toImport(page);
  const text = (value: string) => ({ value, type: String });
  const days = Array.from({ length: 10 }, (_, i) => 11 - i);
  const puppies = ['A', 'B', 'C', 'D'];
  const weight = (p: number, d: number) => (p === 1 && d === 5 ? 4_100 : 350 + (11 - d) * 32 + p * 9);
  const data = [
    [text('puppy'), ...days.map((d) => ({ value: new Date(`${ago(d).iso}T00:00Z`), type: Date, format: 'dd/mm/yyyy' }))],
    ...puppies.map((name, p) => [text(name), ...days.map((d) => ({ value: weight(p, d), type: Number }))]),
  ];
  const filler = Array.from({ length: 4_000 }, (_, i) => [text(`remark ${i} ${'x'.repeat(40)}${i * 7}`), text(`${i}`)]);
  const catalogue = await writeXlsx([
    { sheet: 'weights', data },
    { sheet: 'remarks', data: filler },
  ]).toBuffer();
  await choose(page, 'litter.xlsx', catalogue);
  await expect(page.getByLabel('sheet')).toHaveValue('0');
  await page.getByLabel('dam', { exact: true }).fill('Teasel');
  await page.getByLabel('whelped on').fill(ago(12).iso);
  await expect(counts(page)).toHaveText('39 weights are good, 1 doubtful.');
  // What is doubtful is in only when she says so.
  await expect(page.getByRole('checkbox')).not.toBeChecked();
  await page.getByRole('button', { name: 'Import 39 weights' }).click();
  await expect(page.getByRole('heading', { level: 1, name: 'Growth' })).toBeVisible();
});

test('the whole house goes to a new computer as JSON, and only where nothing is written', async ({ page, house }) => {
  await open(page, house);
  await toImport(page);
  await page.getByLabel('or pasted').fill(`puppy\tdate\tgrams\nA\t${ago(2).iso}\t412\nB\t${ago(2).iso}\t398`);
  await page.getByLabel('dam', { exact: true }).fill('Bryony');
  await page.getByLabel('whelped on').fill(ago(6).iso);
  await page.getByRole('button', { name: 'Import 2 weights' }).click();
  await expect(page.getByRole('heading', { level: 1, name: 'Growth' })).toBeVisible();
  await page.getByRole('link', { name: 'Records', exact: true }).click();
  await page.getByRole('button', { name: 'Save: Everything, as JSON' }).click();
  const down = page.waitForEvent('download');
  await page.getByRole('button', { name: /everything\.json/ }).click();
  const json = readFileSync(await (await down).path());

  await page.getByRole('link', { name: 'Import weights' }).click();
  await choose(page, 'house.json', json);
  await page.getByRole('button', { name: 'Import everything' }).click();
  await expect(page.getByText('Something is written in this data file already')).toBeVisible();

  await page.goto('about:blank');
  await house.kill();
  for (const name of readdirSync(house.folder)) rmSync(join(house.folder, name), { recursive: true, force: true });
  await house.start();
  await open(page, house);
  await expect(page.getByText('Nothing is written here yet.')).toBeVisible();
  await toImport(page);
  await choose(page, 'house.json', json.toString().replace('"Bryony"', '7'));
  await page.getByRole('button', { name: 'Import everything' }).click();
  await expect(page.getByText('The place that does not fit: tables.dogs.0.name.')).toBeVisible();
  await page.getByRole('button', { name: 'Take another table' }).click();
  await choose(page, 'house.json', json);
  await page.getByRole('button', { name: 'Import everything' }).click();
  await expect(page.getByText('Imported: 1 litter, 2 weights.')).toBeVisible();
  await page.getByRole('link', { name: 'To the litters' }).click();
  await expect(page.getByRole('main').getByText('Bryony').first()).toBeVisible();
});
