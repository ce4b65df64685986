/** The parts of the form of a food: the food itself, what its pack says or its recipe, and the packs it is bought in. */
import { FOOD_FORMS, LABEL_BASES } from '../../core/food/food.ts';
import { ENERGY_METHODS } from '../../core/food/label.ts';
import { figure } from '../parts/figures.ts';
import { FormChoice, FormField, type Option } from '../parts/form/fields.tsx';
import { words } from '../state/words.ts';
import {
  BONE_BASES,
  basisOf,
  boneBasisOf,
  type DraftField,
  type FigureField,
  type FoodDraft,
  formOf,
  methodOf,
  newPart,
  type PackField,
  withForm,
} from './food-form.ts';

export interface FormProps {
  readonly draft: FoodDraft;
  readonly set: (change: Partial<FoodDraft>) => void;
  readonly sentence: (field: DraftField) => string | null;
}

export function TheFood({ draft, set, sentence }: FormProps) {
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

export function ThePack({ draft, set, sentence }: FormProps) {
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

export function TheRecipe({ draft, set, sentence, options }: FormProps & { options: readonly Option[] }) {
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

export function Packs({ draft, set, sentence, portion }: FormProps & { portion: number | null }) {
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
