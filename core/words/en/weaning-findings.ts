/** What is said of a day of weaning: who holds and why, what the numbers say beside the plan, what the last meals suggest. */

import type { Sex } from '../../reference/classes.ts';
import type { StoolHint, Suggestion } from '../../weaning/eaten.ts';
import type { WeaningFinding } from '../../weaning/weaning-findings.ts';
import { capital, numberWord, percentText } from './figures.ts';
import { pronouns } from './pronouns.ts';

/** "holds at 45 % until his gain is back for two days. He nurses first, then comes to the bowl." */
export function hold(share: number, sex: Sex): string {
  const { they, their } = pronouns(sex);
  return `holds at ${percentText(share, 0)} until ${their} gain is back for two days. ${capital(they)} nurses first, then comes to the bowl.`;
}

/** A finding in words, with where its bound stands. */
export function weaningFindingText(f: WeaningFinding): { sentence: string; mend: string | null; source: string } {
  const source = f.source ?? ('boundDays' in f ? `our own bound of ${f.boundDays} days` : '');
  switch (f.code) {
    case 'starts-early':
      return {
        sentence: `The first bowl is on day ${f.ageDays}. Until three weeks puppies live on milk alone.`,
        mend: 'Start between three and four weeks.',
        source,
      };
    case 'starts-late':
      return {
        sentence: `The first bowl is on day ${f.ageDays}. From four weeks milk alone no longer covers everything.`,
        mend: null,
        source,
      };
    case 'no-weight':
      return {
        sentence: `No weight yet: ${f.puppies.join(', ')}.`,
        mend: 'Weigh them; until then they are not on the sheet.',
        source,
      };
    case 'weight-old':
      return {
        sentence: `Not weighed for over ${numberWord(f.boundDays)} days: ${f.puppies.join(', ')}. The amounts are reckoned from an expected weight.`,
        mend: 'Weigh them today.',
        source,
      };
    case 'no-adult-weight':
      return {
        sentence:
          'No grown weight is written, so there is no published estimate to compare, and weights can be expected for two weeks only.',
        mend: 'Write the grown weight or the size on Puppies.',
        source,
      };
    case 'bowl-lean':
      return {
        sentence: `The bowls give about ${percentText(f.part, 0)} of the published estimate for their share of the food; the dam makes up the rest. The scale is the judge.`,
        mend: 'If they are not gaining as expected: more in the bowl, a richer mix, or slower steps.',
        source: `${source}. The bound of 80 % is our own`,
      };
    case 'faster-than-curve':
      return {
        sentence: `${percentText(f.share, 0)} from the bowl is quicker than the planning curve, which has ${percentText(f.low, 0)} to ${percentText(f.high, 0)} in this week.`,
        mend: 'Longer steps, if gains fall or stools are loose.',
        source,
      };
  }
}

const LEFT_OUT = 'Raw food that stood out is thrown away, not kept.';
const WEIGH_THEM =
  'Weigh them first. A puppy that is dull, thin, vomiting or has loose stools is not a poor eater: call your vet.';

/** What the last meals suggest. The caution goes with it, and is never left out. */
export function suggestionText(s: Suggestion): { sentence: string; caution: string | null } {
  switch (s.code) {
    case 'restore':
      return {
        sentence: `${capital(numberWord(s.cleanMeals))} meals were cleaned up. Weigh out the full amount again.`,
        caution: null,
      };
    case 'offer-again':
      return {
        sentence: `Lift what is left after ${s.liftMinutes} minutes. Offer the same amount at the next meal, freshly weighed.`,
        caution: LEFT_OUT,
      };
    case 'cut':
      return {
        sentence: `Food was left ${s.times === 2 ? 'twice' : `${s.times} times`} running. Weigh out ${percentText(s.cutShare, 0)} less from the next meal.`,
        caution: WEIGH_THEM,
      };
    case 'miss-meal':
      return {
        sentence: 'It keeps happening. Leave out the next meal, one only; water stays down.',
        caution: WEIGH_THEM,
      };
  }
}

export const STOOL_HINTS: Record<StoolHint['stool'], string> = {
  soft: 'Soft: check how much bone is in the mix, and rest the change for a day.',
  loose:
    'Loose: the step stands still for two days, water stays down. Small puppies dry out within hours: if one is dull, will not drink, or there is blood in it, call your vet now; if it is not better tomorrow, call too.',
  crumbly: 'Grey, white or crumbly: too much bone. Give less bone until it is normal again.',
};
