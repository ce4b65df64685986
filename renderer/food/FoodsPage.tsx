import { growthOf, nutrientFindings, vitaminAFinding } from '../../core/feeding/nutrient-findings.ts';
import { foodCatalogue, SHIPPED_FOODS } from '../../core/food/catalogue.ts';
import { boneShareOf, calciumPer1000Kcal, DEFAULT_FOOD, type Food } from '../../core/food/food.ts';
import type { StoredFood } from '../../core/food/own-food.ts';
import { type Feeding, feedingOf, isEmptyWeek } from '../../core/food/rotation.ts';
import { run } from '../data/query.ts';
import { useLittersInHouse } from '../facts/useLitter.ts';
import { href } from '../links.ts';
import { figure, percentRange } from '../parts/figures.ts';
import { type Option, SavedChoice } from '../parts/form/fields.tsx';
import { PageTitle } from '../parts/PageTitle.tsx';
import { Why } from '../parts/Why.tsx';
import { words } from '../state/words.ts';
import './foods.css';
import { useFeedings, useStoredFoods } from '../facts/useFoods.ts';
import { TableHead } from '../parts/TableHead.tsx';

/** Her foods and those shipped, and who eats what. */
export function FoodsPage() {
  const stored = useStoredFoods();
  return (
    <>
      <PageTitle title={words.foods.title} lead={words.foods.lead}>
        <a className="button main" href={href({ at: 'food', foodId: 'new' })}>
          {words.foods.write}
        </a>
      </PageTitle>
      <WhoEatsWhat stored={stored} />
      <Yours stored={stored} />
      <Shipped />
    </>
  );
}

/** Every food that can be chosen: hers, then those shipped. */
export function foodOptions(stored: readonly StoredFood[]): Option[] {
  const own = stored.filter((f) => !f.retired).map((f) => ({ value: f.id, word: f.fields.name }));
  return [...own, ...SHIPPED_FOODS.map((f) => ({ value: f.id, word: words.foods.nameOf(f) }))];
}

function WhoEatsWhat({ stored }: { stored: readonly StoredFood[] }) {
  const feedings = useFeedings();
  const litters = useLittersInHouse();
  const catalogue = foodCatalogue(stored);
  const house = feedingOf(feedings, null);
  const houseFood = house.foodId === null ? DEFAULT_FOOD : (catalogue.find(house.foodId) ?? DEFAULT_FOOD);
  return (
    <section className="foods-first">
      <h2>{words.foods.who}</h2>
      <table className="foods-table foods-who">
        <TableHead heads={[words.foods.eater, words.foods.food, words.foods.week]} />
        <tbody>
          <Eater
            who={words.foods.house}
            litterId={null}
            feedings={feedings}
            options={[{ value: '', word: words.foods.asShipped(words.foods.nameOf(DEFAULT_FOOD)) }, ...foodOptions(stored)]}
          />
          {litters.map(({ litter }) => (
            <Eater
              key={litter.id}
              who={words.litterName(litter)}
              litterId={litter.id}
              feedings={feedings}
              options={[{ value: '', word: words.foods.asHouse(words.foods.nameOf(houseFood)) }, ...foodOptions(stored)]}
            />
          ))}
        </tbody>
      </table>
      <p className="note foods-note">{words.foods.whoNote}</p>
    </section>
  );
}

function Eater({
  who,
  litterId,
  feedings,
  options,
}: {
  who: string;
  litterId: string | null;
  feedings: readonly Feeding[];
  options: readonly Option[];
}) {
  const own = feedings.find((f) => f.litterId === litterId);
  const chosen = own?.foodId ?? '';
  // A food that was put away is still what is eaten.
  const shown = options.some((o) => o.value === chosen) ? options : [...options, { value: chosen, word: words.foods.away }];
  const week = own?.week ?? null;
  const bowls = (week ?? []).reduce((n, day) => n + Object.keys(day).length, 0);
  return (
    <tr>
      <th scope="row">{who}</th>
      <td data-label={words.foods.food}>
        <SavedChoice
          inCell
          label={words.foods.foodOf(who)}
          value={chosen}
          options={shown}
          save={async (foodId) => {
            const done = await run('food.choose', { litterId, foodId: foodId === '' ? null : foodId });
            return done.ok ? null : words.form.notSaved;
          }}
        />
      </td>
      <td data-label={words.foods.week}>
        <a href={href({ at: 'week', litterId })}>
          {isEmptyWeek(week) ? words.foods.weekNone : words.foods.weekOpen}
          <span className="unseen">{words.foods.weekOpenOf(who)}</span>
        </a>{' '}
        <span className="note">
          {isEmptyWeek(week) ? (litterId === null ? '' : words.foods.weekHouse) : words.foods.bowls(bowls)}
        </span>
      </td>
    </tr>
  );
}

/** What stands out about a food for a puppy under 14 weeks, in a few words. */
function remark(food: Food): string {
  const found = [...nutrientFindings(food, growthOf(null, 60)), vitaminAFinding(food, 'growing')];
  const remarks = found.flatMap((f) => (f === null ? [] : [words.foods.findings[f.code] ?? f.code]));
  return remarks.length === 0 ? words.foods.within : remarks.join(', ');
}

function Yours({ stored }: { stored: readonly StoredFood[] }) {
  const catalogue = foodCatalogue(stored);
  const [there, away] = [stored.filter((f) => !f.retired), stored.filter((f) => f.retired)];
  return (
    <section className="part">
      <h2>{words.foods.yours}</h2>
      {there.length === 0 ? (
        <p className="line soft">
          {words.foods.none} <a href={href({ at: 'food', foodId: 'new' })}>{words.foods.write}</a>
        </p>
      ) : (
        <table className="foods-table">
          <TableHead
            heads={[
              words.foods.name,
              words.foods.form,
              { head: words.foods.kcal, className: 'figure' },
              { head: words.foods.perKcal, className: 'figure' },
              { head: words.foods.bone, className: 'figure' },
              words.foods.remark,
              { head: words.foods.putAway, unseen: true },
            ]}
          />
          <tbody>
            {there.map((f) => (
              <YourFood key={f.id} stored={f} food={catalogue.find(f.id)} />
            ))}
          </tbody>
        </table>
      )}
      {away.length > 0 && (
        <details className="foods-away">
          <summary>
            {words.foods.away}: {away.length}
          </summary>
          {away.map((f) => (
            <p className="line" key={f.id}>
              {f.fields.name}{' '}
              <button
                type="button"
                className="link"
                aria-label={words.foods.takeBackOf(f.fields.name)}
                onClick={() => void retire(f, false)}
              >
                {words.foods.takeBack}
              </button>
            </p>
          ))}
        </details>
      )}
    </section>
  );
}

async function retire(food: StoredFood, retired: boolean): Promise<void> {
  await run('food.retire', { foodId: food.id, retired });
}

function YourFood({ stored, food }: { stored: StoredFood; food: Food | null }) {
  const { name, form } = stored.fields;
  return (
    <tr>
      <th scope="row">
        <a href={href({ at: 'food', foodId: stored.id })}>{name}</a>
      </th>
      <td data-label={words.foods.form}>{words.foods.formShort[form]}</td>
      {food === null ? (
        <td colSpan={4}>{words.foods.broken}</td>
      ) : (
        <>
          <td className="figure" data-label={words.foods.kcal}>
            <Why explanation={{ figure: words.food.energyFigure(figure(food.kcalPer100g)), how: explained(food), sum: [] }}>
              {figure(food.kcalPer100g)}
            </Why>
          </td>
          <td className="figure" data-label={words.foods.perKcal}>
            {words.rangeText(calciumPer1000Kcal(food), 1)}
          </td>
          <td className="figure" data-label={words.foods.bone}>
            {percentRange(boneShareOf(food))}
          </td>
          <td data-label={words.foods.remark}>{remark(food)}</td>
        </>
      )}
      <td>
        <button
          type="button"
          className="link note"
          aria-label={words.foods.putAwayOf(name)}
          onClick={() => void retire(stored, true)}
        >
          {words.foods.putAway}
        </button>
      </td>
    </tr>
  );
}

function explained(food: Food): string {
  return `${words.food.methodSources[food.kcalMethod]}. ${words.foods.sourceOf(food.source)}.`;
}

function Shipped() {
  return (
    <section className="part">
      <h2>{words.foods.shipped}</h2>
      <p className="soft">{words.foods.shippedLead}</p>
      <table className="foods-table">
        <TableHead
          heads={[
            words.foods.name,
            words.foods.ndb,
            { head: words.foods.kcal, className: 'figure' },
            { head: `${words.foods.protein}, ${words.foods.grams}`, className: 'figure' },
            { head: `${words.foods.fat}, ${words.foods.grams}`, className: 'figure' },
            { head: `${words.foods.calcium}, ${words.foods.milligrams}`, className: 'figure' },
            { head: words.foods.bone, className: 'figure' },
            { head: words.foods.vitaminA, className: 'figure' },
          ]}
        />
        <tbody>
          {SHIPPED_FOODS.map((food) => (
            <ShippedFood key={food.id} food={food} />
          ))}
        </tbody>
      </table>
    </section>
  );
}

function ShippedFood({ food }: { food: Food }) {
  const { analysis: a } = food;
  return (
    <tr>
      <th scope="row">
        <a href={href({ at: 'food', foodId: food.id })}>{words.foods.nameOf(food)}</a>
      </th>
      <td data-label={words.foods.ndb}>{food.id.startsWith('usda-') ? food.id.slice(5) : '–'}</td>
      <td className="figure" data-label={words.foods.kcal}>
        <Why explanation={{ figure: words.food.energyFigure(figure(food.kcalPer100g)), how: explained(food), sum: [] }}>
          {figure(food.kcalPer100g)}
        </Why>
      </td>
      <td className="figure" data-label={words.foods.protein}>
        {figure(a.protein, 1)}
      </td>
      <td className="figure" data-label={words.foods.fat}>
        {figure(a.fat, 1)}
      </td>
      <td className="figure" data-label={words.foods.calcium}>
        {words.rangeText(a.calciumMg, 0)}
      </td>
      <td className="figure" data-label={words.foods.bone}>
        {food.bone === null ? percentRange(boneShareOf(food), 1) : words.percentText(food.bone.share, 0).replace(/\D+$/, '')}
      </td>
      <td className="figure" data-label={words.foods.vitaminA}>
        {a.vitaminAIu === null ? '–' : figure(a.vitaminAIu)}
      </td>
    </tr>
  );
}
