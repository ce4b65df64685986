import { type KeyboardEvent, useRef, useState } from 'react';
import { addDays } from '../../core/calendar/day.ts';
import { mealClock } from '../../core/feeding/meals.ts';
import { MEAL_NAMES, type MealName } from '../../core/food/bowls.ts';
import { bowlOn, fillBowl } from '../../core/food/rotation.ts';
import { OLD_WEIGHT_DAYS } from '../../core/growth/puppy-weights.ts';
import { puppyName } from '../../core/litter/litter.ts';
import { ATE, type Ate, eatenMeals, type Suggestion, stoolHints, suggestionOf } from '../../core/weaning/eaten.ts';
import { prepSheet } from '../../core/weaning/prep.ts';
import { type WeaningDay, type WeaningInput, weaningDay } from '../../core/weaning/weaning.ts';
import { useWeaning, type Weaning } from '../facts/useWeaning.ts';
import { href } from '../links.ts';
import { Why } from '../parts/Why.tsx';
import { words } from '../state/words.ts';
import { StoolNotes } from './StoolNotes.tsx';
import { explainDay, presentMeal } from './weaning-facts.ts';
import { writeNote } from './weaning-notes.ts';
import './weaning.css';
import { TableHead } from '../parts/TableHead.tsx';

const FIRST_DAY = 21;

/** The meals of today for a litter in weaning or weaned: what to weigh out, and how each was eaten. `bare` leaves out the way to Weaning. */
export function MealsToday({ litterId, bare = false }: { litterId: string; bare?: boolean }) {
  const weaning = useWeaning(litterId);
  if (weaning === null || weaning.order.length === 0) return null;
  const { input, plan } = weaning;
  return (
    <section className="part meals-part">
      <h2>{words.weaning.mealsToday}</h2>
      {input === null || (plan !== null && plan.starts > weaning.today) ? (
        <OnMilk weaning={weaning} />
      ) : (
        <Meals weaning={weaning} input={input} bare={bare} />
      )}
    </section>
  );
}

function OnMilk({ weaning: { litter, plan, born, age } }: { weaning: Weaning }) {
  const to = href({ at: 'litter', litterId: litter.id, page: 'weaning', puppyId: null });
  const sentence =
    plan !== null
      ? words.weaning.begins(plan.starts)
      : age < FIRST_DAY
        ? words.weaning.beforeWeaning(addDays(born, FIRST_DAY), FIRST_DAY)
        : words.weaning.noPlan;
  return (
    <p className="line soft meals-milk">
      <span>
        {sentence} <a href={to}>{plan === null ? words.weaning.setDay : words.weaning.toWeaning}</a>
      </span>
    </p>
  );
}

function Meals({ weaning, input, bare }: { weaning: Weaning; input: WeaningInput; bare: boolean }) {
  const { litter, events, today, rules, plan, facts } = weaning;
  const [said, setSaid] = useState('');
  const day = weaningDay(input, today);
  const eaten = new Map(eatenMeals(events, null).flatMap((m) => (m.day === today ? [[m.meal, m.ate] as const] : [])));
  const present = presentMeal(
    day.meals.map((m) => m.name),
    new Set(eaten.keys()),
  );
  const suggestion = suggestionOf({
    events,
    rules,
    liftMinutes: input.plan.liftMinutes,
    ageDays: weaning.age,
    sizeClass: litter.sizeClass,
  });
  const record = async (meal: MealName, ate: Ate) => {
    if (await writeNote(litter.id, today, { kind: 'meal', meal, ate }))
      setSaid(words.weaning.recorded(meal, words.weaning.ate[ate]));
  };
  if (day.puppies.every((p) => p.grams === null)) return <p className="line soft">{words.weaning.noBowls}</p>;
  return (
    <>
      <MealTable
        weaning={weaning}
        input={input}
        day={day}
        eaten={eaten}
        present={present}
        record={(meal, ate) => void record(meal, ate)}
      />
      <p className="unseen" role="status">
        {said}
      </p>
      <p className="note meals-keys">{words.weaning.keysNote}</p>
      {day.cut < 1 && <p className="note">{words.weaning.cutNow(`${Math.round(day.cut * 100)}\u00a0%`)}</p>}
      {day.puppies.some((p) => p.weighedAgo !== null && p.weighedAgo > OLD_WEIGHT_DAYS) && (
        <p className="note">{words.weaning.olderWeights}</p>
      )}
      {suggestion !== null && (
        <Suggested litterId={litter.id} suggestion={suggestion} vet={[facts.house.vetName, facts.house.vetPhone]} />
      )}
      <Hints weaning={weaning} />
      {bare ? null : <StoolNotes weaning={weaning} />}
      {!bare && plan !== null && (
        <p className="note">
          <a href={href({ at: 'litter', litterId: litter.id, page: 'weaning', puppyId: null })}>{words.weaning.toWeaning}</a>
        </p>
      )}
    </>
  );
}

function MealTable(props: {
  weaning: Weaning;
  input: WeaningInput;
  day: WeaningDay;
  eaten: ReadonlyMap<MealName, Ate>;
  present: MealName | null;
  record: (meal: MealName, ate: Ate) => void;
}) {
  const { weaning, input, day, eaten, present, record } = props;
  const table = useRef<HTMLTableElement>(null);
  const unit = weaning.facts.house.massUnit;
  const fed = day.puppies.filter((p) => p.grams !== null).length;
  return (
    <table className="meals" ref={table} onKeyDown={(event) => mealKeys(event, table.current, record)}>
      <TableHead
        heads={[
          words.weaning.at,
          words.weaning.what,
          { head: words.weaning.wholeLitter, className: 'figure' },
          { head: words.weaning.each, className: 'figure' },
          words.weaning.howEaten,
        ]}
      />
      <tbody>
        {day.meals.map(({ name, grams }) => {
          const ate = eaten.get(name) ?? null;
          return (
            <tr key={name} className={ate !== null ? 'meal-done' : name === present ? 'meal-next' : ''}>
              <th scope="row">{mealClock(weaning.rules, name, day.meals.length)}</th>
              <td className="meal-what">{whatOf(weaning, input, day, name, grams)}</td>
              <td className="figure meal-grams">
                {grams === 0 ? (
                  words.weaning.leftOut
                ) : (
                  <Why explanation={explainDay(input, day, unit, `${words.foodText(grams, unit)}.`)}>
                    {words.foodText(grams, unit)}
                  </Why>
                )}
              </td>
              <td className="figure">{grams === 0 ? '' : words.foodText(grams / fed, unit)}</td>
              <td className="meal-ate">
                {ATE.map((a) => (
                  <button
                    key={a}
                    type="button"
                    className={`meal-key ${a}`}
                    data-meal={name}
                    aria-pressed={ate === a}
                    aria-keyshortcuts={words.weaning.keys[a]}
                    aria-label={words.weaning.record(name, words.weaning.ate[a])}
                    onClick={() => record(name, a)}
                  >
                    {words.weaning.ate[a]}
                  </button>
                ))}
              </td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}

/** C, L, R note how the meal in focus was eaten; up and down go to another meal, left and right to another answer. */
function mealKeys(
  event: KeyboardEvent<HTMLElement>,
  table: HTMLTableElement | null,
  record: (meal: MealName, ate: Ate) => void,
): void {
  const here = event.target;
  if (table === null || !(here instanceof HTMLButtonElement) || event.ctrlKey || event.metaKey || event.altKey) return;
  const meal = MEAL_NAMES.find((m) => m === here.dataset['meal']);
  if (meal === undefined) return;
  const ate = ATE.find((a) => words.weaning.keys[a].toLowerCase() === event.key.toLowerCase());
  const keys = [...table.querySelectorAll<HTMLButtonElement>('.meal-key')];
  const step = { ArrowDown: ATE.length, ArrowUp: -ATE.length, ArrowRight: 1, ArrowLeft: -1 }[event.key] ?? 0;
  if (ate !== undefined) record(meal, ate);
  else if (step !== 0) keys[keys.indexOf(here) + step]?.focus();
  else return;
  event.preventDefault();
}

/** In weaning the texture and the food; later what the rotation has for that meal. */
function whatOf(weaning: Weaning, input: WeaningInput, day: WeaningDay, meal: MealName, grams: number) {
  const { fed, catalogue, food, order, facts } = weaning;
  const texture = day.step === null ? null : input.plan.steps[day.step]?.texture;
  if (weaning.plan !== null && texture !== undefined && texture !== null && !day.weaned) {
    const sheet = prepSheet(day, input.plan.atOneBowl, food);
    const largest = Math.max(...sheet.bowls.map((b) => b.puppies.length));
    return (
      <>
        {words.weaning.weaningMeal(words.weaning.textures[texture], words.foods.nameOf(food))}
        <br />
        <span className="note">{words.weaning.bowls(sheet.bowls.length, largest)}</span>
      </>
    );
  }
  const bowl = bowlOn(fed.week, weaning.today, meal);
  if (bowl === null) return words.weaning.mealOf(meal, words.foods.nameOf(food));
  const parts = fillBowl(bowl, grams, order.length, catalogue, food, facts.house.massUnit);
  return (
    <>
      {words.weaning.meals[meal]}
      <br />
      <span className="note">
        {parts
          .map((p) =>
            p.pieces === null
              ? words.weaning.part(words.foodText(p.grams, facts.house.massUnit), words.foods.nameOf(p.food))
              : words.weaning.bones(p.pieces, words.foods.nameOf(p.food)),
          )
          .join(', ')}
      </span>
    </>
  );
}

function Suggested({ litterId, suggestion, vet }: { litterId: string; suggestion: Suggestion; vet: readonly [string, string] }) {
  const { code, day, meal, accepted } = suggestion;
  const { sentence, caution } = words.weaning.suggestion(suggestion);
  const [yes, no] = words.weaning.answers[code];
  const answer = (taken: boolean) => void writeNote(litterId, day, { kind: 'answer', meal, suggestion: code, accepted: taken });
  return (
    <div className="meals-suggestion" role="status">
      <p>
        <b>{sentence}</b> {caution}
        {caution !== null && code !== 'offer-again' && ` ${words.weaning.callVet(vet[0], vet[1])}`}
      </p>
      <p className="note">{words.weaning.source(words.weaning.suggestionSource, suggestion.known)}</p>
      {accepted === null ? (
        <p className="meals-answers">
          <button type="button" className="button" onClick={() => answer(true)}>
            {yes}
          </button>
          <button type="button" className="button" onClick={() => answer(false)}>
            {no}
          </button>
        </p>
      ) : (
        <p className="note">{words.weaning.answered(accepted)}</p>
      )}
    </div>
  );
}

function Hints({ weaning }: { weaning: Weaning }) {
  const { events, today, order, facts } = weaning;
  return stoolHints(events, today).map((hint) => {
    const puppy = order.find((p) => p.id === hint.puppyId);
    return (
      <p key={`${hint.puppyId ?? ''} ${hint.stool}`} className="line meals-hint">
        <span>
          {puppy !== undefined && (
            <b>
              <bdi>{words.weaning.whose(puppyName(puppy))}</bdi>
            </b>
          )}
          {words.weaning.stoolHints[hint.stool]}{' '}
          {hint.stool === 'loose' && <b>{words.weaning.callVet(facts.house.vetName, facts.house.vetPhone)}</b>}
        </span>
      </p>
    );
  });
}
