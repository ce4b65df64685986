/** The puppies of a litter as weaning wants them: their weights, the pace to expect, and what they will weigh. It needs growth and feeding both. */
import { dateOf } from '../calendar/clock.ts';
import { expectedAdultKg, forecastWeight } from '../growth/forecast.ts';
import type { GrowthInput } from '../growth/input.ts';
import { referenceGain } from '../growth/reference-gain.ts';
import { seriesOf } from '../growth/series.ts';
import { type Litter, type Puppy, puppyName } from '../litter/litter.ts';
import type { WeaningPuppy } from './weaning.ts';

/** Birth weight that the pace is looked up with when nobody weighed at birth. */
const USUAL_BIRTH_GRAMS = 350;
const AT_BIRTH_DAYS = 2;

/** In the order given; `growth` holds the readings of the litter. */
export function weaningPuppies(litter: Litter, puppies: readonly Puppy[], growth: GrowthInput): WeaningPuppy[] {
  return puppies.map((puppy) => {
    const series = seriesOf(growth, puppy.id);
    const [first, last] = [series[0], series.at(-1)];
    const adult = expectedAdultKg(litter, puppy.sex);
    const adultKg = adult?.kg ?? null;
    const forecast =
      last === undefined
        ? null
        : forecastWeight({
            adultKg,
            adultFrom: adult?.from,
            sizeClass: litter.sizeClass,
            anchorAgeDays: last.ageDays,
            anchorGrams: last.grams,
          });
    const birth = first !== undefined && first.ageDays < AT_BIRTH_DAYS ? first.grams : USUAL_BIRTH_GRAMS;
    return {
      id: puppy.id,
      name: puppyName(puppy),
      born: dateOf(puppy.bornAt),
      adultKg,
      weighings: series.map(({ at, ageDays, grams }) => ({ day: dateOf(at), ageDays, grams })),
      pace: referenceGain(birth).pace,
      forecast: (age) => forecast?.at(age)?.mid ?? null,
    };
  });
}
