import { useId, useState } from 'react';
import { dateOf } from '../../core/calendar/clock.ts';
import { daysBetween } from '../../core/calendar/day.ts';
import type { Assessment } from '../../core/growth/assess.ts';
import type { Puppy } from '../../core/litter/litter.ts';
import type { House } from '../../core/people/house.ts';
import { topUp } from '../../core/weaning/hand-rearing.ts';
import { topUpWords as w, weaningWords } from '../../core/words/en/weaning.ts';
import { useToday } from '../data/now.ts';
import { readNumber } from '../parts/form/read.ts';
import './top-up.css';

const milkField = readNumber({ low: 0.3, high: 2.5, example: w.milkExample });

/** For a puppy at act: what two handbooks would give by bottle. The cautions come first, and a feed is never over what the stomach holds. */
export function TopUpPart({ puppy, assessment, house }: { puppy: Puppy; assessment: Assessment; house: House }) {
  const today = useToday();
  const [milk, setMilk] = useState('1');
  const id = useId();
  if (assessment.level !== 'act') return null;
  const age = daysBetween(dateOf(puppy.bornAt), today);
  const read = milkField(milk);
  const grams = assessment.grams;
  const volumes = grams === null || !read.ok ? null : topUp(grams, age, read.value);
  if (age >= 28) return <p className="top-up-older">{w.older}</p>;
  return (
    <section className="top-up" aria-labelledby={`${id}-head`}>
      <h3 id={`${id}-head`}>{w.heading}</h3>
      <ol>
        {w.cautions.map((c) => (
          <li key={c}>{c}</li>
        ))}
      </ol>
      {house.vetPhone !== '' && <p className="vet">{weaningWords.callVet(house.vetName, house.vetPhone)}</p>}
      {grams === null ? (
        <p>{w.noWeight}</p>
      ) : (
        <>
          <p className="top-up-milk">
            <label htmlFor={id}>{w.milk}</label>
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
              {read.ok ? w.milkHint : read.sentence}
            </span>
          </p>
          {volumes !== null && (
            <>
              <p className="top-up-volume">
                <b>{w.per(figure(volumes.feedMl.low), figure(volumes.feedMl.high))}</b>,{' '}
                {w.feeds(volumes.feeds.low, volumes.feeds.high, volumes.hours.low, volumes.hours.high)}
              </p>
              <p>
                <b>{w.most(figure(volumes.mostMl))}</b> {volumes.capped && w.capped}
              </p>
              <p>{w.day(volumes.dayMl.low, volumes.dayMl.high)}</p>
              <p>{w.disagree}</p>
              <p className="note">
                {w.need(Math.round(volumes.needKcal))} {w.sources(volumes.sources)}
              </p>
            </>
          )}
        </>
      )}
    </section>
  );
}

function figure(ml: number): string {
  return String(ml);
}
