/** The notes of the go-home plan, and how its numbers came about. `*strong*` and `_official_` words become runs. */
import { mealAges } from '../../feeding/meals.ts';
import type { HouseRules } from '../../feeding/rules.ts';
import type { Food } from '../../food/food.ts';
import type { AdultFrom } from '../../growth/forecast.ts';
import type { LastWeight } from '../../growth/puppy-weights.ts';
import type { NoteFinding } from '../../homing/notes.ts';
import { pronouns } from '../../litter/pronouns.ts';
import type { Sex } from '../../reference/classes.ts';
import { isMetric, type MassUnit } from '../../units/mass.ts';
import { foodText, weightText } from './amounts.ts';
import { dateInWords } from './dates.ts';
import { capital, numberWord, partWord, percentText } from './figures.ts';
import { foodName, foodSource } from './food.ts';

interface Note {
  heading: string;
  text: string;
}

export const planNoteWords = {
  note,
  vet: {
    heading: 'Call the vet today',
    text: [
      'Eats nothing at two meals running',
      'vomits again and again',
      'loose stool for a day, or any blood',
      'strains, gags or drools after a bone',
      'swollen belly',
      'lame',
      'limp or dull.',
    ].join('\u00a0· '),
    yours: 'Your vet',
    ours: 'Our vet',
  },
  provenance,
};

function note(found: NoteFinding, sex: Sex): Note {
  const { they, them, their } = pronouns(sex);
  switch (found.code) {
    case 'left':
      return { heading: 'Food left in the bowl', text: left(found, they) };
    case 'bones':
      return {
        heading: 'Bones',
        text: `*Raw, from the freezer, bigger than ${their} muzzle*; no hard leg bones. Ask me before the first one. In place of one meal. Stay with ${them} for ${found.minutes} minutes, then put it back. Never cooked, smoked or dried. Pale, crumbly stool: less bone. _Official caution (US FDA): bones of any size are unsafe. You may leave them out; the mix holds ground bone._`,
      };
    case 'first-week':
      return { heading: 'First week', text: '*Same food, same times.* Change any food slowly, over 7 to 10 days.' };
    case 'thawing':
      return { heading: 'Thawing and keeping', text: thawing(found) };
    case 'treats':
      return { heading: 'Treats', text: treats(found, their) };
    case 'water':
      return water(found);
    case 'growth':
      return found.large
        ? {
            heading: 'Slow growth is safe growth',
            text: `Too much food, or added calcium, harms growing joints. Keep *${them} lean*: ribs easily felt, a waist from above. ${capital(they)} will be as big in the end.`,
          }
        : {
            heading: 'Lean is right',
            text: `You should feel ${their} ribs easily and see a waist. Too thin or too round: change by a tenth, and ring me.`,
          };
    case 'hygiene':
      return {
        heading: 'Hands and kitchen',
        text: 'After every meal wash hands for *20 seconds*, and bowls, knives, surfaces, with hot soapy water. No face licking. *Should not handle raw food:* children under 5, pregnant women, older people, anyone with weak immunity. _Freezing does not kill bacteria; health bodies and vet associations advise against raw feeding._',
      };
  }
}

type Of<C extends NoteFinding['code']> = Extract<NoteFinding, { code: C }>;

function left({ liftMinutes, cutShare, toy }: Of<'left'>, they: string): string {
  const again = toy
    ? `*call the vet*. So small a puppy must not go hungry: ${they} can turn weak within hours.`
    : 'leave out *one meal*, never two before six months.';
  return `Lift the bowl after *${liftMinutes} minutes*. Offer the same food at the next meal. Left again: give *${partWord(cutShare)} less*. Still left: ${again} Most new owners feed too much.`;
}

/** Both official times are always printed; a house rule that is longer says so. */
function thawing(found: Of<'thawing'>): string {
  const [cold, each] = isMetric(found.unit) ? ['4\u00a0°C', '2.25\u00a0kg'] : ['40\u00a0°F', '5\u00a0lb'];
  const bothTimes = `${found.ukIeHours} hours (UK, Ireland), ${found.usHours} at most (US)`;
  const short = found.short ? '_Official: never less than 24 hours. _' : '';
  const official = found.longer
    ? `_That is my own time. The official one is shorter, and safer: ${bothTimes}. _`
    : `_Official: ${bothTimes}. _`;
  return `In the refrigerator at ${cold} or colder, in a closed box on the lowest shelf: *${found.thawHours} hours for a pack*, and a day for each ${each} of it. ${short}Feed within *${found.houseHours} hours* of thawing. ${official}*Never thaw on the counter.* Do not freeze again.`;
}

function treats({ share, grams, over, unit }: Of<'treats'>, their: string): string {
  if (share === 0) return `*None* for now: use bits of ${their} own food.`;
  const now = grams === null ? '' : `: *${foodText(grams, unit)}* now`;
  return `At most *${partWord(share)} of the day*${now}. Take it off the next meal.${over ? '_ Published limit: a tenth._' : ''}`;
}

function water({ spoons, unit }: Of<'water'>): Note {
  if (spoons === 0) return { heading: 'Water', text: '*Clean water, always*, fresh morning and evening.' };
  const amount = spoons === 1 ? 'one tablespoon' : `${Number.isInteger(spoons) ? numberWord(spoons) : spoons} tablespoons`;
  return {
    heading: 'Water, vegetables',
    text: `*Clean water, always*, fresh morning and evening. A mix without vegetables: ${amount} of chopped greens for each ${isMetric(unit) ? '225\u00a0g' : 'half pound'}.`,
  };
}

const ADULT_FROM: Record<AdultFrom, string> = {
  breeder: 'as you wrote it in the facts of the litter',
  'other-sex':
    'from what you wrote for the other sex; a grown dog weighs about 18 % more than a bitch (computed from one published large breed)',
  class: 'one ordinary weight for the size you chose; our own choice, not published',
};

const BASES: Record<HouseRules['basis'], string> = {
  share: 'house rule, a share of the expected weight by age',
  energy: 'published energy estimate over the energy of the mix',
  'share-with-floor': 'house rule, a share of the expected weight, but never under the chosen part of the energy estimate',
};

/** Where each figure of the plan comes from, line by line. */
function provenance(
  anchor: Pick<LastWeight, 'grams' | 'on'> | null,
  adult: { readonly kg: number; readonly from: AdultFrom } | null,
  r: HouseRules,
  food: Food,
  unit: MassUnit,
): { what: string; how: string }[] {
  const share = (part: number) => percentText(part, 1);
  const { fourUntilWeeks, twoFromMonths } = mealAges(r, adult?.kg ?? null);
  return [
    {
      what: 'Expected weight',
      how:
        anchor === null
          ? 'none: no weight is written down'
          : `a published growth curve by size, started at ${weightText(anchor.grams, unit)} on ${dateInWords(anchor.on)}; what the puppy is above or below the curve is carried on and fades. The band opens from 2 to 20 %: our own choice, not published`,
    },
    {
      what: 'Grown weight',
      how: adult === null ? 'not known' : `about ${weightText(adult.kg * 1000, unit)}, ${ADULT_FROM[adult.from]}`,
    },
    {
      what: 'Amount a day',
      how: `${BASES[r.basis]}: ${share(r.shareYoung)} until ${r.youngUntilMonths} months, ${share(r.shareMiddle)} at ${r.middleMonths}, ${share(r.shareAdult)} from ${r.adultMonths} (common practice, no source). It never falls by more than a tenth in a week, and does not rise again once it has begun to fall`,
    },
    {
      what: 'Bowls',
      how: 'equal, rounded to what can be weighed; the day is their sum. In the two weeks of change midday is half of the others, then a quarter',
    },
    {
      what: 'Meals',
      how: `${fourUntilWeeks > 0 ? `four to ${fourUntilWeeks} weeks, then three` : 'three'}, two from ${twoFromMonths} months (common practice, no source). The published norm is four to 12 weeks (from memory)`,
    },
    {
      what: 'By real weight',
      how: `the same rule at that weight; cells far from the expected weight for the age stay empty. Energy, where it is used: ${Math.round(food.kcalPer100g)} kcal per 100 g, ${foodName(food)} (${foodSource(food.source)})`,
    },
    {
      what: 'Treats',
      how: `at most ${partWord(r.treatShare)} of the day. Published: a tenth (Hand et al. 2010, Small Animal Clinical Nutrition, 5th edition, p. 315, seen)`,
    },
    {
      what: 'Food left',
      how: 'common practice, no source; published norms speak of 20 minutes at weaning and steps of a tenth (second-hand, seen)',
    },
    {
      what: 'Thawing and keeping',
      how: '24 h for each 2.25 kg (USDA Food Safety and Inspection Service, second-hand); 24 h after thawing in the UK and Ireland (Food Standards Agency, second-hand), one to two days in the US (second-hand)',
    },
    {
      what: 'Hands, and who should not handle raw food',
      how: 'US Food and Drug Administration, Centers for Disease Control, Food Standards Agency (second-hand); AVMA policy (seen); WSAVA Global Nutrition Committee (second-hand)',
    },
    { what: 'Bones', how: 'common practice, no source; the caution is the US Food and Drug Administration’s (second-hand)' },
  ];
}
