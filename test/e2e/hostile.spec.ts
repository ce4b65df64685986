/** Hostile text in every free field: on every page and on paper it is text, and nothing of it runs. */
import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from '@playwright/test';
import { call, dayBefore, keptPlan, makeWorld } from '../contract/world.ts';
import { HOSTILE_TEXTS } from '../faults/inputs.ts';
import { dispatchOf } from './dispatch.ts';
import { expect, open, test } from './host.ts';

/** What would be there if any of it had been taken for markup. */
async function nothingRan(page: Page): Promise<void> {
  const found = await page.evaluate(() => ({
    ran: Reflect.get(window, 'pwned') !== undefined,
    images: document.querySelectorAll('img[src="x"]').length,
    scripts: [...document.scripts].filter((script) => script.textContent?.includes('pwned')).length,
  }));
  expect(found).toEqual({ ran: false, images: 0, scripts: 0 });
}

async function everyPage(page: Page, litterId: string, puppyId: string): Promise<string[]> {
  const links = await page.locator('#margin a').evaluateAll((all) => all.map((a) => a.getAttribute('href') ?? ''));
  const pages = new Set(links.filter((link) => !link.includes('/litter/')));
  for (const name of ['today', 'weigh-in', 'growth', 'puppies', 'homes', 'weaning', 'care'])
    pages.add(`#/litter/${litterId}/${name}`);
  for (const view of ['notes', 'weight', 'gain', 'standing']) pages.add(`#/puppy/${puppyId}/${view}`);
  return [...pages, `#/print/puppy/${puppyId}`];
}

test('markup, formulas, directions and marks of no width are shown and printed as the text they are', async ({ page, house }) => {
  test.setTimeout(300_000);
  page.on('dialog', (dialog) => {
    throw new Error(`a dialog: ${dialog.message()}`);
  });
  await open(page, house);
  const dispatch = dispatchOf(page);
  const { clock, puppies, litter, planId } = await makeWorld(dispatch);
  const [puppy] = puppies;
  if (puppy === undefined) throw new Error('no puppy');
  const { id: _id, demo: _demo, ...litterNow } = litter;
  const { collar, sex, birthOrder, bornAt, bornInstant } = puppy;
  const facts = await call(dispatch, 'people.house', {});
  for (const text of HOSTILE_TEXTS.filter((t) => t.length <= 120 && t.trim() !== '' && t.isWellFormed())) {
    const fields = { ...litterNow, name: text, dam: text, sire: text, breed: text };
    if (!(await dispatch('litter.change', { litterId: litter.id, change: fields })).ok) continue;
    const named = { collar, sex, birthOrder, bornAt, bornInstant, callName: text, markings: text };
    await call(dispatch, 'litter.changePuppy', { puppyId: puppy.id, change: named });
    await call(dispatch, 'people.setHouse', {
      change: { ...facts.house, breederName: text, address: text, phone: text, email: text, vetName: text, vetPhone: text },
    });
    await page.goto(`${new URL(page.url()).origin}/#/litters`);
    await page.reload();
    await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
    const shown = await page.locator('main').innerText();
    const plain = (t: string) => t.replace(/\s+/g, ' ').trim();
    expect(plain(shown)).toContain(plain(text));
    if (!/[<"{]|\u202e|\u200b/.test(text)) continue; // the rest of the pages only with what could break out
    for (const hash of await everyPage(page, litter.id, puppy.id)) {
      await page.evaluate((to) => {
        window.location.hash = to;
      }, hash);
      await expect(page.getByRole('heading').first()).toBeAttached();
      await nothingRan(page);
    }
    await page.goto(`${new URL(page.url()).origin}/#/litters`);
  }

  const script = '<script>window.pwned = 1</script>';
  await call(dispatch, 'litter.changePuppy', {
    puppyId: puppy.id,
    change: { collar, sex, birthOrder, bornAt, bornInstant, callName: script, markings: '../../x' },
  });
  const saved = await call(dispatch, 'records.savePaper', {
    of: { kind: 'puppy', puppyId: puppy.id, on: dayBefore(clock, 0) },
    paper: 'a4',
  });
  expect(saved.file).toMatch(/^script window.pwned = 1 script go-home plan \d{4}-\d{2}-\d{2}\.pdf$/);
  expect(readdirSync(saved.folder)).toContain(saved.file);
  await keptPlan(dispatch, planId);
  expect(existsSync(join(house.folder, 'x'))).toBe(false);
});

test('a megabyte of text is refused in a sentence and what was there stays', async ({ page, house, quiet }) => {
  await open(page, house);
  const dispatch = dispatchOf(page);
  const { litter } = await makeWorld(dispatch);
  const { id: _id, demo: _demo, ...fields } = litter;
  const answer = await dispatch('litter.change', { litterId: litter.id, change: { ...fields, name: 'x'.repeat(1_100_000) } });
  expect(answer).toMatchObject({ ok: false, error: { code: 'too-large' } });
  const { litters } = await call(dispatch, 'litter.all', {});
  expect(litters.find((l) => l.litter.id === litter.id)?.litter).toEqual(litter);
  quiet.length = 0; // the browser notes the refusal
});
