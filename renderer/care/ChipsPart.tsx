import { useState } from 'react';
import type { CivilDate } from '../../core/calendar/day.ts';
import type { Chip } from '../../core/care/microchip.ts';
import type { Puppy } from '../../core/litter/litter.ts';
import { shortText } from '../../core/units/fields.ts';
import { longestOf } from '../../core/units/limits.ts';
import { useToday } from '../data/now.ts';
import { useQuery } from '../data/query.ts';
import { FormField } from '../parts/form/fields.tsx';
import { readDate } from '../parts/form/read.ts';
import { TableHead } from '../parts/TableHead.tsx';
import { Why } from '../parts/Why.tsx';
import { words } from '../state/words.ts';
import { ChipRow } from './ChipRow.tsx';

const LINE = longestOf(shortText);

/** The chips of a litter: for each puppy its number, scanned or typed twice, and when and by whom it was put in. */
export function ChipsPart({ litterId, puppies }: { litterId: string; puppies: readonly Puppy[] }) {
  const today = useToday();
  const found = useQuery('care.chips', { litterId });
  const [on, setOn] = useState<string>(today);
  const [by, setBy] = useState('');
  const [said, setSaid] = useState('');
  if (found.value === null) return null;
  const chips = new Map(found.value.chips.map((chip) => [chip.id, chip] as const));
  const living = puppies.filter((p) => p.state !== 'died' || chips.has(p.id));
  const day = readDate(on);
  const fault = on === '' ? null : faultOf(day, today);
  return (
    <section className="care-chips">
      <h2>
        {words.care.chips} <span className="soft">{words.care.count(chips.size, living.length)}</span>
      </h2>
      <p className="note">
        {words.care.chipsNote}{' '}
        <Why explanation={{ figure: words.care.chips, how: words.CHIP_SOURCE, sum: [] }}>{words.care.chipsSource}</Why>
      </p>
      {living.length === 0 && <p className="soft">{words.care.chipsNone}</p>}
      {living.length > 0 && (
        <>
          <div className="form care-next">
            <FormField
              label={words.care.nextOn}
              type="date"
              value={on}
              onChange={setOn}
              sentence={fault}
              hint={words.care.nextNote}
            />
            <FormField label={words.care.nextBy} value={by} onChange={(text) => setBy(text.slice(0, LINE))} sentence={null} />
          </div>
          <p className="unseen" role="status">
            {said}
          </p>
          <table className="care-table">
            <TableHead heads={[words.care.puppy, words.care.number, words.care.again, words.care.putIn, words.care.by]} />
            <tbody>
              {living.map((puppy) => (
                <ChipRow
                  key={puppy.id}
                  puppy={puppy}
                  chip={chips.get(puppy.id) ?? null}
                  next={{ day: day.ok && fault === null ? day.value : null, by: by.trim() }}
                  goOn={() => focusOn(nextWithout(living, chips, puppy.id))}
                  announce={setSaid}
                />
              ))}
            </tbody>
          </table>
        </>
      )}
    </section>
  );
}

function faultOf(day: ReturnType<typeof readDate>, today: CivilDate): string | null {
  if (!day.ok) return day.sentence;
  return day.value > today ? words.care.toCome : null;
}

function nextWithout(puppies: readonly Puppy[], chips: ReadonlyMap<string, Chip>, id: string): string | null {
  const at = puppies.findIndex((p) => p.id === id);
  const order = [...puppies.slice(at + 1), ...puppies.slice(0, at)];
  return order.find((p) => !chips.has(p.id))?.id ?? null;
}

function focusOn(puppyId: string | null): void {
  if (puppyId !== null) document.getElementById(`chip-${puppyId}`)?.focus();
}
