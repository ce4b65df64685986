import { describe, expect, it } from 'vitest';
import { addDays, date } from '../../../core/calendar/day.ts';
import { comparedUntil, inTheHouse, litterInTheHouse, weighInOrder } from '../../../core/litter/in-the-house.ts';

const day = date('2026-05-10');
const left = { id: 'left', place: 0, state: 'home', stateOn: day } as const;
const died = { id: 'died', place: 1, state: 'died', stateOn: day } as const;
const kept = { id: 'kept', place: 3, state: 'kept', stateOn: day } as const;
const there = { id: 'there', place: 2, state: 'litter', stateOn: null } as const;

describe('where a puppy lives', () => {
  it('is here until the day before it leaves or dies; a kept one stays', () => {
    for (const gone of [left, died]) {
      expect(inTheHouse(gone, addDays(day, -1))).toBe(true);
      expect(inTheHouse(gone, day)).toBe(false);
    }
    for (const here of [kept, there]) expect(inTheHouse(here, addDays(day, 100))).toBe(true);
  });

  it('decides who is weighed, in the order of the weigh-in', () => {
    const all = [kept, left, there, died];
    expect(weighInOrder(all, day).map((p) => p.id)).toEqual(['there', 'kept']);
    expect(weighInOrder(all, addDays(day, -1)).map((p) => p.id)).toEqual(['left', 'died', 'there', 'kept']);
  });

  it('keeps a litter a matter of the house while someone is there, and before anyone is written down', () => {
    expect(litterInTheHouse([left, died], day)).toBe(false);
    expect(litterInTheHouse([left, kept], day)).toBe(true);
    expect(litterInTheHouse([], day)).toBe(true);
  });
});

it('is compared with its littermates until the day it leaves, and on and on when it is kept', () => {
  expect([left, died, kept, there].map(comparedUntil)).toEqual([day, day, null, null]);
});
