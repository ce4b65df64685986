import { useMemo, useState } from 'react';
import { dateOf } from '../../core/calendar/clock.ts';
import { addDays, type CivilDate } from '../../core/calendar/day.ts';
import { type LadderStep, mealLadder } from '../../core/feeding/ladder.ts';
import { ladderInputOf } from '../../core/feeding/ration-input.ts';
import type { HouseRules } from '../../core/feeding/rules.ts';
import type { Food } from '../../core/food/food.ts';
import { expectedAdultKg, forecastWeight } from '../../core/growth/forecast.ts';
import { puppyWeights } from '../../core/growth/puppy-weights.ts';
import { EIGHT_WEEKS } from '../../core/litter/ages.ts';
import { inTheHouse } from '../../core/litter/in-the-house.ts';
import { puppyName } from '../../core/litter/litter.ts';
import type { MassUnit } from '../../core/units/mass.ts';
import { useQuery } from '../data/query.ts';
import { useFoodOn } from '../facts/useFoods.ts';
import { useLitterOfPuppy } from '../facts/useLitter.ts';
import { useHouse, useLitterGrowth } from '../facts/useLitterGrowth.ts';
import { FormChoice } from '../parts/form/fields.tsx';
import { MealLadder } from '../parts/ladder/MealLadder.tsx';
import { words } from '../state/words.ts';

const EXAMPLE_GRAMS = 3500;

/** Who grows, and the ladder it gets by some rules and food. */
interface Grown {
  /** Whose food it eats; the house's with null. */
  readonly litterId: string | null;
  readonly born: CivilDate;
  ladder(rules: HouseRules, food: Food): LadderStep[];
}

interface EffectProps {
  readonly opened: HouseRules;
  readonly rules: HouseRules;
  readonly tried: HouseRules | null;
  readonly today: CivilDate;
  /** Whose rules they are: a litter's own show only its puppies. */
  readonly litterId: string | null;
}

/** The meal ladder of one puppy by the rules as they were and as they are: what is typed is drawn at once, before it is saved. */
export function RulesEffect(props: EffectProps) {
  const [puppyId, setPuppyId] = useState('');
  const all = useQuery('litter.all', {});
  const here = (all.value?.litters ?? [])
    .filter((l) => props.litterId === null || l.litter.id === props.litterId)
    .flatMap((l) => l.puppies)
    .filter((p) => inTheHouse(p, props.today));
  return (
    <div className="rules-effect">
      <h3>{words.rules.effect}</h3>
      <div className="form">
        <FormChoice
          label={words.rules.effectOn}
          value={puppyId}
          options={[{ value: '', word: words.rules.example }, ...here.map((p) => ({ value: p.id, word: puppyName(p) }))]}
          onChange={setPuppyId}
        />
      </div>
      {puppyId === '' ? <OfExample {...props} /> : <OfPuppy key={puppyId} puppyId={puppyId} {...props} />}
    </div>
  );
}

function OfExample(props: EffectProps) {
  const { massUnit } = useHouse();
  const { today, litterId } = props;
  const grown = useMemo<Grown>(() => {
    const born = addDays(today, -EIGHT_WEEKS);
    const adult = expectedAdultKg({ sizeClass: 'medium', adultDogKg: null, adultBitchKg: null }, 'bitch');
    const adultKg = adult?.kg ?? null;
    const forecast = forecastWeight({
      adultKg,
      adultFrom: adult?.from,
      sizeClass: 'medium',
      anchorAgeDays: EIGHT_WEEKS,
      anchorGrams: EXAMPLE_GRAMS,
    });
    const weight = (ageDays: number) => forecast.at(ageDays)?.mid ?? null;
    return {
      litterId,
      born,
      ladder: (rules, food) => mealLadder({ rules, food, born, from: today, adultKg, forecast: weight, unit: massUnit }),
    };
  }, [today, litterId, massUnit]);
  return (
    <Ladders {...props} grown={grown} unit={massUnit} line={words.rules.exampleLine(words.massText(EXAMPLE_GRAMS, massUnit))} />
  );
}

function OfPuppy(props: EffectProps & { puppyId: string }) {
  const facts = useLitterOfPuppy(props.puppyId);
  return facts === null ? null : <OfPuppyIn {...props} litterId={facts.litter.id} />;
}

function OfPuppyIn({ puppyId, litterId, ...props }: EffectProps & { puppyId: string; litterId: string }) {
  const { litter, puppies, input, house } = useLitterGrowth(litterId);
  const { today } = props;
  const puppy = puppies.find((p) => p.id === puppyId);
  const grown = useMemo(() => {
    if (litter === null || puppy === undefined || input === null) return null;
    const { last, adult } = puppyWeights(litter, puppy, input, today);
    const ladder = (rules: HouseRules, food: Food) =>
      mealLadder(ladderInputOf({ litter, puppy, growth: input, rules, food, on: today }));
    return last === null || adult === null ? null : { litterId, born: dateOf(puppy.bornAt), ladder, grams: last.grams };
  }, [litter, puppy, input, litterId, today]);
  if (puppy === undefined || grown === null) return <p className="soft">{words.rules.noForecast}</p>;
  return (
    <Ladders
      {...props}
      litterId={litterId}
      grown={grown}
      unit={house.massUnit}
      line={words.rules.puppyLine(puppyName(puppy), words.massText(grown.grams, house.massUnit))}
    />
  );
}

function Ladders({
  opened,
  rules,
  tried,
  today,
  grown,
  unit,
  line,
}: EffectProps & { grown: Grown; unit: MassUnit; line: string }) {
  const now = tried ?? rules;
  const food = useFoodOn(grown.litterId, rules, grown.born, today);
  const before = useMemo(() => grown.ladder(opened, food), [opened, food, grown]);
  const after = useMemo(() => grown.ladder(now, food), [now, food, grown]);
  if (after.length === 0) return <p className="soft">{words.rules.noForecast}</p>;
  const same = JSON.stringify(before) === JSON.stringify(after);
  return (
    <>
      <p className="note">{line}</p>
      {!same && (
        <>
          <h4>{words.rules.before}</h4>
          <MealLadder steps={before} born={grown.born} nowDay={null} unit={unit} />
        </>
      )}
      <h4>{tried !== null ? words.rules.trying : same ? words.rules.unchanged : words.rules.after}</h4>
      <MealLadder steps={after} born={grown.born} nowDay={null} unit={unit} />
    </>
  );
}
