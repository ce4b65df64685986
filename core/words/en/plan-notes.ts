/** The notes of the go-home plan, and how its numbers came about. `*strong*` and `_official_` words become runs. */
import { mealAges } from '../../feeding/meals.ts';
import type { HouseRules } from '../../feeding/rules.ts';
import type { Food } from '../../food/food.ts';
import type { AdultFrom } from '../../growth/forecast.ts';
import type { LastWeight } from '../../growth/puppy-weights.ts';
import type { GroundBone, NoteFinding } from '../../homing/notes.ts';
import type { Sex } from '../../reference/classes.ts';
import { isMetric, type MassUnit } from '../../units/mass.ts';
import { foodText, weightText } from './amounts.ts';
import { dateInWords } from './dates.ts';
import { capital, numberWord, partWord, percentText } from './figures.ts';
import { foodName, foodSource } from './food.ts';
import { pronouns } from './pronouns.ts';

interface Note {
  heading: string;
  text: string;
}

export const planNoteWords = {
  note,
  vet: {
    now: { heading: 'The vet, now', note: 'ring, and drive' },
    today: { heading: 'The vet, today', note: 'ring before evening' },
    lowSugar,
    nowLines: [
      'Swollen belly, or retching and nothing comes',
      'Trouble breathing, or choking',
      'A fit, or collapse',
      'Pale gums',
      'Swallowed poison (sheet 3): bring the packet',
    ],
    todayLines: (isToy: boolean) => [
      isToy ? 'Eats nothing at *one meal*' : 'Eats nothing at *two meals running*',
      'Vomits again and again',
      'Loose stool for a day, or any blood',
      'Strains, gags or drools after a bone',
      'Lame, or dull',
    ],
    yours: 'Your vet',
    outOfHours: 'Out of hours',
    ours: 'Our vet',
    oursOutOfHours: 'Ours out of hours',
  },
  provenance,
};

/** Only the smallest run short of sugar; what to give is for the vet to say. */
function lowSugar(sex: Sex): string {
  return `*Weak, wobbly or cold: it may be low blood sugar.* Wrap ${pronouns(sex).them} up warm, ring the vet now and ask what to give on the way.`;
}

/** In a frame of its own. */
const BOXED: readonly NoteFinding['code'][] = ['poisons'];

function note(found: NoteFinding, sex: Sex): Note & { boxed: boolean } {
  return { ...noteText(found, sex), boxed: BOXED.includes(found.code) };
}

function noteText(found: NoteFinding, sex: Sex): Note {
  const { they, them, their } = pronouns(sex);
  switch (found.code) {
    case 'left':
      return { heading: 'Food left in the bowl', text: left(found, they) };
    case 'bones':
      return { heading: 'Bones, by age', text: bones(found, them, their) };
    case 'treats':
      return { heading: 'Treats and fat', text: treats(found, their) };
    case 'droppings':
      return {
        heading: 'Droppings and worms',
        text: '*Right:* firm, brown, small. *Pale, crumbly:* too much bone. *Soft:* too rich, too much, or changed too fast; for a day: the vet. *Black or red:* the vet, today. *Worms:* ring the vet for a dose.',
      };
    case 'growth':
      return found.large
        ? {
            heading: 'Slow growth is safe growth',
            text: `Too much food, or added calcium, harms growing joints. *Lean is right:* ribs easily felt, a waist from above. ${capital(they)} will be as big in the end.`,
          }
        : {
            heading: 'Lean is right',
            text: `You should feel ${their} ribs easily and see a waist. Too thin or too round: ring me.`,
          };
    case 'poisons':
      return {
        heading: 'Poisons of the kitchen',
        text: `*Onion, garlic, leek, chives*, raw, cooked or powdered · *grapes, raisins, currants* · *chocolate*, cocoa, coffee · *xylitol* (birch sugar) in gum, sweets, nut butters · macadamia nuts · alcohol, raw dough · mouldy food · people’s painkillers. *Swallowed: ring the vet now*, packet in hand. Do not make ${them} vomit unless the vet says so.`,
      };
    case 'choking':
      return {
        heading: 'Choking',
        text: `No breath, pawing at ${their} mouth: *ring the vet and drive.* Take out only what you can see; no finger in blind. *Ask your vet to show you the rest before you need it.*`,
      };
    case 'thawing':
      return found.dried ? keepingDry() : { heading: 'Thawing and keeping', text: thawing(found) };
    case 'water':
      return water(found);
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
    ? `Nothing eaten at one meal: *ring the vet*. So small a puppy must not go hungry: ${they} can turn weak within hours.`
    : 'Keeps happening: ring me. No meal is left out before six months. Most new owners feed too much.';
  return `Lift it after *${liftMinutes} minutes*, cover it, into the refrigerator. Offer it *once*, at the next meal; then away. Happens again: *${partWord(cutShare)} less*. ${again}`;
}

const GROUND: Record<GroundBone, string> = {
  some: 'the mix holds ground bone',
  none: 'this food holds no ground bone: ask me what gives the calcium',
  unknown: 'ask me what gives the calcium: of bone in this food nothing is known',
};

function bones({ minutes, ground, toy }: Of<'bones'>, them: string, their: string): string {
  const [first, later] = toy ? ['a wing tip', ''] : ['a wing, a pork riblet', ' *From 6 months* neck, breast of lamb.'];
  return `*To 12 weeks none:* ${GROUND[ground]}. *From 12 weeks* soft ones: ${first}.${later} Raw, from the freezer, *bigger than ${their} muzzle*, in place of one meal; stay with ${them} for ${minutes} minutes, then put it back. No leg bones. Never cooked, smoked or dried. Ask me before the first. _Common practice. Official caution (US FDA): bones of any size are unsafe. You may leave them out._`;
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

/** A food out of a bag is not thawed; soaked, it is as perishable as raw meat. */
function keepingDry(): Note {
  return {
    heading: 'Soaking and keeping',
    text: 'Keep the bag *closed, dry and cool*. Soak it with water as the pack says before each meal; *what was soaked and left is thrown away*. Freeze-dried raw meat is raw meat: the same care for hands and bowls. Raw meat beside it: *never thaw on the counter*; _official: feed within 24 hours (UK, Ireland), 48 at most (US) of thawing._',
  };
}

function treats({ share, kcal, grams, over, unit }: Of<'treats'>, their: string): string {
  const fat = '*No fat trimmings, skin or drippings:* they can inflame the pancreas. Vomiting with a sore belly: the vet, today.';
  if (share === 0) return `Treats: *none* for now; use bits of ${their} own food. ${fat}`;
  const now = grams === null || kcal === null ? '' : `, now *${kcal} kcal, or ${foodText(grams, unit)} of the food*`;
  return `Treats: at most *${partWord(share)} of the energy*${now}; off the next meal.${over ? ' _Published limit: a tenth._' : ''} ${fat}`;
}

function water({ spoons, unit }: Of<'water'>): Note {
  const change = 'First week: *same food, same times.* Then change over 7 to 10 days: a quarter new, half, three quarters, all.';
  if (spoons === 0)
    return { heading: 'Water and change of food', text: `*Clean water, always*, fresh morning and evening. ${change}` };
  const amount = spoons === 1 ? 'one tablespoon' : `${Number.isInteger(spoons) ? numberWord(spoons) : spoons} tablespoons`;
  return {
    heading: 'Water, greens, change',
    text: `*Clean water, always.* This mix holds no vegetables: ${amount} of chopped greens for each ${isMetric(unit) ? '225\u00a0g' : 'half pound'}. ${change}`,
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
      how: `up to the middle of the range the amount for the age; above it as much more as the same rule gives, up to the top of the range. Energy, where it is used: ${Math.round(food.kcalPer100g)} kcal per 100 g, ${foodName(food)} (${foodSource(food.source)})`,
    },
    {
      what: 'Treats',
      how: `at most ${partWord(r.treatShare)} of the day’s energy. Published: a tenth (Hand et al. 2010, Small Animal Clinical Nutrition, 5th edition, p. 315, seen)`,
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
    {
      what: 'Bones, and the first one by age',
      how: 'common practice, no source; the caution is the US Food and Drug Administration’s (second-hand)',
    },
    {
      what: 'When to ring the vet, poisons, choking, low blood sugar, fat and the pancreas',
      how: 'general first aid, from memory, no source: each line sends to the vet. Have your own vet read it',
    },
    {
      what: 'The gain at which to ring',
      how: 'half of what the forecast lets expect in a week; for a toy two mornings without gain. Our own choice, not published',
    },
  ];
}
