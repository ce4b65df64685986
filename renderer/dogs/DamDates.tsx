import { type CivilDate, daysBetween } from '../../core/calendar/day.ts';
import type { Dam, DamFields } from '../../core/dogs/dam.ts';
import { damFieldsSchema } from '../../core/dogs/dam.ts';
import { dueWindows } from '../../core/dogs/gestation.ts';
import { limitsOf, longestOf } from '../../core/units/limits.ts';
import { useToday } from '../data/now.ts';
import { run } from '../data/query.ts';
import { SavedField } from '../parts/form/fields.tsx';
import { bad, good, type Read, readDate, readNumber, readText } from '../parts/form/read.ts';
import { TableHead } from '../parts/TableHead.tsx';
import { useWindow } from '../state/window.ts';
import { words } from '../state/words.ts';

const DATES = ['lh', 'ovulation', 'dioestrus', 'firstMating', 'lastMating'] as const;

/** Null when saved, else the sentence for under the field. */
export async function changeDam({ id, fields }: Dam, change: Partial<DamFields>): Promise<string | null> {
  const done = await run('dogs.damChange', { damId: id, change }, { quiet: true });
  if (done.ok) return null;
  if (done.error.code === 'bad-input') {
    const { firstMating, lastMating } = { ...fields, ...change };
    return (firstMating ?? '') > (lastMating ?? '9999') ? words.dam.crossed : words.dam.taken;
  }
  useWindow.getState().setFailure(done.error);
  return words.form.notSaved;
}

/** Her dates, edited in place; an empty field is a date that nobody knows. */
export function DamDates({ dam }: { dam: Dam }) {
  const today = useToday();
  const { fields } = dam;
  const read = (text: string): Read<CivilDate | null> => {
    if (text === '') return good(null);
    const day = readDate(text);
    return day.ok && day.value > today ? bad(words.dam.future) : day;
  };
  const kcal = readNumber({ ...limitsOf(damFieldsSchema.shape.foodKcalPer100g), unit: 'kcal', example: words.dam.kcalExample });
  return (
    <div className="form">
      <SavedField
        label={words.dam.name}
        value={fields.name}
        read={readText(longestOf(damFieldsSchema.shape.name), words.dam.nameNeeded)}
        save={(name) => changeDam(dam, { name })}
      />
      {DATES.map((key) => (
        <SavedField
          key={key}
          label={words.dam[key]}
          type="date"
          max={today}
          value={fields[key] ?? ''}
          read={read}
          save={(day) => changeDam(dam, { [key]: day })}
        />
      ))}
      <SavedField
        label={words.dam.foodKcal}
        inputMode="decimal"
        hint={words.dam.foodHint}
        value={fields.foodKcalPer100g === null ? '' : String(fields.foodKcalPer100g)}
        read={(text) => (text.trim() === '' ? good(null) : kcal(text))}
        save={(foodKcalPer100g) => changeDam(dam, { foodKcalPer100g })}
      />
    </div>
  );
}

/** When she is due, from each date that is known. */
export function DamDue({ dam }: { dam: Dam }) {
  const today = useToday();
  const windows = dueWindows(dam.fields);
  const first = windows[0];
  if (first === undefined) return <p className="line soft">{words.dam.dueNone}</p>;
  return (
    <>
      <p className="dam-due">
        <b>{words.dam.dueWindow(first.low, first.high)}</b>, {words.dam.daysToGo(daysBetween(today, first.due))}
      </p>
      <table>
        <TableHead heads={[words.dam.from, words.dam.middle, words.dam.window]} />
        <tbody>
          {windows.map((d) => (
            <tr key={d.from}>
              <td>
                {words.dam.dueFrom[d.from]}
                <br />
                <span className="note">{words.weaning.source(d.source, d.known)}</span>
              </td>
              <td>{words.dam.dueMiddle(d.due)}</td>
              <td>{words.dam.dueShort(d.low, d.high)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className="note">{words.dam.dueGo}</p>
    </>
  );
}
