/** What a week comes to for those who eat it, beside the aims: house rules and published numbers. */

import { useState } from 'react';
import type { Growth } from '../../core/feeding/nutrient-findings.ts';
import type { HouseRules } from '../../core/feeding/rules.ts';
import { type WeekFindingsInput, weekFindings } from '../../core/feeding/week-findings.ts';
import type { FoodCatalogue } from '../../core/food/catalogue.ts';
import { calciumPer1000Kcal, calciumToPhosphorus, type Food, per1000Kcal } from '../../core/food/food.ts';
import { type Eaters, type Week, type WeekSummary, weekSummary } from '../../core/food/rotation.ts';
import {
  CALCIUM_LIMITS,
  FAT_LIMIT,
  PROTEIN_LIMITS,
  RATIO_LIMITS,
  VITAMIN_A_LIMITS,
} from '../../core/reference/feeding/limits.ts';
import type { MassUnit } from '../../core/units/mass.ts';
import { FindingLines } from '../parts/FindingLines.tsx';
import { figure, percentRange } from '../parts/figures.ts';
import { FormChoice } from '../parts/form/fields.tsx';
import { TableHead } from '../parts/TableHead.tsx';
import { Why } from '../parts/Why.tsx';
import type { Explanation } from '../state/window.ts';
import { words } from '../state/words.ts';

/** One who can be chosen to hold the week against. */
export interface Diner {
  readonly key: string;
  readonly word: string;
  readonly eaters: Eaters;
  readonly energy: WeekFindingsInput['energy'];
  /** Null for a grown dog. */
  readonly growth: Growth | null;
}

interface SumProps {
  readonly week: Week | null;
  readonly diners: readonly Diner[];
  readonly rules: HouseRules;
  readonly catalogue: FoodCatalogue;
  readonly usual: Food;
  readonly unit: MassUnit;
  readonly note: string | null;
}

export function WeekSum({ week, diners, rules, catalogue, usual, unit, note }: SumProps) {
  const [chosen, setChosen] = useState('');
  const diner = diners.find((d) => d.key === chosen) ?? diners[0];
  const summary = diner === undefined ? null : weekSummary(week, diner.eaters, catalogue, usual);
  return (
    <section className="week-sum">
      <h2>{words.week.sum}</h2>
      {diner === undefined || summary === null ? (
        <p className="line soft">{words.week.nobody}</p>
      ) : (
        <>
          <div className="form">
            <FormChoice
              label={words.week.sumFor}
              value={diner.key}
              options={diners.map((d) => ({ value: d.key, word: d.word }))}
              onChange={setChosen}
            />
          </div>
          {note !== null && <p className="note">{note}</p>}
          <Figures summary={summary} diner={diner} rules={rules} unit={unit} />
          <div aria-live="polite">
            <FindingLines
              unit={unit}
              findings={weekFindings({ summary, rules, energy: diner.energy, growth: diner.growth })}
              action={null}
            />
          </div>
        </>
      )}
    </section>
  );
}

interface Row {
  readonly what: string;
  readonly figure: string;
  readonly aim: string;
  readonly source: string;
  /** A line of words, not a figure. */
  readonly wide?: boolean;
}

function Figures({ summary, diner, rules, unit }: { summary: WeekSummary; diner: Diner; rules: HouseRules; unit: MassUnit }) {
  const sum: Explanation['sum'] = summary.foods.map(({ food, gramsAWeek, energy }) => ({
    what: words.foods.nameOf(food),
    figure: `${words.week.aWeek(words.massText(gramsAWeek, unit))}, ${words.week.ofEnergy(percent(energy))}`,
    source: `${words.foods.sourceOf(food.source)} (${words.foods.known[food.known]})`,
  }));
  return (
    <table className="foods-table week-figures">
      <TableHead heads={[{ head: words.week.figure, unseen: true }, words.week.figure, words.week.aim]} />
      <tbody>
        {rowsOf(summary, diner, rules, unit).map((row) => (
          <tr key={row.what}>
            <th scope="row">{row.what}</th>
            <td data-label={words.week.figure} className={row.wide === true ? 'week-wide' : undefined}>
              <Why explanation={{ figure: row.figure, how: row.source, sum }}>{row.figure}</Why>
            </td>
            <td data-label={words.week.aim} className="week-aim">
              {row.aim}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function rowsOf(summary: WeekSummary, { energy, growth }: Diner, rules: HouseRules, unit: MassUnit): Row[] {
  const { food } = summary;
  const { analysis: a, kcalPer100g: kcal } = food;
  const calcium = growth === null ? null : CALCIUM_LIMITS[growth.stage][growth.size];
  const ratio = growth === null ? null : RATIO_LIMITS[growth.stage][growth.size];
  const vitaminA = VITAMIN_A_LIMITS[growth === null ? 'grown' : 'growing'];
  const protein = growth === null ? null : PROTEIN_LIMITS[growth.stage];
  const shares = [
    words.week.complete(percent(summary.complete)),
    words.week.plain(percent(summary.plain)),
    words.week.boneMeals(percent(summary.bones)),
    ...(summary.concentrated > 0 ? [words.week.dry(percent(summary.concentrated))] : []),
    ...(summary.other > 0 ? [words.week.other(percent(summary.other))] : []),
  ];
  return [
    { what: words.week.amount, figure: words.massText(summary.grams, unit), aim: '', source: words.week.howEnergy },
    {
      what: words.week.kcal,
      figure: figure(summary.kcal),
      aim: energy === null ? '' : words.week.from(figure(energy.low), figure(energy.high)),
      source:
        energy === null
          ? words.week.howEnergy
          : `${words.week.howEnergy} ${words.bandSource(energy)} (${words.foods.known[energy.known]}).`,
    },
    {
      what: words.week.protein,
      figure: words.plain(per1000Kcal(a.protein, kcal), 0),
      aim: protein === null ? '' : words.week.least(words.plain(protein.low, 1)),
      source: protein?.source ?? '',
    },
    {
      what: words.week.fat,
      figure: words.plain(per1000Kcal(a.fat, kcal), 0),
      aim: growth === null ? '' : words.week.least(words.plain(FAT_LIMIT.low, 1)),
      source: growth === null ? '' : FAT_LIMIT.source,
    },
    {
      what: words.week.calcium,
      figure: words.rangeText(calciumPer1000Kcal(food), 1),
      aim: calcium === null ? '' : words.week.from(calcium.low.toFixed(1), calcium.high.toFixed(1)),
      source: calcium?.source ?? '',
    },
    {
      what: words.week.ratio,
      figure: words.week.ratioFigure(words.rangeText(calciumToPhosphorus(food), 2)),
      aim: ratio === null ? '' : words.week.from(ratio.low.toFixed(1), ratio.high.toFixed(1)),
      source: ratio?.source ?? '',
    },
    {
      what: words.week.bone,
      figure: percentRange(summary.bone),
      aim: words.week.by(words.percentText(rules.boneShare, 0)),
      source: words.foods.known['common practice'],
    },
    {
      what: words.week.vitaminA,
      figure: a.vitaminAIu === null ? words.week.unknownFigure : figure(per1000Kcal(a.vitaminAIu, kcal)),
      aim: words.week.most(figure(vitaminA.high)),
      source: vitaminA.source,
    },
    {
      what: words.week.shares,
      figure: shares.join(', '),
      aim: words.week.sharesAim,
      wide: true,
      source: words.foods.known['common practice'],
    },
  ];
}

function percent(part: number): string {
  return words.plain(part * 100, 0);
}
