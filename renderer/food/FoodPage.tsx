import { useState } from 'react';
import { type FoodBook, foodBook } from '../../core/food/catalogue.ts';
import { percentText } from '../../core/food/figures.ts';
import { FOOD_FORMS, type Food } from '../../core/food/food.ts';
import { ENERGY_METHODS, LABEL_BASES } from '../../core/food/label.ts';
import { foodOf, portionGrams, type StoredFood } from '../../core/food/own-food.ts';
import { foodsWords, foodWords as w } from '../../core/words/en/foods.ts';
import { run, useQuery } from '../data/query.ts';
import { go, href } from '../links.ts';
import { FormChoice, FormField, type Option } from '../parts/form/fields.tsx';
import { PageTitle } from '../parts/PageTitle.tsx';
import { FoodFigures, Instead } from './FoodFigures.tsx';
import { foodOptions } from './FoodsPage.tsx';
import { figure } from './figures.ts';
import './foods.css';
import {
  BONE_BASES,
  basisOf,
  boneBasisOf,
  type DraftField,
  draftChecks,
  draftOf,
  type FigureField,
  type FoodDraft,
  formOf,
  methodOf,
  newPart,
  type PackField,
  readDraft,
  sentenceFor,
  withForm,
} from './food-form.ts';

/** One food: hers to be written and changed, or a shipped one to be looked at. */
export function FoodPage({ foodId }: { foodId: string }) {
  const asked = useQuery('food.all', {});
  if (asked.value === null) return null;
  const stored = asked.value.foods;
  const book = foodBook(stored);
  if (foodId === 'new') return <FoodForm key="new" id={null} stored={null} all={stored} book={book} />;
  const own = stored.find((f) => f.id === foodId);
  if (own !== undefined) return <FoodForm key={foodId} id={foodId} stored={own} all={stored} book={book} />;
  const shipped = book.find(foodId);
  return shipped === null ? <Gone /> : <ShippedFood food={shipped} all={stored} book={book} />;
}

function Head({ title, lead }: { title: string; lead: string }) {
  return (
    <PageTitle title={title} lead={lead}>
      <a href={href({ at: 'foods' })}>{foodsWords.back}</a>
    </PageTitle>
  );
}

function Gone() {
  return <Head title={foodsWords.title} lead={w.gone} />;
}

function ShippedFood({ food, all, book }: { food: Food; all: readonly StoredFood[]; book: FoodBook }) {
  return (
    <>
      <Head title={food.name} lead={w.shippedLead} />
      <section className="foods-first">
        <FoodFigures food={food} label={null} />
      </section>
      <Instead food={food} book={book} options={foodOptions(all)} />
    </>
  );
}

interface FormProps {
  readonly draft: FoodDraft;
  readonly set: (change: Partial<FoodDraft>) => void;
  readonly sentence: (field: DraftField) => string | null;
}

function FoodForm({
  id,
  stored,
  all,
  book,
}: {
  id: string | null;
  stored: StoredFood | null;
  all: readonly StoredFood[];
  book: FoodBook;
}) {
  const [draft, setDraft] = useState(() => draftOf(stored?.fields ?? null));
  const [tried, setTried] = useState(false);
  const [said, setSaid] = useState<string | null>(null);
  const read = readDraft(draft);
  const checks = draftChecks(id, read, book);
  const stops = checks.some((c) => c.severity === 'stop');
  const food = read.fields === null || stops ? null : foodOf(id ?? 'a-new-food', read.fields, book.find);
  const set = (change: Partial<FoodDraft>) => {
    setDraft((d) => ({ ...d, ...change }));
    setSaid(null);
  };
  // Before the first try only what was typed is spoken of, not what is still missing.
  const sentence = (field: DraftField) => (tried || typedInto(draft, field) ? sentenceFor(field, read, checks) : null);
  const save = async () => {
    setTried(true);
    if (read.fields === null || stops || food === null) {
      setSaid(w.notSaved);
      return;
    }
    const done = await run('food.set', { foodId: id, fields: read.fields });
    if (!done.ok) return;
    setSaid(w.saved);
    if (id === null) go({ at: 'food', foodId: done.value.food.id });
  };
  const props = { draft, set, sentence };
  return (
    <>
      <Head title={stored === null ? w.newTitle : stored.fields.name} lead={stored === null ? w.newLead : w.changeLead} />
      <div className="food-columns">
        <form
          onSubmit={(event) => {
            event.preventDefault();
            void save();
          }}
        >
          <TheFood {...props} />
          {draft.by === 'label' ? (
            <ThePack {...props} />
          ) : (
            <TheRecipe {...props} options={foodOptions(all.filter((f) => f.id !== id))} />
          )}
          <Packs
            {...props}
            portion={read.fields === null || read.fields.portionsPerPack === 1 ? null : portionGrams(read.fields)}
          />
          <p className="food-save">
            <button type="submit" className="button main">
              {w.save}
            </button>
            <span role="status">{said}</span>
          </p>
        </form>
        <section className="food-live">
          <h2>{w.comesTo}</h2>
          {food === null ? (
            <p className="line soft">{w.notYet}</p>
          ) : (
            <FoodFigures food={food} label={read.fields?.made.by === 'label' ? read.fields.made.label : null} />
          )}
        </section>
      </div>
      {id !== null && food !== null && <Instead food={food} book={book} options={foodOptions(all)} />}
    </>
  );
}

function typedInto(draft: FoodDraft, field: DraftField): boolean {
  if (field === 'name' || field === 'note' || field === 'bone') return draft[field] !== '';
  if (field === 'parts') return draft.parts.some((p) => p.percent !== '');
  if (field in draft.packs) return draft.packs[field as PackField] !== '';
  return Object.values(draft.figures).filter((t) => t !== '').length >= 2 || draft.figures[field as FigureField] !== '';
}

function TheFood({ draft, set, sentence }: FormProps) {
  return (
    <section className="foods-first">
      <h2>{w.theFood}</h2>
      <div className="form">
        <FormField label={w.name} value={draft.name} onChange={(name) => set({ name })} sentence={sentence('name')} required />
        <FormChoice
          label={w.form}
          value={draft.form}
          options={FOOD_FORMS.map((value) => ({ value, word: foodsWords.forms[value] }))}
          onChange={(form) => set(withForm(draft, formOf(form)))}
        />
        <FormChoice
          label={w.made}
          value={draft.by}
          options={[
            { value: 'label', word: w.madeLabel },
            { value: 'recipe', word: w.madeRecipe },
          ]}
          onChange={(by) => set({ by: by === 'recipe' ? 'recipe' : 'label' })}
        />
        <span className="label" />
        <label className="box">
          <input
            type="checkbox"
            checked={draft.holdsVegetables}
            onChange={(event) => set({ holdsVegetables: event.target.checked })}
          />
          {w.vegetables}
        </label>
      </div>
    </section>
  );
}

function ThePack({ draft, set, sentence }: FormProps) {
  const unit = draft.basis === 'per 1000 kcal' ? w.perKcal : w.percent;
  const part = (field: FigureField, label: string, hint: string) => (
    <FormField
      key={field}
      label={label}
      hint={hint}
      className="food-figure"
      inputMode="decimal"
      value={draft.figures[field]}
      onChange={(typed) => set({ figures: { ...draft.figures, [field]: typed } })}
      sentence={sentence(field)}
    />
  );
  return (
    <section className="part">
      <h2>{w.pack}</h2>
      <div className="form">
        <FormChoice
          label={w.basis}
          value={draft.basis}
          options={LABEL_BASES.map((value) => ({ value, word: w.bases[value] }))}
          onChange={(basis) => set({ basis: basisOf(basis) })}
        />
        {part('protein', w.protein, unit)}
        {part('fat', w.fat, unit)}
        {part('fibre', w.fibre, unit)}
        {part('ash', w.ash, unit)}
        {part('water', w.water, w.waterHint)}
        {part('calcium', w.calcium, unit)}
        {part('phosphorus', w.phosphorus, unit)}
        {part('vitaminAPerKg', w.vitaminA, w.vitaminAHint)}
        {part('kcalPer100g', w.kcal, w.kcalHint)}
        <FormChoice
          label={w.method}
          value={draft.method}
          options={ENERGY_METHODS.map((value) => ({ value, word: w.methods[value] }))}
          onChange={(method) => set({ method: methodOf(method) })}
        />
        <FormField
          label={w.bone}
          hint={w.boneHint}
          className="food-figure"
          inputMode="decimal"
          value={draft.bone}
          onChange={(bone) => set({ bone })}
          sentence={sentence('bone')}
        />
        <FormChoice
          label={w.boneBasis}
          value={draft.boneBasis}
          options={BONE_BASES.map((value) => ({ value, word: foodsWords.boneBases[value] }))}
          onChange={(basis) => set({ boneBasis: boneBasisOf(basis) })}
        />
      </div>
    </section>
  );
}

function TheRecipe({ draft, set, sentence, options }: FormProps & { options: readonly Option[] }) {
  const { parts } = draft;
  const change = (at: number, to: Partial<(typeof parts)[number]>) =>
    set({ parts: parts.map((p, i) => (i === at ? { ...p, ...to } : p)) });
  const sum = parts.reduce((total, p) => total + (Number(p.percent.replace(',', '.')) || 0), 0);
  const wrong = sentence('parts');
  return (
    <section className="part">
      <h2>{w.recipe}</h2>
      <p className="soft">{w.recipeLead}</p>
      <ol className="food-parts">
        {parts.map((part, i) => (
          <li key={part.key}>
            <FormChoice
              inCell
              label={w.part(i + 1)}
              value={part.foodId}
              options={[{ value: '', word: w.choosePart }, ...options]}
              onChange={(foodId) => change(i, { foodId })}
            />
            <FormField
              inCell
              label={w.partShare(i + 1)}
              hint={w.percent}
              inputMode="decimal"
              value={part.percent}
              onChange={(percent) => change(i, { percent })}
              sentence={null}
            />
            <button
              type="button"
              className="link note"
              aria-label={w.removePart(i + 1)}
              onClick={() => set({ parts: parts.filter((_, at) => at !== i) })}
            >
              {w.takeOut}
            </button>
          </li>
        ))}
      </ol>
      <p>
        <button type="button" className="link" onClick={() => set({ parts: [...parts, newPart('', '')] })}>
          {w.addPart}
        </button>{' '}
        <span className="note">{w.sum(percentText(sum / 100, 1))}</span>
      </p>
      <p className={wrong === null ? 'mistake-none' : 'mistake'} aria-live="polite">
        {wrong}
      </p>
    </section>
  );
}

function Packs({ draft, set, sentence, portion }: FormProps & { portion: number | null }) {
  const pack = (field: PackField, label: string, hint: string) => (
    <FormField
      label={label}
      hint={hint}
      className="food-figure"
      inputMode="decimal"
      value={draft.packs[field]}
      onChange={(typed) => set({ packs: { ...draft.packs, [field]: typed } })}
      sentence={sentence(field)}
    />
  );
  return (
    <section className="part">
      <h2>{w.keeping}</h2>
      <div className="form">
        {pack('packGrams', w.packGrams, w.packHint)}
        {pack('portionsPerPack', w.portions, portion === null ? w.portionsHint : w.portionsEach(figure(portion)))}
        {pack('price', w.price, w.priceHint)}
        {pack('keepHours', w.keepHours, w.keepHint)}
        <FormField label={w.note} value={draft.note} onChange={(note) => set({ note })} sentence={sentence('note')} />
      </div>
    </section>
  );
}
