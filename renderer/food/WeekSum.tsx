/** What a week comes to for those who eat it, beside the aims: house rules and published numbers. */
import { useState } from 'react';
import type { Growth } from '../../core/feeding/findings.ts';
import type { HouseRules } from '../../core/feeding/rules.ts';
import { type WeekFindingsInput, weekFindings } from '../../core/feeding/week-findings.ts';
import type { FoodBook } from '../../core/food/catalogue.ts';
import { percentText, plain, rangeText } from '../../core/food/figures.ts';
import { calciumPer1000Kcal, calciumToPhosphorus, type Food, per1000Kcal } from '../../core/food/food.ts';
import { type Eaters, type Week, type WeekSummary, weekSummary } from '../../core/food/rotation.ts';
import { CALCIUM_LIMITS, FAT_LIMIT, PROTEIN_LIMITS, RATIO_LIMITS, VITAMIN_A_LIMIT } from '../../core/reference/feeding/limits.ts';
import { type MassUnit, massText } from '../../core/units/mass.ts';
import { foodsWords, weekWords as w } from '../../core/words/en/foods.ts';
import { FindingLines } from '../feeding/FindingLines.tsx';
import { FormChoice } from '../parts/form/fields.tsx';
import { Why } from '../parts/Why.tsx';
import type { Explanation } from '../state/window.ts';
import { figure, percentRange } from './figures.ts';

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
  readonly book: FoodBook;
  readonly usual: Food;
  readonly unit: MassUnit;
  readonly note: string | null;
}

export function WeekSum({ week, diners, rules, book, usual, unit, note }: SumProps) {
  const [chosen, setChosen] = useState('');
  const diner = diners.find((d) => d.key === chosen) ?? diners[0];
  const summary = diner === undefined ? null : weekSummary(week, diner.eaters, book, usual);
  return (
    <section className="week-sum">
      <h2>{w.sum}</h2>
      {diner === undefined || summary === null ? (
        <p className="line soft">{w.nobody}</p>
      ) : (
        <>
          <div className="form">
            <FormChoice
              label={w.sumFor}
              value={diner.key}
              options={diners.map((d) => ({ value: d.key, word: d.word }))}
              onChange={setChosen}
            />
          </div>
          {note !== null && <p className="note">{note}</p>}
          <Figures summary={summary} diner={diner} rules={rules} unit={unit} />
          <div aria-live="polite">
            <FindingLines findings={weekFindings({ summary, rules, energy: diner.energy, growth: diner.growth })} action={null} />
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
    what: food.name,
    figure: `${w.aWeek(massText(gramsAWeek, unit))}, ${w.ofEnergy(percent(energy))}`,
    source: `${food.source} (${foodsWords.known[food.known]})`,
  }));
  return (
    <table className="foods-table week-figures">
      <thead>
        <tr>
          <th scope="col">
            <span className="unseen">{w.figure}</span>
          </th>
          <th scope="col">{w.figure}</th>
          <th scope="col">{w.aim}</th>
        </tr>
      </thead>
      <tbody>
        {rowsOf(summary, diner, rules, unit).map((row) => (
          <tr key={row.what}>
            <th scope="row">{row.what}</th>
            <td data-label={w.figure} className={row.wide === true ? 'week-wide' : undefined}>
              <Why explanation={{ figure: row.figure, how: row.source, sum }}>{row.figure}</Why>
            </td>
            <td data-label={w.aim} className="week-aim">
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
  const ratio = growth === null ? null : RATIO_LIMITS[growth.size];
  const protein = growth === null ? null : PROTEIN_LIMITS[growth.stage];
  const shares = [
    w.complete(percent(summary.complete)),
    w.plain(percent(summary.plain)),
    w.boneMeals(percent(summary.bones)),
    ...(summary.concentrated > 0 ? [w.dry(percent(summary.concentrated))] : []),
    ...(summary.other > 0 ? [w.other(percent(summary.other))] : []),
  ];
  return [
    { what: w.amount, figure: massText(summary.grams, unit), aim: '', source: w.howEnergy },
    {
      what: w.kcal,
      figure: figure(summary.kcal),
      aim: energy === null ? '' : w.from(figure(energy.low), figure(energy.high)),
      source: energy === null ? w.howEnergy : `${w.howEnergy} ${energy.source} (${foodsWords.known[energy.known]}).`,
    },
    {
      what: w.protein,
      figure: plain(per1000Kcal(a.protein, kcal), 0),
      aim: protein === null ? '' : w.least(plain(protein.low, 1)),
      source: protein?.source ?? '',
    },
    {
      what: w.fat,
      figure: plain(per1000Kcal(a.fat, kcal), 0),
      aim: growth === null ? '' : w.least(plain(FAT_LIMIT.low, 1)),
      source: growth === null ? '' : FAT_LIMIT.source,
    },
    {
      what: w.calcium,
      figure: rangeText(calciumPer1000Kcal(food), 1),
      aim: calcium === null ? '' : w.from(calcium.low.toFixed(1), calcium.high.toFixed(1)),
      source: calcium?.source ?? '',
    },
    {
      what: w.ratio,
      figure: w.ratioFigure(rangeText(calciumToPhosphorus(food), 2)),
      aim: ratio === null ? '' : w.from(ratio.low.toFixed(1), ratio.high.toFixed(1)),
      source: ratio?.source ?? '',
    },
    {
      what: w.bone,
      figure: percentRange(summary.bone),
      aim: w.by(percentText(rules.boneShare, 0)),
      source: foodsWords.known['common practice'],
    },
    {
      what: w.vitaminA,
      figure: a.vitaminAIu === null ? w.unknownFigure : figure(per1000Kcal(a.vitaminAIu, kcal)),
      aim: w.most(figure(VITAMIN_A_LIMIT.high)),
      source: VITAMIN_A_LIMIT.source,
    },
    { what: w.shares, figure: shares.join(', '), aim: w.sharesAim, wide: true, source: foodsWords.known['common practice'] },
  ];
}

function percent(part: number): string {
  return plain(part * 100, 0);
}
