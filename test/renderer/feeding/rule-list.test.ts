import { expect, test } from 'vitest';
import { DEFAULT_RULES, houseRulesSchema } from '../../../core/feeding/rules.ts';
import { rulesWords } from '../../../core/words/en/feeding.ts';
import { changedKeys, RULE_GROUPS, ruleText, withRule } from '../../../renderer/feeding/rule-list.ts';

const keys = RULE_GROUPS.flatMap((g) => g.keys);

test('every rule of the schema stands once on the page', () => {
  const { mealTimes, ...rest } = DEFAULT_RULES;
  expect([...keys].sort()).toEqual([...Object.keys(rest), ...Object.keys(mealTimes)].sort());
});

test.each(keys)('%s: what is shown, written again, changes nothing', (key) => {
  expect(withRule(DEFAULT_RULES, key, ruleText(DEFAULT_RULES, key))).toEqual({ ok: true, value: DEFAULT_RULES });
});

test('a number that the page takes is one that the schema takes, at both ends', () => {
  const ends = {
    shareYoung: ['3.5', '20'],
    stepDays: ['0', '28'],
    keepHours: ['12', '120'],
    boneShare: ['0', '40'],
    energyFloor: ['30', '150'],
  } as const;
  for (const [key, texts] of Object.entries(ends)) {
    for (const text of texts) {
      const changed = withRule(DEFAULT_RULES, key as keyof typeof ends, text);
      expect(changed.ok && houseRulesSchema.safeParse(changed.value).success, `${key} ${text}`).toBe(true);
    }
  }
  expect(withRule(DEFAULT_RULES, 'keepHours', '121').ok).toBe(false);
  expect(withRule(DEFAULT_RULES, 'keepHours', '24.5').ok).toBe(false);
  expect(withRule(DEFAULT_RULES, 'boneShare', '41').ok).toBe(false);
});

test('rules that contradict each other are refused with the sentence that says so', () => {
  expect(withRule(DEFAULT_RULES, 'shareMiddle', '9')).toEqual({ ok: false, sentence: rulesWords.sharesMustFall });
  expect(withRule(DEFAULT_RULES, 'middleMonths', '13')).toEqual({ ok: false, sentence: rulesWords.agesMustRise });
});

test('a percent may carry its sign and a comma, a clock its shortest form', () => {
  expect(withRule(DEFAULT_RULES, 'shareYoung', '6,5 %')).toMatchObject({ ok: true, value: { shareYoung: 0.065 } });
  expect(withRule(DEFAULT_RULES, 'evening', '1830')).toMatchObject({ ok: true, value: { mealTimes: { evening: '18:30' } } });
});

test('the changes between two versions are named', () => {
  expect(changedKeys(DEFAULT_RULES, { ...DEFAULT_RULES, shareYoung: 0.06, stepDays: 7 })).toEqual(['shareYoung', 'stepDays']);
});
