/** The form of a food: what is typed is read, or answered with a sentence beside its field. */
import { describe, expect, it } from 'vitest';
import { foodCatalogue } from '../../../core/food/catalogue.ts';
import { DEFAULT_FOOD } from '../../../core/food/food.ts';
import {
  type DraftField,
  draftChecks,
  draftOf,
  type FoodDraft,
  newPart,
  readDraft,
  sentenceFor,
  withForm,
} from '../../../renderer/food/food-form.ts';
import { foodFields, recipeFields } from '../../contract/world.ts';

const catalogue = foodCatalogue([]);
const pack = draftOf(foodFields('Lean mix'));
const typed = (figures: Partial<FoodDraft['figures']>, more: Partial<FoodDraft> = {}): FoodDraft => ({
  ...pack,
  ...more,
  figures: { ...pack.figures, ...figures },
});
const said = (draft: FoodDraft, field: DraftField) => {
  const read = readDraft(draft);
  return sentenceFor(field, read, draftChecks(null, read, catalogue))?.replaceAll('\u00a0', ' ') ?? null;
};

describe('the form', () => {
  it('reads back what it shows, for a pack and for a recipe', () => {
    expect(readDraft(pack).fields).toEqual(foodFields('Lean mix'));
    const recipe = recipeFields([
      [DEFAULT_FOOD.id, 0.75],
      ['usda-13325', 0.25],
    ]);
    expect(readDraft(draftOf(recipe)).fields).toEqual(recipe);
  });

  it('takes a decimal comma, and leaves what is empty not known', () => {
    const { fields } = readDraft(typed({ protein: '14,5', fibre: '', calcium: ' ' }));
    expect(fields?.made).toMatchObject({ label: { protein: 14.5, fibre: null, calcium: null } });
  });

  it.each([
    ['a word', typed({ protein: 'much' }), 'protein', /Write a number/],
    ['below nothing', typed({ fat: '-3' }), 'fat', /Write a number/],
    ['more than all of it', typed({ water: '120' }), 'water', /0.*100/],
    ['no name', { ...pack, name: '  ' }, 'name', /needs a name/],
    ['a name too long', { ...pack, name: 'x'.repeat(81) }, 'name', /80/],
    ['bone over a hundred', { ...pack, bone: '140' }, 'bone', /0.*100/],
    ['half a portion', { ...pack, packs: { ...pack.packs, portionsPerPack: '2.5' } }, 'portionsPerPack', /whole/i],
    ['parts over a hundred', typed({ water: '90' }), 'protein', /can't be/],
    ['energy that is off', typed({ kcalPer100g: '300' }), 'kcalPer100g', /over the/],
    ['a recipe of nothing', { ...pack, by: 'recipe', parts: [] }, 'parts', /Choose a food/],
    ['a recipe of half', { ...pack, by: 'recipe', parts: [newPart(DEFAULT_FOOD.id, '50')] }, 'parts', /Put in 50 %/],
    ['a part without a food', { ...pack, by: 'recipe', parts: [newPart('', '100')] }, 'parts', /Choose a food/],
  ] as const)('says what is wrong with %s, and keeps what was typed', (_what, draft, field, sentence) => {
    expect(said(draft, field)).toMatch(sentence);
    expect(said(pack, field)).toBeNull();
  });

  it('knows that a complete mix holds vegetables and a plain one does not', () => {
    expect(withForm(pack, 'plain mix').holdsVegetables).toBe(false);
    expect(withForm({ ...pack, holdsVegetables: false }, 'complete mix').holdsVegetables).toBe(true);
    expect(withForm({ ...pack, holdsVegetables: false }, 'dry').holdsVegetables).toBe(false);
  });
});
