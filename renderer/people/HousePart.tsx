import type { House } from '../../core/people/house.ts';
import { MASS_UNITS } from '../../core/units/mass.ts';
import { unitWords, houseWords as w } from '../../core/words/en/feeding.ts';
import { changeHouse } from '../facts/change-house.ts';
import { useHouse } from '../facts/useLitterGrowth.ts';
import { type Option, SavedChoice, SavedField } from '../parts/form/fields.tsx';
import { good, type Read, readClock, readLine, readNumber } from '../parts/form/read.ts';

const LINE = 200;
const PAPERS = ['a4', 'letter'] as const satisfies readonly House['paper'][];
const THEMES = ['by-hour', 'day', 'night'] as const satisfies readonly House['theme'][];

type LineField = 'breederName' | 'address' | 'phone' | 'email' | 'vetName' | 'vetPhone';

/** Whose house it is, whom to call, how weights and papers are shown. */
export function HousePart() {
  const house = useHouse();
  const line = (field: LineField, inputMode: 'text' | 'tel' | 'email' = 'text') => (
    <SavedField
      label={w[field]}
      inputMode={inputMode}
      value={house[field]}
      read={readLine(LINE)}
      save={(text) => changeHouse(houseChange(field, text))}
    />
  );
  const clock = (field: 'nightFrom' | 'nightUntil') => (
    <SavedField label={w[field]} value={house[field]} read={readClock} save={(time) => changeHouse(houseChange(field, time))} />
  );
  const step = house.scaleStepGrams;
  return (
    <section className="part" id="house">
      <h2>{w.title}</h2>
      <p className="soft">{w.lead}</p>
      <div className="form">
        {line('breederName')}
        {line('address')}
        {line('phone', 'tel')}
        {line('email', 'email')}
        {line('vetName')}
        {line('vetPhone', 'tel')}
        <SavedChoice
          label={w.massUnit}
          hint={w.massUnitHint}
          value={house.massUnit}
          options={options(MASS_UNITS, unitWords)}
          save={(value) => changeHouse({ massUnit: MASS_UNITS.find((u) => u === value) ?? house.massUnit })}
        />
        <SavedField
          label={w.scaleStep}
          hint={w.scaleStepHint}
          inputMode="decimal"
          value={step === null ? '' : String(step)}
          read={readStep}
          save={(grams) => changeHouse({ scaleStepGrams: grams })}
        />
        <SavedChoice
          label={w.scaleTick}
          hint={w.scaleTickHint}
          value={house.scaleTick ? 'tick' : 'none'}
          options={options(['none', 'tick'], w.scaleTicks)}
          save={(value) => changeHouse({ scaleTick: value === 'tick' })}
        />
        <SavedChoice
          label={w.paper}
          value={house.paper}
          options={options(PAPERS, w.papers)}
          save={(value) => changeHouse({ paper: PAPERS.find((p) => p === value) ?? house.paper })}
        />
        <SavedChoice
          label={w.theme}
          value={house.theme}
          options={options(THEMES, w.themes)}
          save={(value) => changeHouse({ theme: THEMES.find((t) => t === value) ?? house.theme })}
        />
        {house.theme === 'by-hour' && (
          <>
            {clock('nightFrom')}
            {clock('nightUntil')}
          </>
        )}
      </div>
    </section>
  );
}

function readStep(text: string): Read<number | null> {
  return text.trim() === '' ? good(null) : readNumber({ low: 0.1, high: 500, unit: 'g', example: w.scaleStepExample })(text);
}

function options<V extends string>(values: readonly V[], words: Readonly<Record<V, string>>): Option[] {
  return values.map((value) => ({ value, word: words[value] }));
}

function houseChange<K extends keyof House>(field: K, value: House[K]): Partial<House> {
  const change: Partial<House> = {};
  change[field] = value;
  return change;
}
