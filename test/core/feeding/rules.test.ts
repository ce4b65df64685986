import { describe, expect, it } from 'vitest';
import { addDays, date } from '../../../core/calendar/day.ts';
import { DEFAULT_RULES, PROGRAM_RULES, rulesOn, writtenFrom } from '../../../core/feeding/rules.ts';

const house = { id: 'house-rules-1', from: date('2026-02-01'), rules: { ...DEFAULT_RULES, shareYoung: 0.06 } };
const own = {
  id: 'own-rules-1',
  litterId: 'litter-1',
  from: date('2026-03-01'),
  rules: { ...DEFAULT_RULES, shareYoung: 0.07 },
};
const facts = {
  versions: [house, PROGRAM_RULES],
  ofLitters: [{ ...own, id: 'own-rules-2', from: date('2026-03-10'), rules: null }, own],
};

describe('rules of one litter', () => {
  it('hold from their day until they are taken away again', () => {
    expect(rulesOn(facts, 'litter-1', date('2026-02-28'))).toEqual(house);
    expect(rulesOn(facts, 'litter-1', addDays(own.from, 8)).rules.shareYoung).toBe(0.07);
    expect(rulesOn(facts, 'litter-1', date('2026-03-10'))).toEqual(house);
    expect(rulesOn(facts, 'litter-2', date('2026-03-05'))).toEqual(house);
    expect(rulesOn(facts, null, date('2026-03-05'))).toEqual(house);
  });
});

describe('rules of the house', () => {
  it('are the program’s until the first that she wrote, and on days before anything was written', () => {
    expect(rulesOn(facts, null, addDays(house.from, -1))).toEqual(PROGRAM_RULES);
    expect(rulesOn(facts, null, date('2020-01-01'))).toEqual(PROGRAM_RULES);
    expect(rulesOn({ versions: [], ofLitters: [] }, 'litter-1', own.from)).toEqual(PROGRAM_RULES);
  });
  it('name the day only when she wrote them', () => {
    expect(writtenFrom(house)).toBe(house.from);
    expect(writtenFrom(PROGRAM_RULES)).toBeNull();
  });
});
