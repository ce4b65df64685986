import { mealClock } from '../../core/feeding/meals.ts';
import { puppyName } from '../../core/litter/litter.ts';
import { foodUnit } from '../../core/units/food.ts';
import { type PrepSheet, prepSheet } from '../../core/weaning/prep.ts';
import type { WeaningDay, WeaningInput } from '../../core/weaning/weaning.ts';
import type { Weaning } from '../facts/useWeaning.ts';
import { href } from '../links.ts';
import { CollarBand } from '../parts/CollarBand.tsx';
import { Why } from '../parts/Why.tsx';
import { words } from '../state/words.ts';
import { explainDay } from './weaning-facts.ts';

/** Tomorrow by puppy with a line a bowl, and beside it what to weigh out for the litter. */
export function WeaningPrep({ weaning, input, day }: { weaning: Weaning; input: WeaningInput; day: WeaningDay }) {
  const sheet = prepSheet(day, input.plan.atOneBowl, input.food);
  if (day.step === null) return null;
  if (sheet.bowls.length === 0) return <p className="line soft">{words.weaning.noBowls}</p>;
  return (
    <div className="weaning-tomorrow">
      <section>
        <h2>{words.weaning.tomorrowEach}</h2>
        <EachPuppy weaning={weaning} sheet={sheet} />
      </section>
      <section>
        <div className="weigh-out-head">
          <h2>{words.weaning.weighOut}</h2>
          <a href={href({ at: 'print', of: 'prep', id: weaning.litter.id, day: day.day, paper: null })}>{words.weaning.print}</a>
        </div>
        <WeighOut weaning={weaning} input={input} day={day} sheet={sheet} />
        <p className="note">{words.weaning.waterDown}</p>
        <p className="note">{words.weaning.thawed}</p>
      </section>
    </div>
  );
}

function EachPuppy({ weaning: { order, rules, facts }, sheet }: { weaning: Weaning; sheet: PrepSheet }) {
  const unit = facts.house.massUnit;
  const oneTexture = new Set(sheet.bowls.map((b) => b.texture)).size === 1;
  return (
    <table className="each-puppy">
      <thead>
        <tr>
          <th scope="col" colSpan={2}>
            {words.weaning.puppy}
          </th>
          {sheet.meals.map((m) => (
            <th key={m} scope="col" className="figure">
              {mealClock(rules, m, sheet.meals.length)}
            </th>
          ))}
          <th scope="col" className="figure">
            {words.weaning.dayColumn(foodUnit(unit))}
          </th>
        </tr>
      </thead>
      {sheet.bowls.map((bowl, n) => (
        <tbody key={bowl.puppies[0]?.puppyId}>
          {bowl.puppies.map((row) => {
            const puppy = order.find((p) => p.id === row.puppyId);
            return puppy === undefined ? null : (
              <tr key={row.puppyId}>
                <td className="collar-cell">
                  <CollarBand collar={puppy.collar} height={20} label={null} />
                </td>
                <th scope="row">
                  <bdi>{puppyName(puppy)}</bdi> {row.holds && <span className="note">{words.weaning.holds}</span>}
                </th>
                {sheet.meals.map((m, i) => (
                  <td key={m} className="figure">
                    {words.foodFigure(row.byMeal[i] ?? 0, unit)}
                  </td>
                ))}
                <td className="figure day-cell">{words.foodFigure(row.day, unit)}</td>
              </tr>
            );
          })}
          <tr className="bowl-row">
            <th scope="row" colSpan={2}>
              {oneTexture ? words.weaning.bowlName(n) : words.weaning.bowlOf(n, words.weaning.textures[bowl.texture])}
            </th>
            {sheet.meals.map((m, i) => (
              <td key={m} className="figure">
                {words.foodFigure(bowl.food.byMeal[i] ?? 0, unit)}
              </td>
            ))}
            <td />
          </tr>
        </tbody>
      ))}
    </table>
  );
}

function WeighOut({ weaning, input, day, sheet }: { weaning: Weaning; input: WeaningInput; day: WeaningDay; sheet: PrepSheet }) {
  const unit = weaning.facts.house.massUnit;
  const watered = sheet.water.day > 0;
  return (
    <table className="weigh-out">
      <thead>
        <tr>
          <th scope="col">{words.dayOfWeek(day.day)}</th>
          <th scope="col" className="figure">
            {words.weaning.food(words.foods.nameOf(input.food), foodUnit(unit))}
          </th>
          {watered && (
            <th scope="col" className="figure">
              {words.weaning.water(foodUnit(unit))}
            </th>
          )}
        </tr>
      </thead>
      <tbody>
        {sheet.meals.map((m, i) => (
          <tr key={m}>
            <th scope="row">{mealClock(weaning.rules, m, sheet.meals.length)}</th>
            <td className="figure amount">{words.foodFigure(sheet.food.byMeal[i] ?? 0, unit)}</td>
            {watered && <td className="figure">{words.foodFigure(sheet.water.byMeal[i] ?? 0, unit)}</td>}
          </tr>
        ))}
        <tr className="day-row">
          <th scope="row">{words.weaning.theDay}</th>
          <td className="figure">
            <Why explanation={explainDay(input, day, unit, words.weaning.tomorrow(words.foodText(sheet.food.day, unit)))}>
              {words.foodFigure(sheet.food.day, unit)}
            </Why>
          </td>
          {watered && <td className="figure">{words.foodFigure(sheet.water.day, unit)}</td>}
        </tr>
      </tbody>
    </table>
  );
}
