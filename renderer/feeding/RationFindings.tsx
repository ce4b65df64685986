/** Where a ration parts from the published numbers, with the one action that mends it: on a puppy's page, and on Today for a weaned litter. */

import { dateOf } from '../../core/calendar/clock.ts';
import { type CivilDate, daysBetween } from '../../core/calendar/day.ts';
import { explainRation } from '../../core/feeding/explain.ts';
import type { Finding, RuleChange } from '../../core/feeding/finding.ts';
import { type FindingsInput, findings } from '../../core/feeding/findings.ts';
import { rationOn } from '../../core/feeding/ration.ts';
import type { HouseRules } from '../../core/feeding/rules.ts';
import type { Food } from '../../core/food/food.ts';
import { EIGHT_WEEKS } from '../../core/litter/ages.ts';
import { type Puppy, puppyName } from '../../core/litter/litter.ts';
import type { MassUnit } from '../../core/units/mass.ts';
import { run } from '../data/query.ts';
import { rationOf } from '../facts/ration.ts';
import { useFoodOn } from '../facts/useFoods.ts';
import type { LitterGrowthFacts } from '../facts/useLitterGrowth.ts';
import { useRules } from '../facts/useRules.ts';
import { href } from '../links.ts';
import { FindingLines } from '../parts/FindingLines.tsx';
import { figure } from '../parts/figures.ts';
import { Why } from '../parts/Why.tsx';
import { words } from '../state/words.ts';
import { TreatsToday } from './TreatsToday.tsx';

/** Writes one rule for a litter, from today. */
function mendFor(litterId: string, today: CivilDate) {
  return ({ key, value }: RuleChange) => void run('feeding.setLitterRules', { litterId, from: today, change: { [key]: value } });
}

/** From which weight: weighed, carried on by the forecast, or old. */
function reckonedAt(input: FindingsInput, facts: LitterGrowthFacts, today: CivilDate): string {
  const mass = words.massText(input.weightGrams, facts.house.massUnit);
  if (input.day > today) return words.finding.atEight(mass);
  const days = input.weighedOn === null ? 0 : daysBetween(input.weighedOn, input.day);
  return days > 1 ? words.finding.forecast(mass, days) : words.finding.now(mass);
}

/** The day's amount of one puppy, how it came about, and what is found about it. */
export function PuppyRation({
  facts,
  puppy,
  rules,
  food,
  today,
}: {
  facts: LitterGrowthFacts;
  puppy: Puppy;
  rules: HouseRules;
  food: Food;
  today: CivilDate;
}) {
  const input = rationOf(facts, puppy, rules, food, today);
  const unit = facts.house.massUnit;
  const ration = input === null ? null : rationOn(input);
  const found = input === null ? [] : findings(input);
  return (
    <section className="part puppy-ration">
      <h2>{words.finding.title}</h2>
      {input === null || ration === null ? (
        <p className="line soft">{words.finding.noWeight}</p>
      ) : (
        <>
          <p className="note">
            {reckonedAt(input, facts, today)} {words.finding.withFood(words.foods.nameOf(food))}{' '}
            <a href={href({ at: 'foods' })}>{words.finding.foodLink}</a>
          </p>
          <p className="puppy-ration-amount">
            <Why
              explanation={{
                figure: words.finding.amount(words.foodText(ration.dayGrams, unit)),
                how: words.finding.how(words.plain(ration.share * 100, 1), words.foods.nameOf(food)),
                sum: explainRation(input).map((line) => {
                  const said = words.explainedLine(line, unit);
                  const known = line.known === 'own record' ? '' : ` (${words.foods.known[line.known]})`;
                  return { ...said, source: `${said.source}${known}` };
                }),
              }}
            >
              <b className="big">{words.finding.amount(words.foodText(ration.dayGrams, unit))}</b>
            </Why>{' '}
            <span>
              {ration.estimateKcal === null
                ? words.finding.noEstimate(figure(ration.kcal))
                : words.finding.ofEstimate(
                    figure(ration.kcal),
                    words.percentText(ration.kcal / ration.estimateKcal, 0).replace(/\D+$/, ''),
                  )}
            </span>
          </p>
          {found.length === 0 && <p className="line">{words.finding.none}</p>}
          <FindingLines
            findings={found}
            unit={unit}
            action={{ word: words.finding.mend, take: mendFor(puppy.litterId, today) }}
          />
          {input.day === today && <TreatsToday key={puppy.id} input={input} />}
        </>
      )}
    </section>
  );
}

const RANK: Record<Finding['severity'], number> = { warning: 0, caution: 1, note: 2 };

interface Told {
  readonly finding: Finding;
  readonly names: readonly string[];
}

/** One finding of each kind, the gravest first, with the others whom it holds for. */
function gathered(all: readonly { name: string; found: readonly Finding[] }[], unit: MassUnit): Told[] {
  const sentence = (finding: Finding) => words.finding.say(finding, unit).sentence;
  const byCode = new Map<string, { finding: Finding; by: string; names: string[] }>();
  for (const { name, found } of all) {
    for (const finding of found) {
      const told = byCode.get(finding.code);
      if (told === undefined) byCode.set(finding.code, { finding, by: name, names: [] });
      else if (RANK[finding.severity] < RANK[told.finding.severity]) {
        byCode.set(finding.code, { finding, by: name, names: [...told.names, told.by] });
      } else if (sentence(finding) !== sentence(told.finding)) told.names.push(name);
    }
  }
  return [...byCode.values()].toSorted((a, b) => RANK[a.finding.severity] - RANK[b.finding.severity]);
}

/** What is found about the rations of a weaned litter; nothing before that. */
export function LitterRationFindings({
  facts,
  order,
  today,
}: {
  facts: LitterGrowthFacts;
  order: readonly Puppy[];
  today: CivilDate;
}) {
  const { litter } = facts;
  const rules = useRules(today, litter?.id ?? null);
  if (litter === null || order.length === 0) return null;
  if (daysBetween(dateOf(litter.whelpedAt), today) < EIGHT_WEEKS) return null;
  return (
    <OfWeaned facts={facts} order={order} rules={rules} today={today} litterId={litter.id} born={dateOf(litter.whelpedAt)} />
  );
}

function OfWeaned({
  facts,
  order,
  rules,
  today,
  litterId,
  born,
}: {
  facts: LitterGrowthFacts;
  order: readonly Puppy[];
  rules: HouseRules;
  today: CivilDate;
  litterId: string;
  born: CivilDate;
}) {
  const food = useFoodOn(litterId, rules, born, today);
  const all = order.flatMap((puppy) => {
    const input = rationOf(facts, puppy, rules, food, today);
    return input === null ? [] : [{ name: puppyName(puppy), found: findings(input) }];
  });
  if (all.length === 0) return null;
  const told = gathered(all, facts.house.massUnit);
  const also = (finding: Finding) => {
    const names = told.find((t) => t.finding === finding)?.names ?? [];
    return names.length === 0 ? '' : words.finding.sameFor(names.join(', '));
  };
  return (
    <section className="part">
      <h2>{words.finding.title}</h2>
      <p className="note">
        {words.finding.withFood(words.foods.nameOf(food))} <a href={href({ at: 'foods' })}>{words.finding.foodLink}</a>
      </p>
      {told.length === 0 && <p className="line">{words.finding.none}</p>}
      <FindingLines
        unit={facts.house.massUnit}
        findings={told.map((t) => t.finding)}
        action={{ word: words.finding.mend, take: mendFor(litterId, today) }}
        also={also}
      />
    </section>
  );
}
