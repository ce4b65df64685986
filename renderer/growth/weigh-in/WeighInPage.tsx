import { useEffect, useRef, useState } from 'react';
import { dateOf } from '../../../core/calendar/clock.ts';
import { now, useToday } from '../../data/now.ts';
import { flush } from '../../data/write-weights.ts';
import { useLitterGrowth } from '../../facts/useLitterGrowth.ts';
import { type WeighInTime, weighInNow } from '../../facts/weigh-in.ts';
import { href } from '../../links.ts';
import { Tally } from '../../parts/Tally.tsx';
import { useWindow } from '../../state/window.ts';
import { words } from '../../state/words.ts';
import { LitterDrift } from '../LitterDrift.tsx';
import { ScaleLine } from '../scale/ScaleLine.tsx';
import { useScaleWeighing } from '../scale/useScaleWeighing.ts';
import { useWeighIn } from './useWeighIn.ts';
import './weigh-in.css';
import { explainGain } from './explain-gain.ts';
import { SessionChoice } from './SessionChoice.tsx';
import { WeighInTable } from './WeighInTable.tsx';

/** What was left half done when another day or time was chosen. */
interface LeftOver {
  readonly time: WeighInTime;
  readonly done: number;
  readonly of: number;
}

/**
 * Day and session stay what they were when the weigh-in was begun: it goes on past two o'clock and past midnight. A page that nothing was
 * weighed on follows the clock.
 */
export function WeighInPage({ litterId, firstPuppyId }: { litterId: string; firstPuppyId: string | null }) {
  const [time, setTime] = useState(() => weighInNow(now().local));
  const [leftOver, setLeftOver] = useState<LeftOver | null>(null);
  const choose = (next: WeighInTime, left: LeftOver | null) => {
    setTime(next);
    setLeftOver(left ?? leftOver);
  };
  return (
    <Weighing
      key={`${time.day} ${time.session}`}
      litterId={litterId}
      firstPuppyId={firstPuppyId}
      time={time}
      choose={choose}
      leftOver={leftOver !== null && sameTime(leftOver.time, time) ? null : leftOver}
    />
  );
}

function sameTime(a: WeighInTime, b: WeighInTime): boolean {
  return a.day === b.day && a.session === b.session;
}

interface WeighingProps {
  litterId: string;
  firstPuppyId: string | null;
  time: WeighInTime;
  choose: (time: WeighInTime, left: LeftOver | null) => void;
  leftOver: LeftOver | null;
}

function Weighing({ litterId, firstPuppyId, time, choose, leftOver }: WeighingProps) {
  const today = useToday();
  const facts = useLitterGrowth(litterId);
  const unit = facts.house.massUnit;
  const explain = useWindow((w) => w.explain);
  const weighIn = useWeighIn(facts, time, firstPuppyId, (row, grams, at) => explain(explainGain(row, grams, at, today, unit)));
  const scale = useScaleWeighing(weighIn, facts, time.live);
  const { rows, weighedIds } = weighIn;
  const isUnderWay = weighIn.field === 'typing' || (weighedIds.size > 0 && weighedIds.size < rows.length);
  useClock(time, isUnderWay, (next) => choose(next, null));
  if (facts.litter === null) return null;
  if (rows.length === 0) return <Nobody litterId={litterId} />;
  const whelped = dateOf(facts.litter.whelpedAt);
  const turnTo = (next: WeighInTime) => {
    if (next.day < whelped) return;
    choose(next, isUnderWay ? { time, done: weighedIds.size, of: rows.length } : null);
  };
  return (
    <div className="weigh-in">
      <header className="title">
        <div>
          <h1>{words.growth.weighIn}</h1>
          <SessionChoice time={time} whelped={whelped} choose={turnTo} />
          <ScaleLine house={facts.house} isNow={time.live} />
        </div>
        <p className="right weighed-count">
          <Tally done={weighedIds.size} of={rows.length} />
          <span aria-hidden="true">
            <b className="big">{weighedIds.size}</b> {words.growth.weighed(rows.length)}
          </span>
        </p>
      </header>
      {leftOver !== null && (
        <p className="line half-done" role="status">
          {words.growth.halfDone(
            `${words.longDate(leftOver.time.day)}, ${words.growth.session[leftOver.time.session]}`,
            leftOver.done,
            leftOver.of,
          )}{' '}
          <button type="button" className="link" onClick={() => turnTo(leftOver.time)}>
            {words.growth.backToHalfDone}
          </button>
        </p>
      )}
      {weighIn.notWritten > 0 && <NotWritten count={weighIn.notWritten} />}
      <WeighInTable weighIn={weighIn} scale={scale} unit={unit} turn={{ time, choose: turnTo }} today={today} />
      {weighIn.inHandId === null && <AllWeighed litterId={litterId} count={rows.length} notWritten={weighIn.notWritten} />}
      {weighIn.growth !== null && facts.input !== null && (
        <div className="weigh-in-drift">
          <LitterDrift
            litterId={litterId}
            puppies={facts.puppies}
            growth={weighIn.growth}
            input={facts.input}
            unit={unit}
            today={time.day}
            weighedIds={weighedIds}
          />
        </div>
      )}
    </div>
  );
}

/** Turns a page that waits to the weigh-in of now; one under way stays what it is. */
function useClock(time: WeighInTime, isUnderWay: boolean, turn: (time: WeighInTime) => void): void {
  useEffect(() => {
    if (!time.live || isUnderWay) return;
    const timer = setInterval(() => {
      const next = weighInNow(now().local);
      if (!sameTime(next, time)) turn(next);
    }, 15_000);
    return () => clearInterval(timer);
  });
}

/** Said where she looks, for the foot may be out of sight. */
function NotWritten({ count }: { count: number }) {
  const isShut = useWindow((w) => w.failure?.code === 'forbidden');
  return (
    <p className="not-written-count" role="alert">
      <b>{words.growth.notWrittenCount(count)}</b> {isShut ? words.growth.startedAgain : words.growth.notWrittenMore}{' '}
      <button type="button" className="link" onClick={() => void flush()}>
        {words.growth.writeAgain}
      </button>
    </p>
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

function AllWeighed({ litterId, count, notWritten }: { litterId: string; count: number; notWritten: number }) {
  const link = useRef<HTMLAnchorElement>(null);
  useEffect(() => link.current?.focus(), []);
  return (
    <p className="all-weighed">
      <span role="status">{notWritten === 0 ? words.growth.allWeighed(count) : words.growth.allTyped(count, notWritten)}</span>{' '}
      <a className="button main" ref={link} href={href({ at: 'litter', litterId, page: 'today', puppyId: null })}>
        {words.growth.toToday}
      </a>
    </p>
  );
}
