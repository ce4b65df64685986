/** How the numbers of a plan came about, for the one who prints it. */

import type { HouseRules } from '../feeding/rules.ts';
import type { AdultFrom } from '../growth/forecast.ts';
import type { PlanBasis } from './basis.ts';
import type { PlanDocument } from './document.ts';
import { weightText } from './weights.ts';
import { dateInWords, partWord } from './wording.ts';

const FROM: Record<AdultFrom, string> = {
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

/** Where each figure of the plan comes from, line by line, for the foot of the second sheet. */
export function planProvenance({ weights, rules, house, food }: PlanBasis): PlanDocument['provenance'] {
  const { anchor, adult } = weights;
  const r = rules.rules;
  return [
    {
      what: 'Expected weight',
      how:
        anchor === null
          ? 'none: no weight is written down'
          : `a published growth curve by size, started at ${weightText(anchor.grams, house.massUnit)} on ${dateInWords(anchor.on)}; what the puppy is above or below the curve is carried on and fades. The band opens from 2 to 20 %: our own choice, not published`,
    },
    {
      what: 'Grown weight',
      how: adult === null ? 'not known' : `about ${weightText(adult.kg * 1000, house.massUnit)}, ${FROM[adult.from]}`,
    },
    {
      what: 'Amount a day',
      how: `${BASES[r.basis]}: ${percent(r.shareYoung)} until ${r.youngUntilMonths} months, ${percent(r.shareMiddle)} at ${r.middleMonths}, ${percent(r.shareAdult)} from ${r.adultMonths} (common practice, no source). It never falls by more than a tenth in a week, and does not rise again once it has begun to fall`,
    },
    {
      what: 'Bowls',
      how: 'equal, rounded to what can be weighed; the day is their sum. In the two weeks of change midday is half of the others, then a quarter',
    },
    {
      what: 'Meals',
      how: `three, two from ${r.twoMealsFromMonths} months (common practice, no source). The published norm is four to 12 weeks (from memory)`,
    },
    {
      what: 'By real weight',
      how: `the same rule at that weight; cells far from the expected weight for the age stay empty. Energy, where it is used: ${Math.round(food.kcalPer100g)} kcal per 100 g, ${food.name} (${food.source})`,
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

function percent(share: number): string {
  return `${Number((share * 100).toFixed(1))}\u00a0%`;
}
