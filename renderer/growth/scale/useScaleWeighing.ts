import { useEffect, useRef, useState } from 'react';
import { type LikelierPuppy, likelierPuppy } from '../../../core/growth/doubt.ts';
import { puppyName } from '../../../core/litter/litter.ts';
import { now } from '../../data/now.ts';
import type { LitterGrowthFacts } from '../../facts/useLitterGrowth.ts';
import type { WeighIn } from '../weigh-in/useWeighIn.ts';
import { beginWeighing, findScale, onPlugged, takeWeight, tellScale, useScaleStore } from './scale-store.ts';
import { tick } from './tick.ts';

/** What the scale is about, for the row in hand. */
export interface ScaleWeighing {
  /** Connected, and the weigh-in is that of now: another day's weights are typed. */
  readonly listens: boolean;
  /** A steady weight that fits another puppy much better; waits for an answer. */
  readonly other: (LikelierPuppy & { readonly grams: number }) | null;
  /** A median of a puppy that does not lie still; Enter takes it. Grams. */
  readonly offer: { readonly grams: number; readonly spread: number } | null;
  /** Enter: takes the offer, or keeps a weight for the puppy in hand. False when there is nothing to answer. */
  keep(): boolean;
  /** Space: the weight is the other puppy's. False when there is nothing to answer. */
  giveToOther(): boolean;
}

/**
 * Settled weights go the way of typed ones: into the field of the puppy in hand, and Enter. Where something is written in
 * it already they are only filled in; where she is typing, they wait.
 */
export function useScaleWeighing(weighIn: WeighIn, facts: LitterGrowthFacts, isNow: boolean): ScaleWeighing {
  const { house, input } = facts;
  const status = useScaleStore((s) => s.status);
  const outcome = useScaleStore((s) => s.capture.outcome);
  const [entering, setEntering] = useState<{ id: string; text: string; isSure: boolean } | null>(null);
  const [ticking, setTicking] = useState<string | null>(null);
  const row = weighIn.rows.find((r) => r.puppy.id === weighIn.inHandId) ?? null;
  const connected = status === 'on' && isNow;
  const [listens, setListens] = useState(false);
  useEffect(() => {
    if (connected) beginWeighing();
    setListens(connected);
  }, [connected]);

  useFindScale(facts);
  useEffect(() => tellScale(house.scaleStepGrams, house.scale?.unit ?? null), [house.scaleStepGrams, house.scale?.unit]);

  const steady = listens && outcome?.steady === true && weighIn.field !== 'typing' ? outcome.grams : null;
  const found =
    steady === null || input === null || row === null || weighIn.field !== 'empty'
      ? null
      : likelierPuppy(input, row.puppy.id, now().instant, steady);
  const other = found === null || steady === null ? null : { ...found, grams: steady };
  const offer = listens && outcome !== null && !outcome.steady && weighIn.field === 'empty' ? outcome : null;

  const put = (id: string, grams: number, enter: boolean, isSure: boolean) => {
    takeWeight(nameOf(weighIn, id));
    const text = weighIn.fill(id, grams);
    if (enter) setEntering({ id, text, isSure });
  };

  const before = useRef({ id: weighIn.inHandId, typing: false });
  useEffect(() => {
    const was = before.current;
    before.current = { id: weighIn.inHandId, typing: weighIn.field === 'typing' && !weighIn.fromScale };
    // She typed for the puppy on the scale and went on: its weight is not the next one's.
    if (was.typing && was.id !== weighIn.inHandId) takeWeight(nameOf(weighIn, was.id));
    else if (steady !== null && row === null) takeWeight('');
    else if (steady !== null && row !== null && other === null && entering === null) {
      put(row.puppy.id, steady, weighIn.field === 'empty', false);
    }
  });
  useEffect(() => {
    if (entering === null) return;
    setEntering(null);
    if (weighIn.inHandId !== entering.id || weighIn.text !== entering.text) return;
    setTicking(entering.id);
    weighIn.enter(entering.isSure);
  });
  useEffect(() => {
    if (ticking === null) return;
    setTicking(null);
    // A question keeps its puppy in hand, and makes no sound.
    if (weighIn.inHandId !== ticking && house.scaleTick) tick();
  }, [ticking, weighIn.inHandId, house.scaleTick]);

  return {
    listens,
    other,
    offer,
    keep: () => {
      const grams = other?.grams ?? offer?.grams;
      if (row === null) return false;
      if (grams === undefined) {
        if (weighIn.field === 'typing' && !weighIn.fromScale) takeWeight(puppyName(row.puppy));
        return false;
      }
      put(row.puppy.id, grams, true, other !== null);
      return true;
    },
    giveToOther: () => {
      if (other === null) return false;
      put(other.puppyId, other.grams, true, true);
      return true;
    },
  };
}

function nameOf(weighIn: WeighIn, id: string | null): string {
  const puppy = weighIn.rows.find((r) => r.puppy.id === id)?.puppy;
  return puppy === undefined ? '' : puppyName(puppy);
}

/** The scale of last time is opened when the page is, when it is plugged in, and when it is switched on again. */
function useFindScale({ house }: LitterGrowthFacts): void {
  const remembered = house.scale;
  useEffect(() => {
    if (remembered === null) return;
    const find = () => void findScale(remembered);
    find();
    return onPlugged(find);
  }, [remembered]);
}
