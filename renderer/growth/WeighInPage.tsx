import { useEffect, useId, useRef, useState } from 'react';
import { clockOf, dateOf, type LocalTime } from '../../core/calendar/clock.ts';
import { addDays, type CivilDate, dayNumber, parseDate } from '../../core/calendar/day.ts';
import type { Assessment } from '../../core/growth/assess.ts';
import { puppyName } from '../../core/litter/litter.ts';
import type { MassUnit } from '../../core/units/mass.ts';
import { now, useToday } from '../data/now.ts';
import { useLitterGrowth } from '../facts/useLitterGrowth.ts';
import { sessionAt, type WeighingSession } from '../facts/weigh-in.ts';
import { href } from '../links.ts';
import { CollarBand } from '../parts/CollarBand.tsx';
import { collarWords } from '../parts/collar-words.ts';
import { LevelMark } from '../parts/LevelMark.tsx';
import { Tally } from '../parts/Tally.tsx';
import { Why } from '../parts/Why.tsx';
import { type Explanation, useWindow } from '../state/window.ts';
import { words } from '../state/words.ts';
import { LitterDrift } from './LitterDrift.tsx';
import { ScaleLine } from './scale/ScaleLine.tsx';
import { ScaleAsks, ScalePhase } from './scale/ScaleRemark.tsx';
import { ScaleTrace } from './scale/ScaleTrace.tsx';
import { useLiveGrams } from './scale/useLiveGrams.ts';
import { type ScaleWeighing, useScaleWeighing } from './scale/useScaleWeighing.ts';
import { useNarrow } from './useNarrow.ts';
import { useWeighIn, type WeighIn, type WeighInRow } from './useWeighIn.ts';
import './weigh-in.css';

export function WeighInPage({ litterId, firstPuppyId }: { litterId: string; firstPuppyId: string | null }) {
  const today = useToday();
  const [other, setOther] = useState<{ day: CivilDate; session: WeighingSession } | null>(null);
  const day = other?.day ?? today;
  const session = other?.session ?? sessionAt(clockOf(now().local));
  return (
    <Weighing
      key={`${day} ${session}`}
      litterId={litterId}
      firstPuppyId={firstPuppyId}
      day={day}
      session={session}
      choose={setOther}
    />
  );
}

interface WeighingProps {
  litterId: string;
  firstPuppyId: string | null;
  day: CivilDate;
  session: WeighingSession;
  choose: (other: { day: CivilDate; session: WeighingSession }) => void;
}

function Weighing({ litterId, firstPuppyId, day, session, choose }: WeighingProps) {
  const today = useToday();
  const facts = useLitterGrowth(litterId);
  const unit = facts.house.massUnit;
  const explain = useWindow((w) => w.explain);
  const weighIn = useWeighIn(facts, day, session, firstPuppyId, (row, grams, at) =>
    explain(explainGain(row, grams, at, today, unit)),
  );
  const isNow = day === today && session === sessionAt(clockOf(now().local));
  const scale = useScaleWeighing(weighIn, facts, isNow);
  const { rows, weighedIds } = weighIn;
  if (facts.litter === null) return null;
  if (rows.length === 0) return <Nobody litterId={litterId} />;
  const isToday = day === today;
  return (
    <div className="weigh-in">
      <header className="title">
        <div>
          <h1>{words.growth.weighIn}</h1>
          <SessionChoice day={day} session={session} whelped={dateOf(facts.litter.whelpedAt)} choose={choose} />
          <ScaleLine house={facts.house} isNow={isNow} />
        </div>
        <p className="right weighed-count">
          <Tally done={weighedIds.size} of={rows.length} />
          <span aria-hidden="true">
            <b className="big">{weighedIds.size}</b> {words.growth.weighed(rows.length)}
          </span>
        </p>
      </header>
      <WeighInTable weighIn={weighIn} scale={scale} unit={unit} isToday={isToday} today={today} />
      {weighIn.inHandId === null && <AllWeighed litterId={litterId} count={rows.length} />}
      {weighIn.growth !== null && facts.input !== null && (
        <div className="weigh-in-drift">
          <LitterDrift
            litterId={litterId}
            puppies={facts.puppies}
            growth={weighIn.growth}
            input={facts.input}
            unit={unit}
            today={today}
            weighedIds={weighedIds}
          />
        </div>
      )}
    </div>
  );
}

function Nobody({ litterId }: { litterId: string }) {
  return (
    <>
      <header className="title">
        <h1>{words.growth.weighIn}</h1>
      </header>
      <p className="line">
        {words.growth.notThere} {words.growth.notThereMore}{' '}
        <a href={href({ at: 'litter', litterId, page: 'puppies', puppyId: null })}>{words.growth.toPuppies}</a>
      </p>
    </>
  );
}

function AllWeighed({ litterId, count }: { litterId: string; count: number }) {
  const link = useRef<HTMLAnchorElement>(null);
  useEffect(() => link.current?.focus(), []);
  return (
    <p className="all-weighed">
      <span role="status">{words.growth.allWeighed(count)}</span>{' '}
      <a className="button main" ref={link} href={href({ at: 'litter', litterId, page: 'today', puppyId: null })}>
        {words.growth.toToday}
      </a>
    </p>
  );
}

/** Today, morning or evening by the clock; another day or time when she fills in later. */
function SessionChoice({
  day,
  session,
  whelped,
  choose,
}: {
  day: CivilDate;
  session: WeighingSession;
  whelped: CivilDate;
  choose: WeighingProps['choose'];
}) {
  const [open, setOpen] = useState(false);
  const [fault, setFault] = useState<string | null>(null);
  const today = useToday();
  const id = useId();
  return (
    <>
      <p>
        {words.longDate(day)}, {words.growth.session[session]}{' '}
        <button type="button" className="link note" aria-expanded={open} onClick={() => setOpen(!open)}>
          {words.growth.otherTime}
        </button>
      </p>
      {open && (
        <p className="session-choice">
          <label htmlFor={`${id}-day`}>{words.growth.day}</label>
          <input
            id={`${id}-day`}
            className="written"
            type="date"
            defaultValue={day}
            min={whelped}
            max={today}
            onChange={(event) => {
              const chosen = parseDate(event.target.value);
              if (chosen === null) return;
              const wrong =
                dayNumber(chosen) > dayNumber(today)
                  ? words.growth.cannotBeFuture
                  : chosen < whelped
                    ? words.growth.beforeBirth
                    : null;
              setFault(wrong);
              if (wrong === null) choose({ day: chosen, session });
            }}
          />
          <label htmlFor={`${id}-when`}>{words.growth.when}</label>
          <select
            id={`${id}-when`}
            className="written"
            value={session}
            onChange={(event) => choose({ day, session: event.target.value === 'evening' ? 'evening' : 'morning' })}
          >
            <option value="morning">{words.growth.session.morning}</option>
            <option value="evening">{words.growth.session.evening}</option>
          </select>
          {fault !== null && <span role="alert">{fault}</span>}
        </p>
      )}
    </>
  );
}

function WeighInTable({
  weighIn,
  scale,
  unit,
  isToday,
  today,
}: {
  weighIn: WeighIn;
  scale: ScaleWeighing;
  unit: MassUnit;
  isToday: boolean;
  today: CivilDate;
}) {
  const narrow = useNarrow();
  const { rows, inHandId } = weighIn;
  const at = rows.findIndex((r) => r.puppy.id === inHandId);
  const shown = narrow && at >= 0 ? rows.slice(Math.max(0, at - 2), at + 3) : rows;
  const suffix = unit === 'lboz' ? 'lb oz' : unit;
  const yesterday = addDays(today, -1);
  const allYesterday = isToday && rows.every((r) => r.before === null || dateOf(r.before.at) === yesterday);
  return (
    <div className="weigh-in-list">
      <table className="weigh-in-table">
        <thead>
          <tr>
            <th scope="col">{words.growth.collar}</th>
            <th scope="col">{words.growth.puppy}</th>
            <th scope="col" className="figure">
              {allYesterday ? words.growth.yesterday(suffix) : words.growth.before(suffix)}
            </th>
            <th scope="col" className="figure">
              {isToday ? words.growth.today(suffix) : words.growth.now(suffix)}
            </th>
            <th scope="col" className="figure">
              {words.growth.gain}
            </th>
            <th scope="col" className="remark">
              {words.growth.remark}
            </th>
          </tr>
        </thead>
        <tbody>
          {shown.map((row) =>
            row.puppy.id === inHandId ? (
              <InHand key={row.puppy.id} row={row} weighIn={weighIn} scale={scale} unit={unit} />
            ) : (
              <Row key={row.puppy.id} row={row} weighIn={weighIn} unit={unit} today={today} />
            ),
          )}
        </tbody>
      </table>
    </div>
  );
}

function Row({ row, weighIn, unit, today }: { row: WeighInRow; weighIn: WeighIn; unit: MassUnit; today: CivilDate }) {
  const { puppy, grams, before } = row;
  const name = puppyName(puppy);
  const gain = grams === null || before === null || row.doubt !== null ? null : grams - before.grams;
  const assessment = weighIn.growth?.puppies.get(puppy.id) ?? null;
  return (
    <tr className={grams === null ? 'to-do' : 'done'}>
      <td>
        <button
          type="button"
          className="collar-button"
          tabIndex={-1}
          aria-label={words.growth.pickUp(name)}
          onClick={() => weighIn.take(puppy.id)}
        >
          <CollarBand collar={puppy.collar} height={26} label={null} />
        </button>
      </td>
      <th scope="row">
        <b>{name}</b> <span className="note">{collarWords(puppy.collar)}</span>
      </th>
      <td className="figure soft">{before === null ? '' : words.massFigure(before.grams, unit)}</td>
      <td className="figure weight">
        {grams === null ? '' : <span className={row.doubt === null ? '' : 'held'}>{words.massFigure(grams, unit)}</span>}
      </td>
      <td className="figure">
        {gain === null || row.reading === null ? (
          ''
        ) : (
          <Why explanation={explainGain(row, grams ?? 0, row.reading.at, today, unit)}>
            {words.signed(words.massFigure(Math.abs(gain), unit), gain)}
          </Why>
        )}
      </td>
      <td className="remark">{grams !== null && <Remark row={row} assessment={assessment} unit={unit} />}</td>
    </tr>
  );
}

function Remark({ row, assessment, unit }: { row: WeighInRow; assessment: Assessment | null; unit: MassUnit }) {
  if (row.doubt !== null) return <span>? {words.growth.heldOut}</span>;
  if (assessment === null) return null;
  return (
    <>
      {/* The row shows the weight itself: only the first one needs a word in place of the level. */}
      {row.before === null && assessment.level === 'steady' ? (
        <span className="soft">{words.growth.firstWeight}</span>
      ) : (
        <LevelMark level={assessment.level} />
      )}
      {assessment.level !== 'steady' && <span className="because"> {words.growthFinding.puppy(assessment.finding, unit)}</span>}
    </>
  );
}

interface InHandProps {
  row: WeighInRow;
  weighIn: WeighIn;
  scale: ScaleWeighing;
  unit: MassUnit;
}

function InHand({ row, weighIn, scale, unit }: InHandProps) {
  const { puppy, before } = row;
  const field = useRef<HTMLInputElement>(null);
  const line = useRef<HTMLTableRowElement>(null);
  const remarkId = useId();
  const live = useLiveGrams();
  useEffect(() => {
    field.current?.focus({ preventScroll: true });
    field.current?.select();
    line.current?.scrollIntoView({ block: 'center' });
  }, []);
  // What cannot be read stays, and is selected: typing over it is enough.
  useEffect(() => {
    if (weighIn.mistake !== null) field.current?.select();
  }, [weighIn.mistake]);
  const name = puppyName(puppy);
  return (
    <tr className="in-hand" ref={line}>
      <td>
        <CollarBand collar={puppy.collar} height={38} label={null} />
      </td>
      <th scope="row">
        <span className="called">{name}</span>
        <span className="note">
          {collarWords(puppy.collar)}, {words.growth.dogOrBitch[puppy.sex]}
        </span>
      </th>
      <td className="figure soft">{before === null ? '' : words.massFigure(before.grams, unit)}</td>
      <td className="figure">
        <input
          ref={field}
          className={weighIn.mistake === null ? 'weight-field' : 'weight-field mistaken'}
          value={weighIn.text}
          placeholder={live === null || !scale.listens ? '' : words.massFigure(live, unit)}
          aria-label={words.growth.weightOf(name)}
          aria-describedby={remarkId}
          aria-invalid={weighIn.mistake !== null}
          inputMode="decimal"
          enterKeyHint="next"
          autoComplete="off"
          spellCheck={false}
          maxLength={40}
          onChange={(event) => weighIn.type(event.target.value)}
          onKeyDown={(event) => weighKeys(event, weighIn, scale, row)}
        />
      </td>
      <td className="figure gain-now">{row.doubt === null ? '' : '?'}</td>
      <td className="remark" id={remarkId} aria-live="polite">
        {scale.listens && weighIn.field === 'empty' && <ScaleTrace />}
        <InHandRemark row={row} weighIn={weighIn} scale={scale} unit={unit} />
      </td>
    </tr>
  );
}

function weighKeys(event: React.KeyboardEvent<HTMLInputElement>, weighIn: WeighIn, scale: ScaleWeighing, row: WeighInRow): void {
  if (event.nativeEvent.isComposing) return;
  const ctrl = event.ctrlKey || event.metaKey;
  const handled = (): void => event.preventDefault();
  if (event.key === 'Enter') {
    handled();
    if (!scale.keep()) weighIn.enter();
  } else if (event.key === ' ' && scale.other !== null) {
    handled();
    scale.giveToOther();
  } else if (event.key === ' ' && row.doubt?.guessGrams != null) {
    handled();
    weighIn.takeGuess();
  } else if (weighIn.swap !== null && event.key.toLowerCase() === 'x' && !ctrl) {
    handled();
    weighIn.exchange();
  } else if (ctrl && event.key.toLowerCase() === 'z' && !event.shiftKey) {
    handled();
    weighIn.undo();
  } else if (ctrl && weighIn.field !== 'typing' && isRedo(event)) {
    handled();
    weighIn.redo();
  } else if (event.key === 'ArrowDown' || event.key === 'ArrowUp') {
    handled();
    const by = event.key === 'ArrowDown' ? 1 : -1;
    if (event.altKey) weighIn.arrange(by);
    else weighIn.step(by);
  }
}

/** Ctrl Y, or Ctrl Shift Z. */
function isRedo(event: React.KeyboardEvent): boolean {
  const key = event.key.toLowerCase();
  return key === 'y' || (key === 'z' && event.shiftKey);
}

function InHandRemark({ row, weighIn, scale, unit }: InHandProps) {
  const { doubt } = row;
  if (weighIn.mistake !== null) {
    return (
      <>
        <span className="fact">{words.massMistake(weighIn.mistake, weighIn.text)}</span> {words.mass.howToWrite[unit]}
        <span className="note below">{words.mass.stays}</span>
      </>
    );
  }
  if (doubt !== null && row.grams !== null && !weighIn.fromScale) {
    return (
      <>
        <span className="fact">{words.growthFinding.oddity(doubt.fact, unit)}</span> {words.growthFinding.question(doubt)}
        <span className="answers">
          {doubt.guessGrams !== null && (
            <button type="button" tabIndex={-1} onClick={weighIn.takeGuess}>
              <kbd>Space</kbd> <b>{words.massText(doubt.guessGrams, unit)}</b>
            </button>
          )}
          <button type="button" tabIndex={-1} onClick={weighIn.enter}>
            <kbd>Enter</kbd> {words.growth.keep(words.massText(row.grams, unit))}
          </button>
        </span>
      </>
    );
  }
  if (weighIn.swap !== null) {
    return (
      <>
        <span className="fact">{words.growthFinding.reading(weighIn.swap, unit)}</span>
        <span className="answers">
          <button type="button" tabIndex={-1} onClick={weighIn.exchange}>
            <kbd>X</kbd> {words.answer.exchange}
          </button>
          <button type="button" tabIndex={-1} onClick={weighIn.enter}>
            <kbd>Enter</kbd> {words.answer.areRight}
          </button>
        </span>
      </>
    );
  }
  const next = weighIn.rows.find((r) => r.puppy.id === weighIn.nextId);
  const asked = scale.other !== null || scale.offer !== null;
  if (asked) return <ScaleAsks scale={scale} puppy={row.puppy} puppies={weighIn.rows.map((r) => r.puppy)} unit={unit} />;
  return (
    <>
      <span className="soft">
        {weighIn.expected === null
          ? row.before === null
            ? words.growth.firstWeight
            : ''
          : words.growth.expected(words.massText(weighIn.expected, unit))}
      </span>
      <span className="note below">
        {scale.listens && weighIn.field === 'empty' && <ScalePhase />}
        {weighIn.fromScale && words.scale.filled} <kbd>Enter</kbd>{' '}
        {next === undefined ? words.growth.lastOne : words.growth.next(puppyName(next.puppy))}
      </span>
    </>
  );
}

function explainGain(row: WeighInRow, grams: number, at: LocalTime, today: CivilDate, unit: MassUnit): Explanation {
  const name = puppyName(row.puppy);
  const before = row.before;
  if (before === null) return { figure: `${name} ${words.massText(grams, unit)}.`, how: words.growth.firstWeight, sum: [] };
  const gain = grams - before.grams;
  const apart = (row.reading?.instant ?? now().instant) - before.instant;
  return {
    figure: `${words.signed(words.massText(Math.abs(gain), unit), gain)}, ${name}.`,
    how: words.growth.explainGain(
      words.massText(grams, unit),
      words.when(at, today),
      words.massText(before.grams, unit),
      words.when(before.at, today),
      words.span(apart),
    ),
    sum: [],
  };
}
