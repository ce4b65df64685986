/** Two windows on one house: what one changes while the other's change is on its way is not lost, and one act is one undo. */
import type { Page } from '@playwright/test';
import { expect, open, test, thisMorning } from './host.ts';

/** Holds back what the window sends to change something, until it is let go. */
async function holdBack(page: Page, operation: string): Promise<{ sent: Promise<void>; letGo(): void }> {
  const { promise: free, resolve: letGo } = Promise.withResolvers<void>();
  const { promise: sent, resolve: wasSent } = Promise.withResolvers<void>();
  await page.route(`**/call/${operation}`, async (route) => {
    wasSent();
    await free;
    await route.continue();
  });
  return { sent, letGo };
}

async function beginWithTwo(page: Page): Promise<void> {
  await page.goto(`${page.url().split('#')[0]}#/begin`);
  await page.getByLabel('dam', { exact: true }).fill('Hazel');
  await page.getByLabel('puppies so far').fill('2');
  await page.getByLabel('A, birth weight').fill('412');
  await page.getByLabel('B, birth weight').fill('398');
  await page.getByRole('button', { name: 'Begin this litter' }).click();
  await expect(page.getByRole('heading', { level: 1, name: 'Puppies' })).toBeVisible();
  await expect(page.locator('tr[id^="puppy-"]')).toHaveCount(2);
}

test('two windows change different things of one puppy at once, and both stay', async ({ page, house, context }) => {
  await open(page, house);
  await beginWithTwo(page);
  const other = await context.newPage();
  await other.clock.setFixedTime(thisMorning());
  await other.goto(page.url());
  const [here, there] = [page, other].map((p) => p.locator('tr[id^="puppy-"]').first());
  if (here === undefined || there === undefined) throw new Error('no rows');
  await expect(there).toBeVisible();

  const held = await holdBack(page, 'litter.changePuppy');
  await here.getByLabel('A, call name').fill('Vetch');
  await here.getByLabel('A, call name').press('Enter');
  await held.sent;
  const markings = there.getByLabel(/, markings$/);
  await markings.fill('white toes');
  await markings.press('Enter');
  await expect(here.getByLabel(/, markings$/)).toHaveValue('white toes');
  held.letGo();

  await expect(there.getByLabel(/, call name$/)).toHaveValue('Vetch');
  await expect(there.getByLabel(/, markings$/)).toHaveValue('white toes');
  await expect(here.getByLabel(/, call name$/)).toHaveValue('Vetch');
  await expect(here.getByLabel(/, markings$/)).toHaveValue('white toes');
});

test('a litter begun with its puppies and their weights is taken back in one step, and comes back in one', async ({
  page,
  house,
}) => {
  await open(page, house);
  await beginWithTwo(page);
  await page.locator('.foot').getByRole('button', { name: 'Undo' }).click();
  await page.goto(`${page.url().split('#')[0]}#/litters`);
  await expect(page.getByText('Nothing is written here yet.')).toBeVisible();
  await page.locator('.foot').getByRole('button', { name: 'Redo' }).click();
  await page.getByRole('link', { name: /Hazel/ }).first().click();
  await page.goto(`${page.url().replace(/\/[a-z-]+$/, '')}/puppies`);
  await expect(page.getByLabel('A, birth weight')).toHaveValue('412');
  await expect(page.getByLabel('B, birth weight')).toHaveValue('398');
});
