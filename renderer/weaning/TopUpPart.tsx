import { useId, useState } from 'react';
import { dateOf } from '../../core/calendar/clock.ts';
import { daysBetween } from '../../core/calendar/day.ts';
import type { Assessment } from '../../core/growth/assess.ts';
import type { Puppy } from '../../core/litter/litter.ts';
import type { House } from '../../core/people/house.ts';
import { topUp } from '../../core/weaning/hand-rearing.ts';
import { useToday } from '../data/now.ts';
import { readNumber } from '../parts/form/read.ts';
import { words } from '../state/words.ts';
import './top-up.css';

const milkField = () => readNumber({ low: 0.3, high: 2.5, example: words.topUp.milkExample });

/** For a puppy at act: what two handbooks would give by bottle. The cautions come first, and a feed is never over what the stomach holds. */
export function TopUpPart({ puppy, assessment, house }: { puppy: Puppy; assessment: Assessment; house: House }) {
  const today = useToday();
  const [milk, setMilk] = useState('1');
  const id = useId();
  if (assessment.level !== 'act') return null;
  const age = daysBetween(dateOf(puppy.bornAt), today);
  const read = milkField()(milk);
  const grams = assessment.grams;
  const volumes = grams === null || !read.ok ? null : topUp(grams, age, read.value);
  if (age >= 28) return <p className="top-up-older">{words.topUp.older}</p>;
  return (
    <details className="top-up">
      <summary>{words.topUp.heading}</summary>
      <ol>
        {words.topUp.cautions.map((c) => (
          <li key={c}>{c}</li>
        ))}
      </ol>
      {house.vetPhone !== '' && <p className="vet">{words.weaning.callVet(house.vetName, house.vetPhone)}</p>}
      {grams === null ? (
        <p>{words.topUp.noWeight}</p>
      ) : (
        <>
          <p className="top-up-milk">
            <label htmlFor={id}>{words.topUp.milk}</label>
            <input
              id={id}
              className="written"
              inputMode="decimal"
              autoComplete="off"
              value={milk}
              aria-invalid={!read.ok}
              aria-describedby={`${id}-hint`}
              onChange={(event) => setMilk(event.target.value)}
            />
            <span className="note" id={`${id}-hint`} aria-live="polite">
              {read.ok ? words.topUp.milkHint : read.sentence}
            </span>
          </p>
          {volumes !== null && (
            <>
              <p className="top-up-volume">
                <b>{words.topUp.per(figure(volumes.feedMl.low), figure(volumes.feedMl.high))}</b>,{' '}
                {words.topUp.feeds(volumes.feeds.low, volumes.feeds.high, volumes.hours.low, volumes.hours.high)}
              </p>
              <p>
                <b>{words.topUp.most(figure(volumes.mostMl))}</b> {volumes.capped && words.topUp.capped}
              </p>
              <p>{words.topUp.day(volumes.dayMl.low, volumes.dayMl.high)}</p>
              <p>{words.topUp.disagree}</p>
              <p className="note">
                {words.topUp.need(Math.round(volumes.needKcal))} {words.topUp.sources(volumes.sources)}
              </p>
            </>
          )}
        </>
      )}
    </details>
  );
}

function figure(ml: number): string {
  return String(ml);
}
