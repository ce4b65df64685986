/** The scale as she uses it: puppy on, puppy off, eyes on the puppy. A simulated one says the same bytes as a real one. */
import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from '@playwright/test';
import { calm, restless, traceOf } from '../fixtures/scale-traces.ts';
import { expect, type House, open, openDemo, test } from './host.ts';
import { begin, play, simulateScale } from './simulated-scale.ts';

const HAND = 'input.weight-field';

async function newLitter(page: Page, house: House, puppies: number): Promise<void> {
  await open(page, house);
  await page.getByRole('link', { name: 'Begin a litter' }).click();
  await page.getByLabel('dam', { exact: true }).fill('Marjoram');
  await page.getByLabel('puppies so far').fill(String(puppies));
  await page.getByLabel('puppies so far').press('Enter');
  await expect(page.getByRole('heading', { level: 1, name: 'Puppies' })).toBeVisible();
  await page.getByRole('link', { name: 'Weigh-in', exact: true }).click();
  await expect(page.locator(HAND)).toBeFocused();
}

/** The demo's older litter in the evening's weigh-in, which by the page's clock is now. */
async function evening(page: Page, house: House): Promise<void> {
  await openDemo(page, house);
  await page
    .getByRole('link', { name: /^Yarrow/ })
    .first()
    .click();
  const at = new Date();
  at.setHours(19, 10, 0, 0);
  await page.clock.setFixedTime(at);
  await page.getByRole('link', { name: 'Weigh-in', exact: true }).click();
  await expect(page.locator(HAND)).toBeFocused();
}

async function connect(page: Page, way = 'USB scale'): Promise<void> {
  await page.getByRole('button', { name: 'Connect the scale' }).click();
  await page.getByRole('button', { name: way }).click();
}

const row = (page: Page) => page.locator('tr.in-hand');
const beforeOf = async (page: Page) => Number((await row(page).locator('td').nth(1).innerText()).replace(/\D/g, ''));
const nameOf = async (page: Page) => (await row(page).locator('th').innerText()).split('\n')[0] ?? '';

test('three newborns, one after another, without a key; the tick when it is wanted; undo', async ({ page, house }) => {
  test.setTimeout(90_000);
  await simulateScale(page);
  await newLitter(page, house, 3);
  await page.getByRole('link', { name: 'Your house', exact: true }).click();
  await page.getByLabel('sound of the scale').selectOption('tick');
  await page.getByLabel('sound of the scale').press('Enter');
  await page.getByRole('link', { name: 'Weigh-in', exact: true }).click();
  await connect(page);
  await expect(page.getByText('Bench scale connected.')).toBeVisible();
  await expect(page.locator(HAND)).toBeFocused();
  await expect(row(page)).toContainText('On the scale: nothing yet.');

  await begin(page, traceOf([calm(412)]));
  await expect(row(page)).toContainText('Weighing …');
  await expect(page.locator('.scale-trace polyline')).toBeVisible();
  await expect(page.locator('.weighed-count')).toContainText('1 of 3 weighed');
  await expect(row(page)).toContainText('Take A off the scale.');
  await expect(page.locator('.foot .undo')).toContainText(/A\s4(11|12|13)\sg/);

  await page.waitForTimeout(3000);
  await play(page, traceOf([calm(398), calm(405)]));
  await expect(page.getByText('All three weighed.')).toBeVisible();
  expect(await page.evaluate(() => window.simulatedScale.ticks)).toBe(3);

  // It is written that it came from the scale.
  await page.keyboard.press('ControlOrMeta+z');
  await expect(page.locator('.weighed-count')).toContainText('2 of 3 weighed');
  await page.getByRole('link', { name: 'Growth', exact: true }).click();
  await page.locator('main').getByRole('link', { name: 'A', exact: true }).last().click();
  await page.locator('table.record .why').first().focus();
  await expect(page.locator('.foot')).toContainText('from the scale');
});

test('a restless puppy is offered with its spread; Enter takes it; a typed number goes before the scale', async ({
  page,
  house,
}) => {
  test.setTimeout(90_000);
  await simulateScale(page);
  await evening(page, house);
  await connect(page);
  const first = await nameOf(page);
  const grams = (await beforeOf(page)) + 40;
  await play(page, traceOf([restless(grams, 7000)]));
  await expect(row(page)).toContainText(/Moving: about [\d\s\u00a0]+g, give or take \d+/);
  expect(await nameOf(page), 'nothing is written without an answer').toBe(first);
  await page.keyboard.press('Enter');
  await expect(row(page).locator('th')).not.toContainText(first);
  await expect(page.locator('.weighed-count')).toContainText('1 of 8 weighed');
  expect(await page.evaluate(() => window.simulatedScale.ticks), 'off until chosen').toBe(0);

  const typed = String((await beforeOf(page)) + 30);
  await page.keyboard.type(typed);
  await play(page, traceOf([calm(Number(typed) + 500, 5000)]));
  await expect(page.locator(HAND)).toHaveValue(typed);
  // The weight that lay there while she typed is not the next puppy's.
  const typedFor = await nameOf(page);
  await begin(page, traceOf([calm(Number(typed) + 10, 9000)]));
  await page.waitForTimeout(5500);
  await page.keyboard.press('Enter');
  await expect(row(page).locator('th')).not.toContainText(typedFor);
  await expect(row(page)).toContainText(`Take ${typedFor} off the scale.`);
  await expect(page.locator('.weighed-count')).toContainText('2 of 8 weighed');
  await page.waitForTimeout(6000);
  await expect(page.locator('.weighed-count')).toContainText('2 of 8 weighed');
});

test('what lay on the scale before she came to weigh is nobody’s weight', async ({ page, house }) => {
  test.setTimeout(90_000);
  await simulateScale(page);
  await newLitter(page, house, 2);
  await connect(page);
  await page.getByRole('link', { name: 'Growth', exact: true }).click();
  await play(page, traceOf([calm(1200, 5000)]));
  await page.getByRole('link', { name: 'Weigh-in', exact: true }).click();
  await expect(row(page)).toContainText('On the scale: nothing yet.');
  await page.waitForTimeout(1500);
  await expect(page.locator('.weighed-count')).toContainText('0 of 2 weighed');
});

test('another puppy than the one in hand is asked about, and Space gives it its weight', async ({ page, house }) => {
  test.setTimeout(90_000);
  await simulateScale(page);
  await evening(page, house);
  // Nettle is the smallest by far: nobody else weighs as little.
  await page.getByRole('button', { name: 'Take Nettle in hand' }).click();
  const nettle = await beforeOf(page);
  await page.keyboard.press('ArrowDown');
  const inHand = await nameOf(page);
  await connect(page);
  await play(page, traceOf([calm(nettle + 30, 5000)]));
  await expect(row(page)).toContainText('More like Nettle');
  await expect(page.locator('.weighed-count')).toContainText('0 of 8 weighed');
  await page.keyboard.press(' ');
  await expect(page.locator('.weighed-count')).toContainText('1 of 8 weighed');
  await expect(page.locator('.foot .undo')).toContainText('Nettle');
  await expect(row(page).locator('th')).not.toContainText('Nettle');
  expect(inHand).not.toBe('Nettle');
});

test('a doubtful weight asks as a typed one does, and the next load never answers for it', async ({ page, house }) => {
  test.setTimeout(90_000);
  await simulateScale(page);
  await evening(page, house);
  await connect(page);
  const name = await nameOf(page);
  const before = await beforeOf(page);
  await play(page, traceOf([calm(Math.round(before * 1.9), 5000)]));
  await expect(row(page).locator('.fact')).toBeVisible();
  await expect(row(page)).toContainText('Weigh again, or is it another puppy?');
  expect(await nameOf(page)).toBe(name);
  // Weighed again: the number stands in the field and waits for Enter.
  await play(page, traceOf([calm(before + 45, 5000)]));
  await expect(page.locator(HAND)).toHaveValue(/\d/);
  await expect(row(page)).toContainText('From the scale. Enter writes it.');
  expect(await nameOf(page)).toBe(name);
  await page.keyboard.press('Enter');
  await expect(row(page).locator('th')).not.toContainText(name);
  await expect(page.locator('.weighed-count')).toContainText('1 of 8 weighed');
});

test('unplugged in the middle, and found again without asking', async ({ page, house }) => {
  test.setTimeout(90_000);
  await simulateScale(page, { granted: true });
  await newLitter(page, house, 2);
  await connect(page);
  await expect(page.getByText('Bench scale connected.')).toBeVisible();
  await page.evaluate(() => window.simulatedScale.unplug());
  await expect(page.getByText('The scale is gone. Type the weights; what is written is kept.')).toBeVisible();
  await page.locator(HAND).focus();
  await page.keyboard.type('412');
  await page.keyboard.press('Enter');
  await expect(page.locator('.weighed-count')).toContainText('1 of 2 weighed');
  await page.reload();
  await expect(page.getByText('Bench scale connected.')).toBeVisible();
  await page.getByRole('button', { name: 'disconnect' }).click();
  await expect(page.getByRole('button', { name: 'Connect the scale' })).toBeVisible();
  expect(await page.evaluate(() => window.simulatedScale.opened())).toBe(false);
});

test('a serial scale sends lines; without a unit she is asked; a scale that types needs nothing', async ({ page, house }) => {
  test.setTimeout(90_000);
  await simulateScale(page);
  await newLitter(page, house, 3);
  await connect(page, 'Serial scale');
  await expect(page.getByText('Serial scale connected.').or(page.getByText('0403:6001 connected.'))).toBeVisible();
  const say = (line: string) => page.evaluate((text) => window.simulatedScale.send(text), line);
  await say('ST,GS,+0412\r\n');
  await page.getByLabel('Its numbers come without a unit. They are in').selectOption('g');
  await page.locator(HAND).focus();
  // It goes on sending: what comes before the unit is written down counts for nothing.
  const sent = async () => {
    await say('ST,GS,+0412\r\n');
    return page.locator('.weighed-count').innerText();
  };
  await expect.poll(sent, { intervals: [100] }).toContain('1 of 3 weighed');
  for (let i = 0; i < 8; i += 1) {
    await say('ST,GS,+0000\r\n');
    await page.waitForTimeout(100);
  }
  await say('US,GS,+0.300kg\r\nST,GS,+0.398kg\r\n');
  await expect(page.locator('.weighed-count')).toContainText('2 of 3 weighed');

  await page.keyboard.type('US,GS,+0405 g');
  await page.keyboard.press('Enter');
  await expect(row(page)).toContainText('this was still moving');
  await page.locator(HAND).fill('');
  await page.keyboard.type('ST,GS,+0405 g');
  await page.keyboard.press('Enter');
  await expect(page.getByText('All three weighed.')).toBeVisible();
});

test('the row with the scale reads well in both themes and on a narrow page', async ({ page, house }) => {
  test.setTimeout(120_000);
  await simulateScale(page);
  await evening(page, house);
  await page.getByRole('button', { name: 'Connect the scale' }).click();
  for (const theme of ['Day paper', 'Night lamp']) {
    const button = page.getByRole('button', { name: theme });
    if ((await button.count()) > 0) await button.click();
    for (const size of [
      { width: 1280, height: 800 },
      { width: 640, height: 400 },
      { width: 390, height: 844 },
    ]) {
      await page.setViewportSize(size);
      const found = await new AxeBuilder({ page }).withTags(['wcag2a', 'wcag2aa', 'wcag21aa', 'wcag22aa']).analyze();
      expect.soft(found.violations.map((v) => `${v.id}: ${v.nodes.map((n) => n.target.join(' ')).join(', ')}`)).toEqual([]);
      expect.soft(await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth)).toBeLessThanOrEqual(0);
    }
  }
});
