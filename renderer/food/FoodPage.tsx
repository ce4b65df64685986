import { useState } from 'react';
import { type FoodCatalogue, foodCatalogue } from '../../core/food/catalogue.ts';
import type { Food } from '../../core/food/food.ts';
import { type FoodFields, foodOf, type StoredFood } from '../../core/food/own-food.ts';
import { portionGrams } from '../../core/food/portion.ts';
import { run, useQuery } from '../data/query.ts';
import { go, href } from '../links.ts';
import { changedFields } from '../parts/form/changed.ts';
import { PageTitle } from '../parts/PageTitle.tsx';
import { words } from '../state/words.ts';
import { FoodFigures, Instead } from './FoodFigures.tsx';
import { Packs, TheFood, ThePack, TheRecipe } from './FoodFormParts.tsx';
import { foodOptions } from './FoodsPage.tsx';
import './foods.css';
import {
  type DraftField,
  draftChecks,
  draftOf,
  type FigureField,
  type FoodDraft,
  type PackField,
  readDraft,
  sentenceFor,
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

/** Grams of a portion; null where packs are not cut, or nobody wrote what one weighs. */
function portionOf(fields: FoodFields | null): number | null {
  if (fields === null || fields.packGrams === null || fields.portionsPerPack === 1) return null;
  return portionGrams({ grams: fields.packGrams, portions: fields.portionsPerPack });
}
