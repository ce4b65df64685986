import { useState } from 'react';
import { clockOf, dateOf, type LocalTime, localMinutes, localTime } from '../../core/calendar/clock.ts';
import { addDays, type CivilDate } from '../../core/calendar/day.ts';
import { DAY_MINUTES } from '../../core/calendar/durations.ts';
import { daysFrom } from '../../core/freezer/plan.ts';
import type { OutNow, ThawRow } from '../../core/freezer/plan-shape.ts';
import { type ListRow, WEEK_DAYS, weekRows } from '../../core/freezer/thaw-list.ts';
import { eatersWords } from '../../core/words/thaw-text.ts';
import { reasonText, takesText } from '../facts/freezer-text.ts';
import type { Freezer } from '../facts/useFreezer.ts';
import { words } from '../state/words.ts';
import { endThaws, takeOut } from './take-out.ts';

/** One row a time that she opens the freezer for a food: a box, when, what and why, and its bar on the week. */
export function ThawList({ f }: { f: Freezer }) {
  const [said, setSaid] = useState('');
  const days = daysFrom(f.today, WEEK_DAYS);
  const rows = weekRows(f.plan, f.today);
  const out = f.plan.out.filter((o) => o.state === 'thawing' || o.state === 'ready');
  const tick = async (row: ThawRow) => {
    if (await takeOut(row.takes)) setSaid(words.freezer.takenOut(takesText(f, row.takes), words.timeNear(row.ready, f.today)));
  };
  return (
    <section className="thaw" aria-labelledby="thaw-list">
      <div className="thaw-head">
        <h2 id="thaw-list">{words.freezer.thawList}</h2>
        <p className="note thaw-key" aria-hidden="true">
          <span>
            <Swatch kind="thawing" /> {words.freezer.thawing}
          </span>
          <span>
            <Swatch kind="use" /> {words.freezer.toBeUsed}
          </span>
        </p>
      </div>
      <p className="unseen" role="status">
        {said}
      </p>
      {rows.length + out.length === 0 ? (
        <p className="line soft">{f.stock.packs.length === 0 ? words.freezer.empty : words.freezer.nothingToThaw}</p>
      ) : (
        <table className="thaw-table">
          <thead>
            <tr>
              <th scope="col" className="thaw-box">
                <span className="unseen">{words.freezer.thawList}</span>
              </th>
              <th scope="col" className="thaw-when">
                {words.freezer.outHead}
              </th>
              <th scope="col">{words.freezer.whatWhy}</th>
              <th scope="col" className="thaw-week">
                <span className="unseen">{words.freezer.week}</span>
                <span className="thaw-days" aria-hidden="true">
                  {days.map((d) => (
                    <span key={d} className={d === f.today ? 'now' : ''}>
                      {words.dayOfWeek(d).split(' ').slice(0, 2).join(' ')}
                    </span>
                  ))}
                </span>
              </th>
            </tr>
          </thead>
          <tbody>
            {out.map((o) => (
              <OutRow key={o.thaw.id} f={f} out={o} days={days} />
            ))}
            {rows.map((row) => (
              <PlannedRow key={`${row.foodId} ${row.out}`} f={f} row={row} days={days} tick={tick} />
            ))}
          </tbody>
        </table>
      )}
    </section>
  );
}

interface RowProps {
  readonly f: Freezer;
  readonly days: readonly CivilDate[];
}

function PlannedRow({ f, row, days, tick }: RowProps & { row: ListRow; tick: (row: ThawRow) => Promise<void> }) {
  const isToday = dateOf(row.out) <= f.today;
  const what = takesText(f, row.takes);
  return (
    <tr className={isToday ? 'thaw-today' : ''}>
      <td className="thaw-box">
        {dateOf(row.out) <= addDays(f.today, 1) && <TakeOutBox what={what} onTick={() => void tick(row)} />}
      </td>
      <td className="thaw-when">
        {isToday ? (
          <>
            <b>{words.freezer.today}</b> <span className="thaw-clock">{clockOf(row.out)}</span>
          </>
        ) : (
          <span className="soft">
            {row.manyTimes ? words.shortDay(dateOf(row.out)) : words.freezerPaper.atTime(dateOf(row.out), clockOf(row.out))}
          </span>
        )}
      </td>
      <td className="thaw-what">
        <span className="thaw-name">{what}</span>
        <span className="note">{reasonText(f, row)}</span>
      </td>
      <td className="thaw-week">
        <WeekBar days={days} out={row.out} ready={row.ready} useBy={row.lastUseBy} today={f.today} />
      </td>
    </tr>
  );
}

/** An empty box; ticking it is done at once, and the row moves up to what is out. */
export function TakeOutBox({ what, onTick }: { what: string; onTick: () => void }) {
  return (
    <label className="box">
      <input type="checkbox" checked={false} onChange={onTick} aria-label={words.freezer.takeOut(what)} />
    </label>
  );
}

/** Already out: its bar goes on, and it can be ended. */
function OutRow({ f, out, days }: RowProps & { out: OutNow }) {
  const unit = f.house.massUnit;
  const { thaw, clock } = out;
  const pack = f.stock.packs.find((p) => p.id === thaw.packId);
  const take = { packId: thaw.packId, portions: thaw.portions, of: pack?.portions ?? thaw.portions, grams: out.grams };
  const what = takesText(f, [take]);
  const reason = [
    out.state === 'thawing'
      ? words.freezer.ready(words.timeNear(clock.ready, f.today))
      : words.freezer.left(words.foodText(out.leftGrams, unit)),
    words.freezer.useBy(words.timeNear(clock.useBy, f.today)),
    thaw.way === 'refrigerator' ? '' : words.freezer.thawedBy(thaw.way),
    clock.officialUseBy < clock.useBy ? words.freezer.officialUseBy(words.timeNear(clock.officialUseBy, f.today)) : '',
    out.eaters.length > 0 ? eatersWords(out.eaters, unit, words) : '',
    out.wasteGrams >= 1 ? words.freezer.waste(words.foodText(out.wasteGrams, unit)) : '',
  ];
  return (
    <tr className="thaw-out">
      <td className="thaw-box">
        <span className="box" aria-hidden="true">
          <input type="checkbox" checked readOnly tabIndex={-1} disabled />
        </span>
      </td>
      <td className="thaw-when">
        <span className="soft">{words.timeNear(thaw.at, f.today)}</span>
      </td>
      <td className="thaw-what">
        <span className="thaw-name">{what}</span>
        <span className="note">{reason.filter((t) => t !== '').join('; ')}</span>
        <span className="thaw-end">
          <button
            type="button"
            className="link note"
            aria-label={words.freezer.usedUpWhat(what)}
            onClick={() => void endThaws([thaw.id], 'used')}
          >
            {words.freezer.usedUp}
          </button>
          <button
            type="button"
            className="link note"
            aria-label={words.freezer.thrownWhat(what)}
            onClick={() => void endThaws([thaw.id], 'thrown')}
          >
            {words.freezer.thrown}
          </button>
        </span>
      </td>
      <td className="thaw-week">
        <WeekBar days={days} out={thaw.at} ready={clock.ready} useBy={clock.useBy} today={f.today} />
      </td>
    </tr>
  );
}

function Swatch({ kind }: { kind: 'thawing' | 'use' }) {
  return (
    <svg width="34" height="12" aria-hidden="true">
      <rect x="1" y="2" width="32" height="8" className={`bar-${kind}`} />
    </svg>
  );
}

/** Open while it thaws, filled while it is to be used, a tick where it must be used by. What lies outside the week is cut off. */
function WeekBar(props: { days: readonly CivilDate[]; out: LocalTime; ready: LocalTime; useBy: LocalTime; today: CivilDate }) {
  const { days, out, ready, useBy, today } = props;
  const from = localMinutes(localTime(`${days[0] ?? today}T00:00`));
  const place = (t: LocalTime) => Math.min(100, Math.max(0, ((localMinutes(t) - from) / (days.length * DAY_MINUTES)) * 100));
  const [a, b, c] = [place(out), place(ready), place(useBy)];
  return (
    <svg
      className="week-bar"
      width="100%"
      height="34"
      role="img"
      aria-label={words.freezer.barLabel(words.timeNear(out, today), words.timeNear(ready, today), words.timeNear(useBy, today))}
    >
      {days.map((d, i) => (
        <line
          key={d}
          x1={`${(i / days.length) * 100}%`}
          x2={`${(i / days.length) * 100}%`}
          y1="0"
          y2="100%"
          className="bar-day"
        />
      ))}
      {b > a && <rect x={`${a}%`} width={`${b - a}%`} y="8" height="18" className="bar-thawing" />}
      {c > b && <rect x={`${b}%`} width={`${c - b}%`} y="8" height="18" className="bar-use" />}
      {c > 0 && c < 100 && <line x1={`${c}%`} x2={`${c}%`} y1="1" y2="33" className="bar-tick" />}
    </svg>
  );
}
