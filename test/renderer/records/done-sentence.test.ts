import { expect, test } from 'vitest';
import { OPERATIONS } from '../../../core/contract/operations.ts';
import { doneSentence } from '../../../core/words/en/records.ts';

const commands = Object.entries(OPERATIONS)
  .filter(([, o]) => o.kind === 'command')
  .map(([name]) => name);

test.each(commands)('%s has a sentence of its own, not its name', (operation) => {
  const sentence = doneSentence({ operation, who: 'Elder', grams: 2365 }, 'g');
  expect(sentence).not.toContain(operation);
  expect(sentence).not.toMatch(/ {2}/);
});

test('a weight is said in the unit of the house', () => {
  expect(doneSentence({ operation: 'growth.record', who: 'Elder', grams: 2365 }, 'g')).toBe('Elder 2\u00a0365\u00a0g');
  expect(doneSentence({ operation: 'growth.correct', who: 'Elder', grams: 2365 }, 'lb')).toBe('Elder corrected to 5.2\u00a0lb');
  expect(doneSentence({ operation: 'litter.addPuppy', who: 'B', grams: null }, 'g')).toBe('B added');
});
