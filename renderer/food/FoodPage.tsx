import { useState } from 'react';
import { type FoodCatalogue, foodCatalogue } from '../../core/food/catalogue.ts';
import { FOOD_FORMS, type Food, LABEL_BASES } from '../../core/food/food.ts';
import { ENERGY_METHODS } from '../../core/food/label.ts';
import { type FoodFields, foodOf, type StoredFood } from '../../core/food/own-food.ts';
import { portionGrams } from '../../core/food/portion.ts';
import { run, useQuery } from '../data/query.ts';
import { go, href } from '../links.ts';
import { figure } from '../parts/figures.ts';
import { changedFields } from '../parts/form/changed.ts';
import { FormChoice, FormField, type Option } from '../parts/form/fields.tsx';
import { PageTitle } from '../parts/PageTitle.tsx';
import { words } from '../state/words.ts';
import { FoodFigures, Instead } from './FoodFigures.tsx';
import { foodOptions } from './FoodsPage.tsx';
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
  const catalogue = foodCatalogue(stored);
  if (foodId === 'new') return <FoodForm key="new" id={null} stored={null} all={stored} catalogue={catalogue} />;
  const own = stored.find((f) => f.id === foodId);
  if (own !== undefined) return <FoodForm key={foodId} id={foodId} stored={own} all={stored} catalogue={catalogue} />;
  const shipped = catalogue.find(foodId);
  return shipped === null ? <Gone /> : <ShippedFood food={shipped} all={stored} catalogue={catalogue} />;
}

function Head({ title, lead }: { title: string; lead: string }) {
  return (
    <PageTitle title={title} lead={lead}>
      <a href={href({ at: 'foods' })}>{words.foods.back}</a>
    </PageTitle>
  );
}

function Gone() {
  return <Head title={words.foods.title} lead={words.food.gone} />;
}

function ShippedFood({ food, all, catalogue }: { food: Food; all: readonly StoredFood[]; catalogue: FoodCatalogue }) {
  return (
    <>
      <Head title={words.foods.nameOf(food)} lead={words.food.shippedLead} />
      <section className="foods-first">
        <FoodFigures food={food} label={null} />
      </section>
      <Instead food={food} catalogue={catalogue} options={foodOptions(all)} />
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
  catalogue,
}: {
  id: string | null;
  stored: StoredFood | null;
  all: readonly StoredFood[];
  catalogue: FoodCatalogue;
}) {
  const [draft, setDraft] = useState(() => draftOf(stored?.fields ?? null));
  const [opened, setOpened] = useState(() => (stored === null ? null : readDraft(draftOf(stored.fields)).fields));
  const [tried, setTried] = useState(false);
  const [said, setSaid] = useState<string | null>(null);
  const read = readDraft(draft);
  const checks = draftChecks(id, read, catalogue);
  const stops = checks.some((c) => c.severity === 'stop');
  const food = read.fields === null || stops ? null : foodOf(id ?? 'a-new-food', read.fields, catalogue.find);
  const set = (change: Partial<FoodDraft>) => {
    setDraft((d) => ({ ...d, ...change }));
    setSaid(null);
  };
  // Before the first try only what was typed is spoken of, not what is still missing.
  const sentence = (field: DraftField) => (tried || typedInto(draft, field) ? sentenceFor(field, read, checks) : null);
  const save = async () => {
    setTried(true);
    if (read.fields === null || stops || food === null) {
      setSaid(words.food.notSaved);
      return;
    }
    const written = read.fields;
    const change = opened === null ? written : changedFields(opened, written);
    if (Object.keys(change).length > 0) {
      const done = id === null ? await run('food.add', { fields: written }) : await run('food.change', { foodId: id, change });
      if (!done.ok) return;
      setOpened(written);
      if (id === null) go({ at: 'food', foodId: done.value.food.id });
    }
    setSaid(words.food.saved);
  };
  const props = { draft, set, sentence };
  return (
    <>
      <Head
        title={stored === null ? words.food.newTitle : stored.fields.name}
        lead={stored === null ? words.food.newLead : words.food.changeLead}
      />
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
          <Packs {...props} portion={portionOf(read.fields)} />
          <p className="food-save">
            <button type="submit" className="button main">
              {words.food.save}
            </button>
            <span role="status">{said}</span>
          </p>
        </form>
        <section className="food-live">
          <h2>{words.food.comesTo}</h2>
          {food === null ? (
            <p className="line soft">{words.food.notYet}</p>
          ) : (
            <FoodFigures food={food} label={read.fields?.made.by === 'label' ? read.fields.made.label : null} />
          )}
        </section>
      </div>
      {id !== null && food !== null && <Instead food={food} catalogue={catalogue} options={foodOptions(all)} />}
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
      <h2>{words.food.theFood}</h2>
      <div className="form">
        <FormField
          label={words.food.name}
          value={draft.name}
          onChange={(name) => set({ name })}
          sentence={sentence('name')}
          required
        />
        <FormChoice
          label={words.food.form}
          value={draft.form}
          options={FOOD_FORMS.map((value) => ({ value, word: words.foods.forms[value] }))}
          onChange={(form) => set(withForm(draft, formOf(form)))}
        />
        <FormChoice
          label={words.food.made}
          value={draft.by}
          options={[
            { value: 'label', word: words.food.madeLabel },
            { value: 'recipe', word: words.food.madeRecipe },
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
          {words.food.vegetables}
        </label>
      </div>
    </section>
  );
}

function ThePack({ draft, set, sentence }: FormProps) {
  const unit = draft.basis === 'per 1000 kcal' ? words.food.perKcal : words.food.percent;
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
      <h2>{words.food.pack}</h2>
      <div className="form">
        <FormChoice
          label={words.food.basis}
          value={draft.basis}
          options={LABEL_BASES.map((value) => ({ value, word: words.food.bases[value] }))}
          onChange={(basis) => set({ basis: basisOf(basis) })}
        />
        {part('protein', words.food.protein, unit)}
        {part('fat', words.food.fat, unit)}
        {part('fibre', words.food.fibre, unit)}
        {part('ash', words.food.ash, unit)}
        {part('water', words.food.water, words.food.waterHint)}
        {part('calcium', words.food.calcium, unit)}
        {part('phosphorus', words.food.phosphorus, unit)}
        {part('vitaminAPerKg', words.food.vitaminA, words.food.vitaminAHint)}
        {part('kcalPer100g', words.food.kcal, words.food.kcalHint)}
        <FormChoice
          label={words.food.method}
          value={draft.method}
          options={ENERGY_METHODS.map((value) => ({ value, word: words.food.methods[value] }))}
          onChange={(method) => set({ method: methodOf(method) })}
        />
        <FormField
          label={words.food.bone}
          hint={words.food.boneHint}
          className="food-figure"
          inputMode="decimal"
          value={draft.bone}
          onChange={(bone) => set({ bone })}
          sentence={sentence('bone')}
        />
        <FormChoice
          label={words.food.boneBasis}
          value={draft.boneBasis}
          options={BONE_BASES.map((value) => ({ value, word: words.foods.boneBases[value] }))}
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
      <h2>{words.food.recipe}</h2>
      <p className="soft">{words.food.recipeLead}</p>
      <ol className="food-parts">
        {parts.map((part, i) => (
          <li key={part.key}>
            <FormChoice
              inCell
              label={words.food.part(i + 1)}
              value={part.foodId}
              options={[{ value: '', word: words.food.choosePart }, ...options]}
              onChange={(foodId) => change(i, { foodId })}
            />
            <FormField
              inCell
              label={words.food.partShare(i + 1)}
              hint={words.food.percent}
              inputMode="decimal"
              value={part.percent}
              onChange={(percent) => change(i, { percent })}
              sentence={null}
            />
            <button
              type="button"
              className="link note"
              aria-label={words.food.removePart(i + 1)}
              onClick={() => set({ parts: parts.filter((_, at) => at !== i) })}
            >
              {words.food.takeOut}
            </button>
          </li>
        ))}
      </ol>
      <p>
        <button type="button" className="link" onClick={() => set({ parts: [...parts, newPart('', '')] })}>
          {words.food.addPart}
        </button>{' '}
        <span className="note">{words.food.sum(words.percentText(sum / 100, 1))}</span>
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
      <h2>{words.food.keeping}</h2>
      <div className="form">
        {pack('packGrams', words.food.packGrams, words.food.packHint)}
        {pack(
          'portionsPerPack',
          words.food.portions,
          portion === null ? words.food.portionsHint : words.food.portionsEach(figure(portion)),
        )}
        {pack('price', words.food.price, words.food.priceHint)}
        {pack('keepHours', words.food.keepHours, words.food.keepHint)}
        <FormField label={words.food.note} value={draft.note} onChange={(note) => set({ note })} sentence={sentence('note')} />
      </div>
    </section>
  );
}

/** Grams of a portion; null where packs are not cut, or nobody wrote what one weighs. */
function portionOf(fields: FoodFields | null): number | null {
  if (fields === null || fields.packGrams === null || fields.portionsPerPack === 1) return null;
  return portionGrams({ grams: fields.packGrams, portions: fields.portionsPerPack });
}
