/** What the breeder should see before she prints a plan. None of it is printed. */
import { addDays } from '../calendar/day.ts';
import { findings } from '../feeding/findings.ts';
import { stands } from '../litter/litter.ts';
import { GO_HOME_DAY, type PlanBasis } from './basis.ts';
import type { PlanFinding } from './document.ts';

const OWN = 'this program';
/** Fewer weights than these say nothing about gain. */
const FEWEST_WEIGHTS = 5;

/** What is said beside the plan: about the facts it stands on first, then about what is fed. */
export function planFindings(basis: PlanBasis): PlanFinding[] {
  return [...aboutFacts(basis), ...aboutFeeding(basis)];
}

function aboutFacts({ name, age, house, weights, puppy, readings, sayGrowth }: PlanBasis): PlanFinding[] {
  const found: PlanFinding[] = [];
  const say = (severity: PlanFinding['severity'], sentence: string, mend: string | null, source = OWN) =>
    found.push({ severity, sentence, mend, source });
  if (weights.level !== 'steady') {
    say(
      weights.level === 'act' ? 'warning' : 'caution',
      `${name} is at “${weights.level}”. ${weights.finding === null ? '' : sayGrowth(weights.finding, house.massUnit)}`,
      'See to that before going home is settled.',
      'its own weights',
    );
  }
  if (readings.some((r) => r.puppyId === puppy.id && stands(r) && r.held)) {
    say('caution', `A doubtful weight of ${name} waits for an answer, and is left out.`, 'Answer it in Weigh-in, then print.');
  }
  if (weights.anchor === null) say('warning', `${name} has no weight, so the plan holds no amounts.`, 'Weigh first.');
  if (weights.adult === null) {
    say(
      'caution',
      'The expected grown weight is not known, so the plan reaches two weeks ahead at most.',
      'Write the grown weight, or the size, in the facts of the litter.',
    );
  }
  if (age < GO_HOME_DAY) {
    say(
      'note',
      `${name} is not yet eight weeks old: the plan starts on the go-home day, from a forecast.`,
      'Check your local rule for the earliest day. Print again on the day itself.',
      'common rule of 8 weeks; law differs by place',
    );
  }
  if (house.phone.trim() === '')
    say('caution', 'No telephone number of yours stands on the plan; a line to write on is printed.', 'Write it in House rules.');
  return found;
}

function aboutFeeding({ name, food, born, start, on, house, rules, weights, treads }: PlanBasis): PlanFinding[] {
  const weight = weights.at(start);
  if (treads.length === 0 || weight === null || weights.anchor === null) return [];
  const day = addDays(born, start);
  return findings({
    name,
    rules: rules.rules,
    food,
    born,
    day,
    weightGrams: weight.mid,
    adultKg: weights.adult?.kg ?? null,
    unit: house.massUnit,
    gainInBand: weights.own.length < FEWEST_WEIGHTS ? null : weights.level === 'steady',
    weighedOn: day > on ? null : weights.anchor.on,
  }).map(({ severity, sentence, mend, source }) => ({ severity, sentence, mend, source }));
}
