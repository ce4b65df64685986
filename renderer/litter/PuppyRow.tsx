import { type KeyboardEvent, type ReactNode, useId, useState } from 'react';
import { clockOf, dateOf, localTime } from '../../core/calendar/clock.ts';
import { COLLAR_COLOURS, COLLAR_LETTERS, COLLAR_PATTERNS, type Collar } from '../../core/litter/collar.ts';
import { PUPPY_STATES, type Puppy, puppyName, type Reading } from '../../core/litter/litter.ts';
import { SEXES } from '../../core/reference/classes.ts';
import { shortText } from '../../core/units/fields.ts';
import { longestOf } from '../../core/units/limits.ts';
import type { MassUnit } from '../../core/units/mass.ts';
import { now } from '../data/now.ts';
import { run } from '../data/query.ts';
import { changeBirthWeight, changeBorn, changePuppy, changeState } from '../facts/changes.ts';
import type { LitterFacts } from '../facts/useLitter.ts';
import { CollarBand } from '../parts/CollarBand.tsx';
import { SavedChoice, SavedField } from '../parts/form/fields.tsx';
import { readClock, readDate, readMass, readText } from '../parts/form/read.ts';
import { useWindow } from '../state/window.ts';
import { words } from '../state/words.ts';

const LINE = longestOf(shortText);
/** Outside of this a birth weight is asked about; toy breeds begin near 70 g, giant ones end near 800 g (common practice, no source). */
const USUAL_BIRTH_GRAMS = { low: 50, high: 1000 };

interface RowProps {
  readonly puppy: Puppy;
  readonly facts: LitterFacts;
  readonly birth: Reading | null;
  readonly unit: MassUnit;
  readonly columns: number;
  readonly move: (puppyId: string, step: -1 | 1) => void;
  readonly announce: (text: string) => void;
}

/** One puppy: what is written at whelping in its row, the rest under "more". Alt with an arrow moves it, from any of its fields. */
export function PuppyRow(props: RowProps) {
  const { puppy, facts, birth, unit } = props;
  const [open, setOpen] = useState(false);
  const moreId = useId();
  const name = puppyName(puppy);
  const { whelpedAt } = facts.litter;
  const place = facts.puppies.indexOf(puppy);
  const byKey = (event: KeyboardEvent) => {
    if (!event.altKey || (event.key !== 'ArrowUp' && event.key !== 'ArrowDown')) return;
    event.preventDefault();
    event.stopPropagation();
    props.move(puppy.id, event.key === 'ArrowUp' ? -1 : 1);
  };
  return (
    <>
      <tr id={`puppy-${puppy.id}`} onKeyDown={byKey}>
        <td className="puppies-order">
          <span className="puppies-place">{place + 1}</span>
          <MoveButton label={words.puppies.up(name)} arrow="↑" off={place === 0} onMove={() => props.move(puppy.id, -1)} />
          <MoveButton
            label={words.puppies.down(name)}
            arrow="↓"
            off={place === facts.puppies.length - 1}
            onMove={() => props.move(puppy.id, 1)}
          />
        </td>
        <td className="puppies-collar">
          <CollarBand collar={puppy.collar} height={26} />
        </td>
        <td data-label={words.puppies.name}>
          <SavedField
            inCell
            label={words.puppies.of(puppy.collar.letter, words.puppies.name)}
            className="puppies-name"
            value={puppy.callName}
            read={readText(LINE)}
            save={(callName) => changePuppy(puppy.id, { callName })}
          />
        </td>
        <td data-label={words.puppies.sex}>
          <SavedChoice
            inCell
            label={words.puppies.of(name, words.puppies.sex)}
            value={puppy.sex}
            options={SEXES.map((s) => ({ value: s, word: words.sex[s] }))}
            save={(value) => changePuppy(puppy.id, { sex: SEXES.find((s) => s === value) ?? puppy.sex })}
          />
        </td>
        <td data-label={words.puppies.birthWeightPlain} className="puppies-weight">
          <SavedField
            inCell
            label={words.puppies.of(name, words.puppies.birthWeightPlain)}
            inputMode="decimal"
            value={birthText(birth, unit)}
            read={readMass(unit)}
            save={(mass) => changeBirthWeight(puppy, birth, mass)}
          />
          {birth !== null && unusual(birth.grams) && (
            <span className="note">{words.puppies.unusual(words.massText(birth.grams, unit))}</span>
          )}
        </td>
        <td data-label={words.puppies.born}>
          <SavedField
            inCell
            inputMode="numeric"
            label={words.puppies.of(name, words.puppies.born)}
            value={clockOf(puppy.bornAt)}
            read={readClock}
            save={(clock) => changeBorn(puppy, whelpedAt, localTime(`${dateOf(puppy.bornAt)}T${clock}`))}
          />
        </td>
        <td data-label={words.puppies.markings} className="puppies-markings">
          <SavedField
            inCell
            label={words.puppies.of(name, words.puppies.markings)}
            value={puppy.markings}
            read={readText(LINE)}
            save={(markings) => changePuppy(puppy.id, { markings })}
          />
        </td>
        <td data-label={words.puppies.state}>
          <SavedChoice
            inCell
            label={words.puppies.of(name, words.puppies.state)}
            value={puppy.state}
            options={PUPPY_STATES.map((s) => ({ value: s, word: words.state[s] }))}
            save={(value) => {
              const state = PUPPY_STATES.find((s) => s === value) ?? puppy.state;
              return changeState(puppy, state, state === 'litter' ? null : dateOf(now().local));
            }}
          />
          {puppy.state !== 'litter' && <StateOn puppy={puppy} name={name} />}
        </td>
        <td className="puppies-more">
          <button
            type="button"
            className="link"
            aria-expanded={open}
            aria-controls={moreId}
            aria-label={words.puppies.moreOf(name)}
            onClick={() => setOpen(!open)}
          >
            {words.puppies.more}
          </button>
        </td>
      </tr>
      {open && (
        <tr className="puppies-open" id={moreId} onKeyDown={byKey}>
          <td colSpan={props.columns}>
            <More {...props} name={name} />
          </td>
        </tr>
      )}
    </>
  );
}

function unusual(grams: number): boolean {
  return grams < USUAL_BIRTH_GRAMS.low || grams > USUAL_BIRTH_GRAMS.high;
}

/** As it was typed when that was in her unit, so that nothing looks rounded. */
function birthText(birth: Reading | null, unit: MassUnit): string {
  if (birth === null) return '';
  return birth.unit === unit && birth.typed !== '' ? birth.typed : words.massFigure(birth.grams, unit);
}

function MoveButton({ label, arrow, off, onMove }: { label: string; arrow: ReactNode; off: boolean; onMove: () => void }) {
  return (
    <button type="button" className="puppies-move" aria-label={label} aria-disabled={off} onClick={onMove}>
      {arrow}
    </button>
  );
}

function StateOn({ puppy, name }: { puppy: Puppy; name: string }) {
  return (
    <SavedField
      inCell
      type="date"
      className="puppies-on"
      label={words.puppies.of(name, words.puppies.stateOn[puppy.state])}
      value={puppy.stateOn ?? ''}
      max={dateOf(now().local)}
      read={readDate}
      save={(on) => changeState(puppy, puppy.state, on)}
    />
  );
}

function More({ puppy, facts, name, announce }: RowProps & { name: string }) {
  const [refused, setRefused] = useState(false);
  const taken = new Set(facts.puppies.filter((p) => p.id !== puppy.id).map((p) => p.collar.letter));
  const wear = (change: Partial<Collar>) => changePuppy(puppy.id, { collar: change });
  const remove = async () => {
    const done = await run('litter.removePuppy', { puppyId: puppy.id }, { quiet: true });
    if (done.ok) return announce(words.puppies.removed(name));
    if (done.error.code === 'refused') return setRefused(true);
    useWindow.getState().setFailure(done.error);
  };
  return (
    <>
      <div className="form">
        <SavedChoice
          label={words.puppies.letter}
          value={puppy.collar.letter}
          options={COLLAR_LETTERS.filter((l) => !taken.has(l)).map((l) => ({ value: l, word: l }))}
          save={(value) => wear({ letter: COLLAR_LETTERS.find((l) => l === value) ?? puppy.collar.letter })}
        />
        <SavedChoice
          label={words.puppies.colour}
          value={puppy.collar.colour}
          options={COLLAR_COLOURS.map((c) => ({ value: c, word: words.collarText.colours[c] }))}
          save={(value) => wear({ colour: COLLAR_COLOURS.find((c) => c === value) ?? puppy.collar.colour })}
        />
        <SavedChoice
          label={words.puppies.pattern}
          value={puppy.collar.pattern}
          options={COLLAR_PATTERNS.map((p) => ({ value: p, word: words.collarText.patterns[p] }))}
          save={(value) => wear({ pattern: COLLAR_PATTERNS.find((p) => p === value) ?? puppy.collar.pattern })}
        />
        <SavedField
          type="date"
          label={words.puppies.bornOn}
          value={dateOf(puppy.bornAt)}
          max={dateOf(now().local)}
          read={readDate}
          save={(day) => changeBorn(puppy, facts.litter.whelpedAt, localTime(`${day}T${clockOf(puppy.bornAt)}`))}
        />
      </div>
      <p className="puppies-remove">
        <button type="button" className="link" onClick={() => void remove()}>
          {words.puppies.remove}
        </button>{' '}
        <span role="status">{refused ? words.puppies.removeRefused(name) : ''}</span>
      </p>
    </>
  );
}
