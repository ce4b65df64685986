/** The house rules one by one: how each is read, shown and put back into the whole. What it means is in `words`. */
import {
  changedRules,
  DEFAULT_RULES,
  type HouseRules,
  type RulesChange,
  rulesChangeSchema,
  rulesShape,
} from '../../core/feeding/rules.ts';
import { limitsIn, limitsOf, type NumberLimits } from '../../core/units/limits.ts';
import type { RuleKey } from '../../core/words/en/feeding.ts';
import { bad, good, type Read, readClock, readNumber } from '../parts/form/read.ts';
import { words } from '../state/words.ts';

export type NumberKey = Exclude<RuleKey, ClockKey | ChoiceKey>;
export type ClockKey = keyof HouseRules['mealTimes'];
export type ChoiceKey = 'basis' | 'growthMethod' | 'officialKeeping';

interface NumberRule extends NumberLimits {
  /** 100 for a share that is written in percent. */
  readonly times: number;
}

const { shape } = rulesShape;
const percent = (key: NumberKey): NumberRule => ({ ...limitsIn(shape[key], 100), times: 100 });
const plain = (key: NumberKey): NumberRule => ({ ...limitsOf(shape[key]), times: 1 });

const NUMBERS: Record<NumberKey, NumberRule> = {
  shareYoung: percent('shareYoung'),
  shareMiddle: percent('shareMiddle'),
  shareAdult: percent('shareAdult'),
  youngUntilMonths: plain('youngUntilMonths'),
  middleMonths: plain('middleMonths'),
  adultMonths: plain('adultMonths'),
  twoMealsFromMonths: plain('twoMealsFromMonths'),
  smallTwoMealsFromMonths: plain('smallTwoMealsFromMonths'),
  smallFourMealsUntilWeeks: plain('smallFourMealsUntilWeeks'),
  stepDays: plain('stepDays'),
  fourMealsUntilWeeks: plain('fourMealsUntilWeeks'),
  energyFloor: percent('energyFloor'),
  liftAfterMinutes: plain('liftAfterMinutes'),
  cutShare: percent('cutShare'),
  treatShare: percent('treatShare'),
  vegetableSpoonsPerHalfPound: plain('vegetableSpoonsPerHalfPound'),
  boneShare: percent('boneShare'),
  thawHours: plain('thawHours'),
  keepHours: plain('keepHours'),
  boneMinutes: plain('boneMinutes'),
};

const CLOCKS = [
  'morning',
  'midday',
  'evening',
  'eveningOfTwo',
  'middayOfFour',
  'afternoon',
  'eveningOfFour',
] as const satisfies readonly ClockKey[];

export const RULE_GROUPS: readonly { readonly group: keyof typeof words.rules.groups; readonly keys: readonly RuleKey[] }[] = [
  {
    group: 'amounts',
    keys: [
      'shareYoung',
      'youngUntilMonths',
      'shareMiddle',
      'middleMonths',
      'shareAdult',
      'adultMonths',
      'basis',
      'growthMethod',
      'energyFloor',
    ],
  },
  {
    group: 'meals',
    keys: [
      'fourMealsUntilWeeks',
      'smallFourMealsUntilWeeks',
      'twoMealsFromMonths',
      'smallTwoMealsFromMonths',
      'stepDays',
      ...CLOCKS,
    ],
  },
  { group: 'left', keys: ['liftAfterMinutes', 'cutShare', 'treatShare'] },
  { group: 'bone', keys: ['boneShare', 'boneMinutes', 'vegetableSpoonsPerHalfPound'] },
  { group: 'keeping', keys: ['thawHours', 'keepHours', 'officialKeeping'] },
];

export function isClock(key: RuleKey): key is ClockKey {
  return CLOCKS.some((c) => c === key);
}

export function isChoice(key: RuleKey): key is ChoiceKey {
  return key === 'basis' || key === 'growthMethod' || key === 'officialKeeping';
}

/** What stands in the field: figures without their unit. */
export function ruleText(rules: HouseRules, key: RuleKey): string {
  if (isClock(key)) return rules.mealTimes[key];
  if (isChoice(key)) return rules[key];
  return String(Math.round(rules[key] * NUMBERS[key].times * 1000) / 1000);
}

/** What was typed for one rule as a change of the rules, or a sentence: that it cannot be read. */
export function readRule(key: RuleKey, text: string): Read<RulesChange> {
  if (isChoice(key)) return checked({ [key]: text });
  if (isClock(key)) {
    const clock = readClock(text);
    return clock.ok ? checked({ mealTimes: { [key]: clock.value } }) : clock;
  }
  const { low, high, integer, times } = NUMBERS[key];
  const unit = words.rules.units[key];
  const read = readNumber({ low, high, integer, example: ruleText(DEFAULT_RULES, key), ...(unit === '' ? {} : { unit }) })(text);
  return read.ok ? checked({ [key]: Math.round((read.value / times) * 1e6) / 1e6 }) : read;
}

function checked(change: unknown): Read<RulesChange> {
  const taken = rulesChangeSchema.safeParse(change);
  return taken.success ? good(taken.data) : bad(words.rules.doesNotFit);
}

/** The rules with this one changed to what was typed, or a sentence: that it cannot be read, or that it contradicts another rule. */
export function withRule(rules: HouseRules, key: RuleKey, text: string): Read<HouseRules> {
  const change = readRule(key, text);
  if (!change.ok) return change;
  const changed = changedRules(rules, change.value);
  return changed.success ? good(changed.data) : bad(contradiction(String(changed.error.issues[0]?.path[0] ?? '')));
}

/** Why the rules do not go together, by the field that the schema names. */
export function contradiction(field: string): string {
  if (field === 'middleMonths') return words.rules.agesMustRise;
  if (field === 'shareMiddle') return words.rules.sharesMustFall;
  return field === 'fourMealsUntilWeeks' || field === 'smallFourMealsUntilWeeks'
    ? words.rules.mealsMustFall
    : words.rules.doesNotFit;
}

/** The rules that differ between two versions. */
export function changedKeys(before: HouseRules, after: HouseRules): RuleKey[] {
  return RULE_GROUPS.flatMap((g) => g.keys).filter((key) => ruleText(before, key) !== ruleText(after, key));
}
