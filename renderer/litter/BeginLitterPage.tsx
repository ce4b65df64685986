import { type FormEvent, useEffect, useRef, useState } from 'react';
import { dateOf } from '../../core/calendar/clock.ts';
import { SIZE_CLASSES } from '../../core/reference/classes.ts';
import { grownUnit } from '../../core/units/mass.ts';
import { now } from '../data/now.ts';
import { useQuery } from '../data/query.ts';
import { useHouse } from '../facts/useLitterGrowth.ts';
import { go, href } from '../links.ts';
import { FormChoice, FormField } from '../parts/form/fields.tsx';
import { PageTitle } from '../parts/PageTitle.tsx';
import { words } from '../state/words.ts';
import './begin.css';
import {
  asksBreedBirthIn,
  beginLitter,
  countOf,
  type Draft,
  EMPTY_PUPPY,
  emptyDraft,
  type Faults,
  MOST,
  readDraft,
} from './begin-draft.ts';
import { breedBirthHint } from './breed-birth.ts';
import { breedHint, breedSuggestions, sizeOfBreed } from './breeds.ts';
import { NewPuppies } from './NewPuppies.tsx';

/** What was being written when the page was left, so that nothing is lost by looking something up. */
let unfinished: Draft | null = null;

/** The dam's name is enough to begin; collars are given in the order of birth. */
export function BeginLitterPage() {
  const { massUnit: unit } = useHouse();
  const dogs = useQuery('dogs.all', {}).value?.dogs ?? [];
  const [draft, setDraft] = useState(() => unfinished ?? emptyDraft());
  const write = (next: Draft) => {
    unfinished = next;
    setDraft(next);
  };
  const [faults, setFaults] = useState<Faults>({});
  const [sending, setSending] = useState(false);
  const form = useRef<HTMLFormElement>(null);
  useEffect(() => form.current?.querySelector('input')?.focus(), []);
  const put = (change: Partial<Draft>) => {
    write({ ...draft, ...change });
    const left = { ...faults };
    for (const field of Object.keys(change)) delete left[field as keyof Draft];
    if ('clock' in change || 'day' in change) {
      delete left.day;
      delete left.clock;
    }
    setFaults(left);
  };
  const submit = async (event: FormEvent) => {
    event.preventDefault();
    if (sending) return;
    const answer = readDraft(draft, unit);
    setFaults(answer.faults);
    if (!answer.ok) {
      requestAnimationFrame(() => form.current?.querySelector<HTMLElement>('[aria-invalid="true"]')?.focus());
      return;
    }
    setSending(true);
    const litterId = await beginLitter(answer.value);
    setSending(false);
    if (litterId === null) return;
    unfinished = null;
    go({ at: 'litter', litterId, page: 'puppies', puppyId: null });
  };
  const named = (sex: 'dog' | 'bitch') =>
    dogs.filter((dog) => dog.sex === sex).map((dog) => ({ value: dog.name, word: dog.name }));
  const line = (
    field: 'dam' | 'sire' | 'name' | 'breedBirth' | 'adultDogKg' | 'adultBitchKg',
    label: string,
    hint?: string,
    suggestions?: ReturnType<typeof named>,
  ) => (
    <FormField
      label={label}
      {...(hint === undefined ? {} : { hint })}
      value={draft[field]}
      sentence={faults[field] ?? null}
      required={field === 'dam'}
      {...(suggestions === undefined ? {} : { suggestions })}
      onChange={(text) => put({ [field]: text })}
    />
  );
  const count = countOf(draft.count);
  const grownHint = words.begin.grownHint(grownUnit(unit));
  const wrong = Object.values(faults).length;
  return (
    <>
      <PageTitle title={words.begin.title} lead={words.begin.lead}>
        <a href={href({ at: 'litters' })}>{words.begin.back}</a>
      </PageTitle>
      <form ref={form} className="begin" noValidate onSubmit={(event) => void submit(event)}>
        <div className="form">
          {line('dam', words.begin.dam, undefined, named('bitch'))}
          {line('sire', words.begin.sire, undefined, named('dog'))}
          {line('name', words.begin.name, words.begin.nameHint)}
          <FormField
            label={words.begin.whelpedDate}
            type="date"
            max={dateOf(now().local)}
            value={draft.day}
            sentence={faults.day ?? null}
            onChange={(day) => put({ day })}
          />
          <FormField
            label={words.begin.whelpedTime}
            inputMode="numeric"
            value={draft.clock}
            sentence={faults.clock ?? null}
            onChange={(clock) => put({ clock })}
          />
          <FormField
            label={words.begin.breed}
            hint={breedHint(draft.breed)}
            value={draft.breed}
            sentence={faults.breed ?? null}
            suggestions={breedSuggestions()}
            onChange={(breed) => put({ breed, ...(draft.sizeClass === '' ? { sizeClass: sizeOfBreed(breed) ?? '' } : {}) })}
          />
          {asksBreedBirthIn(draft) && line('breedBirth', words.begin.breedBirth, breedBirthHint(draft.breed, unit))}
          <FormChoice
            label={words.begin.size}
            hint={words.begin.sizeHint}
            value={draft.sizeClass}
            options={[{ value: '', word: words.begin.sizeNone }, ...SIZE_CLASSES.map((s) => ({ value: s, word: words.size[s] }))]}
            onChange={(sizeClass) => put({ sizeClass })}
          />
          {line('adultDogKg', words.begin.grownDogs, grownHint)}
          {line('adultBitchKg', words.begin.grownBitches, grownHint)}
          <FormField
            label={words.begin.puppies}
            hint={words.begin.puppiesHint}
            inputMode="numeric"
            value={draft.count}
            sentence={faults.count ?? (count.ok ? null : count.sentence)}
            onChange={(text) => put({ count: text })}
          />
        </div>
        {count.ok && count.value > 0 && (
          <NewPuppies
            count={count.value}
            puppies={draft.puppies}
            faults={faults}
            unit={unit}
            onChange={(i, p) => {
              const puppies = Array.from({ length: MOST }, (_, k) => (k === i ? p : (draft.puppies[k] ?? EMPTY_PUPPY)));
              write({ ...draft, puppies });
              const left = { ...faults };
              delete left[`puppy-${i}`];
              setFaults(left);
            }}
          />
        )}
        <p className="begin-send">
          <button type="submit" className="button main" disabled={sending}>
            {words.begin.begin}
          </button>
          <span role="status">{wrong > 0 ? words.begin.mend(wrong) : ''}</span>
        </p>
      </form>
    </>
  );
}
