/** The keys of the row in hand. */
import { addDays } from '../../../core/calendar/day.ts';
import { now } from '../../data/now.ts';
import { type WeighInTime, weighInNow } from '../../facts/weigh-in.ts';
import type { ScaleWeighing } from '../scale/useScaleWeighing.ts';
import type { WeighInRow } from './rows.ts';
import type { WeighIn } from './useWeighIn.ts';

/** A second Enter within this time is the same press of a hurried finger: it answers no question and passes nobody over. */
const SAME_PRESS_MS = 500;
let lastEnter = Number.NEGATIVE_INFINITY;

export function weighKeys(
  event: React.KeyboardEvent<HTMLInputElement>,
  weighIn: WeighIn,
  scale: ScaleWeighing,
  row: WeighInRow,
  turn: { readonly time: WeighInTime; readonly choose: (time: WeighInTime) => void },
): void {
  if (event.nativeEvent.isComposing) return;
  const ctrl = event.ctrlKey || event.metaKey;
  const handled = (): void => event.preventDefault();
  if (event.key === 'Enter') {
    handled();
    const samePress = event.repeat || event.timeStamp - lastEnter < SAME_PRESS_MS;
    lastEnter = event.timeStamp;
    if (samePress && (weighIn.field !== 'typing' || weighIn.questioned)) return;
    if (!scale.keep()) weighIn.enter();
  } else if (event.key === ' ' && scale.other !== null) {
    handled();
    scale.giveToOther();
  } else if (weighIn.littermate != null && !ctrl && namesLittermate(event.key, weighIn.littermate.collar.letter)) {
    handled();
    weighIn.giveAway();
  } else if (event.key === ' ' && row.doubt?.guessGrams != null) {
    handled();
    weighIn.takeGuess();
  } else if (weighIn.swap !== null && event.key.toLowerCase() === 'x' && !ctrl) {
    handled();
    weighIn.exchange();
  } else if (ctrl && event.key.toLowerCase() === 'z' && !event.shiftKey) {
    handled();
    weighIn.undo();
  } else if (ctrl && weighIn.field !== 'typing' && isRedo(event)) {
    handled();
    weighIn.redo();
  } else if (event.key === 'ArrowDown' || event.key === 'ArrowUp') {
    handled();
    const by = event.key === 'ArrowDown' ? 1 : -1;
    if (event.altKey) weighIn.arrange(by);
    else weighIn.step(by);
  } else if (event.key === 'PageUp') {
    handled();
    turn.choose({ ...turn.time, day: addDays(turn.time.day, -1), live: false });
  } else if (event.key === 'PageDown' && !turn.time.live) {
    handled();
    turn.choose(weighInNow(now().local));
  }
}

/** The collar's letter of the littermate that was asked about, or Space. */
function namesLittermate(key: string, letter: string): boolean {
  return key === ' ' || key.toUpperCase() === letter;
}

/** Ctrl Y, or Ctrl Shift Z. */
function isRedo(event: React.KeyboardEvent): boolean {
  const key = event.key.toLowerCase();
  return key === 'y' || (key === 'z' && event.shiftKey);
}
