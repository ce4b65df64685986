import { useRef, useState } from 'react';
import { dateOf } from '../../core/calendar/clock.ts';
import { type CivilDate, daysBetween } from '../../core/calendar/day.ts';
import { amountFor } from '../../core/feeding/amount.ts';
import { aroundEstimate } from '../../core/feeding/energy.ts';
import { TWO_MEALS } from '../../core/feeding/meals.ts';
import { growthOf } from '../../core/feeding/nutrient-findings.ts';
import { rationOn } from '../../core/feeding/ration.ts';
import type { HouseRules } from '../../core/feeding/rules.ts';
import { grownEnergy } from '../../core/feeding/week-findings.ts';
import { fillBowls, MEAL_NAMES, type Meals } from '../../core/food/bowls.ts';
import { type FoodCatalogue, foodOrDefault, SHIPPED_FOODS } from '../../core/food/catalogue.ts';
import { type Food, PLAIN_FOOD } from '../../core/food/food.ts';
import {
  type Bowl,
  EMPTY_WEEK,
  feedingOf,
  type GrownDog,
  grownDogFieldsSchema,
  isEmptyWeek,
  type Place,
  type Week,
} from '../../core/food/rotation.ts';
import { EIGHT_WEEKS } from '../../core/litter/ages.ts';
import { weighInOrder } from '../../core/litter/in-the-house.ts';
import { puppyName } from '../../core/litter/litter.ts';
import { limitsOf, longestOf } from '../../core/units/limits.ts';
import { useToday } from '../data/now.ts';
import { run, useQuery } from '../data/query.ts';
import { useLitter } from '../facts/useLitter.ts';
import { useHouse, useLitterGrowth } from '../facts/useLitterGrowth.ts';
import { href } from '../links.ts';
import { FormChoice, FormField } from '../parts/form/fields.tsx';
import { readNumber, readText } from '../parts/form/read.ts';
import { PageTitle } from '../parts/PageTitle.tsx';
import { words } from '../state/words.ts';
import { BowlEditor } from './BowlEditor.tsx';
import { BowlGrid, carry } from './BowlGrid.tsx';
import { bowlAt, bowlOf, columnsOf, putBowl, putEveryDay } from './bowls.ts';
import { foodOptions } from './FoodsPage.tsx';
import './foods.css';
import { rationOf } from '../facts/ration.ts';
import { useFeedings, useFoodCatalogue, useLitterAdultKg, useStoredFoods } from '../facts/useFoods.ts';
import { useRules } from '../facts/useRules.ts';
import { type Diner, WeekSum } from './WeekSum.tsx';
import './week.css';

/** The week of bowls of a litter, or of the house with null: the grid, the bowl in hand, what it comes to. */
export function WeekPage({ litterId }: { litterId: string | null }) {
  const facts = useLitter(litterId);
  const litters = useQuery('litter.all', {});
  if (litterId !== null && facts === null) {
    return litters.value === null ? null : <Head title={words.week.title} lead={words.food.gone} />;
  }
  const name = facts === null ? null : words.litterName(facts.litter);
  return (
    <>
      <Head title={words.week.title} lead={name === null ? words.week.ofHouse : words.week.ofLitter(name)} />
      <TheWeek litterId={litterId} />
    </>
  );
}

function Head({ title, lead }: { title: string; lead: string }) {
  return (
    <PageTitle title={title} lead={lead}>
      <a href={href({ at: 'foods' })}>{words.foods.back}</a>
    </PageTitle>
  );
}

function TheWeek({ litterId }: { litterId: string | null }) {
  const feedings = useFeedings();
  const stored = useStoredFoods();
  const catalogue = useFoodCatalogue();
  const today = useToday();
  const rules = useRules(today, litterId);
  const adultKg = useLitterAdultKg(litterId);
  const [at, setAt] = useState<Place>({ day: 0, meal: 'morning' });
  const area = useRef<HTMLDivElement>(null);
  const fed = feedingOf(feedings, litterId);
  const own = feedings.find((f) => f.litterId === litterId)?.week ?? null;
  const week = fed.week ?? EMPTY_WEEK;
  const usual = foodOrDefault(catalogue, fed.foodId);
  const options = foodOptions(stored);
  const put = (place: Place, bowl: Bowl | null) => putBowl(litterId, place, bowl);
  const focusCell = () => area.current?.querySelector<HTMLElement>('[data-place][tabindex="0"]')?.focus();
  const sum = { week, rules, catalogue, usual };
  return (
    <div className="week-columns" ref={area}>
      <div>
        <Inherits litterId={litterId} own={own} inherited={fed.week !== null} />
        <AtHand
          foods={atHand(usual, catalogue)}
          options={options}
          catalogue={catalogue}
          at={at}
          put={(food) => void put(at, bowlOf(food))}
        />
        <BowlGrid
          week={week}
          columns={columnsOf(week, rules, adultKg)}
          rules={rules}
          catalogue={catalogue}
          usual={usual}
          at={at}
          onGo={setAt}
          onOpen={() => area.current?.querySelector<HTMLElement>('#bowl-editor select')?.focus()}
          onPut={(place, bowl) => void put(place, bowl)}
        />
        <p className="note foods-note">{words.week.keys}</p>
        <BowlEditor
          key={`${at.day} ${at.meal}`}
          place={at}
          bowl={bowlAt(week, at)}
          usual={usual}
          options={options}
          bones={options.filter((o) => catalogue.find(o.value)?.form === 'raw meaty bone')}
          put={(bowl) => put(at, bowl)}
          onEveryDay={() => void putEveryDay(litterId, at)}
          onDone={focusCell}
        />
      </div>
      <div>
        {litterId === null ? <HouseSum {...sum} /> : <LitterSum {...sum} litterId={litterId} today={today} />}
        {litterId === null && <GrownDogs />}
      </div>
    </div>
  );
}

/** What is fed now, hers, and the plain mix: what a week is made of most. */
function atHand(usual: Food, catalogue: FoodCatalogue): Food[] {
  const all = [usual, ...catalogue.own, PLAIN_FOOD, ...SHIPPED_FOODS.filter((f) => f.id === 'usda-05100')];
  return all.filter((f, i) => all.findIndex((o) => o.id === f.id) === i);
}

function Inherits({ litterId, own, inherited }: { litterId: string | null; own: Week | null; inherited: boolean }) {
  if (litterId !== null && own === null) return inherited ? <p className="line">{words.week.inherits}</p> : null;
  if (isEmptyWeek(own) && litterId === null) return null;
  const word = litterId === null ? words.week.clear : words.week.drop;
  return (
    <p className="line">
      {litterId !== null && words.week.own}
      <button type="button" className="link" onClick={() => void run('food.setWeek', { litterId, week: null })}>
        {word}
      </button>
    </p>
  );
}

/** Foods to be put into the bowl in hand by a click, or dragged into any. */
function AtHand({
  foods,
  options,
  catalogue,
  at,
  put,
}: {
  foods: readonly Food[];
  options: readonly { value: string; word: string }[];
  catalogue: FoodCatalogue;
  at: Place;
  put: (food: Food) => void;
}) {
  const where = words.week.cell(words.week.days[at.day] ?? '', words.meal.names[at.meal]);
  return (
    <div className="at-hand">
      <h2>{words.week.atHand}</h2>
      <ul>
        {foods.map((food) => (
          <li key={food.id}>
            <button
              type="button"
              className="at-hand-food"
              draggable
              aria-label={words.week.put(words.foods.nameOf(food), where)}
              onDragStart={(event) => carry(event, bowlOf(food))}
              onClick={() => put(food)}
            >
              {words.foods.nameOf(food)}
            </button>
          </li>
        ))}
        <li className="at-hand-other">
          <FormChoice
            inCell
            label={words.week.another}
            value=""
            options={[{ value: '', word: words.week.another }, ...options]}
            onChange={(foodId) => {
              const food = catalogue.find(foodId);
              if (food !== null) put(food);
            }}
          />
        </li>
      </ul>
    </div>
  );
}

interface SumFacts {
  readonly week: Week;
  readonly rules: HouseRules;
  readonly catalogue: FoodCatalogue;
  readonly usual: Food;
}

/** A grown dog's day by the rules, in two bowls. */
function grownDiner(
  dog: Pick<GrownDog, 'kg'>,
  word: string,
  key: string,
  { rules, usual }: Pick<SumFacts, 'rules' | 'usual'>,
): Diner {
  const { grams } = amountFor(rules, usual, rules.shareAdult, dog.kg * 1000, dog.kg);
  const { meals } = fillBowls(grams, TWO_MEALS, 'g');
  return { key, word, eaters: { count: 1, meals }, energy: grownEnergy(dog.kg), growth: null };
}

const EXAMPLE_DOG = { name: '', kg: 25 };

function HouseSum(props: SumFacts) {
  const dogs = useFeedings().find((f) => f.litterId === null)?.dogs ?? [];
  const { massUnit } = useHouse();
  const diners =
    dogs.length === 0
      ? [grownDiner(EXAMPLE_DOG, words.week.grown(words.week.exampleDog, String(EXAMPLE_DOG.kg)), 'example', props)]
      : dogs.map((dog) => grownDiner(dog, words.week.grown(dog.name, String(dog.kg)), dog.id, props));
  return <WeekSum {...props} diners={diners} unit={massUnit} note={null} />;
}

function LitterSum({ litterId, today, ...props }: SumFacts & { litterId: string; today: CivilDate }) {
  const facts = useLitterGrowth(litterId);
  const dogs = useFeedings().find((f) => f.litterId === null)?.dogs ?? [];
  const all = weighInOrder(facts.puppies, today).flatMap((puppy) => {
    const input = rationOf(facts, puppy, props.rules, props.usual, today);
    return input === null ? [] : [{ puppy, input, ration: rationOn(input) }];
  });
  const published = (kcal: number) => aroundEstimate(kcal, props.rules.growthMethod);
  const puppies: Diner[] = all.map(({ puppy, input, ration }) => ({
    key: puppy.id,
    word: words.week.puppy(puppyName(puppy)),
    eaters: { count: 1, meals: ration.meals },
    energy: ration.estimateKcal === null ? null : published(ration.estimateKcal),
    growth: growthOf(input.adultKg, daysBetween(input.born, input.day)),
  }));
  const estimates = all.map((p) => p.ration.estimateKcal);
  const first = puppies[0];
  const litters: Diner[] =
    first === undefined
      ? []
      : [
          {
            key: 'litter',
            word: words.week.wholeLitter,
            eaters: { count: all.length, meals: sumOf(all.map((p) => p.ration.meals)) },
            energy: estimates.some((e) => e === null) ? null : published(estimates.reduce<number>((s, e) => s + (e ?? 0), 0)),
            growth: puppies.find((p) => p.growth?.size === 'large')?.growth ?? first.growth,
          },
        ];
  const grown = dogs.map((dog) => grownDiner(dog, words.week.grown(dog.name, String(dog.kg)), dog.id, props));
  const unweaned = facts.litter !== null && daysBetween(dateOf(facts.litter.whelpedAt), today) < EIGHT_WEEKS;
  return (
    <WeekSum
      {...props}
      diners={[...litters, ...puppies, ...grown]}
      unit={facts.house.massUnit}
      note={unweaned ? words.week.atEight : null}
    />
  );
}

function sumOf(all: readonly Meals[]): Meals {
  const sum: Meals = {};
  for (const meals of all) {
    for (const name of MEAL_NAMES) {
      const grams = meals[name];
      if (grams !== undefined) sum[name] = (sum[name] ?? 0) + grams;
    }
  }
  return sum;
}

/** The grown dogs of the house: name and weight, one line each. */
function GrownDogs() {
  const dogs = useFeedings().find((f) => f.litterId === null)?.dogs ?? [];
  const [name, setName] = useState('');
  const [kg, setKg] = useState('');
  const [tried, setTried] = useState(false);
  const readName = readText(longestOf(grownDogFieldsSchema.shape.name), words.week.dogNameNeeded)(name);
  const readKg = readNumber({ ...limitsOf(grownDogFieldsSchema.shape.kg), unit: 'kg', example: '25' })(kg);
  const add = async () => {
    setTried(true);
    if (!readName.ok || !readKg.ok) return;
    const done = await run('dogs.addGrown', { dog: { name: readName.value, kg: readKg.value } });
    if (!done.ok) return;
    setName('');
    setKg('');
    setTried(false);
  };
  return (
    <section className="part">
      <h2>{words.week.dogs}</h2>
      <p className="soft">{words.week.dogsLead}</p>
      {dogs.map((dog) => (
        <p className="line" key={dog.id}>
          {words.week.grown(dog.name, String(dog.kg))}
          <button
            type="button"
            className="link note"
            aria-label={words.week.removeDog(dog.name)}
            onClick={() => void run('dogs.removeGrown', { dogId: dog.id })}
          >
            {words.week.takeOutShort}
          </button>
        </p>
      ))}
      <form
        className="form"
        onSubmit={(event) => {
          event.preventDefault();
          void add();
        }}
      >
        <FormField
          label={words.week.dogName}
          value={name}
          onChange={setName}
          sentence={tried && !readName.ok ? readName.sentence : null}
        />
        <FormField
          label={words.week.dogKg}
          hint={words.week.dogKgHint}
          inputMode="decimal"
          value={kg}
          onChange={setKg}
          sentence={tried && !readKg.ok ? readKg.sentence : null}
        />
        <span className="label" />
        <p>
          <button type="submit" className="button">
            {words.week.addDog}
          </button>
        </p>
      </form>
    </section>
  );
}
