import type { KeyboardEvent } from 'react';
import { USUAL_COLLARS } from '../../core/litter/collar.ts';
import { SEXES } from '../../core/reference/classes.ts';
import type { MassUnit } from '../../core/units/mass.ts';
import { CollarBand } from '../parts/CollarBand.tsx';
import { FormChoice, FormField } from '../parts/form/fields.tsx';
import { words } from '../state/words.ts';
import { EMPTY_PUPPY, type Faults, type NewPuppy } from './begin-draft.ts';
import './begin.css';
import { TableHead } from '../parts/TableHead.tsx';

/** Enter goes on to the next field, and after the last one to the button that begins the litter. */
function onward(event: KeyboardEvent<HTMLTableElement>): void {
  if (event.key !== 'Enter' || event.nativeEvent.isComposing || !(event.target instanceof HTMLElement)) return;
  event.preventDefault();
  const fields = [...event.currentTarget.querySelectorAll<HTMLElement>('select, input')];
  const next = fields[fields.indexOf(event.target) + 1];
  (next ?? event.currentTarget.closest('form')?.querySelector<HTMLElement>('button[type="submit"]'))?.focus();
}

/** Their rows in the order of birth: sex, Enter, birth weight, Enter, the next. */
export function NewPuppies(props: {
  count: number;
  puppies: readonly NewPuppy[];
  faults: Faults;
  unit: MassUnit;
  onChange: (i: number, puppy: NewPuppy) => void;
}) {
  return (
    <>
      <h2>{words.begin.theirCollars}</h2>
      <p className="note">{words.begin.rowKeys}</p>
      <table className="begin-puppies" onKeyDown={onward}>
        <TableHead heads={[words.begin.collar, words.begin.sex, words.begin.birthWeight(words.unitShort[props.unit])]} />
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
                    onChange={(value) => props.onChange(i, { ...puppy, sex: SEXES.find((s) => s === value) ?? 'unseen' })}
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
