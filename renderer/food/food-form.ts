/** The form of a food: what is typed, read into the fields of a food or answered with a sentence beside the field. */

import type { FoodCatalogue } from '../../core/food/catalogue.ts';
import { FOOD_FORMS, type FoodForm, LABEL_BASES, type LabelBasis } from '../../core/food/food.ts';
import { ENERGY_METHODS, type LabelMethod } from '../../core/food/label.ts';
import { type FoodCheck, type FoodFields, foodChecks, foodFieldsSchema } from '../../core/food/own-food.ts';
import type { BoneBasis } from '../../core/reference/feeding/bone.ts';
import { limitsOf, longestOf } from '../../core/units/limits.ts';
import { bad, good, type Read, readNumber, readText } from '../parts/form/read.ts';
import { words } from '../state/words.ts';

const { shape } = foodFieldsSchema;

const FIGURES = ['water', 'protein', 'fat', 'fibre', 'ash', 'calcium', 'phosphorus', 'vitaminAPerKg', 'kcalPer100g'] as const;
const PACKS = ['packGrams', 'portionsPerPack', 'price', 'keepHours'] as const;
export type FigureField = (typeof FIGURES)[number];
export type PackField = (typeof PACKS)[number];
export type DraftField = FigureField | PackField | 'name' | 'bone' | 'parts' | 'note';

export interface PartDraft {
  /** Tells parts of a list apart while they have no food yet. */
  readonly key: number;
  readonly foodId: string;
  readonly percent: string;
}

export interface FoodDraft {
  readonly name: string;
  readonly form: FoodForm;
  readonly by: 'label' | 'recipe';
  readonly basis: LabelBasis;
  readonly method: LabelMethod;
  readonly figures: Readonly<Record<FigureField, string>>;
  readonly bone: string;
  readonly boneBasis: BoneBasis;
  readonly holdsVegetables: boolean;
  readonly packs: Readonly<Record<PackField, string>>;
  readonly note: string;
  readonly parts: readonly PartDraft[];
}

export const BONE_BASES = ['wet', 'clean', 'solids', 'unknown'] as const satisfies readonly BoneBasis[];

let lastKey = 0;

export function newPart(foodId: string, percent: string): PartDraft {
  lastKey += 1;
  return { key: lastKey, foodId, percent };
}

const EMPTY: FoodDraft = {
  name: '',
  form: 'complete mix',
  by: 'label',
  basis: 'as fed',
  method: 'label',
  figures: {
    water: '',
    protein: '',
    fat: '',
    fibre: '',
    ash: '',
    calcium: '',
    phosphorus: '',
    vitaminAPerKg: '',
    kcalPer100g: '',
  },
  bone: '',
  boneBasis: 'wet',
  holdsVegetables: true,
  packs: { packGrams: '', portionsPerPack: '', price: '', keepHours: '' },
  note: '',
  parts: [newPart('', ''), newPart('', '')],
};

const text = (n: number | null, times = 1) => (n === null ? '' : String(Math.round(n * times * 1000) / 1000));

/** What stands in the form for a food; the empty form for null. */
export function draftOf(fields: FoodFields | null): FoodDraft {
  if (fields === null) return EMPTY;
  const { made, bone } = fields;
  const label = made.by === 'label' ? made.label : null;
  return {
    ...EMPTY,
    name: fields.name,
    form: fields.form,
    by: made.by,
    basis: label?.basis ?? 'as fed',
    method: label?.method ?? 'label',
    figures: label === null ? EMPTY.figures : figuresOf((f) => text(label[f])),
    bone: text(bone?.share ?? null, 100),
    boneBasis: bone?.basis ?? 'wet',
    holdsVegetables: fields.holdsVegetables,
    packs: {
      packGrams: text(fields.packGrams),
      portionsPerPack: fields.portionsPerPack === 1 ? '' : text(fields.portionsPerPack),
      price: text(fields.price),
      keepHours: text(fields.keepHours),
    },
    note: fields.note,
    parts: made.by === 'recipe' ? made.parts.map((p) => newPart(p.foodId, text(p.share, 100))) : EMPTY.parts,
  };
}

function figuresOf<T>(of: (field: FigureField) => T): Record<FigureField, T> {
  return {
    water: of('water'),
    protein: of('protein'),
    fat: of('fat'),
    fibre: of('fibre'),
    ash: of('ash'),
    calcium: of('calcium'),
    phosphorus: of('phosphorus'),
    vitaminAPerKg: of('vitaminAPerKg'),
    kcalPer100g: of('kcalPer100g'),
  };
}

export type Mistakes = Readonly<Partial<Record<DraftField, string>>>;

export interface ReadDraft {
  /** Null when something can't be read. */
  readonly fields: FoodFields | null;
  readonly mistakes: Mistakes;
}

/** Reads the form as a whole. */
export function readDraft(draft: FoodDraft): ReadDraft {
  const mistakes: Partial<Record<DraftField, string>> = {};
  const take = <T>(field: DraftField, answer: Read<T>): T | null => {
    if (answer.ok) return answer.value;
    mistakes[field] ??= answer.sentence;
    return null;
  };
  const name = take('name', readText(longestOf(shape.name), words.food.nameNeeded)(draft.name));
  const note = take('note', readText(longestOf(shape.note))(draft.note));
  const packs = {
    packGrams: take('packGrams', maybe(draft.packs.packGrams, limitsOf(shape.packGrams), words.food.examples.pack)),
    portionsPerPack:
      take('portionsPerPack', maybe(draft.packs.portionsPerPack, limitsOf(shape.portionsPerPack), words.food.examples.whole)) ??
      1,
    price: take('price', maybe(draft.packs.price, limitsOf(shape.price), words.food.examples.price)),
    keepHours: take('keepHours', maybe(draft.packs.keepHours, limitsOf(shape.keepHours), words.food.examples.whole)),
  };
  const made = draft.by === 'label' ? readLabel(draft, take) : readRecipe(draft, take);
  const boneShare = draft.by === 'label' ? take('bone', maybe(draft.bone, { low: 0, high: 100 }, '10')) : null;
  if (made === null || Object.keys(mistakes).length > 0) return { fields: null, mistakes };
  const fields: FoodFields = {
    name: name ?? '',
    form: draft.form,
    made,
    bone: boneShare === null ? null : { share: boneShare / 100, basis: draft.boneBasis },
    holdsVegetables: draft.holdsVegetables,
    ...packs,
    note: note ?? '',
  };
  return { fields, mistakes };
}

type Take = <T>(field: DraftField, answer: Read<T>) => T | null;

/** A figure, or nothing at all. */
function maybe(typed: string, limits: { low: number; high: number; integer?: boolean }, example: string): Read<number | null> {
  return typed.trim() === '' ? good(null) : readNumber({ ...limits, example })(typed);
}

function readLabel({ basis, method, figures }: FoodDraft, take: Take): FoodFields['made'] {
  const max = basis === 'per 1000 kcal' ? 400 : 100;
  const part = (field: FigureField, high = max) =>
    take(field, maybe(figures[field], { low: 0, high }, words.food.examples.percent));
  const label = {
    basis,
    water: part('water', 100),
    protein: part('protein') ?? 0,
    fat: part('fat') ?? 0,
    fibre: part('fibre'),
    ash: part('ash'),
    calcium: part('calcium'),
    phosphorus: part('phosphorus'),
    vitaminAPerKg: take(
      'vitaminAPerKg',
      maybe(figures.vitaminAPerKg, { low: 0, high: 10_000_000 }, words.food.examples.vitaminA),
    ),
    kcalPer100g: take('kcalPer100g', maybe(figures.kcalPer100g, { low: 1, high: 10_000 }, words.food.examples.kcal)),
    method,
  };
  return { by: 'label', label };
}

function readRecipe({ parts }: FoodDraft, take: Take): FoodFields['made'] | null {
  const written = parts.filter((p) => p.foodId !== '' || p.percent.trim() !== '');
  const read = written.map(({ foodId, percent }) => ({
    foodId: foodId === '' ? take<string>('parts', bad(words.food.partNeeded)) : foodId,
    share: take('parts', readNumber({ low: 0.1, high: 100, unit: '%', example: '25' })(percent)),
  }));
  if (written.length === 0) take('parts', bad(words.food.partNeeded));
  const complete = read.flatMap(({ foodId, share }) =>
    foodId === null || share === null ? [] : [{ foodId, share: share / 100 }],
  );
  return complete.length === 0 ? null : { by: 'recipe', parts: complete };
}

/** The checks of what is typed, once it can be read; a mistake of reading comes first. */
export function draftChecks(id: string | null, read: ReadDraft, catalogue: FoodCatalogue): FoodCheck[] {
  return read.fields === null ? [] : foodChecks(id, read.fields, catalogue.find, catalogue.uses);
}

/** The sentence beside a field: what can't be read, else what can't be or is unlikely. */
export function sentenceFor(field: DraftField, read: ReadDraft, checks: readonly FoodCheck[]): string | null {
  const check = checks.find((c) => c.field === field);
  return read.mistakes[field] ?? (check === undefined ? null : words.food.check(check));
}

/** What is chosen when the kind changes: raw food from 4/9/4 and so on only where the pack gives no energy, vegetables by the kind. */
export function withForm(draft: FoodDraft, form: FoodForm): FoodDraft {
  const holdsVegetables =
    form === 'complete mix' || form === 'vegetable blend' ? true : form === 'plain mix' ? false : draft.holdsVegetables;
  return { ...draft, form, holdsVegetables };
}

export function formOf(value: string): FoodForm {
  return FOOD_FORMS.find((f) => f === value) ?? 'other';
}

export function basisOf(value: string): LabelBasis {
  return LABEL_BASES.find((b) => b === value) ?? 'as fed';
}

export function methodOf(value: string): LabelMethod {
  return ENERGY_METHODS.find((m) => m === value) ?? 'label';
}

export function boneBasisOf(value: string): BoneBasis {
  return BONE_BASES.find((b) => b === value) ?? 'unknown';
}
