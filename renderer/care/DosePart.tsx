import { useState } from 'react';
import { date } from '../../core/calendar/day.ts';
import { type DoseAnswer, type DoseLabel, doseOf, perKg, perUnit, RATE_UNITS, STRENGTH_UNITS } from '../../core/care/dose.ts';
import { inTheHouse } from '../../core/litter/in-the-house.ts';
import { isCurrent, type Puppy } from '../../core/litter/litter.ts';
import type { MassUnit } from '../../core/units/mass.ts';
import { now, useToday } from '../data/now.ts';
import { type LitterGrowthFacts, useLitterGrowth } from '../facts/useLitterGrowth.ts';
import { FormChoice, FormField } from '../parts/form/fields.tsx';
import { TableHead } from '../parts/TableHead.tsx';
import { words } from '../state/words.ts';
import { type DoseDraft, type DoseField, EMPTY_DOSE, markUnit, readDose } from './dose-form.ts';
import { PuppyHead } from './PuppyHead.tsx';

/** The arithmetic of a dose for every puppy in the house, from what she copies off a label. Nothing of it is kept. */
export function DosePart({ litterId }: { litterId: string }) {
  const [draft, setDraft] = useState<DoseDraft>(EMPTY_DOSE);
  const facts = useLitterGrowth(litterId);
  const { massUnit } = facts.house;
  const read = readDose(draft, massUnit);
  return (
    <section className="care-dose">
      <h2>{words.dose.title}</h2>
      <p className="note">{words.dose.note}</p>
      <details>
        <summary>{words.dose.cautions}</summary>
        <ul>
          {words.dose.cautionList.map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
      </details>
      <DoseFields
        draft={draft}
        set={(field, text) => setDraft({ ...draft, [field]: text })}
        mistakes={read.mistakes}
        unit={massUnit}
        label={read.label}
      />
      {read.label === null ? (
        <p className="soft">{words.dose.needed}</p>
      ) : (
        <DoseTable label={read.label} product={draft.product.trim()} facts={facts} />
      )}
    </section>
  );
}

function DoseFields({
  draft,
  set,
  mistakes,
  unit,
  label,
}: {
  draft: DoseDraft;
  set: (field: DoseField, text: string) => void;
  mistakes: Partial<Record<DoseField, string>>;
  unit: MassUnit;
  label: DoseLabel | null;
}) {
  const field = (name: DoseField, word: string, hint?: string, inputMode: 'decimal' | 'numeric' | 'text' = 'decimal') => (
    <FormField
      label={word}
      {...(hint !== undefined && { hint })}
      inputMode={inputMode}
      value={draft[name]}
      onChange={(text) => set(name, text)}
      sentence={mistakes[name] ?? null}
    />
  );
  const choice = (name: DoseField, word: string, units: readonly string[]) => (
    <FormChoice
      label={word}
      value={draft[name]}
      options={units.map((u) => ({ value: u, word: words.dose.units[u] ?? u }))}
      onChange={(text) => set(name, text)}
    />
  );
  const rateIs = label === null || label.rate.unit === 'mg/kg' ? undefined : words.dose.rateIs(words.fixed(perKg(label.rate), 2));
  const strengthIs =
    label === null || label.strength.unit !== '%' ? undefined : words.dose.strengthIs(words.fixed(perUnit(label.strength), 1));
  const mass = words.unitShort[unit];
  return (
    <div className="form care-label">
      {field('product', words.dose.product, words.dose.productHint, 'text')}
      {field('rate', words.dose.rate, rateIs)}
      {choice('rateUnit', words.dose.rateUnit, RATE_UNITS)}
      {field('strength', words.dose.strength, strengthIs)}
      {choice('strengthUnit', words.dose.strengthUnit, STRENGTH_UNITS)}
      {field('mark', words.dose.mark, words.dose.markHint[markUnit(draft)])}
      {field('leastDays', words.dose.leastDays, words.dose.leastDaysHint, 'numeric')}
      {field('leastGrams', words.dose.inUnit(words.dose.leastGrams, mass), words.dose.leastGramsHint)}
      {field('lightRate', words.dose.lightRate, words.dose.lightRateHint)}
      {field('lightUpTo', words.dose.inUnit(words.dose.lightUpTo, mass))}
    </div>
  );
}

function DoseTable({ label, product, facts }: { label: DoseLabel; product: string; facts: LitterGrowthFacts }) {
  const today = useToday();
  const here = facts.puppies.filter((p) => inTheHouse(p, today));
  const rate = `${label.rate.amount}\u00a0${label.rate.unit}`;
  const strength = `${label.strength.amount}\u00a0${words.dose.units[label.strength.unit] ?? ''}`;
  return (
    <table className="care-table care-doses">
      <caption>{words.dose.tableOf(product, rate, strength)}</caption>
      <TableHead heads={[words.care.puppy, words.dose.weight, words.dose.exact, words.dose.drawUp, words.dose.gives]} />
      <tbody>
        {here.map((puppy) => (
          <DoseRow
            key={puppy.id}
            puppy={puppy}
            answer={answerFor(label, puppy, facts)}
            label={label}
            unit={facts.house.massUnit}
          />
        ))}
      </tbody>
    </table>
  );
}

function answerFor(label: DoseLabel, puppy: Puppy, { readings, growth }: LitterGrowthFacts): DoseAnswer {
  const weights = readings.filter((r) => r.puppyId === puppy.id && isCurrent(r) && !r.held);
  const last = weights.toSorted((a, b) => a.instant - b.instant).at(-1);
  const { instant, local } = now();
  return doseOf(
    label,
    {
      bornOn: date(puppy.bornAt.slice(0, 10)),
      level: growth?.puppies.get(puppy.id)?.level ?? null,
      weighed: last === undefined ? null : { grams: last.grams, instant: last.instant },
    },
    { day: date(local.slice(0, 10)), instant },
  );
}

function DoseRow({ puppy, answer, label, unit }: { puppy: Puppy; answer: DoseAnswer; label: DoseLabel; unit: MassUnit }) {
  if (!answer.ok) {
    return (
      <tr>
        <PuppyHead puppy={puppy} />
        <td colSpan={4}>
          <b>{words.doseRefusal(answer.why, (grams) => words.massText(grams, unit))}</b>
        </td>
      </tr>
    );
  }
  const { dose } = answer;
  return (
    <tr>
      <PuppyHead puppy={puppy} />
      <td data-label={words.dose.weight}>{words.massText(dose.grams, unit)}</td>
      <td data-label={words.dose.exact}>{words.doseAmount(dose.exact, dose.unit, 3)}</td>
      <td data-label={words.dose.drawUp}>
        <b>{words.doseAmount(dose.drawn, dose.unit, decimalsOf(label.mark))}</b>
        {dose.remarks.map((remark) => (
          <span key={remark.code} className="note">
            {words.doseRemark(remark)}
          </span>
        ))}
      </td>
      <td data-label={words.dose.gives}>{words.dose.givesFigure(words.fixed(dose.mgPerKg, 2))}</td>
    </tr>
  );
}

/** As many as the marks have, so that the figure is one that stands on the syringe. */
function decimalsOf(mark: number): 0 | 1 | 2 | 3 {
  if (Number.isInteger(mark)) return 0;
  if (Number.isInteger(mark * 10)) return 1;
  return Math.abs(mark * 100 - Math.round(mark * 100)) < 1e-9 ? 2 : 3;
}
