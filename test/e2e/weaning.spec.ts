/** From milk to bowl as she does it: the first bowl, tomorrow's bowls, what was left, the dam, milk by bottle. */
import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from '@playwright/test';
import { expect, open, openDemo, test, thisMorning } from './host.ts';

const AGE = 33;
const DAY = 86_400_000;

/** Asks the program as the window does. */
async function ask(page: Page, name: string, input: unknown): Promise<Record<string, { id: string }>> {
  const answer = await page.evaluate(
    async ([operation, body]) => {
      const key = sessionStorage.getItem('whelpside') ?? '';
      const headers = { 'content-type': 'application/json', 'x-whelpside': key };
      const response = await fetch(`/call/${operation}`, { method: 'POST', headers, body: JSON.stringify(body) });
      return await response.json();
    },
    [name, input] as const,
  );
  expect(answer, name).toMatchObject({ ok: true });
  return answer.value;
}

/** The moment so many days ago at a clock time, as the contract writes it. */
function ago(days: number, hour: number, minute = 0): { at: string; instant: number } {
  const then = new Date(thisMorning());
  then.setDate(then.getDate() - days);
  then.setHours(hour, minute, 0, 0);
  const two = (n: number) => String(n).padStart(2, '0');
  const at = `${then.getFullYear()}-${two(then.getMonth() + 1)}-${two(then.getDate())}T${two(then.getHours())}:${two(then.getMinutes())}`;
  return { at, instant: then.getTime() };
}

/** Six puppies, 33 days old, weighed for six mornings; the fourth has hardly gained since three days ago. */
async function litterOfSix(page: Page): Promise<string> {
  const born = ago(AGE, 3);
  const begun = {
    name: '',
    dam: 'Hazel',
    sire: '',
    breed: '',
    sizeClass: 'medium',
    adultDogKg: 26,
    adultBitchKg: 22,
    breedBirthGrams: null,
  };
  const { litter } = await ask(page, 'litter.begin', {
    litter: { ...begun, whelpedAt: born.at, whelpedInstant: born.instant },
    puppies: [],
  });
  const litterId = litter?.id ?? '';
  const colours = ['red', 'blue', 'yellow', 'green', 'white', 'orange'] as const;
  for (const [i, letter] of ['A', 'B', 'C', 'D', 'E', 'F'].entries()) {
    const fields = {
      collar: { letter, colour: colours[i], pattern: 'plain' },
      callName: letter === 'D' ? 'Dock' : '',
      sex: 'dog',
      markings: '',
      birthOrder: i + 1,
      bornAt: born.at,
      bornInstant: born.instant,
    };
    const { puppy } = await ask(page, 'litter.addPuppy', {
      litterId,
      fields,
      birthWeight: { grams: 350, typed: '350', unit: 'g', source: 'keyboard' },
    });
    for (let days = 6; days >= 0; days -= 1) {
      const gain = letter === 'D' && days < 3 ? 1.045 ** 3 * 1.004 ** (3 - days) : 1.045 ** (6 - days);
      const grams = Math.round(1900 * (1 + i / 50) * gain);
      const reading = {
        ...ago(days, 7, i),
        session: 'morning',
        grams,
        typed: String(grams),
        unit: 'g',
        source: 'keyboard',
        held: false,
      };
      await ask(page, 'growth.record', { puppyId: puppy?.id, reading });
    }
  }
  return litterId;
}

async function nothingToComplainOf(page: Page): Promise<void> {
  const { violations } = await new AxeBuilder({ page }).withTags(['wcag2a', 'wcag2aa', 'wcag21aa', 'wcag22aa']).analyze();
  expect(violations.map((v) => `${v.id}: ${v.nodes.map((n) => n.target.join(' ')).join(', ')}`)).toEqual([]);
}

const figure = async (text: Promise<string>) => Number((await text).replace(/\D/g, ''));

test('a litter is weaned: first bowl, who holds, what was left, a loose stool, the sheet', async ({ page, house }) => {
  await open(page, house);
  await litterOfSix(page);
  await page.reload();
  await page
    .getByRole('link', { name: /^Hazel/ })
    .first()
    .click();

  // Before there is a plan: one date, and what would follow.
  await page.getByRole('link', { name: 'Weaning', exact: true }).click();
  await expect(page.getByText('They live on milk.')).toBeVisible();
  await page.getByLabel('first bowl on').fill('2020-01-01');
  await page.getByRole('button', { name: 'Begin weaning' }).click();
  await expect(page.getByText('The first bowl is after the birth and within half a year of it.')).toBeVisible();
  await page.getByLabel('first bowl on').fill(ago(AGE - 21, 8).at.slice(0, 10));
  await page.getByLabel('first bowl on').press('Enter');
  await expect(page.getByText('Day 33; bowls since day 21.')).toBeVisible();
  await expect(page.getByRole('img', { name: /Weaning: 25.% from the bowl on day 33.*Dock holds at 15.%/ })).toBeVisible();
  await expect(page.getByText('until his gain is back for two days. He nurses first')).toBeVisible();
  await nothingToComplainOf(page);

  // Tomorrow agrees to the gram.
  const table = page.locator('.each-puppy');
  const days = await table.locator('.day-cell').allInnerTexts();
  const bowls = await table.locator('.bowl-row').allInnerTexts();
  const day = await figure(page.locator('.weigh-out .day-row td').first().innerText());
  expect(days.map(Number).reduce((a, b) => a + b, 0)).toBe(day);
  expect(
    bowls
      .flatMap((b) =>
        b
          .split(/\s+/)
          .filter((t) => /^\d+$/.test(t))
          .map(Number),
      )
      .reduce((a, b) => a + b, 0),
  ).toBe(day);

  // One key a meal.
  const morning = page.getByRole('button', { name: 'morning meal: cleaned up' });
  await morning.focus();
  await page.keyboard.press('l');
  await expect(page.getByRole('button', { name: 'morning meal: left some' })).toHaveAttribute('aria-pressed', 'true');
  await expect(page.getByText('Offer the same amount at the next meal')).toBeVisible();
  await page.keyboard.press('ArrowDown');
  await page.keyboard.press('r');
  await expect(page.getByText(/Food was left twice running. Weigh out 10.% less/)).toBeVisible();
  await page.getByRole('button', { name: 'Weigh out less' }).click();
  await expect(page.getByText(/Amounts are 90.% of the rule/)).toBeVisible();
  expect(await figure(page.locator('.weigh-out .day-row td').first().innerText())).toBeLessThan(day);
  await page.locator('h1').click();
  await page.keyboard.press('ControlOrMeta+z');
  await expect(page.getByText(/Amounts are 90.% of the rule/)).toBeHidden();
  expect(await figure(page.locator('.weigh-out .day-row td').first().innerText())).toBe(day);

  // A loose stool rests the steps, and says when to call.
  await page.getByRole('button', { name: 'note a stool: loose' }).click();
  await expect(page.getByText('The steps stand still: a loose stool was noted.')).toBeVisible();
  await expect(page.getByText('call your vet now')).toBeVisible();
  await page.getByRole('button', { name: 'note a stool: normal' }).click();
  await expect(page.getByText('The steps stand still')).toBeHidden();
  await page.getByRole('button', { name: 'Pause the steps' }).click();
  await expect(page.getByText('You paused the steps.')).toBeVisible();
  await page.getByRole('button', { name: 'Go on with the steps' }).click();

  // A step changed in place; one that crosses another is refused and stays as typed.
  const share = page.getByLabel('step 3, from the bowl');
  await share.fill('90');
  await share.press('Enter');
  await expect(page.getByText('The shares have to rise from step to step')).toBeVisible();
  await expect(share).toHaveValue('90');
  await share.fill('30');
  await share.press('Enter');
  await expect(page.getByRole('img', { name: /Weaning: 30.% from the bowl on day 33/ })).toBeVisible();

  // The sheet is the page that is printed, and says the same.
  const tomorrow = await figure(page.locator('.weigh-out .day-row td').first().innerText());
  await page.getByRole('link', { name: 'Print the prep sheet' }).click();
  await expect(page.locator('html')).toHaveAttribute('data-ready', 'true');
  expect(await figure(page.locator('.prep-total td').last().innerText())).toBe(tomorrow);
  await expect(page.locator('.prep-paper')).toContainText('Dock nurses first.');
  await expect(page.getByRole('button', { name: 'Print', exact: true })).toBeEnabled();
  await page.getByRole('button', { name: 'Save as PDF' }).click();
  await expect(page.getByText(/prep sheet .*\.pdf is in/)).toBeVisible({ timeout: 30_000 });
});

test('the dam: due before whelping, fed and weighed after it', async ({ page, house }) => {
  await open(page, house);
  await litterOfSix(page);
  await page.reload();
  await page.getByRole('link', { name: 'Litters', exact: true }).click();
  await page.getByRole('button', { name: 'Write down a dam' }).click();
  await page.getByLabel('name', { exact: true }).fill('Sorrel');
  await page.getByLabel('name', { exact: true }).press('Enter');
  await expect(page.getByRole('heading', { level: 1, name: 'Sorrel, the dam' })).toBeVisible();
  const ovulated = ago(40, 8).at.slice(0, 10);
  await page.getByLabel('ovulation', { exact: true }).fill(ovulated);
  await page.getByLabel('ovulation', { exact: true }).press('Enter');
  await expect(page.getByText('most likely in 23 days')).toBeVisible();
  const due = new Date(thisMorning().getTime() + 23 * DAY);
  const [weekday, month] = [
    due.toLocaleDateString('en-GB', { weekday: 'long' }),
    due.toLocaleDateString('en-GB', { month: 'long' }),
  ];
  await expect(page.locator('main')).toContainText(`${weekday.slice(0, 3)} ${due.getDate()} ${month.slice(0, 3)}`);
  await page.getByLabel('first mating').fill(ago(39, 8).at.slice(0, 10));
  await page.getByLabel('first mating').press('Enter');
  await page.getByLabel('last mating').fill(ago(41, 8).at.slice(0, 10));
  await page.getByLabel('last mating').press('Enter');
  await expect(page.getByText('The last mating is before the first.')).toBeVisible();
  await page.getByLabel('weigh her').fill('2o');
  await page.getByLabel('weigh her').press('Enter');
  await expect(page.getByText('There is a letter o in 2o.')).toBeVisible();
  await page.getByLabel('weigh her').fill('20');
  await page.getByLabel('weigh her').press('Enter');
  await expect(page.locator('.dam-figures')).toContainText('1749');
  await nothingToComplainOf(page);

  await page.getByRole('link', { name: 'Weaning', exact: true }).click();
  await page.getByRole('button', { name: 'Write down Hazel' }).click();
  await page.getByLabel('weigh her').fill('22.7');
  await page.getByLabel('weigh her').press('Enter');
  await expect(page.locator('.dam-part')).toContainText('in full milk, week 5');
  await page.getByRole('button', { name: /take back/ }).click();
  await expect(page.getByText('Weigh her, and her food can be reckoned.')).toBeVisible();
});

test('milk by bottle for a fading puppy: cautions first, never over what the stomach holds', async ({ page, house }) => {
  await openDemo(page, house);
  await page
    .getByRole('link', { name: /^Comfrey/ })
    .first()
    .click();
  await page.getByRole('link', { name: 'Today', exact: false }).first().click();
  await expect(page.locator('.meals-part')).toContainText('They live on milk.');
  const block = page.locator('.top-up').first();
  await expect(block).toBeVisible();
  await block.getByText('Milk by bottle or tube').click();
  const text = await block.innerText();
  expect(text.indexOf('Never feed a cold puppy')).toBeLessThan(text.indexOf('mL a feed'));
  const most = Number(/over (\d+(?:\.\d+)?) mL/.exec(text)?.[1]);
  const high = Number(/to (\d+(?:\.\d+)?) mL a feed/.exec(text)?.[1]);
  expect(high).toBeLessThanOrEqual(most);
  await block.getByLabel('milk, kcal in a mL').fill('x');
  await expect(block).toContainText('Write a number, like 0.9.');
  // Thinner milk needs more of it: where the stomach holds no more in a feed, there are more feeds, and none is larger.
  const volume = block.locator('.top-up-volume');
  const feedsOf = (line: string) => Number(/(\d+) feeds a day/.exec(line)?.[1]);
  const feeds = feedsOf(text);
  await block.getByLabel('milk, kcal in a mL').fill('0.5');
  await expect.poll(async () => feedsOf(await volume.innerText())).toBeGreaterThan(feeds);
  expect(Number(/(\d+(?:\.\d+)?) mL a feed/.exec(await volume.innerText())?.[1])).toBeLessThanOrEqual(most);
  await nothingToComplainOf(page);
});

test('a weaned litter has its meals on Today without any plan', async ({ page, house }) => {
  await openDemo(page, house);
  await page
    .getByRole('link', { name: /^Yarrow/ })
    .first()
    .click();
  const meals = page.locator('.meals-part');
  await expect(meals.locator('tbody tr')).toHaveCount(3);
  await expect(meals.locator('.meal-next')).toContainText('07:00');
  await meals.getByRole('button', { name: 'morning meal: cleaned up' }).click();
  await expect(meals.locator('.meal-next')).toContainText('13:00');
  await expect(page.locator('.foot .undo')).toContainText('morning meal cleaned up');
});
