import { type FormEvent, useEffect, useRef, useState } from 'react';
import { dateOf } from '../../core/calendar/clock.ts';
import type { PackFields } from '../../core/freezer/pack.ts';
import { packFieldsSchema } from '../../core/freezer/pack.ts';
import { usualPack } from '../../core/freezer/shopping.ts';
import { foodUnit } from '../../core/units/food.ts';
import { limitsOf } from '../../core/units/limits.ts';
import { parseMass } from '../../core/units/mass.ts';
import { now } from '../data/now.ts';
import { run } from '../data/query.ts';
import { useStoredFoods } from '../facts/useFoods.ts';
import type { Freezer } from '../facts/useFreezer.ts';
import { href } from '../links.ts';
import { bad, good, type Read, readDate, readNumber } from '../parts/form/read.ts';
import { words } from '../state/words.ts';
import { Field, FoodChoice } from './Field.tsx';

/** A delivery begun elsewhere on the page: each turn puts the hands on the form, with what is known filled in. */
export interface Begun {
  readonly turn: number;
  readonly foodId: string | null;
  readonly count: number | null;
}

interface Draft {
  readonly count: string;
  readonly weight: string;
  readonly foodId: string;
  readonly portions: string;
  readonly frozenOn: string;
  readonly bestBefore: string;
  readonly price: string;
  readonly place: string;
}

type Mistakes = Partial<Record<keyof Draft, string>>;

/** So many packs alike, by keyboard: number, weight, Enter. What was last time is there already. */
export function DeliveryPart({ f, begun }: { f: Freezer; begun: Begun }) {
  const stored = useStoredFoods();
  const usual = useUsual(f, stored);
  const [draft, setDraft] = useState<Draft>(() => ({ ...usual(firstFood(f)), count: '' }));
  const [mistakes, setMistakes] = useState<Mistakes>({});
  const [said, setSaid] = useState('');
  const countField = useRef<HTMLInputElement>(null);
  useEffect(() => {
    if (begun.turn === 0) return;
    const { foodId, count } = begun;
    if (foodId !== null) setDraft((d) => ({ ...usual(foodId), count: count === null ? d.count : String(count) }));
    countField.current?.focus();
    countField.current?.select();
    countField.current?.scrollIntoView({ block: 'center' });
    // Only a new turn begins a delivery; new facts must not take what is being typed.
  }, [begun, usual]);
  const set = (field: keyof Draft) => (text: string) => {
    setDraft((d) => ({ ...d, [field]: text }));
    setMistakes((m) => ({ ...m, [field]: undefined }));
  };
  const submit = async (event: FormEvent) => {
    event.preventDefault();
    const read = readDelivery(f, draft);
    if (!read.ok) return setMistakes(read.mistakes);
    const done = await run('freezer.add', { count: read.count, pack: read.pack });
    if (!done.ok) return;
    setSaid(words.freezer.added(read.count, f.nameOf(read.pack.foodId), words.foodText(read.pack.grams, f.house.massUnit)));
    setDraft((d) => ({ ...d, count: '' }));
    countField.current?.focus();
  };
  const field = (name: keyof Draft, more: Partial<Parameters<typeof Field>[0]> = {}) => (
    <Field
      label={words.freezer[labels[name]]}
      value={draft[name]}
      mistake={mistakes[name] ?? null}
      onChange={set(name)}
      {...more}
    />
  );
  return (
    <section className="part">
      <h2>{words.freezer.delivery}</h2>
      <p className="soft">
        {words.freezer.deliveryLead} <a href={href({ at: 'foods' })}>{words.freezer.foodsLink}</a>
      </p>
      <form className="freezer-form" onSubmit={(event) => void submit(event)}>
        {field('count', { input: countField, inputMode: 'numeric', size: 'short' })}
        {field('weight', { size: 'short' })}
        <FoodChoice
          f={f}
          value={draft.foodId}
          onChange={(foodId) => setDraft((d) => ({ ...usual(foodId), count: d.count, frozenOn: d.frozenOn }))}
        />
        {field('portions', { inputMode: 'numeric', size: 'short' })}
        {field('frozenOn', { type: 'date' })}
        {field('bestBefore', { type: 'date' })}
        {field('price', { inputMode: 'decimal', size: 'short' })}
        {field('place')}
        <button type="submit" className="button main">
          {words.freezer.add}
        </button>
      </form>
      <p className="freezer-said" role="status">
        {said}
      </p>
    </section>
  );
}

const labels = {
  count: 'count',
  weight: 'weight',
  foodId: 'foodIs',
  portions: 'portions',
  frozenOn: 'frozenOn',
  bestBefore: 'bestBefore',
  price: 'price',
  place: 'place',
} as const satisfies Record<keyof Draft, keyof typeof words.freezer>;

/** The food that is eaten here, else the first of the catalogue. */
function firstFood(f: Freezer): string {
  return f.plan.foods.find((food) => food.wanted)?.foodId ?? f.stock.packs.at(-1)?.foodId ?? 'food-generic-mix';
}

/** How a food comes: as it came last, else as it is written under Foods. */
function useUsual(f: Freezer, stored: ReturnType<typeof useStoredFoods>) {
  const latest = useRef({ f, stored });
  latest.current = { f, stored };
  const [usual] = useState(() => (foodId: string): Draft => {
    const { f: facts, stored: foods } = latest.current;
    const last = usualPack(facts.stock.packs, foodId);
    const written = foods.find((s) => s.id === foodId)?.fields;
    const grams = last?.grams ?? written?.packGrams ?? null;
    const price = last === null ? (written?.price ?? null) : last.price;
    return {
      count: '',
      weight: grams === null ? '' : words.foodText(grams, facts.house.massUnit).replace(/\u00a0/g, ' '),
      foodId,
      portions: String(last?.portions ?? written?.portionsPerPack ?? 1),
      frozenOn: facts.today,
      bestBefore: '',
      price: price === null ? '' : String(price),
      place: last?.place ?? '',
    };
  });
  return usual;
}

type ReadDelivery = { ok: true; count: number; pack: PackFields } | { ok: false; mistakes: Mistakes };

function readDelivery(f: Freezer, draft: Draft): ReadDelivery {
  const today = dateOf(now().local);
  const mistakes: Mistakes = {};
  const take = <T,>(field: keyof Draft, read: Read<T>): T | null => {
    if (read.ok) return read.value;
    mistakes[field] = read.sentence;
    return null;
  };
  const count = take(
    'count',
    readNumber({ low: 1, high: 200, integer: true, example: words.freezer.examples.count })(draft.count),
  );
  const grams = take('weight', readPackGrams(draft.weight, f));
  const portions = take(
    'portions',
    readNumber({ ...limitsOf(packFieldsSchema.shape.portions), example: words.freezer.examples.portions })(draft.portions),
  );
  const frozenOn = take('frozenOn', readDate(draft.frozenOn));
  const bestBefore = draft.bestBefore === '' ? null : take('bestBefore', readDate(draft.bestBefore));
  const price = take('price', readPrice(draft.price));
  if (frozenOn !== null && frozenOn > today) mistakes.frozenOn = words.freezer.frozenLater;
  if (bestBefore !== null && frozenOn !== null && bestBefore < frozenOn) mistakes.bestBefore = words.freezer.bestBeforeEarly;
  const place = draft.place.trim();
  if (place.length > 60) mistakes.place = words.form.tooLong(60);
  const anyMistake = Object.values(mistakes).some((m) => m !== undefined);
  if (anyMistake || count === null || grams === null || portions === null || frozenOn === null) return { ok: false, mistakes };
  return { ok: true, count, pack: { foodId: draft.foodId, grams, portions, frozenOn, bestBefore, price, place } };
}

/** A pack as people write it; a number alone is grams, or ounces for who weighs in ounces or pounds. */
export function readPackGrams(text: string, f: Pick<Freezer, 'house'>): Read<PackFields['grams']> {
  if (text.trim() === '') return bad(words.freezer.needWeight);
  const { massUnit } = f.house;
  const mass = parseMass(text, foodUnit(massUnit));
  if (!mass.ok) return bad(words.form.massFault(mass.fault, text.trim()));
  return mass.grams < 1 || mass.grams > 30_000 ? bad(words.freezer.packTooHeavy) : good(mass.grams);
}

function readPrice(text: string): Read<number | null> {
  const figure = text.replace(/[^\d.,]/g, '');
  return figure === '' && text.trim() === ''
    ? good(null)
    : readNumber({ low: 0, high: 100_000, example: words.freezer.examples.price })(figure);
}
