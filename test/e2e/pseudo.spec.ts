/**
 * The window in a language that nobody speaks (test/e2e/pseudo): what is said without a catalogue stands there in plain English, and what is
 * too narrow for a sentence two fifths longer scrolls sideways or is cut off.
 */
import { spawnSync } from 'node:child_process';
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Page } from '@playwright/test';
import { dateOf } from '../../core/calendar/clock.ts';
import { call, machineClock, packFields, starterFields } from '../contract/world.ts';
import { dispatchOf } from './dispatch.ts';
import { expect, openDemo, test } from './host.ts';
import { places, SIZES, settled } from './places.ts';
import { dataTexts, unspoken } from './pseudo/texts.ts';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
const SCREENS = join(ROOT, 'test-results/screens/');
test.use({ hostFile: join(ROOT, 'test-results/pseudo/host/host.mjs') });

test.beforeAll(() => {
  const vite = join(ROOT, 'node_modules/vite/bin/vite.js');
  const built = spawnSync(process.execPath, [vite, 'build', '--app', '--config', join(ROOT, 'test/e2e/pseudo/vite.config.ts')], {
    cwd: ROOT,
    env: { ...process.env, NODE_ENV: 'production' },
    encoding: 'utf8',
  });
  expect(built.status, built.stderr).toBe(0);
});

/** Something of every kind, so that the foot and Records have it to say. Whoever is named is named as an invented dog. */
async function doThings(page: Page): Promise<void> {
  const dispatch = dispatchOf(page);
  const [first] = (await call(dispatch, 'litter.all', {})).litters;
  const puppy = first?.puppies[0];
  if (first === undefined || puppy === undefined) throw new Error('no invented litter');
  const { litter } = first;
  const clock = machineClock();
  const at = { day: dateOf(clock.local), at: clock.local, instant: clock.instant };
  const meal = { kind: 'meal', meal: 'midday', ate: 'left' } as const;
  await call(dispatch, 'weaning.note', { litterId: litter.id, puppyId: null, ...at, note: meal });
  await call(dispatch, 'litter.setState', { puppyId: puppy.id, state: 'kept', on: at.day });
  await call(dispatch, 'litter.setState', { puppyId: puppy.id, state: puppy.state, on: puppy.stateOn });
  const { packs } = await call(dispatch, 'freezer.add', { count: 3, pack: { ...packFields(clock), place: litter.dam } });
  const packIds = packs.slice(1).map((pack) => pack.id);
  await call(dispatch, 'freezer.takeOut', { packIds, way: 'given', on: at.day });
  await call(dispatch, 'freezer.addStarter', { fields: { ...starterFields(clock), who: litter.dam } });
  await call(dispatch, 'people.setHouse', { change: { vetName: litter.dam } });
  await call(dispatch, 'dogs.addGrown', { dog: { name: litter.dam, kg: 24 } });
  await call(dispatch, 'records.undo', {});
  await page.reload();
}

/** Texts and names that can be seen or heard, each once. */
function texts(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const found = new Set<string>();
    const walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT | NodeFilter.SHOW_ELEMENT);
    for (let node = walk.nextNode(); node !== null; node = walk.nextNode()) {
      if (node instanceof Element) {
        for (const name of ['aria-label', 'title', 'placeholder', 'alt']) found.add(node.getAttribute(name) ?? '');
      } else if (!['STYLE', 'SCRIPT', 'KBD'].includes(node.parentElement?.tagName ?? '')) {
        // Sentences are drawn in pieces: the whole of a line is one text.
        found.add(
          node.parentElement?.closest('p, li, td, th, h1, h2, h3, a, label, button, option, dt, dd, text, span, b')
            ?.textContent ?? '',
        );
      }
    }
    return [...found].filter((text) => text.trim() !== '');
  });
}

/** Elements whose own words are cut off or run out of their box. */
function cutOff(page: Page): Promise<string[]> {
  return page.evaluate(() =>
    [...document.querySelectorAll<HTMLElement>('main button, main a, main th, main td, main h1, main h2, #margin a, .foot p')]
      .filter(
        (e) => e.offsetParent !== null && e.closest('.unseen') === null && e.scrollWidth > e.clientWidth + 1 && e.clientWidth > 0,
      )
      .filter((e) => ['hidden', 'clip'].includes(getComputedStyle(e).overflowX))
      .map((e) => `${e.tagName} ${e.textContent?.slice(0, 60)}`),
  );
}

test('every sentence is in a catalogue, and there is room for a longer language', async ({ page, house }) => {
  test.setTimeout(240_000);
  const data = await dataTexts();
  await openDemo(page, house);
  await doThings(page);
  mkdirSync(SCREENS, { recursive: true });
  const all = await places(page);
  const narrow: string[] = [];
  for (const size of SIZES) {
    await page.setViewportSize(size);
    for (const place of all) {
      await page.evaluate((hash) => {
        window.location.hash = hash;
      }, place.hash);
      await settled(page);
      const bare = (await texts(page))
        .map((text) => unspoken(text, [...data, house.folder, 'whelpside.sqlite', '/papers']))
        .filter((left) => /\p{L}{3}/u.test(left));
      expect.soft([...new Set(bare)], `${place.name} says without a catalogue`).toEqual([]);
      const sideways = await page.evaluate(() => {
        const main = document.querySelector('main');
        return Math.max(
          document.documentElement.scrollWidth - window.innerWidth,
          main === null ? 0 : main.scrollWidth - main.clientWidth,
        );
      });
      if (sideways > 0) narrow.push(`${place.name} at ${size.name}`);
      expect.soft(await cutOff(page), `${place.name} at ${size.name} cuts off`).toEqual([]);
      await page.screenshot({ path: `${SCREENS}pseudo-${size.name}-${place.name}.png` });
    }
  }
  expect(narrow, 'scrolls sideways').toEqual([]);
});
