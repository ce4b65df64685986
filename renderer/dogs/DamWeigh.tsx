import { useState } from 'react';
import type { Dam } from '../../core/dogs/dam.ts';
import { grownUnit, type MassUnit, parseMass } from '../../core/units/mass.ts';
import { now } from '../data/now.ts';
import { run } from '../data/query.ts';
import { words } from '../state/words.ts';

/** Her weight, now: number, Enter. */
export function DamWeigh({ dam, unit }: { dam: Dam; unit: MassUnit }) {
  const [text, setText] = useState('');
  const [sentence, setSentence] = useState<string | null>(null);
  const usual = grownUnit(unit);
  const save = async () => {
    if (text.trim() === '') return;
    const mass = parseMass(text, usual);
    if (!mass.ok) return setSentence(words.form.massFault(mass.fault, text.trim()));
    if (mass.grams < 500 || mass.grams > 120_000)
      return setSentence(words.form.between(words.massText(500, usual), words.massText(120_000, usual)));
    const { instant, local } = now();
    const weight = { at: local, instant, grams: mass.grams, typed: text.trim().slice(0, 40), unit: mass.unit };
    const done = await run('dogs.damWeigh', { damId: dam.id, weight });
    if (done.ok) setText('');
  };
  return (
    <form
      className="form dam-weigh"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        void save();
      }}
    >
      <label htmlFor={`weigh-${dam.id}`}>{words.dam.weigh}</label>
      <span className="field-body">
        <input
          id={`weigh-${dam.id}`}
          className="written"
          inputMode="decimal"
          autoComplete="off"
          aria-invalid={sentence !== null}
          aria-describedby={`weigh-${dam.id}-hint weigh-${dam.id}-mistake`}
          value={text}
          onChange={(event) => {
            setText(event.target.value);
            setSentence(null);
          }}
        />
        <span className="note" id={`weigh-${dam.id}-hint`}>
          {words.dam.weighHint(usual)}
        </span>
      </span>
      <span className={sentence === null ? 'mistake-none' : 'mistake'} id={`weigh-${dam.id}-mistake`} aria-live="polite">
        {sentence}
      </span>
    </form>
  );
}
