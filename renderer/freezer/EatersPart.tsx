import { type FormEvent, useState } from 'react';
import {
  type Eater,
  type EaterFields,
  eaterFieldsSchema,
  type FreezerSettings,
  freezerSettingsSchema,
  gramsLeft,
  type Starter,
  starterFieldsSchema,
} from '../../core/freezer/pack.ts';
import { limitsIn, limitsOf, longestOf } from '../../core/units/limits.ts';
import { run, useQuery } from '../data/query.ts';
import { heavyText } from '../facts/freezer-text.ts';
import type { Freezer } from '../facts/useFreezer.ts';
import { useLittersInHouse } from '../facts/useLitter.ts';
import { changedFields } from '../parts/form/changed.ts';
import { SavedChoice, SavedField } from '../parts/form/fields.tsx';
import { good, type Read, readDate, readNumber, readText } from '../parts/form/read.ts';
import { words } from '../state/words.ts';
import { readPackGrams } from './DeliveryPart.tsx';
import { Choice, Field, FoodChoice } from './Field.tsx';

/** The litters by themselves; dogs and starter packs as she writes them; and how she does it. */
export function EatersPart({ f }: { f: Freezer }) {
  return (
    <section className="part">
      <h2>{words.freezer.eaters}</h2>
      <p className="soft">{words.freezer.eatersLead}</p>
      <Litters f={f} />
      <Dogs f={f} />
      <h3 className="freezer-third">{words.freezer.starters}</h3>
      <Starters f={f} />
      <h3 className="freezer-third">{words.freezer.settings}</h3>
      <Settings f={f} />
    </section>
  );
}

function Litters({ f }: { f: Freezer }) {
  return useLittersInHouse().map(({ litter }) => {
    const grams = f.demand.reduce((sum, d) => sum + (d.litterId === litter.id && d.day === f.today ? d.grams : 0), 0);
    return (
      <p key={litter.id} className="line">
        <b>{words.litterName(litter)}</b>
        <span className="soft">
          {grams > 0 ? words.freezer.litterEats(words.foodText(grams, f.house.massUnit)) : words.freezer.notYet}
        </span>
      </p>
    );
  });
}

function Dogs({ f }: { f: Freezer }) {
  const [edited, setEdited] = useState<Eater | 'new' | null>(null);
  return (
    <>
      {f.stock.eaters.map((dog) => (
        <p key={dog.id} className="line">
          <b>
            <bdi>{dog.name}</bdi>
          </b>
          <span className="soft">
            {dog.damId === null
              ? words.freezer.dogLine(words.foodText(dog.gramsADay, f.house.massUnit), f.nameOf(dog.foodId), dog.meals)
              : words.freezer.damLine(f.nameOf(dog.foodId))}
            {dog.untilDay !== null &&
              `, ${words.freezer.until(words.shortDate(dog.fromDay, f.today), words.shortDate(dog.untilDay, f.today))}`}
          </span>
          <button type="button" className="link" onClick={() => setEdited(dog)}>
            {words.freezer.change}
          </button>
          <button
            type="button"
            className="link"
            aria-label={words.freezer.removeDog(dog.name)}
            onClick={() => void run('freezer.removeDog', { dogId: dog.id })}
          >
            {words.freezer.remove}
          </button>
        </p>
      ))}
      {edited === null ? (
        <p className="line">
          <button type="button" className="link" onClick={() => setEdited('new')}>
            {words.freezer.addDog}
          </button>
        </p>
      ) : (
        <DogForm
          key={edited === 'new' ? '' : edited.id}
          f={f}
          dog={edited === 'new' ? null : edited}
          close={() => setEdited(null)}
        />
      )}
    </>
  );
}

const FIXED = 'fixed';

function DogForm({ f, dog, close }: { f: Freezer; dog: Eater | null; close: () => void }) {
  const unit = f.house.massUnit;
  const dams = useQuery('dogs.dams', {}).value?.dams ?? [];
  const [name, setName] = useState(dog?.name ?? '');
  const [grams, setGrams] = useState(dog === null ? '' : words.foodText(dog.gramsADay, unit).replace(/\u00a0/g, ' '));
  const [foodId, setFoodId] = useState(dog?.foodId ?? f.plan.foods[0]?.foodId ?? 'food-generic-mix');
  const [follows, setFollows] = useState(dog?.damId ?? FIXED);
  const [meals, setMeals] = useState(String(dog?.meals ?? 2));
  const [from, setFrom] = useState<string>(dog?.fromDay ?? f.today);
  const [until, setUntil] = useState<string>(dog?.untilDay ?? '');
  const [mistakes, setMistakes] = useState<Record<string, string>>({});
  const submit = async (event: FormEvent) => {
    event.preventDefault();
    const found: Record<string, string> = {};
    const take = <T,>(field: string, read: Read<T>): T | null => {
      if (read.ok) return read.value;
      found[field] = read.sentence;
      return null;
    };
    const read = {
      name: take('name', readText(longestOf(eaterFieldsSchema.shape.name), words.freezer.needName)(name)),
      grams: take('grams', readPackGrams(grams, f)),
      meals: take(
        'meals',
        readNumber({ ...limitsOf(eaterFieldsSchema.shape.meals), example: words.freezer.examples.meals })(meals),
      ),
      from: take('from', readDate(from)),
      until: until === '' ? null : take('until', readDate(until)),
    };
    if (read.grams !== null && read.grams > 10_000) found['grams'] = words.form.between(...words.freezer.eaterBounds);
    if (read.until !== null && read.from !== null && read.until < read.from) found['until'] = words.freezer.endsEarly;
    setMistakes(found);
    if (Object.keys(found).length > 0 || read.name === null || read.grams === null || read.meals === null || read.from === null)
      return;
    const fields: EaterFields = {
      name: read.name,
      foodId,
      gramsADay: read.grams,
      damId: follows === FIXED ? null : follows,
      meals: read.meals,
      fromDay: read.from,
      untilDay: read.until,
    };
    if (dog === null) {
      if ((await run('freezer.addDog', { fields })).ok) close();
      return;
    }
    const change = changedFields(fieldsOf(dog), fields);
    if (Object.keys(change).length === 0 || (await run('freezer.changeDog', { dogId: dog.id, change })).ok) close();
  };
  return (
    <form className="freezer-form" onSubmit={(event) => void submit(event)}>
      <Field label={words.freezer.dogName} value={name} mistake={mistakes['name'] ?? null} onChange={setName} />
      <Field label={words.freezer.dogGrams} size="short" value={grams} mistake={mistakes['grams'] ?? null} onChange={setGrams} />
      <FoodChoice f={f} value={foodId} onChange={setFoodId} />
      {dams.length > 0 && (
        <Choice
          label={words.freezer.dogFollows}
          value={follows}
          options={[
            { value: FIXED, word: words.freezer.fixed },
            ...dams.map((d) => ({ value: d.id, word: words.freezer.dam(d.fields.name) })),
          ]}
          onChange={setFollows}
        />
      )}
      <Field
        label={words.freezer.dogMeals}
        size="short"
        inputMode="numeric"
        value={meals}
        mistake={mistakes['meals'] ?? null}
        onChange={setMeals}
      />
      <Field label={words.freezer.dogFrom} type="date" value={from} mistake={mistakes['from'] ?? null} onChange={setFrom} />
      <Field label={words.freezer.dogUntil} type="date" value={until} mistake={mistakes['until'] ?? null} onChange={setUntil} />
      <button type="submit" className="button">
        {words.freezer.saveDog}
      </button>
      <button type="button" className="link" onClick={close}>
        {words.freezer.stopCount}
      </button>
    </form>
  );
}

function fieldsOf({ id: _, ...fields }: Eater): EaterFields {
  return fields;
}

function Starters({ f }: { f: Freezer }) {
  const [adding, setAdding] = useState(false);
  const unit = f.house.massUnit;
  const coming = f.stock.starters.filter((s) => s.day >= f.today);
  return (
    <>
      <p className="soft">{words.freezer.startersLead}</p>
      {coming.map((s) => (
        <StarterLine key={s.id} f={f} starter={s} />
      ))}
      {adding ? (
        <StarterForm f={f} close={() => setAdding(false)} />
      ) : (
        <p className="line">
          <button type="button" className="link" onClick={() => setAdding(true)}>
            {words.freezer.addStarter}
          </button>
          {coming.length > 0 && (
            <span className="soft">
              {heavyText(
                coming.reduce((sum, s) => sum + s.grams, 0),
                unit,
              )}
            </span>
          )}
        </p>
      )}
    </>
  );
}

function StarterLine({ f, starter: s }: { f: Freezer; starter: Starter }) {
  const unit = f.house.massUnit;
  const short = f.plan.startersShort.find((o) => o.starter.id === s.id);
  return (
    <p className="line">
      <b>{words.freezer.buyer(s.who)}</b>
      <span className="soft">
        {words.freezer.starterLine(words.foodText(s.grams, unit), f.nameOf(s.foodId), words.longDate(s.day))}
        {short !== undefined && `; ${words.freezer.starterShort(words.foodText(short.grams, unit))}`}
      </span>
      <button
        type="button"
        className="link"
        aria-label={words.freezer.removeStarter(words.freezer.buyer(s.who))}
        onClick={() => void run('freezer.removeStarter', { starterId: s.id })}
      >
        {words.freezer.remove}
      </button>
    </p>
  );
}

function StarterForm({ f, close }: { f: Freezer; close: () => void }) {
  const biggest = f.stock.packs.filter((p) => gramsLeft(p) > 0).at(-1);
  const [who, setWho] = useState('');
  const [day, setDay] = useState('');
  const [foodId, setFoodId] = useState(biggest?.foodId ?? f.plan.foods[0]?.foodId ?? 'food-generic-mix');
  const [grams, setGrams] = useState('');
  const [mistakes, setMistakes] = useState<Record<string, string>>({});
  const submit = async (event: FormEvent) => {
    event.preventDefault();
    const read = {
      who: readText(longestOf(starterFieldsSchema.shape.who), words.freezer.needName)(who),
      day: readDate(day),
      grams: readPackGrams(grams, f),
    };
    setMistakes({
      ...(read.who.ok ? {} : { who: read.who.sentence }),
      ...(read.day.ok ? {} : { day: read.day.sentence }),
      ...(read.grams.ok ? {} : { grams: read.grams.sentence }),
    });
    if (!read.who.ok || !read.day.ok || !read.grams.ok) return;
    const fields = { who: read.who.value, day: read.day.value, foodId, grams: read.grams.value };
    if ((await run('freezer.addStarter', { fields })).ok) close();
  };
  return (
    <form className="freezer-form" onSubmit={(event) => void submit(event)}>
      <Field label={words.freezer.starterWho} value={who} mistake={mistakes['who'] ?? null} onChange={setWho} />
      <Field
        label={words.freezer.starterGrams}
        size="short"
        value={grams}
        mistake={mistakes['grams'] ?? null}
        onChange={setGrams}
      />
      <FoodChoice f={f} value={foodId} onChange={setFoodId} />
      <Field label={words.freezer.starterDay} type="date" value={day} mistake={mistakes['day'] ?? null} onChange={setDay} />
      <button type="submit" className="button">
        {words.freezer.saveStarter}
      </button>
      <button type="button" className="link" onClick={close}>
        {words.freezer.stopCount}
      </button>
    </form>
  );
}

function Settings({ f }: { f: Freezer }) {
  const { settings } = f.stock;
  const save = async (change: Partial<FreezerSettings>) => {
    const done = await run('freezer.setSettings', { change });
    return done.ok ? null : words.form.notSaved;
  };
  return (
    <div className="form">
      <SavedChoice
        label={words.freezer.moveAt}
        value={settings.moveAt}
        options={(['meals', 'evening'] as const).map((value) => ({ value, word: words.freezer.moveAts[value] }))}
        save={(value) => save({ moveAt: value === 'evening' ? 'evening' : 'meals' })}
      />
      <SavedField
        label={words.freezer.room}
        hint={words.freezer.roomHint}
        inputMode="decimal"
        value={settings.roomGrams === null ? '' : String(settings.roomGrams / 1000)}
        read={readRoom}
        save={(roomGrams) => save({ roomGrams })}
      />
      <SavedField
        label={words.freezer.money}
        hint={words.freezer.moneyHint}
        value={settings.money}
        read={readText(longestOf(freezerSettingsSchema.shape.money))}
        save={(money) => save({ money })}
      />
    </div>
  );
}

function readRoom(text: string): Read<number | null> {
  if (text.trim() === '') return good(null);
  const read = readNumber({
    ...limitsIn(freezerSettingsSchema.shape.roomGrams, 0.001),
    unit: 'kg',
    example: words.freezer.examples.room,
  })(text);
  return read.ok ? good(Math.round(read.value * 1000)) : read;
}
