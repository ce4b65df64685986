/**
 * The notes of the second sheet. Safety sentences are always there, whatever the rules; an official time stands beside
 * a longer house rule. Sources: feeding.md sections 5 and 6 of the project's reference, named beside each figure.
 */

import { capital, numberWord } from '../calendar/words.ts';
import { keepingOf, OFFICIAL_KEEPING, thawHours } from '../feeding/keeping.ts';
import type { HouseRules } from '../feeding/rules.ts';
import { pronouns } from '../litter/pronouns.ts';
import type { House } from '../people/house.ts';
import type { Sex } from '../reference/classes.ts';
import { LARGE_ADULT_KG } from '../reference/feeding/limits.ts';
import { type FoodUnit, foodText } from '../units/food.ts';
import { roundedDown } from './amounts.ts';
import type { PlanDocument, PlanNote, Run } from './document.ts';
import { PUBLISHED_TREAT_SHARE, partWord } from './wording.ts';

export interface NoteFacts {
  readonly rules: HouseRules;
  readonly sex: Sex;
  readonly unit: FoodUnit;
  /** Grams a day this week, null when it is not known. */
  readonly dayGrams: number | null;
  readonly adultKg: number | null;
}

/** A grown dog at most this heavy is a toy: a missed meal can bring its blood sugar down (textbooks, from memory). */
const TOY_KG = 5;

const say = (text: string): Run => ({ text, as: 'plain' });
const strong = (text: string): Run => ({ text, as: 'strong' });
const official = (text: string): Run => ({ text, as: 'official' });

/** The notes in the order in which they are read. */
export function planNotes(facts: NoteFacts): PlanNote[] {
  return [
    leftInBowl(facts),
    bones(facts),
    firstWeek(),
    thawing(facts),
    treats(facts),
    waterAndGreens(facts),
    growth(facts),
    hygiene(),
  ];
}

function leftInBowl({ rules, sex, adultKg }: NoteFacts): PlanNote {
  const { they } = pronouns(sex);
  const toy = adultKg !== null && adultKg <= TOY_KG;
  return {
    key: 'left',
    heading: 'Food left in the bowl',
    runs: [
      say('Lift the bowl after '),
      strong(`${rules.liftAfterMinutes} minutes`),
      say('. Offer the same food at the next meal. Left again: give '),
      strong(`${partWord(rules.cutShare)} less`),
      ...(toy
        ? [
            say('. Still left: '),
            strong('call the vet'),
            say(`. So small a puppy must not go hungry: ${they} can turn weak within hours.`),
          ]
        : [say('. Still left: leave out '), strong('one meal'), say(', never two before six months.')]),
      say(' Most new owners feed too much.'),
    ],
  };
}

function bones({ rules, sex }: NoteFacts): PlanNote {
  const { them, their } = pronouns(sex);
  return {
    key: 'bones',
    heading: 'Bones',
    runs: [
      strong(`Raw, from the freezer, bigger than ${their} muzzle`),
      say(
        `; no hard leg bones. Ask me before the first one. In place of one meal. Stay with ${them} for ${rules.boneMinutes} minutes, then put it back. Never cooked, smoked or dried. Pale, crumbly stool: less bone. `,
      ),
      official('Official caution (US FDA): bones of any size are unsafe. You may leave them out; the mix holds ground bone.'),
    ],
  };
}

/** Both official times are always printed; a house rule that is longer says so. */
function thawing({ rules, unit }: NoteFacts): PlanNote {
  const cold = unit === 'g' ? '4\u00a0°C' : '40\u00a0°F';
  const each = unit === 'g' ? '2.25\u00a0kg' : '5\u00a0lb';
  const { houseHours, longer } = keepingOf(rules);
  const bothTimes = `${OFFICIAL_KEEPING['uk-ie'].hours} hours (UK, Ireland), ${OFFICIAL_KEEPING.us.hours} at most (US)`;
  return {
    key: 'thawing',
    heading: 'Thawing and keeping',
    runs: [
      say(`In the refrigerator at ${cold} or colder, in a closed box on the lowest shelf: `),
      strong(`${rules.thawHours} hours for a pack`),
      say(`, and a day for each ${each} of it. `),
      ...(rules.thawHours < thawHours(1) ? [official('Official: never less than 24 hours. ')] : []),
      say('Feed within '),
      strong(`${houseHours} hours`),
      say(' of thawing. '),
      official(
        longer ? `That is my own time. The official one is shorter, and safer: ${bothTimes}. ` : `Official: ${bothTimes}. `,
      ),
      strong('Never thaw on the counter.'),
      say(' Do not freeze again.'),
    ],
  };
}

function treats({ rules, unit, dayGrams, sex }: NoteFacts): PlanNote {
  const { their } = pronouns(sex);
  if (rules.treatShare === 0) {
    return { key: 'treats', heading: 'Treats', runs: [strong('None'), say(` for now: use bits of ${their} own food.`)] };
  }
  const runs: Run[] = [say('At most '), strong(`${partWord(rules.treatShare)} of the day`)];
  const most = dayGrams === null ? 0 : roundedDown(dayGrams * rules.treatShare, unit);
  if (most > 0) runs.push(say(': '), strong(foodText(most, unit)), say(' now'));
  runs.push(say('. Take it off the next meal.'));
  if (rules.treatShare > PUBLISHED_TREAT_SHARE) runs.push(official(' Published limit: a tenth.'));
  return { key: 'treats', heading: 'Treats', runs };
}

function waterAndGreens({ rules, unit }: NoteFacts): PlanNote {
  const spoons = rules.vegetableSpoonsPerHalfPound;
  const amount = spoons === 1 ? 'one tablespoon' : `${Number.isInteger(spoons) ? numberWord(spoons) : spoons} tablespoons`;
  const greens = ` A mix without vegetables: ${amount} of chopped greens for each ${unit === 'g' ? '225\u00a0g' : 'half pound'}.`;
  return {
    key: 'water',
    heading: spoons === 0 ? 'Water' : 'Water, vegetables',
    runs: [strong('Clean water, always'), say(`, fresh morning and evening.${spoons === 0 ? '' : greens}`)],
  };
}

function firstWeek(): PlanNote {
  return {
    key: 'first-week',
    heading: 'First week',
    runs: [strong('Same food, same times.'), say(' Change any food slowly, over 7 to 10 days.')],
  };
}

function growth({ adultKg, sex }: NoteFacts): PlanNote {
  const { they, them, their } = pronouns(sex);
  if (adultKg !== null && adultKg > LARGE_ADULT_KG) {
    return {
      key: 'growth',
      heading: 'Slow growth is safe growth',
      runs: [
        say('Too much food, or added calcium, harms growing joints. Keep '),
        strong(`${them} lean`),
        say(`: ribs easily felt, a waist from above. ${capital(they)} will be as big in the end.`),
      ],
    };
  }
  return {
    key: 'growth',
    heading: 'Lean is right',
    runs: [say(`You should feel ${their} ribs easily and see a waist. Too thin or too round: change by a tenth, and ring me.`)],
  };
}

function hygiene(): PlanNote {
  return {
    key: 'hygiene',
    heading: 'Hands and kitchen',
    runs: [
      say('After every meal wash hands for '),
      strong('20 seconds'),
      say(', and bowls, knives, surfaces, with hot soapy water. No face licking. '),
      strong('Should not handle raw food:'),
      say(' children under 5, pregnant women, older people, anyone with weak immunity. '),
      official('Freezing does not kill bacteria; health bodies and vet associations advise against raw feeding.'),
    ],
  };
}

/** When to call the vet; the buyer writes a number on the line. */
export function vetBox(house: Pick<House, 'vetName' | 'vetPhone'>): PlanDocument['vet'] {
  const [name, phone] = [house.vetName.trim(), house.vetPhone.trim()];
  return {
    heading: 'Call the vet today',
    runs: [
      say(
        [
          'Eats nothing at two meals running',
          'vomits again and again',
          'loose stool for a day, or any blood',
          'strains, gags or drools after a bone',
          'swollen belly',
          'lame',
          'limp or dull.',
        ].join('\u00a0· '),
      ),
    ],
    lines: [
      { label: 'Your vet', name: '', phone: '' },
      ...(name === '' && phone === '' ? [] : [{ label: 'Our vet', name, phone }]),
    ],
  };
}

export const LAST_LINE = 'This plan is guidance. Your vet knows your puppy. Local advice differs.';
