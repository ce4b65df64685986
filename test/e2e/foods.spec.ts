/** Foods from a pack, the week of bowls by keyboard and by dragging, rules of one litter, and the one action that mends a finding. */
import type { Page } from '@playwright/test';
import { expect, openDemo, test } from './host.ts';

async function goTo(page: Page, hash: string) {
  await page.evaluate((to) => {
    window.location.hash = to;
  }, hash);
  await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
}

/** The weaned litter of the demo. */
async function litterId(page: Page): Promise<string> {
  await page
    .getByRole('link', { name: /^Yarrow/ })
    .first()
    .click();
  return /litter\/([^/]+)/.exec(page.url())?.[1] ?? '';
}

const field = (page: Page, name: string) => page.getByLabel(name, { exact: true });

async function writeFood(page: Page) {
  await goTo(page, '#/foods/new');
  await field(page, 'name').fill('Turkey and heart');
  await field(page, 'protein').fill('15');
  await field(page, 'fat').fill('9');
  await field(page, 'water (moisture)').fill('71');
  await field(page, 'ash').fill('3');
  await field(page, 'calcium').fill('0,55');
  await field(page, 'phosphorus').fill('0.42');
  await field(page, 'energy on the pack').fill('150');
}

test('a food is written down from a pack: what can’t be is stopped, what is unlikely asked about, nothing is lost', async ({
  page,
  house,
}) => {
  await openDemo(page, house);
  await page.locator('#margin').getByRole('link', { name: 'Foods', exact: true }).click();
  await expect(page.getByText('None yet.')).toBeVisible();
  await writeFood(page);
  await expect(page.getByText('150 kcal in 100 g').first()).toBeVisible();

  await field(page, 'energy on the pack').fill('630');
  await expect(page.getByText(/630 kJ is 151 kcal/)).toBeVisible();
  await field(page, 'energy on the pack').fill('150');
  await field(page, 'water (moisture)').fill('81');
  await expect(page.getByText(/parts come to 108 g in 100 g/)).toBeVisible();
  await page.getByRole('button', { name: 'Write it down' }).click();
  await expect(page.getByText('Not written down yet')).toBeVisible();
  await expect(field(page, 'name')).toHaveValue('Turkey and heart');
  await field(page, 'water (moisture)').fill('71');
  await field(page, 'calcium').fill('much');
  await page.getByRole('button', { name: 'Write it down' }).click();
  await expect(page.getByText(/Write a number/).first()).toBeVisible();
  await field(page, 'calcium').fill('0,55');
  await field(page, 'name').press('Enter');
  await expect(page.getByRole('heading', { level: 1, name: 'Turkey and heart' })).toBeVisible();
  await expect(page.getByText('3.7 g in 1000 kcal; 550 mg in 100 g')).toBeVisible();

  await page.getByRole('link', { name: 'Back to the foods' }).click();
  await expect(page.getByRole('row', { name: /Turkey and heart/ }).first()).toContainText('within the published numbers');
  await page.getByLabel('Food of Yarrow’s litter').selectOption({ label: 'Turkey and heart' });
  await expect(page.getByText('Food chosen, litter of Yarrow')).toBeVisible();
  await litterId(page);
  await expect(page.getByText(/Food: Turkey and heart/)).toBeVisible();
  await page.keyboard.press('Control+z');
  await expect(page.getByText(/Food: complete mix, generic/)).toBeVisible();
});

test('a recipe has to come to a hundred; a food that is put away stays where it is eaten', async ({ page, house }) => {
  await openDemo(page, house);
  await goTo(page, '#/foods/new');
  await field(page, 'name').fill('My own');
  await page.getByLabel('figures from').selectOption('recipe');
  await page.getByLabel('Part 1', { exact: true }).selectOption({ label: 'chicken back, meat and skin' });
  await page.getByLabel('Share of part 1', { exact: true }).fill('70');
  await page.getByLabel('Part 2', { exact: true }).selectOption({ label: 'beef liver' });
  await page.getByLabel('Share of part 2', { exact: true }).fill('20');
  await expect(page.getByText(/The parts come to 90/)).toBeVisible();
  await page.getByLabel('Share of part 2', { exact: true }).fill('30');
  await expect(page.getByText(/of vitamin A per 1000 kcal. The published upper limit/)).toBeVisible();
  await page.getByRole('button', { name: 'Write it down' }).click();
  await expect(page.getByRole('heading', { level: 1, name: 'My own' })).toBeVisible();
  await goTo(page, '#/foods');
  await page.getByLabel('Food of the house').selectOption({ label: 'My own' });
  await expect(page.getByText('Food of the house chosen')).toBeVisible();
  await page.getByRole('button', { name: 'Put away My own' }).click();
  await expect(page.getByText('Put away: 1')).toBeVisible();
  await expect(page.getByLabel('Food of Yarrow’s litter').locator('option').first()).toHaveText('as the house: My own');
});

test('a week of bowls is made by keyboard, and dragged into; its sum stands beside it and survives a power cut', async ({
  page,
  house,
  quiet,
}) => {
  await openDemo(page, house);
  const id = await litterId(page);
  await goTo(page, `#/week/${id}`);
  const cell = (place: string) => page.locator(`[data-place="${place}"]`);
  await cell('0 morning').focus();
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('ArrowDown');
  await expect(cell('1 midday')).toBeFocused();
  await page.keyboard.press('Control+End');
  await expect(cell('6 evening')).toBeFocused();
  await page.keyboard.press('ArrowRight');
  await expect(cell('6 evening')).toBeFocused();
  await page.keyboard.press('Control+Home');
  await page.keyboard.press('Enter');
  await expect(page.getByLabel('the meal is')).toBeFocused();
  await page.getByLabel('the meal is').selectOption('foods');
  await page.getByLabel('Food 1', { exact: true }).selectOption({ label: 'plain mix, generic' });
  await expect(cell('0 morning')).toContainText('plain mix');
  await page.getByRole('button', { name: 'Add a food' }).click();
  await page.getByLabel('Food 2', { exact: true }).selectOption({ label: 'beef liver' });
  await page.getByLabel('Share of food 2', { exact: true }).fill('130');
  await page.keyboard.press('Enter');
  await expect(page.locator('.bowl-parts .mistake')).toContainText('99');
  await page.getByLabel('Share of food 2', { exact: true }).fill('30');
  await page.keyboard.press('Enter');
  await expect(cell('0 morning')).toContainText('70 % plain mix');
  await expect(cell('0 morning')).toContainText('30 % beef liver');
  await page.keyboard.press('Escape');
  await expect(cell('0 morning')).toBeFocused();
  await page.keyboard.press('Control+c');
  await page.keyboard.press('ArrowDown');
  await page.keyboard.press('Control+v');
  await expect(cell('1 morning')).toContainText('30 % beef liver');
  await page.keyboard.press('Delete');
  await expect(cell('1 morning')).not.toContainText('beef liver');

  await cell('2 evening').click();
  await page.getByRole('button', { name: 'Put chicken wing, meat and skin into Wednesday evening' }).click();
  await expect(cell('2 evening')).toContainText('2 × chicken wing');
  await page.getByLabel('pieces for each dog').fill('0');
  await page.keyboard.press('Enter');
  await expect(page.locator('.mistake:visible').first()).toBeVisible();
  await page.getByLabel('pieces for each dog').fill('1');
  await page.keyboard.press('Enter');
  await expect(cell('2 evening')).toContainText('1 × chicken wing');
  await expect(page.getByText(/The FDA calls bones of any size unsafe/)).toBeVisible();

  await page.getByRole('button', { name: /Put plain mix, generic into/ }).dragTo(cell('4 midday'));
  await expect(cell('4 midday')).toContainText('plain mix, generic');
  await cell('0 morning').dragTo(cell('5 evening'));
  await expect(cell('5 evening')).toContainText('30 % beef liver');

  const sum = page.locator('.week-sum');
  await expect(sum).toContainText('tablespoons of greens a week');
  await expect(sum.getByRole('row', { name: /calcium, g/ })).toContainText('to 4.');
  const litters = await sum.getByRole('row', { name: /^food/ }).innerText();
  await sum.getByLabel('for').selectOption({ index: 1 });
  expect(await sum.getByRole('row', { name: /^food/ }).innerText()).not.toBe(litters);

  await house.kill();
  await page.goto(await house.start());
  // The key is taken at the door, and the window opens behind it.
  await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
  quiet.length = 0; // the browser rightly complains of the lost connection
  await goTo(page, `#/week/${id}`);
  await expect(cell('5 evening')).toContainText('30 % beef liver');
  await page.keyboard.press('Control+z');
  await expect(cell('5 evening')).not.toContainText('beef liver');
  await page.getByRole('button', { name: 'Back to the week of the house' }).click();
  await expect(cell('0 morning')).not.toContainText('beef liver');
});

test('a finding is mended with one action, for this litter alone; the house’s rules stay', async ({ page, house }) => {
  await openDemo(page, house);
  await litterId(page);
  await expect(page.getByRole('heading', { name: 'Beside the published numbers' })).toBeVisible();
  await page.getByRole('button', { name: 'Four meals until 12 weeks, for this litter' }).click();
  await expect(page.getByText('Rules of the litter of Yarrow changed')).toBeVisible();
  await expect(page.getByRole('button', { name: 'Four meals until 12 weeks, for this litter' })).toHaveCount(0);
  await expect(page.getByRole('row', { name: /afternoon/ })).toBeVisible();

  await goTo(page, '#/rules');
  const four = page.getByLabel('Four meals a day until (0: never)', { exact: true });
  await expect(four).toHaveValue('0');
  await page.getByLabel('rules of').selectOption({ label: 'Yarrow’s litter' });
  await expect(four).toHaveValue('12');
  await four.fill('26');
  await four.press('Enter');
  await expect(page.getByText('Four meals have to end before two begin')).toBeVisible();
  await expect(four).toHaveValue('26');
  await page.keyboard.press('Escape');
  const grown = page.getByLabel('Share of body weight a day, grown', { exact: true });
  await grown.fill('9');
  await grown.press('Enter');
  await expect(page.getByText('The shares have to fall with age')).toBeVisible();
  await page.keyboard.press('Escape');
  await page.getByRole('button', { name: 'Back to the rules of the house' }).click();
  await expect(four).toHaveValue('0');
});

test('grown dogs of the house are held against the week', async ({ page, house }) => {
  await openDemo(page, house);
  await goTo(page, '#/week');
  await field(page, 'weighs').fill('heavy');
  await page.getByRole('button', { name: 'Add', exact: true }).click();
  await expect(page.getByText('Write what it is called.')).toBeVisible();
  await field(page, 'name').fill('Yarrow');
  await field(page, 'weighs').fill('24');
  await page.getByRole('button', { name: 'Add', exact: true }).click();
  await expect(page.getByLabel('for')).toContainText('Yarrow, 24 kg');
  await expect(page.locator('.week-sum').getByRole('row', { name: /energy, kcal/ })).toContainText('1 030 to 1 410');
  await page.getByRole('button', { name: 'Take out Yarrow' }).click();
  await expect(page.getByLabel('for')).toContainText('an invented grown dog');
});

test('treats of today come off the meals; over their share the rule and its source are said; nothing is written down', async ({
  page,
  house,
}) => {
  await openDemo(page, house);
  await litterId(page);
  await page.getByRole('link', { name: 'Growth', exact: true }).click();
  await page.locator('main').getByRole('link', { name: 'Rowan' }).last().click();
  await page.getByRole('link', { name: 'Notes and facts' }).click();
  const part = page.getByRole('region', { name: 'Treats today' });
  await expect(part).toContainText('Not written down.');
  const treats = part.getByLabel('treats today', { exact: true });
  await treats.fill('a few');
  await expect(part.locator('.mistake')).toContainText('a few cannot be read as a weight');
  await expect(treats).toHaveValue('a few');
  await expect(part.getByRole('status')).toBeEmpty();
  await treats.fill('10 g');
  await expect(part.locator('.mistake')).toHaveCount(0);
  await expect(part.getByRole('status')).toHaveText(/^Meals then: \d+, \d+, \d+ g; treats are [1-9]\s% of the day\.$/);
  await expect(part.getByText('Hand et al. 2010')).toHaveCount(0);
  const before = await part.getByRole('status').innerText();

  await part.getByLabel('energy of the treats', { exact: true }).fill('9000');
  await expect(part.locator('.mistake')).toHaveText('It has to be from 5 to 900.');
  await part.getByLabel('energy of the treats', { exact: true }).fill('900');
  await expect(part.getByRole('status')).toContainText('Meals then');
  expect(await part.getByRole('status').innerText()).not.toBe(before);
  await expect(part.getByText(/Keep them to 10\s%: about \d+\sg of these treats\./)).toBeVisible();
  await expect(part.getByText(/Hand et al\. 2010.*p\. 315: at most a tenth/)).toBeVisible();
  await treats.fill('400');
  await expect(part.getByRole('status')).toContainText('Nothing would be left for the meals');

  await page.reload();
  await expect(part.getByLabel('treats today', { exact: true })).toHaveValue('');
});
