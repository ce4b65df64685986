/** What a food comes to: every figure with where it comes from, the published limits, and what is found. */

import { useId, useState } from 'react';
import { growthOf, nutrientFindings, vitaminAFinding } from '../../core/feeding/nutrient-findings.ts';
import type { FoodCatalogue } from '../../core/food/catalogue.ts';
import {
  boneShareOf,
  calciumPer1000Kcal,
  calciumToPhosphorus,
  equivalentGrams,
  type Food,
  per1000Kcal,
} from '../../core/food/food.ts';
import { ENERGY_METHODS, type Label, labelEnergies } from '../../core/food/label.ts';
import { BONE_CALCIUM } from '../../core/reference/feeding/bone.ts';
import {
  CALCIUM_LIMITS,
  FAT_LIMIT,
  PROTEIN_LIMITS,
  RATIO_LIMITS,
  VITAMIN_A_LIMITS,
} from '../../core/reference/feeding/limits.ts';
import { useHouse } from '../facts/useLitterGrowth.ts';
import { FindingLines } from '../parts/FindingLines.tsx';
import { figure, percentRange } from '../parts/figures.ts';
import { FormChoice, type Option } from '../parts/form/fields.tsx';
import { TableHead } from '../parts/TableHead.tsx';
import { Why } from '../parts/Why.tsx';
import type { Explanation } from '../state/window.ts';
import { words } from '../state/words.ts';

/** Growth under 14 weeks: the strictest the limits get. */
const YOUNG_DAYS = 60;

interface Row {
  readonly what: string;
  readonly figure: string;
  /** What a growing dog needs of it, where that is published. */
  readonly published: string;
  readonly source: string;
  readonly limit: string;
}

/** `label` adds the energy by every method, for a food from a pack. */
export function FoodFigures({ food, label }: { food: Food; label: Label | null }) {
  const unit = useHouse().massUnit;
  const usual = [...nutrientFindings(food, growthOf(null, YOUNG_DAYS)), vitaminAFinding(food, 'growing')].filter(
    (f) => f !== null,
  );
  const big = nutrientFindings(food, growthOf(40, YOUNG_DAYS)).filter((f) => usual.every((u) => u.code !== f.code));
  return (
    <>
      <table className="foods-table food-figures">
        <TableHead heads={[{ head: words.food.what, unseen: true }, words.food.figure, words.food.published]} />
        <tbody>
          {rowsOf(food).map((row) => (
            <tr key={row.what}>
              <th scope="row">{row.what}</th>
              <td data-label={words.food.figure}>
                <Why explanation={whyOf(row)}>{row.figure}</Why>
              </td>
              <td data-label={words.food.published}>{row.published}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className="note foods-note">
        {food.recipe.length > 0 &&
          `${words.capital(words.food.madeOf)} ${food.recipe.map((r) => words.food.madeOfPart(words.plain(r.share * 100, 1), words.foods.nameOf(r))).join(', ')}. `}
        {words.capital(words.foods.sourceOf(food.source))} ({words.foods.known[food.known]}). {words.food.bothRanges}
      </p>
      {label !== null && <ByMethods label={label} />}
      <section className="food-found" aria-live="polite">
        <h3>{words.food.found}</h3>
        {usual.length === 0 && <p className="line">{words.food.nothingFound}</p>}
        <FindingLines unit={unit} findings={usual} action={null} />
        {big.length > 0 && <p className="line soft">{words.food.forBig}</p>}
        <FindingLines unit={unit} findings={big} action={null} />
      </section>
    </>
  );
}

function ByMethods({ label }: { label: Label }) {
  const energies = labelEnergies(label);
  return (
    <>
      <h3>{words.food.byMethods}</h3>
      <table className="foods-table">
        <tbody>
          {ENERGY_METHODS.map((method) => {
            const kcal = energies[method];
            return (
              <tr key={method}>
                <th scope="row">{words.food.methods[method]}</th>
                <td className="figure">{kcal === null ? words.food.notKnown : words.food.energyFigure(figure(kcal))}</td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </>
  );
}

/** The figure with its source, and the limit with its own behind "More". */
function whyOf({ what, figure: text, published, source, limit }: Row): Explanation {
  const sum = published === '' ? [] : [{ what: words.food.published, figure: published, source: limit }];
  return {
    figure: `${words.capital(what)}: ${text}.`,
    how: `${words.capital(source)}.`,
    sum: [{ what, figure: text, source }, ...sum],
  };
}

function rowsOf(food: Food): Row[] {
  const { analysis: a, kcalPer100g: kcal } = food;
  const from = `${words.foods.sourceOf(food.source)} (${words.foods.known[food.known]})`;
  const [usual, large] = [CALCIUM_LIMITS.early.usual, CALCIUM_LIMITS.late.large];
  const ratio = RATIO_LIMITS.early.usual;
  const bone = food.bone === null ? null : BONE_CALCIUM[food.bone.basis];
  const row = (what: string, text: string, published = '', limit = '', source = from): Row => ({
    what,
    figure: text,
    published,
    limit,
    source,
  });
  return [
    row(
      words.food.energy,
      words.food.energyFigure(figure(kcal)),
      '',
      '',
      `${words.food.methodSources[food.kcalMethod]}; ${from}`,
    ),
    row(
      words.food.protein,
      both(a.protein, kcal),
      words.food.atLeast(words.plain(PROTEIN_LIMITS.early.low, 1)),
      PROTEIN_LIMITS.early.source,
    ),
    row(words.food.fat, both(a.fat, kcal), words.food.atLeast(words.plain(FAT_LIMIT.low, 1)), FAT_LIMIT.source),
    row(words.food.water, words.food.gramsIn(words.plain(a.water, 1))),
    row(
      words.food.calcium,
      `${words.food.calciumIn(words.rangeText(calciumPer1000Kcal(food), 1))}; ${words.food.milligrams(words.rangeText(a.calciumMg, 0))}`,
      `${words.food.between(usual.low.toFixed(1), usual.high.toFixed(1))}; ${words.food.bigDogs(large.low.toFixed(1), large.high.toFixed(1))}`,
      `${usual.source}; ${large.source} (${words.foods.known[usual.known]})`,
    ),
    row(
      words.food.ratio,
      words.food.ratioFigure(words.rangeText(calciumToPhosphorus(food), 2)),
      words.food.between(ratio.low.toFixed(1), ratio.high.toFixed(1)),
      ratio.source,
    ),
    row(
      words.food.boneShare,
      words.food.boneFigure(percentRange(boneShareOf(food), 1)),
      '',
      '',
      food.bone === null || bone === null
        ? from
        : `${words.foods.boneBases[food.bone.basis]}; ${bone.source} (${words.foods.known[bone.known]})`,
    ),
    row(
      words.food.vitaminA,
      a.vitaminAIu === null ? words.food.notKnown : words.food.vitaminAFigure(figure(per1000Kcal(a.vitaminAIu, kcal))),
      words.food.atMost(figure(VITAMIN_A_LIMITS.growing.high)),
      VITAMIN_A_LIMITS.growing.source,
    ),
  ];
}

/** `83 g in 1000 kcal; 14 g in 100 g` */
function both(per100g: number, kcal: number): string {
  return `${words.food.calciumIn(words.plain(per1000Kcal(per100g, kcal), 0))}; ${words.food.gramsIn(words.plain(per100g, 1))}`;
}

/** Instead of 100 g of this, so much of that, by energy. */
export function Instead({ food, catalogue, options }: { food: Food; catalogue: FoodCatalogue; options: readonly Option[] }) {
  const others = options.filter((o) => o.value !== food.id);
  const [chosen, setChosen] = useState(others[0]?.value ?? '');
  const id = useId();
  const other = catalogue.find(chosen);
  return (
    <section className="part" aria-labelledby={id}>
      <h2 id={id}>{words.food.instead}</h2>
      <div className="form">
        <span className="label">{words.food.insteadOf(words.foods.nameOf(food))}</span>
        <span />
        <FormChoice label={words.food.insteadFood} value={chosen} options={others} onChange={setChosen} />
        <span className="label" />
        <p className="big" aria-live="polite">
          {other === null
            ? words.food.notKnown
            : words.food.insteadFigure(figure(equivalentGrams(100, food, other)), words.foods.nameOf(other))}
        </p>
      </div>
      <p className="note">{words.food.insteadNote}</p>
    </section>
  );
}
