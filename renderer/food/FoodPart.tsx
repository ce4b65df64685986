import { calciumPer1000Kcal } from '../../core/food/food.ts';
import { useToday } from '../data/now.ts';
import { useFoodOn } from '../facts/useFoods.ts';
import { useRules } from '../facts/useRules.ts';
import { href } from '../links.ts';
import { figure } from '../parts/figures.ts';
import { words } from '../state/words.ts';

/** The food that amounts and energy are reckoned with, and the way to change it. */
export function FoodPart() {
  const today = useToday();
  const food = useFoodOn(null, useRules(today), today, today);
  return (
    <section className="part">
      <h2>{words.reckoned.title}</h2>
      <p className="line">
        <b>{words.foods.nameOf(food)}</b>
        <span>{words.reckoned.figures(figure(food.kcalPer100g), words.rangeText(calciumPer1000Kcal(food), 1))}</span>
        <a href={href({ at: 'foods' })}>{words.reckoned.toFoods}</a>
      </p>
      <p className="note">{words.foods.sourceOf(food.source)}</p>
    </section>
  );
}
