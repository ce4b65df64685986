import { useMemo, useState } from 'react';
import { addDays, type CivilDate, date } from '../../core/calendar/day.ts';
import { type LadderStep, mealLadder } from '../../core/feeding/ladder.ts';
import type { HouseRules } from '../../core/feeding/rules.ts';
import type { Food } from '../../core/food/food.ts';
import { type AdultFrom, expectedAdultKg, forecastWeight } from '../../core/growth/forecast.ts';
import { puppyName } from '../../core/litter/litter.ts';
import type { SizeClass } from '../../core/reference/classes.ts';
import type { MassUnit } from '../../core/units/mass.ts';
import { useQuery } from '../data/query.ts';
import { useFoodOn } from '../facts/useFoods.ts';
import { useLitterOfPuppy } from '../facts/useLitter.ts';
import { useHouse, useLitterGrowth } from '../facts/useLitterGrowth.ts';
import { FormChoice } from '../parts/form/fields.tsx';
import { MealLadder } from '../parts/MealLadder.tsx';
import { words } from '../state/words.ts';

/** The first day of a ladder: eight weeks, or today for who is older. */
const FROM_DAY = 56;
const EXAMPLE_GRAMS = 3500;
const DAY_MS = 86_400_000;

/** What a ladder is reckoned from, beside the rules. */
interface Grown {
  /** Whose food it eats; the house's with null. */
  readonly litterId: string | null;
  readonly born: CivilDate;
  readonly anchorAgeDays: number;
  readonly anchorGrams: number;
  readonly adultKg: number | null;
  readonly adultFrom: AdultFrom | undefined;
  readonly sizeClass: SizeClass | null;
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
    .filter((p) => p.state === 'litter' || p.state === 'kept');
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
    const adult = expectedAdultKg({ sizeClass: 'medium', adultDogKg: null, adultBitchKg: null }, 'bitch');
    return {
      litterId,
      born: addDays(today, -FROM_DAY),
      anchorAgeDays: FROM_DAY,
      anchorGrams: EXAMPLE_GRAMS,
      adultKg: adult?.kg ?? null,
      adultFrom: adult?.from,
      sizeClass: 'medium',
    };
  }, [today, litterId]);
  return (
    <Ladders {...props} grown={grown} unit={massUnit} line={words.rules.exampleLine(words.massText(EXAMPLE_GRAMS, massUnit))} />
  );
}

function OfPuppy(props: EffectProps & { puppyId: string }) {
  const facts = useLitterOfPuppy(props.puppyId);
  return facts === null ? null : <OfPuppyIn {...props} litterId={facts.litter.id} />;
}

function OfPuppyIn({ puppyId, litterId, ...props }: EffectProps & { puppyId: string; litterId: string }) {
  const { litter, puppies, growth, input, house } = useLitterGrowth(litterId);
  const puppy = puppies.find((p) => p.id === puppyId);
  const now = growth?.puppies.get(puppyId);
  const grown = useMemo<Grown | null>(() => {
    if (litter === null || puppy === undefined || now == null || now.grams === null || now.at === null) return null;
    const reading = input?.readings.find((r) => r.puppyId === puppyId && r.at === now.at);
    if (reading === undefined) return null;
    const adult = expectedAdultKg(litter, puppy.sex);
    return {
      litterId: litter.id,
      born: date(puppy.bornAt.slice(0, 10)),
      anchorAgeDays: Math.max(0, (reading.instant - puppy.bornInstant) / DAY_MS),
      anchorGrams: now.grams,
      adultKg: adult?.kg ?? null,
      adultFrom: adult?.from,
      sizeClass: litter.sizeClass,
    };
  }, [litter, puppy, now, input, puppyId]);
  if (puppy === undefined || grown === null || grown.adultKg === null) return <p className="soft">{words.rules.noForecast}</p>;
  return (
    <Ladders
      {...props}
      litterId={litterId}
      grown={grown}
      unit={house.massUnit}
      line={words.rules.puppyLine(puppyName(puppy), words.massText(grown.anchorGrams, house.massUnit))}
    />
  );
}

function ladderOf(rules: HouseRules, food: Food, grown: Grown, today: CivilDate, unit: MassUnit): LadderStep[] {
  const { born, adultKg } = grown;
  const forecast = forecastWeight(grown);
  const eightWeeks = addDays(born, FROM_DAY);
  return mealLadder({
    rules,
    food,
    born,
    from: eightWeeks > today ? eightWeeks : today,
    adultKg,
    forecast: (ageDays) => forecast.at(ageDays)?.mid ?? null,
    unit,
  });
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
  const before = useMemo(() => ladderOf(opened, food, grown, today, unit), [opened, food, grown, today, unit]);
  const after = useMemo(() => ladderOf(now, food, grown, today, unit), [now, food, grown, today, unit]);
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
