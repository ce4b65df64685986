/** Sentences of the go-home plan, but for its notes. `*strong*` and `_official_` words become runs. */
import type { CivilDate } from '../../calendar/day.ts';
import type { GrowthMethod } from '../../feeding/energy.ts';
import type { MealName } from '../../food/bowls.ts';
import type { Level } from '../../growth/assess.ts';
import type { Bowl, Fair, Missing, NextWeek, Standing, Week, WeekBasis } from '../../homing/plan.ts';
import type { PlanRemark } from '../../homing/plan-findings.ts';
import type { GroupKey, RowAge } from '../../homing/table.ts';
import type { CollarPattern } from '../../litter/collar.ts';
import type { Sex } from '../../reference/classes.ts';
import type { FoodUnit } from '../../units/food.ts';
import { GRAMS_PER_OUNCE, isMetric, type MassUnit } from '../../units/mass.ts';
import { foodFigure, foodText, weightText } from './amounts.ts';
import { dateInWords, dateShort, dayAndMonth, weekdayName } from './dates.ts';
import { capital, counted, listed, numberWord, percentText, placeWord, whose } from './figures.ts';
import { sexWords } from './litter.ts';
import { pronouns } from './pronouns.ts';

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

const MEALS: Record<MealName, string> = {
  morning: 'morning',
  forenoon: 'forenoon',
  midday: 'midday',
  afternoon: 'afternoon',
  evening: 'evening',
  night: 'night',
};

const METHODS: Record<GrowthMethod, string> = { klein: 'Klein 2019', nrc: 'NRC 2006' };

export const planWords = {
  unnamed: (letter: string) => `Puppy ${letter}`,
  title: (name: string) => `${name}: go-home plan`,
  file: (name: string, day: CivilDate) => `${name} go-home plan ${day}`,
  /** Rules that nobody wrote have no day. */
  foot: (name: string, on: CivilDate, rulesFrom: CivilDate | null) =>
    [
      `${whose(name)} go-home plan`,
      `printed ${dateInWords(on)}`,
      ...(rulesFrom === null ? [] : [`house rules of ${dateInWords(rulesFrom)}`]),
    ].join(' · '),
  sheet: (n: number, of: number) => `sheet ${n} of ${of}`,
  contact: 'Anything else? Ask me:',
  phone: 'Telephone',
  last: 'This plan is guidance. Your vet knows your puppy. Local advice differs.',

  collarIs: (colour: string, pattern: CollarPattern) =>
    pattern === 'plain' ? `${colour} collar` : `${colour} collar, ${PATTERNS[pattern]}`,
  collarWords: (letter: string, colour: string, pattern: CollarPattern) =>
    `Collar: ${colour}, ${PATTERNS[pattern]}, letter ${letter}`,
  who: (sex: Sex, age: string, born: CivilDate, clock: string) =>
    `${sexWords[sex]}, *${age}*, born ${weekdayName(born)} ${dateInWords(born)}, ${clock}`,
  place: (place: number, of: number) => (of > 1 ? `${placeWord(place)} born of ${numberWord(of)}` : ''),
  parents: (sire: string, dam: string) => {
    if (sire === '') return dam === '' ? '' : `out of ${dam}`;
    return dam === '' ? `by ${sire}` : `by ${sire} out of ${dam}`;
  },
  weighed: (grams: number, on: CivilDate | null, unit: MassUnit) =>
    `*${weightText(grams, unit)} ${on === null ? 'today' : `on ${dateShort(on)}`}*`,
  grown: (weight: string) => `about ${weight} grown`,
  standing,

  weekHeading: (code: Week['code']) => WEEKS[code],
  food: (food: string, kcal: string) => `of *${food}*, ${kcal}`,
  kcal: (per100g: number, unit: MassUnit) =>
    isMetric(unit)
      ? `${Math.round(per100g)} kcal in 100\u00a0g`
      : `${Math.round((per100g * GRAMS_PER_OUNCE) / 100)} kcal in an ounce`,
  aDay: 'a day',
  until: (day: CivilDate) => `until ${weekdayName(day)} ${dayAndMonth(day)}`,
  weekBasis,
  fair,
  gain,
  why: (why: string) => `My reason: ${why}`,
  missing,

  next: 'The next six weeks',
  nextNote: (from: CivilDate, unit: FoodUnit) => `from each ${weekdayName(from)}: bowls × ${unit === 'g' ? 'grams' : 'ounces'}`,
  bowlLines,
  nextChange,

  ladder: 'The meal ladder',
  ladderNote: (code: 'needs-weight' | 'two-weeks' | 'how-to-read', sex: Sex) => {
    const { their, them } = pronouns(sex);
    if (code === 'needs-weight') return `It needs a weight. Feed ${them} by ${their} real weight until then.`;
    if (code === 'two-weeks') return `Only for two weeks: ${their} grown weight is not known. Then feed by ${their} real weight.`;
    return 'Height is the food of one day; layers are its meals. Dates: sheet 2.';
  },

  table: (name: string, isNearlyGrown: boolean) => (isNearlyGrown ? `${name}, from now on` : `${name}, to twelve months`),
  tableNote: 'One row down on each date.',
  tableCaption: (name: string) => `Food of ${name} by age: weight to expect, amount a day and at each meal`,
  heads: (unit: 'kg' | 'lb', amount: FoodUnit) => ({
    age: 'age',
    from: 'from',
    weight: `should weigh, ${unit}`,
    weighed: 'weighs (write)',
    day: `${amount === 'g' ? 'grams' : 'ounces'} a day`,
  }),
  mealHead: (meal: MealName) => MEALS[meal],
  group: (key: GroupKey) => (key.code === 'changing' ? 'Three become two' : `${capital(numberWord(key.meals))} meals a day`),
  groupNote: (key: GroupKey, times: readonly string[]) =>
    key.code === 'changing' ? 'midday shrinks for two weeks, then ends' : times.join(', '),
  rowAge: ({ weeks, days }: RowAge) => (days === 0 ? `${weeks}\u00a0weeks` : `${weeks}\u00a0weeks ${counted(days, 'day')}`),
  rowMonths: ({ months }: RowAge) => (months === null ? '' : `${months} months`),
  instead: (share: string) => (share === '' ? 'by weight: sheet 3' : `by weight, ${share}: sheet 3`),
  askFirst: 'ask me first',
  fromTo: (low: string, high: string) => `${low}–${high}`,
  tableEnd: (hasRange: boolean, sex: Sex, born: CivilDate, food: string, kcal: string) => {
    const { them } = pronouns(sex);
    const outside = hasRange
      ? ` Two ${weekdayName(born)}s outside the range? Feed by sheet 3, and ring me.`
      : ' Feed by sheet 3.';
    return `*Weigh ${them} on ${weekdayName(born)}s, before breakfast, and write it down.*${outside} Amounts are of ${food}, ${kcal}.`;
  },

  byWeight: (sex: Sex) => `By ${pronouns(sex).their} real weight`,
  byWeightNote: (hasRange: boolean, sex: Sex, unit: 'kg' | 'lb', amount: FoodUnit) => {
    const each = `${amount === 'g' ? 'grams' : 'ounces'} a day for each weight in ${unit}`;
    return hasRange ? `${each}; *bold*: the amount for ${pronouns(sex).their} age` : each;
  },
  byWeightHeads: { age: 'age', middle: 'up to', above: 'over it, by weight' },
  byWeightAge: (age: { readonly unit: 'week' | 'month'; readonly n: number }) =>
    age.unit === 'week' ? `${age.n}\u00a0weeks` : counted(age.n, 'month').replace(' ', '\u00a0'),
  upTo: (weight: string) => `to ${weight}`,
  from: (weight: string) => `from ${weight}`,
  way: (hasRange: boolean, sex: Sex, born: CivilDate) => {
    const { their, them } = pronouns(sex);
    if (!hasRange) return `Weigh ${them} on ${weekdayName(born)}s, and feed this. Between two weights: the smaller amount.`;
    return `For two ${weekdayName(born)}s outside the range. *Lighter: never less than the bold amount for ${their} age. Ring me.* Heavier: *never more* than the last amount of the row, and feel ${their} ribs: if you must search for them, give the bold amount. Between two weights: the smaller amount.`;
  },
  kitchen: 'In the kitchen',
  kitchenNote: 'Read once, then look up. When to ring the vet: sheet 1.',

  levelRemark: (name: string, level: Level, said: string) => ({
    sentence: `${name} is at “${level}”. ${said}${level === 'act' ? ' The plan gives no amounts.' : ''}`,
    mend: 'See to that before going home is settled.',
    source: 'its own weights',
  }),
  remark,
  ownSource: 'this program',
};

/** "3 % under the middle of her six littermates, and steady." */
function standing({ percent, littermates, steady }: Standing, sex: Sex): string {
  const { their } = pronouns(sex);
  const mates = littermates === 1 ? `${their} littermate` : `the middle of ${their} ${numberWord(littermates)} littermates`;
  const same = littermates === 1 ? `as heavy as ${mates}` : `at ${mates}`;
  const where = percent === 0 ? same : `${percentText(Math.abs(percent) / 100, 0)} ${percent < 0 ? 'under' : 'over'} ${mates}`;
  return `${where}${steady ? ', and steady' : ''}`;
}

function weekBasis(basis: WeekBasis, sex: Sex, unit: MassUnit): string {
  const { their, them } = pronouns(sex);
  if (basis.code === 'weighed-today') return `Reckoned from ${weightText(basis.grams, unit)}, weighed today.`;
  const forecast = `Reckoned from ${their} forecast of ${weightText(basis.expected, unit)}`;
  const last = weightText(basis.grams, unit);
  if (basis.code === 'ahead')
    return `${forecast} at eight weeks; ${last} on ${dateShort(basis.on)}. Weigh ${them} on the day, and ask for a new plan.`;
  return `${forecast}; ${last} on ${weekdayName(basis.on)}.`;
}

/** What the amount is of the published estimate. */
function fair({ part, method }: Fair, dayGrams: number, sex: Sex, unit: MassUnit): string {
  if (part === null) return '';
  const { their } = pronouns(sex);
  return `${foodText(dayGrams, unit)} is *${percentText(part, 0)} of the published estimate* (${METHODS[method]}) for ${their} size.`;
}

/** What to expect on the scale, and when to ring; a toy is weighed every morning. */
function gain({ gain: expected }: Fair, isToy: boolean, sex: Sex, unit: MassUnit): string {
  if (expected === null) return '';
  const { them } = pronouns(sex);
  const more = `Expect about *${weightText(easyGrams(expected.grams, unit), unit)} more* on the scale by ${weekdayName(expected.by)} ${dayAndMonth(expected.by)}.`;
  if (isToy) return `${more} Weigh ${them} every morning; *no gain on two mornings: ring me.*`;
  return `${more} *Less than ${weightText(easyGrams(expected.grams / 2, unit, Math.floor), unit)}: ring me.*`;
}

function easyGrams(grams: number, unit: MassUnit, round: (n: number) => number = Math.round): number {
  const step = isMetric(unit) ? (grams < 100 ? 5 : grams < 400 ? 10 : 50) : GRAMS_PER_OUNCE / 2;
  return Math.max(1, round(grams / step)) * step;
}

function missing(found: Missing, sex: Sex): string {
  const { them, their } = pronouns(sex);
  const todo = `Weigh ${them}, and feed by ${their} real weight: the table on sheet 3.`;
  if (found.code === 'act')
    return `${capital(their)} weights are a cause for care, so no amount is written here. Feed ${them} as the vet says, weigh ${them} every morning, and ask me for a new plan.`;
  if (found.code === 'no-weight') return `No weight is written down yet, so no amount can be given. ${todo}`;
  if (found.code === 'old')
    return `${capital(pronouns(sex).they)} was last weighed ${found.daysAgo} days ago: too long ago to write down an amount. ${todo} Then ask me for a new plan.`;
  const when = found.ahead ? 'for the first week at home' : `from a weight that is ${counted(found.daysAgo, 'day')} old`;
  return `Without ${their} expected grown weight no amount can be given ${when}. ${todo}`;
}

/** The week in which the number of bowls becomes another one, with their times. */
function nextChange(week: NextWeek, fewer: boolean): string {
  const times = listed(week.meals.map((m) => m.time));
  return `From *${dayAndMonth(week.from)}* ${numberWord(week.meals.length)} bowls, at *${times}*${fewer ? ': one is left off, the others grow' : ''}.`;
}

const bowls = (count: number, figure: string) => `${count} × ${figure}`;
const moreBowls = (count: number, figure: string) => (count === 1 ? `+ ${figure}` : `+ ${count} × ${figure}`);

/** Bowls of a day, those of one amount together: "3 × 130", or "2 × 370" and "+ 185". */
function bowlLines(meals: readonly Bowl[], unit: MassUnit): string[] {
  const by = [...Map.groupBy(meals, (m) => foodFigure(m.grams, unit))].toSorted((a, b) => b[1].length - a[1].length);
  return by.map(([figure, all], i) => (i === 0 ? bowls : moreBowls)(all.length, figure));
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
        sentence: `${name} is not yet eight weeks old.`,
        mend: 'Check your local rule for the earliest day. Print again on the day itself.',
        source: 'common rule of 8 weeks; law differs by place',
      };
    case 'no-phone':
      return {
        sentence: 'No telephone number of yours stands on the plan; a line to write on is printed.',
        mend: 'Write it under Your house.',
        source: null,
      };
  }
}
