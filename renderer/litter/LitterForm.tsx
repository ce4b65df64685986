import { useState } from 'react';
import { clockOf, dateOf, localTime } from '../../core/calendar/clock.ts';
import type { Litter, LitterFields } from '../../core/litter/litter.ts';
import { SIZE_CLASSES } from '../../core/reference/classes.ts';
import { shortText } from '../../core/units/fields.ts';
import { longestOf } from '../../core/units/limits.ts';
import { grownUnit, type MassUnit } from '../../core/units/mass.ts';
import { now } from '../data/now.ts';
import { run } from '../data/query.ts';
import { changeLitter, changeWhelping } from '../facts/changes.ts';
import { go } from '../links.ts';
import { SavedChoice, SavedField } from '../parts/form/fields.tsx';
import { grownText, readClock, readDate, readGrownKg, readText } from '../parts/form/read.ts';
import { useWindow } from '../state/window.ts';
import { words } from '../state/words.ts';
import { asksBreedBirth, breedBirthHint, breedBirthText, readBreedBirth } from './breed-birth.ts';

const LINE = longestOf(shortText);

/** What is written about the litter; each line is saved when it is left. */
export function LitterForm({ litter, unit }: { litter: Litter; unit: MassUnit }) {
  const text = (field: 'sire' | 'name' | 'breed', label: string, hint?: string) => (
    <SavedField
      label={label}
      {...(hint === undefined ? {} : { hint })}
      value={litter[field]}
      read={readText(LINE)}
      save={(value) => changeLitter(litter.id, fieldChange(field, value))}
    />
  );
  const grown = (field: 'adultDogKg' | 'adultBitchKg', label: string) => (
    <SavedField
      label={label}
      hint={words.begin.grownHint(grownUnit(unit))}
      value={grownText(litter[field], unit)}
      read={readGrownKg(unit)}
      save={(kg) => changeLitter(litter.id, fieldChange(field, kg))}
    />
  );
  return (
    <section className="part">
      <h2>{words.puppies.litter}</h2>
      <div className="form">
        <SavedField
          label={words.begin.dam}
          value={litter.dam}
          read={readText(LINE, words.begin.damNeeded)}
          save={(dam) => changeLitter(litter.id, { dam })}
        />
        {text('sire', words.begin.sire)}
        {text('name', words.begin.name, words.begin.nameHint)}
        <SavedField
          type="date"
          label={words.begin.whelpedDate}
          value={dateOf(litter.whelpedAt)}
          max={dateOf(now().local)}
          read={readDate}
          save={(day) => changeWhelping(litter.id, localTime(`${day}T${clockOf(litter.whelpedAt)}`))}
        />
        <SavedField
          inputMode="numeric"
          label={words.begin.whelpedTime}
          value={clockOf(litter.whelpedAt)}
          read={readClock}
          save={(clock) => changeWhelping(litter.id, localTime(`${dateOf(litter.whelpedAt)}T${clock}`))}
        />
        {text('breed', words.begin.breed)}
        {asksBreedBirth(litter.breed, litter.breedBirthGrams !== null) && (
          <SavedField
            inputMode="decimal"
            label={words.begin.breedBirth}
            hint={breedBirthHint(litter.breed, unit)}
            value={breedBirthText(litter.breedBirthGrams, unit)}
            read={readBreedBirth(unit)}
            save={(breedBirthGrams) => changeLitter(litter.id, { breedBirthGrams })}
          />
        )}
        <SavedChoice
          label={words.begin.size}
          hint={words.begin.sizeHint}
          value={litter.sizeClass ?? ''}
          options={[{ value: '', word: words.begin.sizeNone }, ...SIZE_CLASSES.map((s) => ({ value: s, word: words.size[s] }))]}
          save={(value) => changeLitter(litter.id, { sizeClass: SIZE_CLASSES.find((s) => s === value) ?? null })}
        />
        {grown('adultDogKg', words.begin.grownDogs)}
        {grown('adultBitchKg', words.begin.grownBitches)}
      </div>
      <RemoveLitter litterId={litter.id} />
    </section>
  );
}

function fieldChange<K extends keyof LitterFields>(field: K, value: LitterFields[K]): Partial<LitterFields> {
  const change: Partial<LitterFields> = {};
  change[field] = value;
  return change;
}

/** Not a dialog: undo brings the litter back, and the program refuses once a puppy was weighed. */
function RemoveLitter({ litterId }: { litterId: string }) {
  const [refused, setRefused] = useState(false);
  const remove = async () => {
    const done = await run('litter.remove', { litterId }, { quiet: true });
    if (done.ok) return go({ at: 'litters' });
    if (done.error.code === 'refused') return setRefused(true);
    useWindow.getState().setFailure(done.error);
  };
  return (
    <p className="puppies-note">
      <button type="button" className="link" onClick={() => void remove()}>
        {words.puppies.removeLitter}
      </button>{' '}
      <span className={refused ? '' : 'note'} role="status">
        {refused ? words.puppies.removeLitterRefused : words.puppies.removeLitterNote}
      </span>
    </p>
  );
}
