import type { CivilDate } from '../../core/calendar/day.ts';
import type { Dam } from '../../core/dogs/dam.ts';
import { type DamDay, type DamFacts, damDay, damDayInputOf, lactationRange, milkYield } from '../../core/feeding/dam-day.ts';
import { foodUnit } from '../../core/units/food.ts';
import type { MassUnit } from '../../core/units/mass.ts';
import { Why } from '../parts/Why.tsx';
import { words } from '../state/words.ts';

/** What she needs today: energy, grams, meals, water; by her last weight. */
export function DamFigures({ dam, day, nursed, unit }: DamFacts & { dam: Dam; day: CivilDate; unit: MassUnit }) {
  const input = damDayInputOf({ dam, nursed }, day);
  if (input === null) return <p className="line soft">{words.dam.needWeight}</p>;
  const { kg, nursing: puppies } = input;
  const today = damDay(input);
  const inMilk = today.phase === 'milk' || today.phase === 'drying';
  return (
    <>
      <p className="soft">
        {words.dam.phases[today.phase]}
        {today.week !== null && today.week <= 10 && `, ${words.dam.week(today.week)}`}
      </p>
      <dl className="dam-figures">
        <Figure term={words.dam.kcal}>
          <Why explanation={whyEnergy(today, kg)}>{Math.round(today.kcal)}</Why>
        </Figure>
        <Figure term={words.dam.grams(foodUnit(unit))} note={today.foodGrams === null ? words.dam.gramsNone : ''}>
          {today.foodGrams === null ? '–' : words.foodText(today.foodGrams, unit)}
        </Figure>
        <Figure term={words.dam.meals} note={words.dam.mealsNote}>
          {words.dam.mealsFigure(today.meals.low, today.meals.high)}
        </Figure>
        <Figure term={words.dam.water} note={words.dam.waterNote}>
          {(today.waterMl / 1000).toFixed(1)}
        </Figure>
        {today.phase === 'milk' && (
          <Figure term={words.dam.milk} note={words.dam.milkNote}>
            {milkYield(kg, puppies).peakDay.toFixed(1)}
          </Figure>
        )}
      </dl>
      {nursed !== null && nursed.solids > 0 && nursed.solids < 1 && (
        <p>{words.dam.stepDown(`${Math.round(nursed.solids * 100)}\u00a0%`)}</p>
      )}
      {inMilk && puppies > 0 && <p className="note">{compare(kg, puppies)}</p>}
      <p className="note">{words.dam.estimate}</p>
      {inMilk && <p className="note">{words.dam.vet}</p>}
    </>
  );
}

function Figure({ term, note = '', children }: { term: string; note?: string; children: React.ReactNode }) {
  return (
    <div>
      <dt>{term}</dt>
      <dd>
        <b>{children}</b> {note !== '' && <span className="note">{note}</span>}
      </dd>
    </div>
  );
}

function whyEnergy(today: DamDay, kg: number) {
  const figure = words.kcalText(today.kcal);
  return {
    figure: `${figure}.`,
    how: words.dam.atWeight(kg, words.dam.sum(today.how)),
    sum: [{ what: words.dam.sum(today.how), figure, source: words.weaning.source(today.source, today.known) }],
  };
}

function compare(kg: number, puppies: number): string {
  const { low, high } = lactationRange(kg, puppies);
  return words.dam.compare(String(Math.round(low)), String(Math.round(high)));
}
