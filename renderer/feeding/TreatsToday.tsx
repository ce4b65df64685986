import { useId, useState } from 'react';
import type { FindingsInput } from '../../core/feeding/findings.ts';
import { foodUnit } from '../../core/units/food.ts';
import { FindingLines } from '../parts/FindingLines.tsx';
import { FormField } from '../parts/form/fields.tsx';
import { words } from '../state/words.ts';
import { readTreatGrams, readTreatKcal, treatsLeave } from './treats.ts';
import './treats.css';

/** A what-if of today: treats come off the meals by their energy. Nothing of it is stored. */
export function TreatsToday({ input }: { input: FindingsInput }) {
  const [grams, setGrams] = useState('');
  const [kcal, setKcal] = useState('');
  const id = useId();
  const unit = input.unit ?? 'g';
  const readGrams = readTreatGrams(grams, unit);
  const readKcal = readTreatKcal(kcal, input.food.kcalPer100g);
  const left =
    readGrams.ok && readGrams.value !== null && readKcal.ok
      ? treatsLeave(input, { grams: readGrams.value, kcalPer100g: readKcal.value })
      : null;
  return (
    <section className="treats" aria-labelledby={id}>
      <h3 id={id}>{words.treat.title}</h3>
      <p className="note">{words.treat.note}</p>
      <div className="form treats-form">
        <FormField
          label={words.treat.grams}
          hint={words.treat.gramsHint(foodUnit(unit))}
          inputMode="decimal"
          value={grams}
          onChange={setGrams}
          sentence={readGrams.ok ? null : readGrams.sentence}
        />
        <FormField
          label={words.treat.kcal}
          hint={words.treat.kcalHint(words.plain(input.food.kcalPer100g, 0))}
          inputMode="decimal"
          value={kcal}
          onChange={setKcal}
          sentence={readKcal.ok ? null : readKcal.sentence}
        />
      </div>
      <p className="treats-left" role="status">
        {left !== null && <b>{left.sentence}</b>}
      </p>
      {left !== null && left.high !== null && <FindingLines findings={[left.high]} unit={unit} action={null} />}
    </section>
  );
}
