import { type Puppy, puppyName } from '../../../core/litter/litter.ts';
import type { MassUnit } from '../../../core/units/mass.ts';
import { words } from '../../state/words.ts';
import { useScaleStore } from './scale-store.ts';
import type { ScaleWeighing } from './useScaleWeighing.ts';

/** What the scale asks about the puppy in hand: whose weight it is, or whether its middle will do. */
export function ScaleAsks({
  scale,
  puppy,
  puppies,
  unit,
}: {
  scale: ScaleWeighing;
  puppy: Puppy;
  puppies: readonly Puppy[];
  unit: MassUnit;
}) {
  const { other, offer } = scale;
  const who = other === null ? undefined : puppies.find((p) => p.id === other.puppyId);
  if (other !== null && who !== undefined) {
    const [name, inHand] = [puppyName(who), puppyName(puppy)];
    return (
      <>
        <span className="fact">
          {words.scale.fits(name, words.massText(other.expectedGrams, unit), inHand, words.massText(other.inHandGrams, unit))}
        </span>
        <span className="answers">
          <button type="button" tabIndex={-1} onClick={scale.giveToOther}>
            <kbd>{words.keys.space}</kbd> <b>{words.scale.give(name, words.massText(other.grams, unit))}</b>
          </button>
          <button type="button" tabIndex={-1} onClick={scale.keep}>
            <kbd>{words.keys.enter}</kbd> {words.scale.isInHand(inHand)}
          </button>
        </span>
      </>
    );
  }
  if (offer !== null) {
    return (
      <>
        <span className="fact">
          {words.scale.offer(words.massText(offer.grams, unit), words.massText(offer.spread / 2, unit))}
        </span>
        <span className="answers">
          <button type="button" tabIndex={-1} onClick={scale.keep}>
            <kbd>{words.keys.enter}</kbd> <b>{words.scale.take(words.massText(offer.grams, unit))}</b>
          </button>
        </span>
      </>
    );
  }
  return null;
}

/** What the scale is doing, in a few words that change only when it does something else. */
export function ScalePhase() {
  const fault = useScaleStore((s) => s.capture.fault);
  const loaded = useScaleStore((s) => s.capture.loaded);
  const taken = useScaleStore((s) => s.capture.taken);
  const takenOf = useScaleStore((s) => s.takenOf);
  const phase =
    fault !== null
      ? words.scale.faults[fault]
      : !loaded
        ? words.scale.ready
        : taken
          ? words.scale.takeOff(takenOf ?? '')
          : words.scale.moving;
  return <span className="scale-phase">{phase} </span>;
}
