/** The file, its copies, a damaged file and what is written about people: as she would do it. */
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from '@playwright/test';
import { ended, expect, HOST, type House, open, openDemo, startHost, test, thisMorning } from './host.ts';

const SCREENS = fileURLToPath(new URL('../../test-results/screens/', import.meta.url));

async function records(page: Page): Promise<void> {
  await page.getByRole('link', { name: 'Records', exact: true }).click();
  await expect(page.getByRole('heading', { level: 1, name: 'Records' })).toBeVisible();
}

/** Ends the house in order, does something to its file, and opens the window on what is there then. */
async function withFile(page: Page, house: House, quiet: string[], change: (bytes: Buffer) => Buffer): Promise<void> {
  await house.stop();
  const file = join(house.folder, 'whelpside.sqlite');
  writeFileSync(file, change(readFileSync(file)));
  await page.goto(await house.start());
  quiet.length = 0; // the browser rightly complains of the lost connection
}

test('a copy to a stick, a look at it, back to a copy and forward again', async ({ page, house }) => {
  const stick = mkdtempSync(join(tmpdir(), 'whelpside-stick-'));
  await openDemo(page, house);
  await records(page);
  await page.getByRole('button', { name: 'Back up now' }).click();
  await expect(page.getByText(/^Copied and checked: whelpside-.*by-hand\.sqlite/)).toBeVisible();
  await expect(page.locator('.records-backups')).toContainText('opened and checked');

  const folder = page.getByLabel('folder', { exact: true });
  await folder.fill('stick');
  await page.getByRole('button', { name: 'Copy there now' }).click();
  await expect(page.getByText('Write the whole path of the folder')).toBeVisible();
  await folder.fill(join(stick, 'none'));
  await page.getByRole('button', { name: 'Copy there now' }).click();
  await expect(page.getByText('That is not there.')).toBeVisible();
  await folder.fill(stick);
  await page.getByRole('button', { name: 'Copy there now' }).click();
  await expect(page.locator('.keeping-do').getByText(/^Copied and checked/)).toBeVisible();
  expect(readdirSync(stick)).toHaveLength(1);
  await page.getByRole('button', { name: 'Look for backups there' }).click();
  await expect(page.getByText('1 backup lies there:')).toBeVisible();

  // Something is done after the copy, then the copy is gone back to.
  await page.getByRole('link', { name: 'Litters', exact: true }).click();
  await page.getByRole('link', { name: 'Begin a litter' }).first().click();
  await page.getByLabel('dam', { exact: true }).fill('Tansy');
  await page.getByLabel('puppies so far').fill('1');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { level: 1, name: 'Puppies' })).toBeVisible();
  await records(page);
  await page.getByLabel('folder', { exact: true }).fill(stick);
  await page.getByRole('button', { name: 'Look for backups there' }).click();
  const found = page.locator('.keeping-found');
  await found.getByRole('button', { name: /^Go back to it/ }).click();
  await expect(found.getByText('What was written after it is set aside')).toBeVisible();
  await found.getByRole('button', { name: 'Leave it' }).click();
  await found.getByRole('button', { name: /^Go back to it/ }).click();
  await found.getByRole('button', { name: 'Go back now' }).click();
  await expect(page.locator('.foot')).toContainText('You are back.');
  await page.getByRole('link', { name: 'Litters', exact: true }).click();
  await expect(page.locator('main').getByText('Yarrow').first()).toBeVisible();
  await expect(page.locator('main').getByText('Tansy')).toHaveCount(0);

  await records(page);
  const before = page.locator('.records-backups tr', { hasText: 'before going back' });
  await before.getByRole('button', { name: /^Go back to it/ }).click();
  await before.getByRole('button', { name: 'Go back now' }).click();
  await expect(page.locator('.foot')).toContainText('You are back.');
  await page.getByRole('link', { name: 'Litters', exact: true }).click();
  await expect(page.locator('main').getByText('Tansy').first()).toBeVisible();
  rmSync(stick, { recursive: true });
});

test('a damaged file: told before anything else, gone back to the newest copy, the damaged one kept', async ({
  page,
  house,
  quiet,
}) => {
  await openDemo(page, house);
  await records(page);
  await page.getByRole('button', { name: 'Back up now' }).click();
  await expect(page.getByText(/^Copied and checked/)).toBeVisible();
  let damaged: Buffer = Buffer.alloc(0);
  await withFile(page, house, quiet, (bytes) => {
    damaged = Buffer.from(bytes.fill(0, 0, 4096));
    return damaged;
  });
  await expect(page.getByRole('heading', { level: 1, name: 'The data file is damaged.' })).toBeVisible();
  await expect(page.getByText(/3 litters, \d+ puppies, \d+ weights/).first()).toBeVisible();
  expect(readFileSync(join(house.folder, 'whelpside.sqlite')).equals(damaged)).toBe(true);

  await page.getByRole('button', { name: 'Go back to this backup' }).click();
  await expect(page.locator('.foot')).toContainText('You are back.');
  await expect(page.locator('main').getByText('Yarrow').first()).toBeVisible();
  const [kept = ''] = readdirSync(house.folder).filter((name) => name.startsWith('whelpside-set-aside-'));
  expect(readFileSync(join(house.folder, kept)).equals(damaged)).toBe(true);
  await expect(page.locator('.foot')).toContainText(kept);
});

test('a damaged file and no copy: what can be read is taken', async ({ page, house, quiet }) => {
  await openDemo(page, house);
  await withFile(page, house, quiet, (bytes) => {
    // The program makes a copy as it closes: here it is lost with the rest.
    rmSync(join(house.folder, 'backups'), { recursive: true });
    return bytes.fill(0, 0, 100);
  });
  await expect(page.getByRole('heading', { level: 1, name: 'The data file is damaged.' })).toBeVisible();
  await expect(page.getByText('There is no good backup beside the file.')).toBeVisible();
  await page.getByRole('button', { name: 'Take what can be read' }).click();
  await expect(page.getByText('These are invented litters')).toBeVisible();
  await page
    .getByRole('link', { name: /^Yarrow/ })
    .first()
    .click();
  await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
});

test('a file that something else wrote to: told, and taken as it is when she says so', async ({ page, house, quiet }) => {
  await openDemo(page, house);
  await withFile(page, house, quiet, (bytes) => {
    // One letter of a name, as a bad spot on a disk may change it.
    bytes.write('Varrow', bytes.indexOf('Yarrow'), 'latin1');
    return bytes;
  });
  await expect(page.getByRole('heading', { level: 1, name: 'The data file is not as it was left.' })).toBeVisible();
  await page.getByRole('button', { name: 'Go on with it as it is' }).click();
  await expect(page.getByText('These are invented litters')).toBeVisible();
});

test('the page of a damaged file reads well, in both themes and at every width', async ({ page, house, quiet }) => {
  await openDemo(page, house);
  await records(page);
  await page.getByRole('button', { name: 'Back up now' }).click();
  await expect(page.getByText(/^Copied and checked/)).toBeVisible();
  await page.getByRole('button', { name: 'Back up now' }).click();
  await expect(page.locator('.records-backups tbody tr')).toHaveCount(2);
  await withFile(page, house, quiet, (bytes) => bytes.fill(0, 0, 4096));
  mkdirSync(SCREENS, { recursive: true });
  for (const [theme, hour] of [
    ['day', 10],
    ['night', 23],
  ] as const) {
    const time = thisMorning();
    time.setHours(hour);
    await page.clock.setFixedTime(time);
    await page.reload();
    await expect(page.getByRole('heading', { level: 1, name: 'The data file is damaged.' })).toBeVisible();
    expect(await page.evaluate(() => document.documentElement.dataset['theme'])).toBe(theme);
    for (const [width, height] of [
      [1280, 800],
      [640, 400],
      [390, 844],
    ] as const) {
      await page.setViewportSize({ width, height });
      const over = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
      expect(over, `${theme} ${width}`).toBeLessThanOrEqual(0);
      const found = await new AxeBuilder({ page }).withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa']).analyze();
      expect(found.violations.map((v) => `${v.id}: ${v.nodes.map((n) => n.target).join(' ')}`)).toEqual([]);
      await page.screenshot({ path: join(SCREENS, `rescue-${theme}-${width}.png`), fullPage: true });
    }
  }
  // By keyboard alone, from the top of the page.
  await page.getByRole('button', { name: 'Go back to this backup' }).focus();
  await page.keyboard.press('Enter');
  await expect(page.locator('.foot')).toContainText('You are back.');
});

test('a house that is open in another window, and another folder, by keyboard', async ({ page, house, quiet }) => {
  await openDemo(page, house);
  const other = mkdtempSync(join(tmpdir(), 'whelpside-other-'));
  const second = await startHost(HOST, house.folder);
  try {
    quiet.length = 0;
    await page.goto(second.address);
    await expect(page.getByRole('heading', { level: 1, name: 'Whelpside is already open on this folder.' })).toBeVisible();
    const found = await new AxeBuilder({ page }).withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa']).analyze();
    expect(found.violations.map((v) => `${v.id}: ${v.nodes.map((n) => n.target).join(' ')}`)).toEqual([]);
    mkdirSync(SCREENS, { recursive: true });
    for (const [width, height] of [
      [1280, 800],
      [640, 400],
    ] as const) {
      await page.setViewportSize({ width, height });
      const over = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
      expect(over).toBeLessThanOrEqual(0);
      await page.screenshot({ path: join(SCREENS, `barred-${width}.png`), fullPage: true });
    }
    await page.keyboard.press('Tab');
    await expect(page.getByRole('button', { name: 'Try again' })).toBeFocused();
    await page.keyboard.press('Enter');
    await expect(page.getByText('It is still so.')).toBeVisible();
    await expect(page.getByRole('button', { name: 'Try again' })).toBeFocused();
    await page.keyboard.press('Tab');
    await page.keyboard.type('not a folder');
    await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
    await expect(page.getByText(/^Write the whole path of the folder/)).toBeVisible();
    await page.keyboard.press('Shift+Tab');
    await page.keyboard.press('Control+a');
    await page.keyboard.type(other);
    await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
    await expect(page.locator('.foot')).toContainText('You go on in another folder.');
    await expect(page.getByRole('heading', { level: 1 })).toHaveText('Litters');
  } finally {
    await ended(second.child, 'SIGTERM');
    rmSync(other, { recursive: true, force: true });
  }
});

test('what is written about people is erased when she asks twice', async ({ page, house }) => {
  await open(page, house);
  await page.getByRole('link', { name: 'Your house' }).first().click();
  const name = page.getByLabel('your name');
  await name.fill('Ottilie Quarrington');
  await name.press('Enter');
  await records(page);
  await page.getByRole('button', { name: 'Erase Ottilie Quarrington' }).click();
  await expect(page.getByRole('alertdialog')).toBeVisible();
  await page.getByRole('button', { name: 'Keep' }).click();
  await page.getByRole('button', { name: 'Erase Ottilie Quarrington' }).click();
  await page.getByRole('button', { name: 'Erase', exact: true }).click();
  await expect(page.getByText('Erased. Older backups still hold it')).toBeVisible();
  const files = readdirSync(house.folder).filter((file) => /^whelpside\.sqlite(-wal)?$/.test(file));
  for (const file of files) expect(readFileSync(join(house.folder, file), 'latin1')).not.toContain('Quarrington');
  if (process.platform !== 'win32')
    for (const file of files) expect(statSync(join(house.folder, file)).mode & 0o077, file).toBe(0);
});
