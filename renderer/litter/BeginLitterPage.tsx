import { type FormEvent, useEffect, useRef, useState } from 'react';
import { clockOf, dateOf, type LocalTime, localTime } from '../../core/calendar/clock.ts';
import { type Collar, USUAL_COLLARS } from '../../core/litter/collar.ts';
import type { LitterFields } from '../../core/litter/litter.ts';
import { SEXES, type Sex, SIZE_CLASSES } from '../../core/reference/classes.ts';
import { grownUnit, type MassUnit } from '../../core/units/mass.ts';
import { instantOf, now } from '../data/now.ts';
import { run } from '../data/query.ts';
import { useHouse } from '../facts/useLitterGrowth.ts';
import { go, href } from '../links.ts';
import { CollarBand } from '../parts/CollarBand.tsx';
import { FormChoice, FormField } from '../parts/form/fields.tsx';
import {
  bad,
  good,
  type Read,
  readClock,
  readDate,
  readGrownKg,
  readMass,
  readNumber,
  readText,
  type TypedMass,
} from '../parts/form/read.ts';
import { PageTitle } from '../parts/PageTitle.tsx';
import { words } from '../state/words.ts';
import './begin.css';
import { whelpingFault } from '../facts/changes.ts';
import { asksBreedBirth, breedBirthHint, readBreedBirth } from './breed-birth.ts';

interface NewPuppy {
  readonly sex: Sex;
  readonly weight: string;
}

interface Draft {
  readonly dam: string;
  readonly sire: string;
  readonly name: string;
  readonly breed: string;
  readonly sizeClass: string;
  readonly adultDogKg: string;
  readonly adultBitchKg: string;
  readonly breedBirth: string;
  readonly day: string;
  readonly clock: string;
  readonly count: string;
  readonly puppies: readonly NewPuppy[];
}

type Faults = Partial<Record<keyof Draft | `puppy-${number}`, string>>;

interface Ready {
  readonly litter: LitterFields;
  readonly puppies: readonly { readonly collar: Collar; readonly sex: Sex; readonly birth: TypedMass | null }[];
}

const LINE = 120;
const MOST = USUAL_COLLARS.length;
const EMPTY_PUPPY: NewPuppy = { sex: 'dog', weight: '' };

function emptyDraft(): Draft {
  const { local } = now();
  return {
    dam: '',
    sire: '',
    name: '',
    breed: '',
    sizeClass: '',
    adultDogKg: '',
    adultBitchKg: '',
    breedBirth: '',
    count: '0',
    puppies: [],
    day: dateOf(local),
    clock: clockOf(local),
  };
}

/** What was being written when the page was left, so that nothing is lost by looking something up. */
let unfinished: Draft | null = null;

/** How many puppies the text asks for, 0 to 16; an unreadable text is none. */
function countOf(text: string): Read<number> {
  return text.trim() === ''
    ? good(0)
    : readNumber({ low: 0, high: MOST, integer: true, example: words.begin.puppiesExample })(text);
}

function asksBreedBirthIn(draft: Draft): boolean {
  return asksBreedBirth(draft.breed, draft.breedBirth.trim() !== '');
}

function whelpedOf(draft: Draft): { at: LocalTime } | { faults: Faults } {
  const day = readDate(draft.day);
  const clock = readClock(draft.clock);
  if (!day.ok) return { faults: { day: day.sentence } };
  if (!clock.ok) return { faults: { clock: clock.sentence } };
  const at = localTime(`${day.value}T${clock.value}`);
  const fault = whelpingFault(at);
  return fault === null ? { at } : { faults: { day: fault } };
}

/** The whole form read, or a sentence for each field that cannot be. */
function readDraft(draft: Draft, unit: MassUnit): Read<Ready> & { faults: Faults } {
  const faults: Faults = {};
  const take = <T,>(field: keyof Faults, answer: Read<T>, otherwise: T): T => {
    if (answer.ok) return answer.value;
    faults[field] = answer.sentence;
    return otherwise;
  };
  const whelped = whelpedOf(draft);
  if ('faults' in whelped) Object.assign(faults, whelped.faults);
  const at = 'at' in whelped ? whelped.at : now().local;
  const litter: LitterFields = {
    dam: take('dam', readText(LINE, words.begin.damNeeded)(draft.dam), ''),
    sire: take('sire', readText(LINE)(draft.sire), ''),
    name: take('name', readText(LINE)(draft.name), ''),
    breed: take('breed', readText(LINE)(draft.breed), ''),
    sizeClass: SIZE_CLASSES.find((s) => s === draft.sizeClass) ?? null,
    adultDogKg: take('adultDogKg', readGrownKg(unit)(draft.adultDogKg), null),
    adultBitchKg: take('adultBitchKg', readGrownKg(unit)(draft.adultBitchKg), null),
    breedBirthGrams: asksBreedBirthIn(draft) ? take('breedBirth', readBreedBirth(unit)(draft.breedBirth), null) : null,
    whelpedAt: at,
    whelpedInstant: instantOf(at),
  };
  const count = take('count', countOf(draft.count), 0);
  const puppies = USUAL_COLLARS.slice(0, count).map((collar, i) => {
    const puppy = draft.puppies[i] ?? EMPTY_PUPPY;
    return { collar, sex: puppy.sex, birth: take(`puppy-${i}`, readMass(unit)(puppy.weight), null) };
  });
  const first = Object.values(faults)[0];
  return first === undefined ? { ...good({ litter, puppies }), faults } : { ...bad(first), faults };
}

/** The dam's name is enough to begin; collars are given in the order of birth. */
export function BeginLitterPage() {
  const { massUnit: unit } = useHouse();
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
    await begin(answer.value);
    setSending(false);
  };
  const line = (
    field: 'dam' | 'sire' | 'name' | 'breed' | 'breedBirth' | 'adultDogKg' | 'adultBitchKg',
    label: string,
    hint?: string,
  ) => (
    <FormField
      label={label}
      {...(hint === undefined ? {} : { hint })}
      value={draft[field]}
      sentence={faults[field] ?? null}
      required={field === 'dam'}
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
          {line('dam', words.begin.dam)}
          {line('sire', words.begin.sire)}
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
          {line('breed', words.begin.breed)}
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

function NewPuppies(props: {
  count: number;
  puppies: readonly NewPuppy[];
  faults: Faults;
  unit: MassUnit;
  onChange: (i: number, puppy: NewPuppy) => void;
}) {
  return (
    <>
      <h2>{words.begin.theirCollars}</h2>
      <table className="begin-puppies">
        <thead>
          <tr>
            <th scope="col">{words.begin.collar}</th>
            <th scope="col">{words.begin.sex}</th>
            <th scope="col">{words.begin.birthWeight(words.unitShort[props.unit])}</th>
          </tr>
        </thead>
        <tbody>
          {USUAL_COLLARS.slice(0, props.count).map((collar, i) => {
            const puppy = props.puppies[i] ?? EMPTY_PUPPY;
            return (
              <tr key={collar.letter}>
                <td>
                  <CollarBand collar={collar} height={26} />
                </td>
                <td>
                  <FormChoice
                    inCell
                    label={words.begin.sexOf(collar.letter)}
                    value={puppy.sex}
                    options={SEXES.map((s) => ({ value: s, word: words.sex[s] }))}
                    onChange={(value) => props.onChange(i, { ...puppy, sex: SEXES.find((s) => s === value) ?? 'dog' })}
                  />
                </td>
                <td>
                  <FormField
                    inCell
                    label={words.begin.birthWeightOf(collar.letter)}
                    inputMode="decimal"
                    value={puppy.weight}
                    sentence={props.faults[`puppy-${i}`] ?? null}
                    onChange={(weight) => props.onChange(i, { ...puppy, weight })}
                  />
                </td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </>
  );
}

/** The litter and its puppies in the order of birth, as one. */
async function begin({ litter, puppies }: Ready): Promise<void> {
  const begun = await run('litter.begin', {
    litter,
    puppies: puppies.map(({ collar, sex, birth }, i) => ({
      fields: {
        collar,
        sex,
        callName: '',
        markings: '',
        birthOrder: i + 1,
        bornAt: litter.whelpedAt,
        bornInstant: litter.whelpedInstant,
      },
      birthWeight: birth === null ? null : { ...birth, source: 'keyboard' as const },
    })),
  });
  if (!begun.ok) return;
  unfinished = null;
  go({ at: 'litter', litterId: begun.value.litter.id, page: 'puppies', puppyId: null });
}
