import { useId, useState } from 'react';
import { addDays, type CivilDate, parseDate } from '../../../core/calendar/day.ts';
import { now, useToday } from '../../data/now.ts';
import { type WeighInTime, type WeighingSession, weighInNow } from '../../facts/weigh-in.ts';
import { words } from '../../state/words.ts';

interface Props {
  time: WeighInTime;
  whelped: CivilDate;
  choose: (time: WeighInTime) => void;
}

/** Which weigh-in this is, loud when it is not that of now; yesterday, now, or another day and time. */
export function SessionChoice({ time, whelped, choose }: Props) {
  const [open, setOpen] = useState(false);
  const today = useToday();
  const { day, session, live } = time;
  const yesterday = addDays(day, -1);
  return (
    <>
      <p className={live && day === today ? '' : 'other-day'}>
        {words.longDate(day)}, {words.growth.session[session]}
        {!(live && day === today) && <b> {words.growth.notNow}</b>}{' '}
        {yesterday >= whelped && (
          <button type="button" className="link note" onClick={() => choose({ day: yesterday, session, live: false })}>
            {words.growth.dayBefore} <kbd>{words.keys.pageUp}</kbd>
          </button>
        )}{' '}
        {!live && (
          <button type="button" className="link note" onClick={() => choose(weighInNow(now().local))}>
            {words.growth.backToNow} <kbd>{words.keys.pageDown}</kbd>
          </button>
        )}{' '}
        <button type="button" className="link note" aria-expanded={open} onClick={() => setOpen(!open)}>
          {words.growth.otherTime}
        </button>
      </p>
      {open && (
        <OtherTime
          time={time}
          whelped={whelped}
          choose={(chosen) => {
            setOpen(false);
            choose(chosen);
          }}
        />
      )}
    </>
  );
}

/** A day and time of day; taken with Enter or the button, so that stepping through the days does not run away with the page. */
function OtherTime({ time, whelped, choose }: Props) {
  const [day, setDay] = useState<string>(time.day);
  const [session, setSession] = useState<WeighingSession>(time.session);
  const [fault, setFault] = useState<string | null>(null);
  const today = useToday();
  const id = useId();
  const go = () => {
    const chosen = parseDate(day);
    const wrong =
      chosen === null
        ? words.growth.noSuchDay
        : chosen > today
          ? words.growth.cannotBeFuture
          : chosen < whelped
            ? words.growth.beforeBirth
            : null;
    setFault(wrong);
    if (chosen === null || wrong !== null) return;
    const current = weighInNow(now().local);
    choose(chosen === current.day && session === current.session ? current : { day: chosen, session, live: false });
  };
  return (
    <form
      className="session-choice"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        go();
      }}
    >
      <label htmlFor={`${id}-day`}>{words.growth.day}</label>
      <input
        id={`${id}-day`}
        className="written"
        type="date"
        value={day}
        min={whelped}
        max={today}
        onChange={(event) => setDay(event.target.value)}
      />
      <label htmlFor={`${id}-when`}>{words.growth.when}</label>
      <select
        id={`${id}-when`}
        className="written"
        value={session}
        onChange={(event) => setSession(event.target.value === 'evening' ? 'evening' : 'morning')}
      >
        <option value="morning">{words.growth.session.morning}</option>
        <option value="evening">{words.growth.session.evening}</option>
      </select>
      <button type="submit" className="button">
        {words.growth.goThere}
      </button>
      {fault !== null && <span role="alert">{fault}</span>}
    </form>
  );
}
