/** The go-home plan: previewed as it is printed, saved for all puppies in one go, handed over and reprinted the same. */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { expect, openDemo, test } from './host.ts';

async function toHomes(page: import('@playwright/test').Page) {
  await page
    .getByRole('link', { name: /^Yarrow/ })
    .first()
    .click();
  await page.locator('#margin').getByRole('link', { name: 'Homes', exact: true }).click();
  await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
}

test('the plans of a whole litter are saved as tagged PDFs, three sheets each', async ({ page, house }) => {
  test.setTimeout(180_000);
  await openDemo(page, house);
  await toHomes(page);
  await page.getByRole('link', { name: 'Print all plans' }).click();
  await expect(page.locator('html')).toHaveAttribute('data-ready', 'true');
  await expect(page.locator('.sheet')).toHaveCount(24);
  await page.getByRole('button', { name: /Save as PDF/ }).click();
  await expect(page.getByRole('progressbar')).toBeVisible();
  const papers = join(house.folder, 'papers');
  const written = () => (existsSync(papers) ? readdirSync(papers).filter((f) => f.endsWith('.pdf')) : []);
  await expect.poll(() => written().length, { timeout: 120_000 }).toBe(8);
  for (const file of written()) {
    const task = getDocument({ data: new Uint8Array(readFileSync(join(papers, file))), useSystemFonts: false });
    const pdf = await task.promise;
    expect(pdf.numPages, file).toBe(3);
    const name = file.split(' ')[0] ?? '';
    const { info } = await pdf.getMetadata();
    expect((info as { Title?: string }).Title, file).toContain(name);
    expect((info as { Language?: string }).Language, file).toBe('en');
    expect((info as { Creator?: string }).Creator, file).toBe('Whelpside');
    const mark: unknown = await pdf.getMarkInfo();
    expect(mark instanceof Map ? mark.get('Marked') : mark, file).toBe(true);
    let words = '';
    let tree = '';
    for (const n of [1, 2, 3]) {
      const sheet = await pdf.getPage(n);
      words += (await sheet.getTextContent()).items.map((i) => ('str' in i ? i.str : '')).join(' ');
      tree += JSON.stringify(await sheet.getStructTree());
    }
    for (const role of ['"H1"', '"Table"', '"TH"', '"Caption"', '"LBody"', '"Figure"'])
      expect(tree, `${file} ${role}`).toContain(role);
    for (const said of ['guidance', 'Never', 'The vet, now', 'The vet, today', 'FDA', 'months'])
      expect(words, `${file} says ${said}`).toContain(said);
    const weekly = /\d{2,3}/g;
    expect(words.match(weekly)?.length ?? 0, file).toBeGreaterThan(100);
    await task.destroy();
  }
});

test('a plan is handed over, and reprinted exactly as it was after the rules and weights have changed', async ({
  page,
  house,
}) => {
  await openDemo(page, house);
  await toHomes(page);
  await page
    .locator('main')
    .getByRole('link', { name: /preview/i })
    .first()
    .click();
  await expect(page.locator('html')).toHaveAttribute('data-ready', 'true');
  const printed = await page.locator('.sheet').allInnerTexts();
  expect(printed).toHaveLength(3);
  await page.getByRole('button', { name: 'Hand over' }).click();
  await page.getByRole('checkbox').uncheck();
  await page.getByRole('button', { name: 'File this copy' }).click();
  await expect(page.getByText('Kept as handed over today.')).toBeVisible();

  await page.goto(`${new URL(page.url()).origin}/#/rules`);
  await page.getByLabel(/share of body weight a day, from weaning/i).fill('6');
  await page.getByLabel(/share of body weight a day, from weaning/i).press('Enter');
  await page.goto(`${new URL(page.url()).origin}/#/litters`);
  await toHomes(page);
  await page
    .locator('main')
    .getByRole('link', { name: /preview/i })
    .first()
    .click();
  await expect(page.locator('html')).toHaveAttribute('data-ready', 'true');
  expect(await page.locator('.sheet').allInnerTexts()).not.toEqual(printed);
  await page.goBack();
  await page.locator('main a[href*="/print/handed-over/"]').first().click();
  await expect(page.locator('html')).toHaveAttribute('data-ready', 'true');
  expect(await page.locator('.sheet').allInnerTexts()).toEqual(printed);
});
