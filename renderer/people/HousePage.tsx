import { useEffect, useRef } from 'react';
import type { House } from '../../core/people/house.ts';
import { houseSchema } from '../../core/people/house.ts';
import { limitsOf, longestOf } from '../../core/units/limits.ts';
import { MASS_UNITS } from '../../core/units/mass.ts';
import { changeHouse } from '../facts/change-house.ts';
import { useHouse } from '../facts/useLitterGrowth.ts';
import { type Option, SavedChoice, SavedField } from '../parts/form/fields.tsx';
import { good, type Read, readClock, readNumber, readText } from '../parts/form/read.ts';
import { PageTitle } from '../parts/PageTitle.tsx';
import { words } from '../state/words.ts';

const PAPERS = ['a4', 'letter'] as const satisfies readonly House['paper'][];
const THEMES = ['by-hour', 'day', 'night'] as const satisfies readonly House['theme'][];

type LineField = 'breederName' | 'address' | 'phone' | 'email' | 'vetName' | 'vetPhone' | 'vetOutOfHours';

/** Whose house it is, whom to call, how weights and papers are shown. `field` is what she was sent here to write. */
export function HousePage({ field }: { field: 'vetPhone' | null }) {
  const house = useHouse();
  const form = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (field !== null) form.current?.querySelector<HTMLElement>(`.house-${field}`)?.focus();
  }, [field]);
  const line = (field: LineField, inputMode: 'text' | 'tel' | 'email' = 'text') => (
    <SavedField
      label={words.house[field]}
      className={`house-${field}`}
      inputMode={inputMode}
      value={house[field]}
      read={readText(longestOf(houseSchema.shape[field]))}
      save={(text) => changeHouse(houseChange(field, text))}
    />
  );
  const clock = (field: 'nightFrom' | 'nightUntil') => (
    <SavedField
      label={words.house[field]}
      value={house[field]}
      read={readClock}
      save={(time) => changeHouse(houseChange(field, time))}
    />
  );
  const step = house.scaleStepGrams;
  return (
    <>
      <PageTitle title={words.house.title} lead={words.house.lead} />
      <div className="form house-form" ref={form}>
        {line('breederName')}
        {line('address')}
        {line('phone', 'tel')}
        {line('email', 'email')}
        {line('vetName')}
        {line('vetPhone', 'tel')}
        {line('vetOutOfHours', 'tel')}
        <SavedChoice
          label={words.house.massUnit}
          hint={words.house.massUnitHint}
          value={house.massUnit}
          options={options(MASS_UNITS, words.unit)}
          save={(value) => changeHouse({ massUnit: MASS_UNITS.find((u) => u === value) ?? house.massUnit })}
        />
        <SavedField
          label={words.house.scaleStep}
          hint={words.house.scaleStepHint}
          inputMode="decimal"
          value={step === null ? '' : String(step)}
          read={readStep}
          save={(grams) => changeHouse({ scaleStepGrams: grams })}
        />
        <SavedChoice
          label={words.house.scaleTick}
          hint={words.house.scaleTickHint}
          value={house.scaleTick ? 'tick' : 'none'}
          options={options(['none', 'tick'], words.house.scaleTicks)}
          save={(value) => changeHouse({ scaleTick: value === 'tick' })}
        />
        <SavedChoice
          label={words.house.paper}
          value={house.paper}
          options={options(PAPERS, words.house.papers)}
          save={(value) => changeHouse({ paper: PAPERS.find((p) => p === value) ?? house.paper })}
        />
        <SavedChoice
          label={words.house.theme}
          value={house.theme}
          options={options(THEMES, words.house.themes)}
          save={(value) => changeHouse({ theme: THEMES.find((t) => t === value) ?? house.theme })}
        />
        {house.theme === 'by-hour' && (
          <>
            {clock('nightFrom')}
            {clock('nightUntil')}
          </>
        )}
      </div>
    </>
  );
}

function readStep(text: string): Read<number | null> {
  return text.trim() === ''
    ? good(null)
    : readNumber({ ...limitsOf(houseSchema.shape.scaleStepGrams), unit: 'g', example: words.house.scaleStepExample })(text);
}

function options<V extends string>(values: readonly V[], said: Readonly<Record<V, string>>): Option[] {
  return values.map((value) => ({ value, word: said[value] }));
}

function houseChange<K extends keyof House>(field: K, value: House[K]): Partial<House> {
  const change: Partial<House> = {};
  change[field] = value;
  return change;
}
