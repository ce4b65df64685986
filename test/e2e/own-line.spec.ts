/** A puppy beside the breeder's own line: too few earlier litters, then enough of them. */
import { mkdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from '@playwright/test';
import { fromLocalMinutes } from '../../core/calendar/clock.ts';
import type { InputOf, OperationName } from '../../core/contract/operations.ts';
import { USUAL_COLLARS } from '../../core/litter/collar.ts';
import { expect, open, test, thisMorning } from './host.ts';

const SCREENS = fileURLToPath(new URL('../../test-results/screens/', import.meta.url));
const DAY = 1440;

async function call<N extends OperationName>(page: Page, operation: N, input: InputOf<N>): Promise<void> {
  const answer = await page.evaluate(
    async ([name, body]) => {
      const key = sessionStorage.getItem('whelpside') ?? '';
      const headers = { 'content-type': 'application/json', 'x-whelpside': key };
      return (await (await fetch(`/call/${name}`, { method: 'POST', headers, body })).json()) as { ok: boolean };
    },
    [operation, JSON.stringify(input)] as const,
  );
  expect(answer, operation).toMatchObject({ ok: true });
}

/** An invented litter, whelped so many days ago and weighed every morning for so many; the later puppies gain a little faster. */
async function bringIn(page: Page, dam: string, breed: string, daysAgo: number, size: number, days: number): Promise<void> {
  const morning = thisMorning();
  const minutes = Math.floor(morning.getTime() / 60_000);
  const whelped = minutes - daysAgo * DAY - 60;
  const local = (at: number) => fromLocalMinutes(at - morning.getTimezoneOffset());
  const collars = USUAL_COLLARS.slice(0, size);
  await call(page, 'records.import', {
    into: {
      kind: 'new',
      litter: {
        name: '',
        dam,
        sire: '',
        breed,
        sizeClass: 'medium',
        adultDogKg: null,
        adultBitchKg: null,
        breedBirthGrams: null,
        whelpedAt: local(whelped),
        whelpedInstant: whelped * 60_000,
      },
    },
    puppies: collars.map((collar, i) => ({
      key: collar.letter,
      fields: {
        collar,
        callName: `${dam} ${collar.letter}`,
        sex: i % 2 === 0 ? 'bitch' : 'dog',
        markings: '',
        birthOrder: i + 1,
        bornAt: local(whelped),
        bornInstant: whelped * 60_000,
      },
    })),
    readings: collars.flatMap((collar, i) =>
      Array.from({ length: days + 1 }, (_, day) => {
        const at = whelped + 60 + day * DAY + i;
        const grams = Math.round((300 + 6 * i) * Math.exp((3.1 + 0.04 * i) * (1 - Math.exp(-0.031 * day))));
        return {
          puppy: collar.letter,
          reading: {
            at: local(at),
            instant: at * 60_000,
            session: day === 0 ? ('birth' as const) : ('morning' as const),
            grams,
            typed: String(grams),
            unit: 'g' as const,
            source: 'file' as const,
            held: false,
          },
        };
      }),
    ),
  });
}

async function toPuppy(page: Page, name: string): Promise<void> {
  await page.getByRole('link', { name: 'Growth', exact: true }).click();
  await page.locator('main').getByRole('link', { name }).last().click();
  await page.getByRole('link', { name: 'Notes and facts' }).click();
}

test('with too few earlier litters one quiet sentence; with enough, a place, a thin line and a column', async ({
  page,
  house,
}) => {
  test.setTimeout(120_000);
  await open(page, house);
  await bringIn(page, 'Sedge', 'Field Spaniel', 900, 5, 56);
  await bringIn(page, 'Sorrel', ' field  spaniel ', 600, 4, 56);
  await bringIn(page, 'Teasel', 'Lagotto', 500, 8, 56);
  await bringIn(page, 'Bryony', 'FIELD SPANIEL', 24, 5, 24);
  await page.reload();
  await page
    .getByRole('link', { name: /^Bryony/ })
    .first()
    .click();
  await toPuppy(page, 'Bryony A');
  const part = page.locator('section', { has: page.getByRole('heading', { name: 'Beside your own line' }) });
  await expect(part).toContainText(
    'There are 2 earlier litters of this breed with 9 puppies weighed from birth; your own line needs 3 litters and 12 puppies',
  );
  await page.getByRole('link', { name: 'Weight', exact: true }).click();
  await expect(page.getByRole('columnheader', { name: /your line/ })).toHaveCount(0);

  // The third one comes in while the page is open.
  await bringIn(page, 'Comfrey', 'Field Spaniel', 300, 5, 56);
  await page.getByRole('link', { name: 'Notes and facts' }).click();
  const told = part.getByRole('button', {
    name: /For her birth weight she is lighter than about \d+ of 100 puppies of your own line/,
  });
  await told.focus();
  await expect(page.locator('.foot')).toContainText(/14 puppies of 3 earlier litters of the same breed/);
  await expect(part).toContainText(/In the last 5 days she gained/);
  await expect(part).toContainText('A note, never an alarm.');
  await page.getByRole('link', { name: 'Weight', exact: true }).click();
  await expect(page.getByRole('columnheader', { name: 'your line, g' })).toBeVisible();
  expect(
    Number((await page.locator('table.record tbody tr').first().locator('td').nth(3).innerText()).replace(/\D/g, '')),
  ).toBeGreaterThan(1500);

  mkdirSync(SCREENS, { recursive: true });
  for (const theme of ['Night lamp', 'Day paper']) {
    for (const [width, height] of [
      [1280, 800],
      [640, 400],
      [390, 844],
    ] as const) {
      await page.setViewportSize({ width: 1280, height: 800 });
      const button = page.getByRole('button', { name: theme });
      if (await button.isVisible()) await button.click();
      await page.setViewportSize({ width, height });
      for (const view of ['Notes and facts', 'Weight']) {
        await page.getByRole('link', { name: view, exact: true }).click();
        const sideways = await page.evaluate(() => {
          const main = document.querySelector('main');
          return Math.max(
            document.documentElement.scrollWidth - window.innerWidth,
            main === null ? 0 : main.scrollWidth - main.clientWidth,
          );
        });
        expect(sideways, `${view} at ${width}`).toBeLessThanOrEqual(0);
        await page.screenshot({ path: `${SCREENS}own-line-${view}-${theme}-${width}.png`, fullPage: true });
        if (width === 390) continue;
        const found = await new AxeBuilder({ page }).withTags(['wcag2a', 'wcag2aa', 'wcag21aa', 'wcag22aa']).analyze();
        expect(found.violations.map((v) => `${v.id}: ${v.nodes.map((n) => n.target.join(' ')).join(', ')}`)).toEqual([]);
      }
    }
  }
});
