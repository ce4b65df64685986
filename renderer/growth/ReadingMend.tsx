import { type FormEvent, useEffect, useId, useRef, useState } from 'react';
import { clockOf, dateOf, type LocalTime, localTime } from '../../core/calendar/clock.ts';
import { parseDate } from '../../core/calendar/day.ts';
import type { InputOf } from '../../core/contract/operations.ts';
import { inTheHouse } from '../../core/litter/in-the-house.ts';
import { puppyName, type Reading, SESSIONS, type Session } from '../../core/litter/litter.ts';
import type { MassUnit } from '../../core/units/mass.ts';
import { instantOf, now, useToday } from '../data/now.ts';
import { inOrder, run } from '../data/query.ts';
import type { LitterGrowthFacts } from '../facts/useLitterGrowth.ts';
import { takenAt } from '../facts/weigh-in.ts';
import { readMass } from '../parts/form/read.ts';
import { words } from '../state/words.ts';
import './mend.css';

interface Written {
  readonly text: string;
  readonly day: string;
  readonly session: Session;
  readonly puppyId: string;
}

type Change = InputOf<'growth.correctWeighing'>['corrections'][number]['change'];

/** One weight mended where it is seen: corrected, moved to its day, given to its puppy or struck out; with what stood there before. */
export function ReadingMend({ reading, facts, close }: { reading: Reading; facts: LitterGrowthFacts; close: () => void }) {
  const unit = facts.house.massUnit;
  const [written, setWritten] = useState<Written>(() => asWritten(reading, unit));
  const [fault, setFault] = useState<string | null>(null);
  const field = useRef<HTMLInputElement>(null);
  useEffect(() => field.current?.select(), []);
  const put = (change: Partial<Written>) => {
    setWritten({ ...written, ...change });
    setFault(null);
  };
  const send = async (event: FormEvent) => {
    event.preventDefault();
    const change = changeOf(reading, written, facts, unit);
    if (typeof change === 'string') setFault(change);
    else if (await mend(reading, change, written.puppyId, facts)) close();
    else setFault(words.form.notSaved);
  };
  const strikeOut = async () => {
    if ((await run('growth.withdraw', { readingId: reading.id })).ok) close();
  };
  return (
    <form
      className="mend"
      noValidate
      aria-label={words.mend.title(words.massText(reading.grams, unit))}
      onSubmit={(event) => void send(event)}
      onKeyDown={(event) => {
        if (event.key !== 'Escape') return;
        event.stopPropagation();
        close();
      }}
    >
      <MendFields written={written} put={put} reading={reading} facts={facts} field={field} />
      <p className="mend-answers">
        <button type="submit" className="button">
          {words.mend.write}
        </button>
        <button type="button" className="link" onClick={() => void strikeOut()}>
          {words.mend.strikeOut}
        </button>
        <button type="button" className="link" onClick={close}>
          {words.mend.leave}
        </button>
        <span role="alert">{fault}</span>
      </p>
      <Before reading={reading} readings={facts.readings} unit={unit} />
    </form>
  );
}

function MendFields({
  written,
  put,
  reading,
  facts,
  field,
}: {
  written: Written;
  put: (change: Partial<Written>) => void;
  reading: Reading;
  facts: LitterGrowthFacts;
  field: React.RefObject<HTMLInputElement | null>;
}) {
  const id = useId();
  const today = useToday();
  const born = facts.litter === null ? undefined : dateOf(facts.litter.whelpedAt);
  const isBirth = reading.session === 'birth';
  const whose = facts.puppies.filter((p) => p.id === reading.puppyId || inTheHouse(p, dateOf(reading.at)));
  return (
    <div className="mend-fields">
      <label htmlFor={`${id}-weight`}>{words.mend.weight}</label>
      <input
        id={`${id}-weight`}
        ref={field}
        className="written"
        inputMode="decimal"
        autoComplete="off"
        value={written.text}
        onChange={(event) => put({ text: event.target.value })}
      />
      {!isBirth && (
        <>
          <label htmlFor={`${id}-day`}>{words.growth.day}</label>
          <input
            id={`${id}-day`}
            className="written"
            type="date"
            min={born}
            max={today}
            value={written.day}
            onChange={(event) => put({ day: event.target.value })}
          />
          <label htmlFor={`${id}-session`}>{words.growth.when}</label>
          <select
            id={`${id}-session`}
            className="written"
            value={written.session}
            onChange={(event) => put({ session: SESSIONS.find((s) => s === event.target.value) ?? written.session })}
          >
            <option value="morning">{words.growth.session.morning}</option>
            <option value="evening">{words.growth.session.evening}</option>
          </select>
          <label htmlFor={`${id}-whose`}>{words.mend.whose}</label>
          <select
            id={`${id}-whose`}
            className="written"
            value={written.puppyId}
            onChange={(event) => put({ puppyId: event.target.value })}
          >
            {whose.map((p) => (
              <option key={p.id} value={p.id}>
                {puppyName(p)}
              </option>
            ))}
          </select>
        </>
      )}
    </div>
  );
}

/** What stood in its place before, latest first. */
function Before({ reading, readings, unit }: { reading: Reading; readings: readonly Reading[]; unit: MassUnit }) {
  const earlier: Reading[] = [];
  for (let id = reading.supersedes; id !== null; id = earlier.at(-1)?.supersedes ?? null) {
    const found = readings.find((r) => r.id === id);
    if (found === undefined) break;
    earlier.push(found);
  }
  if (earlier.length === 0) return null;
  const today = dateOf(now().local);
  return (
    <p className="note">
      {words.mend.before}{' '}
      {earlier.map((r) => (
        <span key={r.id} className="struck">
          {words.massText(r.grams, unit)}, {words.when(r.at, today)}
        </span>
      ))}
    </p>
  );
}

function asWritten(reading: Reading, unit: MassUnit): Written {
  const isHers = reading.unit === unit && reading.typed !== '';
  return {
    text: isHers ? reading.typed : words.massText(reading.grams, unit),
    day: dateOf(reading.at),
    session: reading.session,
    puppyId: reading.puppyId,
  };
}

/** What is another than it was; a sentence when it cannot be. */
function changeOf(reading: Reading, written: Written, { litter }: LitterGrowthFacts, unit: MassUnit): Change | string {
  const mass = readMass(unit)(written.text);
  if (!mass.ok) return mass.sentence;
  if (mass.value === null) return words.mend.noWeight;
  const at = timeOf(reading, written);
  if (at === null) return words.growth.noSuchDay;
  if (at > now().local) return words.growth.cannotBeFuture;
  if (litter !== null && dateOf(at) < dateOf(litter.whelpedAt)) return words.growth.beforeBirth;
  const { grams, typed, unit: typedIn } = mass.value;
  return {
    ...(written.text === asWritten(reading, unit).text ? {} : { grams, typed, unit: typedIn, source: 'keyboard', held: false }),
    ...(at === reading.at ? {} : { at, instant: instantOf(at) }),
    ...(written.session === reading.session ? {} : { session: written.session }),
  };
}

/** Its clock on another day, or the usual hour of another session. */
function timeOf(reading: Reading, { day, session }: Written): LocalTime | null {
  const chosen = parseDate(day);
  if (chosen === null) return null;
  if (session === reading.session)
    return chosen === dateOf(reading.at) ? reading.at : localTime(`${chosen}T${clockOf(reading.at)}`);
  return session === 'birth' ? reading.at : takenAt({ day: chosen, session, live: false }, now().local);
}

/** Corrected first, then given away; nothing is sent where nothing is another. */
function mend(reading: Reading, change: Change, puppyId: string, { litter }: LitterGrowthFacts): Promise<boolean> {
  return inOrder(async (send) => {
    let { id } = reading;
    if (Object.keys(change).length > 0 && litter !== null) {
      const done = await send('growth.correctWeighing', { litterId: litter.id, corrections: [{ readingId: id, change }] });
      if (!done.ok) return false;
      id = done.value.readings[0]?.id ?? id;
    }
    return puppyId === reading.puppyId || (await send('growth.give', { readingId: id, puppyId })).ok;
  });
}
