/** Sentences of the Homes page and of the go-home plan: who goes when, and what the two sheets say. */
import type { CivilDate } from '../../calendar/day.ts';
import type { Level } from '../../growth/assess.ts';
import type { Missing, Standing, Week, WeekBasis } from '../../homing/plan.ts';
import type { PlanRemark } from '../../homing/plan-findings.ts';
import type { GroupKey, RowAge } from '../../homing/table.ts';
import type { CollarPattern } from '../../litter/collar.ts';
import { pronouns } from '../../litter/pronouns.ts';
import type { Sex } from '../../reference/classes.ts';
import type { MassUnit } from '../../units/mass.ts';
import { weightText } from './amounts.ts';
import { dateInWords, dateShort, weekdayName } from './dates.ts';
import { capital, numberWord, percentText, placeWord, whose } from './figures.ts';
import { sexWords } from './litter.ts';

export const homesWords = {
  title: 'Homes',
  lead: (litter: string, age: string) => `${litter}, ${age}`,
  earliest: (day: string) => `Eight weeks old on ${day}.`,
  localRule: 'Check your local rule: the earliest day differs from place to place.',
  rule: (where: string, day: string, source: string, known: string) => `${where} from ${day} (${source}; ${known})`,
  rules: (all: readonly string[]) => `Earliest days by some rules: ${all.join(' · ')}. Rules change and differ: check yours.`,
  printAll: 'Print all plans',
  puppy: 'puppy',
  state: 'now',
  plan: 'go-home plan',
  handedOver: 'handed over',
  none: 'No puppy is written down yet.',
  writePuppies: 'Write down the puppies',
  stateOf: (name: string) => `${name}, where it is now`,
  dateOf: (name: string) => `${name}, since when`,
  preview: 'Preview',
  previewOf: (name: string) => `Preview the plan of ${name}`,
  notYet: 'nothing handed over',
  openKept: (name: string, day: string) => `Open the plan of ${name} as handed over on ${day}`,
  keptNote: 'A plan that was handed over is kept as it was, and prints exactly so again, years later too.',
  waiting: (n: number) =>
    n === 0 ? 'Nobody waits for a home.' : n === 1 ? 'One waits for its home.' : `${n} wait for their homes.`,
};

const PATTERNS: Record<CollarPattern, string> = {
  plain: 'plain',
  stripe: 'one stripe',
  dots: 'dots',
  zigzag: 'zigzag',
  check: 'check',
  bars: 'bars',
  slant: 'slanted stripes',
  edges: 'light edges',
};

const WEEKS: Record<Week['code'], string> = {
  'first-week': 'The first week at home',
  week: 'This week',
  month: 'This month',
};

/** In the plan a sentence may hold `*strong*` and `_official_` words; the speaker makes runs of them. */
export const planWords = {
  unnamed: (letter: string) => `Puppy ${letter}`,
  title: (name: string) => `${name}: go-home plan`,
  file: (name: string, day: CivilDate) => `${name} go-home plan ${day}`,
  foot: (name: string, on: CivilDate, rulesFrom: CivilDate | null) =>
    [
      `${whose(name)} go-home plan`,
      `printed ${dateInWords(on)}`,
      rulesFrom === null ? 'house rules: common practice' : `house rules of ${dateInWords(rulesFrom)}`,
    ].join(' · '),
  contact: 'Unsure? Ask me first.',
  last: 'This plan is guidance. Your vet knows your puppy. Local advice differs.',

  collar: 'Collar',
  collarIs: (colour: string, pattern: CollarPattern, letter: string) => `${colour}, ${PATTERNS[pattern]}, letter ${letter}`,
  born: 'Born',
  bornIs: (day: CivilDate, clock: string) => `${weekdayName(day)} ${dateInWords(day)}, ${clock}`,
  sex: 'Sex',
  sexIs: (sex: Sex, place: number, of: number) => {
    const seen = sexWords[sex];
    return of > 1 ? `${seen}, ${placeWord(place)} born of ${numberWord(of)}` : seen;
  },
  breed: 'Breed',
  grown: (weight: string) => `about ${weight} grown`,
  parents: 'Parents',
  and: ' and ',
  marks: 'Marks',

  weekHeading: (code: Week['code']) => WEEKS[code],
  weekMeals: (n: number) => `in ${numberWord(n)} meals`,
  weekBasis,
  missing,

  ladder: 'The meal ladder',
  ladderNote: (code: 'needs-weight' | 'two-weeks' | 'how-to-read', sex: Sex) => {
    const { their, them } = pronouns(sex);
    if (code === 'needs-weight') return `It needs a weight. Feed ${them} by ${their} real weight until then.`;
    if (code === 'two-weeks') return `Only for two weeks: ${their} grown weight is not known. Then feed by ${their} real weight.`;
    return 'Height is the food for one day. Layers are its meals.';
  },

  soFar: (sex: Sex) => `${capital(pronouns(sex).their)} weight so far`,
  weighed: (times: number) =>
    times === 0 ? 'not weighed yet' : times === 1 ? 'weighed once' : times === 2 ? 'weighed twice' : `weighed ${times} times`,
  lastWeighed: (on: CivilDate | null, age: string) => `${on === null ? 'today' : `on ${dateShort(on)}`}, at ${age}`,
  atBirth: 'at birth',
  standing,

  table: (name: string, isNearlyGrown: boolean) => (isNearlyGrown ? `${name}, from now on` : `${name}, to twelve months`),
  tableNote: (sex: Sex, born: CivilDate) => `Weigh ${pronouns(sex).them} on ${weekdayName(born)}s, before breakfast.`,
  group: (key: GroupKey) =>
    key.code === 'changing' ? 'Three become two: midday shrinks' : `${capital(numberWord(key.meals))} meals a day`,
  rowAge: ({ unit, n }: RowAge) => `${n}\u00a0${unit === 'week' ? 'wk' : 'mo'}`,
  fromTo: (low: string, high: string) => `${low}–${high}`,
  byWeight: (sex: Sex) => `By ${pronouns(sex).their} real weight`,
  byWeightNote: (hasExpectation: boolean, sex: Sex, born: CivilDate, unit: string) =>
    hasExpectation
      ? `Two ${weekdayName(born)}s outside the range? Feed this, in ${unit} a day, and ring me.`
      : `Weigh ${pronouns(sex).them} on ${weekdayName(born)}s, and feed this, in ${unit} a day.`,
  byWeightAge: (code: 'up-to' | 'at', months: number) => (code === 'up-to' ? `up to ${months} months` : `${months} months`),

  levelRemark: (name: string, level: Level, said: string) => ({
    sentence: `${name} is at “${level}”. ${said}`,
    mend: 'See to that before going home is settled.',
    source: 'its own weights',
  }),
  remark,
  ownSource: 'this program',
};

function weekBasis(basis: WeekBasis, sex: Sex, unit: MassUnit): string {
  const { their, them } = pronouns(sex);
  if (basis.code === 'weighed-today') return `Reckoned from ${weightText(basis.grams, unit)}, weighed today.`;
  const forecast = `Reckoned from ${their} forecast of ${weightText(basis.expected, unit)}`;
  if (basis.code === 'old')
    return `${forecast}: last weighed ${basis.daysAgo} days ago. Weigh ${them}, then feed by ${their} real weight.`;
  const last = weightText(basis.grams, unit);
  if (basis.code === 'ahead')
    return `${forecast} at eight weeks; ${last} on ${dateShort(basis.on)}. Weigh ${them} on the day, and ask for a new plan.`;
  return `${forecast}; ${last} on ${weekdayName(basis.on)}.`;
}

function missing(found: Missing, sex: Sex): string {
  const { them, their } = pronouns(sex);
  const todo = `Weigh ${them}, and feed by ${their} real weight: the table on sheet 2.`;
  if (found.code === 'no-weight') return `No weight is written down yet, so no amount can be given. ${todo}`;
  const when = found.ahead ? 'for the first week at home' : `from a weight that is ${found.daysAgo} days old`;
  return `Without ${their} expected grown weight no amount can be given ${when}. ${todo}`;
}

/** "3 % under the middle of her six littermates, and steady." */
function standing({ percent, littermates, steady }: Standing, sex: Sex): string {
  const { their } = pronouns(sex);
  const mates = littermates === 1 ? `${their} littermate` : `the middle of ${their} ${numberWord(littermates)} littermates`;
  const same = littermates === 1 ? `As heavy as ${mates}` : `At ${mates}`;
  const where = percent === 0 ? same : `${percentText(Math.abs(percent) / 100, 0)} ${percent < 0 ? 'under' : 'over'} ${mates}`;
  return `${where}${steady ? ', and steady' : ''}.`;
}

/** Something to look at before printing: what is so, what mends it, and where that comes from (null for the program's own). */
function remark(
  name: string,
  code: Exclude<PlanRemark['code'], 'feeding' | 'level'>,
): { sentence: string; mend: string; source: string | null } {
  switch (code) {
    case 'held':
      return {
        sentence: `A doubtful weight of ${name} waits for an answer, and is left out.`,
        mend: 'Answer it in Weigh-in, then print.',
        source: null,
      };
    case 'no-weight':
      return { sentence: `${name} has no weight, so the plan holds no amounts.`, mend: 'Weigh first.', source: null };
    case 'no-grown-weight':
      return {
        sentence: 'The expected grown weight is not known, so the plan reaches two weeks ahead at most.',
        mend: 'Write the grown weight, or the size, in the facts of the litter.',
        source: null,
      };
    case 'too-young':
      return {
        sentence: `${name} is not yet eight weeks old: the plan starts on the go-home day, from a forecast.`,
        mend: 'Check your local rule for the earliest day. Print again on the day itself.',
        source: 'common rule of 8 weeks; law differs by place',
      };
    case 'no-phone':
      return {
        sentence: 'No telephone number of yours stands on the plan; a line to write on is printed.',
        mend: 'Write it in House rules.',
        source: null,
      };
  }
}
