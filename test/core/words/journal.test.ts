import { expect, test } from 'vitest';
import type { Done } from '../../../core/contract/journal.ts';
import { OPERATIONS } from '../../../core/contract/operations.ts';
import { doneSentence } from '../../../core/words/en/journal.ts';

const commands = Object.entries(OPERATIONS)
  .filter(([, o]) => o.kind === 'command')
  .map(([name]) => name);

/** As an entry of an earlier file has it. */
const text = (said: string): Done['about'] => ({ of: 'text', text: said });

test.each(commands)('%s has a sentence of its own, not its name', (operation) => {
  const sentence = doneSentence({ operation, about: text('Elder'), grams: 2365 }, 'g');
  expect(sentence).not.toContain(operation);
  expect(sentence).not.toMatch(/ {2}/);
});

const puppy = (name: string): Done['about'] => ({ of: 'puppies', names: [name] });

test.each([
  ['of data', puppy],
  ['of the text of earlier files', text],
])('a weight is said in the unit of the house, %s', (_, of) => {
  expect(doneSentence({ operation: 'growth.record', about: of('Elder'), grams: 2365 }, 'g')).toBe('Elder 2\u00a0365\u00a0g');
  expect(doneSentence({ operation: 'growth.correct', about: of('Elder'), grams: 2365 }, 'lb')).toBe(
    'Elder corrected to 5.2\u00a0lb',
  );
  expect(doneSentence({ operation: 'litter.addPuppy', about: of('B'), grams: null }, 'g')).toBe('B added');
});

const mix = { id: 'food-own-mix', name: 'Lean mix' };
const shipped = { id: 'food-generic-mix', name: 'by another name' };
const CASES: readonly (readonly [operation: string, about: Done['about'], grams: number | null, said: string])[] = [
  ['litter.begin', { of: 'litter', dam: 'Yarrow' }, null, 'Litter of Yarrow begun'],
  ['litter.setState', { of: 'puppies', names: ['C'], state: 'home' }, null, 'C: gone home'],
  ['litter.setState', { of: 'puppies', names: ['C'], state: 'litter' }, null, 'C: back in the litter'],
  ['growth.exchange', { of: 'puppies', names: ['Vetch', 'B'] }, null, 'Vetch, B: weights exchanged'],
  [
    'weaning.note',
    { of: 'litter', dam: 'Yarrow', note: { kind: 'meal', meal: 'evening', ate: 'refused' } },
    null,
    'Yarrow: evening meal refused',
  ],
  ['weaning.note', { of: 'puppies', names: ['Vetch'], note: { kind: 'stool', stool: 'soft' } }, null, 'Vetch: soft stool'],
  [
    'weaning.takeBack',
    { of: 'litter', dam: 'Yarrow', note: { kind: 'pause', paused: true } },
    null,
    'Yarrow: weaning paused, taken back',
  ],
  ['food.choose', { of: 'house' }, null, 'Food of the house chosen'],
  ['food.choose', text(''), null, 'Food of the house chosen'],
  ['food.choose', { of: 'litter', dam: 'Yarrow' }, null, 'Food chosen, litter of Yarrow'],
  ['food.retire', { of: 'food', food: mix, retired: true }, null, 'Food put away: Lean mix'],
  ['food.retire', { of: 'food', food: mix, retired: false }, null, 'Food in use again: Lean mix'],
  ['food.retire', text('Lean mix'), null, 'Food put away or taken back: Lean mix'],
  // What is shipped is named by the catalogue, not by what the file says.
  ['freezer.add', { of: 'packs', packs: 2, foods: [shipped] }, 908, '2 × complete mix, generic put in, 908\u00a0g'],
  ['freezer.takeOut', { of: 'packs', packs: 1, foods: [mix], out: 'given' }, 454, 'Lean mix given away, 454\u00a0g'],
  [
    'freezer.endThaw',
    { of: 'packs', packs: 3, foods: [mix, shipped], out: 'thrown' },
    null,
    '3 × Lean mix, complete mix, generic thrown away',
  ],
  ['freezer.count', { of: 'stock', packs: 1 }, null, 'Freezer counted: 1 pack'],
  ['freezer.count', { of: 'stock', packs: 3 }, null, 'Freezer counted: 3 packs'],
  ['freezer.count', text('3'), null, 'Freezer counted: 3 packs'],
  ['freezer.addStarter', { of: 'person', name: 'Tansy' }, 454, 'Starter pack for Tansy, 454\u00a0g'],
  ['freezer.addStarter', { of: 'person', name: '' }, 454, 'Starter pack for a buyer, 454\u00a0g'],
  ['freezer.removeStarter', text(''), null, 'No starter pack for a buyer'],
  ['dogs.addGrown', text(''), null, 'Grown dogs of the house changed'],
  ['dogs.addGrown', { of: 'dog', name: 'Bramble' }, null, 'Bramble, grown, written down'],
];

test.each(CASES)('%s of %j', (operation, about, grams, said) => {
  expect(doneSentence({ operation, about, grams }, 'g')).toBe(said);
});

test('a name from right to left keeps to itself', () => {
  const said = doneSentence(
    { operation: 'freezer.add', about: { of: 'packs', packs: 2, foods: [{ id: 'food-1234', name: 'לחם' }] }, grams: 900 },
    'g',
  );
  expect(said).toBe('2 × \u2068לחם\u2069 put in, 900\u00a0g');
});
