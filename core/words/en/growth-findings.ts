/** What the growth method finds, in sentences: short, with numbers and day names. They point, they never diagnose. */
import type { Doubt, Oddity, Question } from '../../growth/doubt.ts';
import type { ReadingFinding } from '../../growth/findings.ts';
import type { Slip } from '../../growth/guesses.ts';
import type { LitterFinding, LitterTodo, PuppyFinding, PuppyTodo, ShortGain } from '../../growth/puppy-findings.ts';
import type { Sex } from '../../reference/classes.ts';
import { isMetric, type MassUnit } from '../../units/mass.ts';
import { massFigure, massText } from './amounts.ts';
import { capital, numberWord } from './figures.ts';
import { type Pronouns, pronouns } from './pronouns.ts';
import { sinceWhen, weighingName, whenBefore, whenBeforeOwner } from './weighings.ts';

const TODO: Readonly<Record<PuppyTodo, (p: Pronouns) => string>> = {
  'weigh-now': () => 'Check the number: weigh again now.',
  'weigh-in-6-to-12-hours': () => 'Weigh again in 6 to 12 hours; that weight counts.',
  'weigh-every-6-hours': () => 'Then weigh every 6 hours.',
  'warm-before-milk': ({ them }) => `Keep ${them} warm; a chilled puppy cannot digest, so warm first, then milk.`,
  'warm-and-quiet': ({ them }) => `Keep ${them} warm and quiet.`,
  'see-suckle': ({ them }) => `See ${them} suckle and swallow; put ${them} on a full teat first.`,
  'see-eat': ({ them }) => `See ${them} eat and drink, alone and in peace.`,
  'call-vet-if-no-better': () => 'If the next weight is no better, call your vet.',
  'call-vet-now': () => 'Call your vet now.',
  'may-be-late': () => 'It may be a late starter; until the weight catches up nobody can tell.',
};

const LITTER_TODO: Readonly<Record<LitterTodo, string>> = {
  'look-at-dam': 'Look at the dam first: food, water, teats, temperature.',
  'check-scale': 'Check the scale with something whose weight you know.',
  'check-warmth': 'Check the warmth where they lie.',
  'weigh-all-in-6-to-12-hours': 'Weigh all of them again in 6 to 12 hours.',
  'weigh-all-in-6-hours': 'Weigh all of them again in 6 hours.',
  'call-vet-if-they-are-no-better': 'If they are no better then, call your vet.',
  'call-vet-for-all': 'Call your vet now, for the dam and the puppies.',
};

const SLIPS: Readonly<Record<Slip, string>> = {
  'nought-few': 'A nought too few?',
  'nought-many': 'A nought too many?',
  'kilograms-meant': 'Kilograms, not grams?',
  'grams-meant': 'Grams, not kilograms?',
  'in-kilograms': 'Meant in kilograms?',
  'in-grams': 'Meant in grams?',
  swapped: 'Two figures changed places?',
  doubled: 'A figure typed twice?',
  missing: 'A figure missing?',
  'one-wrong': 'One figure wrong?',
};

const QUESTIONS: Readonly<Record<Question, string>> = {
  ...SLIPS,
  'weigh-again': 'Please weigh again.',
  'another-puppy': 'Weigh again, or is it another puppy?',
  littermate: 'Is it another puppy?',
};

export const growthFindingWords = {
  /** Why a puppy is at its level. */
  puppy: puppySentence,
  /** The same where the name does not stand beside it. */
  puppyByName: (name: string, f: PuppyFinding, unit: MassUnit) =>
    f.code === 'smallest-in-place' ? puppySentence(f, unit) : `${name}: ${puppySentence(f, unit)}`,
  /** Why the whole litter is at its level. */
  litter: litterSentence,
  /** A reading that does not fit. */
  reading: readingSentence,
  todo: (todo: PuppyTodo, sex: Sex) => TODO[todo](pronouns(sex)),
  litterTodo: (todo: LitterTodo) => LITTER_TODO[todo],
  coarseScale: (stepGrams: number, unit: MassUnit) =>
    `The scale moves in steps of ${gainText(stepGrams, unit)}: too coarse for early signs at these weights.`,
  /** "607 g more than yesterday." */
  oddity,
  question: (doubt: Pick<Doubt, 'question'> & Partial<Pick<Doubt, 'littermate'>>) =>
    doubt.littermate == null ? QUESTIONS[doubt.question] : `${doubt.littermate.name}?`,
} as const;

function puppySentence(f: PuppyFinding, unit: MassUnit): string {
  switch (f.code) {
    case 'not-weighed':
      return 'Not weighed yet.';
    case 'left':
      return 'No longer weighed here.';
    case 'weighed-once':
      return 'Weighed once; gains show from the next weight on.';
    case 'smallest-in-place':
      return `${f.name} is the smallest and has kept ${pronouns(f.sex).their} place for ${numberWord(f.days)} ${f.days === 1 ? 'day' : 'days'}.`;
    case 'steady-gain': {
      const where = f.standing === null ? '' : `, ${standingText(f.standing)}`;
      if (f.gain < 0) return `Down ${gainText(f.gain, unit)} a day${where}; nothing unusual yet.`;
      return `${gainText(f.gain, unit)} a day${where}.`;
    }
    case 'losing':
    case 'no-gain':
    case 'gain-short':
      return lessGain(f, unit, `${pronouns(f.sex).they} has been`);
    case 'lost':
      return `${capital(pronouns(f.sex).they)} has lost ${gainText(f.grams, unit)} since ${sinceWhen(f.since, f.at)}.`;
    case 'gaining-again':
      return `Gaining again, but not yet back where ${pronouns(f.sex).they} was: ${gainText(f.actual, unit)} a day since ${sinceWhen(f.since, f.at)}.`;
    case 'not-as-expected':
      return 'Not gaining as expected.';
    case 'under-birth-weight':
      return `${massText(f.grams, unit)} is ${f.percent}\u00a0% under the birth weight of ${massText(f.birth, unit)}.`;
    case 'born-small':
      return bornSmall(f, unit);
  }
}

/** Without published deaths none are told. */
function bornSmall({ birth, veryLow, deaths }: Extract<PuppyFinding, { code: 'born-small' }>, unit: MassUnit): string {
  const told = `${massText(birth, unit)} at birth is very little`;
  if (veryLow === null) return `${told}.`;
  if (veryLow.by !== 'thresholds') {
    return `${told} for the breed (under two thirds of the usual ${massText(veryLow.mean, unit)}).`;
  }
  const lost = deaths === null ? '' : ` In one study ${Math.round(deaths)}\u00a0% of such puppies were lost by day 21.`;
  return `${told} for the breed (under ${massText(veryLow.below, unit)}).${lost}`;
}

function litterSentence(f: LitterFinding, unit: MassUnit): string {
  switch (f.code) {
    case 'nobody-weighed':
      return 'Nobody has been weighed yet.';
    case 'growing':
      return 'The litter is growing as expected.';
    case 'losing':
    case 'no-gain':
    case 'gain-short':
      return `The whole litter. ${lessGain(f, unit, 'the puppies have each been')}`;
    case 'gaining-again':
      return 'The whole litter is gaining again, but is not yet back where it was.';
  }
}

/**
 * "Since Tuesday about 60 % less gain than expected: 16 g a day instead of 41." `who` loses weight is "she has been", or "the
 * puppies have each been" with the middle of them.
 */
function lessGain({ code, since, at, actual, expected }: ShortGain, unit: MassUnit, who: string): string {
  const from = sinceWhen(since, at);
  switch (code) {
    case 'losing':
      return `Since ${from} ${who} losing about ${gainText(actual, unit)} a day instead of gaining ${gainFigure(expected, unit)}.`;
    case 'no-gain':
      return `No gain since ${from}; ${gainText(expected, unit)} a day was expected.`;
    case 'gain-short': {
      const percent = Math.round((20 * (expected - actual)) / expected) * 5;
      return `Since ${from} about ${percent}\u00a0% less gain than expected: ${gainText(actual, unit)} a day instead of ${gainFigure(expected, unit)}.`;
    }
  }
}

/** "9 % over the middle", "3 % under the middle", "in the middle". */
function standingText(standing: number): string {
  const percent = Math.round(100 * (Math.exp(standing) - 1));
  if (percent === 0) return 'in the middle';
  return `${Math.abs(percent)}\u00a0% ${percent < 0 ? 'under' : 'over'} the middle`;
}

/** A gain: grams for metric scales, ounces for others. Sign left out. */
function gainText(grams: number, unit: MassUnit): string {
  return massText(Math.abs(grams), gainUnit(unit));
}

function gainFigure(grams: number, unit: MassUnit): string {
  return massFigure(Math.abs(grams), gainUnit(unit));
}

function gainUnit(unit: MassUnit): 'g' | 'oz' {
  return isMetric(unit) ? 'g' : 'oz';
}

function readingSentence(f: ReadingFinding, unit: MassUnit): string {
  const when = weighingName(f.at, f.now);
  switch (f.kind) {
    case 'swap':
      return `${f.withName} and ${f.name} may have changed places on ${when}: ${massText(f.withGrams, unit)} and ${massText(f.grams, unit)}.`;
    case 'mistyped': {
      const what = `${f.name}, ${when}: ${massText(f.grams, unit)}`;
      if (f.expected === null) return `${what} does not fit the weights after it.`;
      const slip = f.guess === null ? (f.fits === null ? '' : ` ${f.fits.name}?`) : ` ${SLIPS[f.guess.slip]}`;
      return `${what}, where about ${massText(f.expected, unit)} was expected.${slip}`;
    }
    case 'scale': {
      const percent = Math.round(100 * (Math.exp(f.off) - 1));
      return `${when}: everyone about ${Math.abs(percent)}\u00a0% ${percent > 0 ? 'heavier' : 'lighter'} than expected. Check the scale and weigh all of them again.`;
    }
  }
}

function oddity(f: Oddity, unit: MassUnit): string {
  switch (f.code) {
    case 'tenth':
      return `A tenth of ${whenBeforeOwner(f.lastAt, f.at)} ${massText(f.last, unit)}.`;
    case 'tenfold':
      return `Ten times ${whenBeforeOwner(f.lastAt, f.at)} ${massText(f.last, unit)}.`;
    case 'last-was':
      return `${capital(whenBeforeOwner(f.lastAt, f.at))} weight was ${massText(f.last, unit)}.`;
    case 'more':
    case 'less':
      return `${massText(f.by, unit)} ${f.code} than ${whenBefore(f.lastAt, f.at)}.`;
    case 'very-light':
      return `${massText(f.grams, unit)} is very light for a puppy of this age.`;
    case 'very-heavy':
      return `${massText(f.grams, unit)} is very heavy for a puppy of this age.`;
  }
}
