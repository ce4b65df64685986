import { describe, expect, it, vi } from 'vitest';
import { weighKeys } from '../../../../renderer/growth/weigh-in/keys.ts';

type Event = Parameters<typeof weighKeys>[0];
type WeighIn = Parameters<typeof weighKeys>[1];

function pressing(field: WeighIn['field'], questioned = false) {
  const enter = vi.fn();
  const weighIn = { field, questioned, swap: null, enter } as unknown as WeighIn;
  const scale = { other: null, keep: () => false } as unknown as Parameters<typeof weighKeys>[2];
  const row = { doubt: null } as unknown as Parameters<typeof weighKeys>[3];
  const turn = {} as Parameters<typeof weighKeys>[4];
  const press = (timeStamp: number, repeat = false) =>
    weighKeys(
      {
        key: 'Enter',
        timeStamp,
        repeat,
        preventDefault: () => undefined,
        nativeEvent: { isComposing: false },
      } as unknown as Event,
      weighIn,
      scale,
      row,
      turn,
    );
  return { enter, press };
}

describe('a second Enter', () => {
  it('within half a second neither passes a puppy over nor keeps a doubtful number', () => {
    for (const [from, { enter, press }] of [pressing('empty'), pressing('written', true)].entries()) {
      const at = 10_000 * (from + 1);
      press(at);
      press(at + 300);
      press(at + 799);
      expect(enter).toHaveBeenCalledTimes(1);
      press(at + 1400);
      expect(enter).toHaveBeenCalledTimes(2);
    }
  });

  it('is never one that is held down', () => {
    const { enter, press } = pressing('empty');
    press(50_000);
    press(52_000, true);
    expect(enter).toHaveBeenCalledTimes(1);
  });

  it('after a number that was typed in between is a new one, however quick', () => {
    const { enter, press } = pressing('typing');
    press(90_000);
    press(90_100);
    expect(enter).toHaveBeenCalledTimes(2);
  });
});

describe('a number that fits a littermate', () => {
  const pressed = (key: string, littermate: { collar: { letter: string } } | null) => {
    const giveAway = vi.fn();
    const weighIn = { field: 'written', questioned: true, littermate, swap: null, giveAway } as unknown as WeighIn;
    const scale = { other: null } as unknown as Parameters<typeof weighKeys>[2];
    const row = { doubt: null } as unknown as Parameters<typeof weighKeys>[3];
    const event = { key, preventDefault: () => undefined, nativeEvent: { isComposing: false } } as unknown as Event;
    weighKeys(event, weighIn, scale, row, {} as Parameters<typeof weighKeys>[4]);
    return giveAway.mock.calls.length;
  };

  it('is given to it by its letter or Space, and by no other letter', () => {
    const hazel = { collar: { letter: 'H' } };
    expect([pressed('h', hazel), pressed('H', hazel), pressed(' ', hazel)]).toEqual([1, 1, 1]);
    expect([pressed('d', hazel), pressed('5', hazel), pressed('h', null)]).toEqual([0, 0, 0]);
  });
});
