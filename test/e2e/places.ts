/** Every page of the window, and the sizes it is looked at in: a laptop, the laptop at 200 %, a telephone. */
import type { Page } from '@playwright/test';
import { expect } from './host.ts';

export const SIZES = [
  { name: 'full', width: 1280, height: 800 },
  { name: 'zoomed', width: 640, height: 400 },
  { name: 'telephone', width: 390, height: 844 },
] as const;

export async function places(page: Page): Promise<{ name: string; hash: string }[]> {
  const hashes = await page.locator('#margin a').evaluateAll((links) => links.map((a) => a.getAttribute('href') ?? ''));
  const litter = /#\/litter\/([^/]+)/.exec(hashes.find((h) => h.includes('/litter/')) ?? '')?.[1];
  await page.goto(`${new URL(page.url()).origin}/#/litter/${litter}/growth`);
  const puppy = await page.locator('main a[href*="/puppy/"]').first().getAttribute('href');
  const puppyId = /#\/puppy\/([^/]+)/.exec(puppy ?? '')?.[1];
  const inLitter = [...new Set(hashes.filter((h) => h.includes(`/litter/${litter}/`)).map((h) => h.replace(/\?.*/, '')))];
  return [
    { name: 'litters', hash: '#/litters' },
    { name: 'begin', hash: '#/begin' },
    ...inLitter.map((hash) => ({ name: `litter-${hash.split('/').at(-1)}`, hash })),
    ...['notes', 'weight', 'gain', 'standing'].map((view) => ({ name: `puppy-${view}`, hash: `#/puppy/${puppyId}/${view}` })),
    ...hashes.filter((h) => /^#\/[a-z-]+$/.test(h) && h !== '#/litters').map((hash) => ({ name: hash.slice(2), hash })),
    { name: 'food-new', hash: '#/foods/new' },
    { name: 'food-shipped', hash: '#/foods/food-generic-mix' },
    { name: 'week-house', hash: '#/week' },
    { name: 'week-litter', hash: `#/week/${litter}` },
    { name: 'nowhere', hash: '#/no-such-page' },
  ];
}

export async function settled(page: Page): Promise<void> {
  await expect(page.getByRole('heading', { level: 1 })).toHaveCount(1);
  await page.evaluate(() =>
    document.fonts.ready.then(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)))),
  );
}
