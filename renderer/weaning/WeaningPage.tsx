import { type ReactNode, useMemo } from 'react';
import { clockOf } from '../../core/calendar/clock.ts';
import { addDays, daysBetween } from '../../core/calendar/day.ts';
import { earliestGoHome } from '../../core/homing/go-home-day.ts';
import { EIGHT_WEEKS } from '../../core/litter/ages.ts';
import { puppyName } from '../../core/litter/litter.ts';
import { restsOn, type WeaningEvent } from '../../core/weaning/eaten.ts';
import { solidShare, type WeaningDay, type WeaningInput, weaningDay } from '../../core/weaning/weaning.ts';
import { nextStep, weaningFindings } from '../../core/weaning/weaning-findings.ts';

import { weaningInputOf } from '../../core/weaning/weaning-input.ts';
import { useWeaning, type Weaning } from '../facts/useWeaning.ts';
import { CollarBand } from '../parts/CollarBand.tsx';
import { PageTitle } from '../parts/PageTitle.tsx';
import { Why } from '../parts/Why.tsx';
import { words } from '../state/words.ts';
import { MealsToday } from './MealsToday.tsx';
import { StoolNotes } from './StoolNotes.tsx';
import { WeaningBegin } from './WeaningBegin.tsx';
import { WeaningPlanPart } from './WeaningPlanPart.tsx';
import { WeaningPrep } from './WeaningPrep.tsx';
import { WeaningSteps } from './WeaningSteps.tsx';
import { daysAhead, explainDay, holdingOn, stepSpans } from './weaning-facts.ts';
import { takeNoteBack, writeToday } from './weaning-notes.ts';
import './weaning.css';

/** What another feature shows of the dam; `solids` is the part of the litter's food that comes from bowls. */
type DamSlot = (of: { weaning: Weaning; solids: number }) => ReactNode;

/** From milk to bowl: the steps, what to weigh out tomorrow, today's meals, the dam, the plan. */
export function WeaningPage({ litterId, dam }: { litterId: string; dam: DamSlot }) {
  const weaning = useWeaning(litterId);
  if (weaning === null) return null;
  const { plan, input } = weaning;
  if (plan === null || input === null) return <NotBegun weaning={weaning} dam={dam} />;
  return <Begun weaning={weaning} input={input} dam={dam} />;
}

function NotBegun({ weaning, dam }: { weaning: Weaning; dam: DamSlot }) {
  const { litter, born, today, input } = weaning;
  const age = words.ageInWords(born, today);
  return (
    <>
      <PageTitle
        title={words.weaning.title}
        lead={
          input === null
            ? words.weaning.beginLead(words.litterName(litter), age)
            : words.weaning.beginLate(words.litterName(litter), age)
        }
      />
      {input === null ? (
        <WeaningBegin weaning={weaning} />
      ) : (
        <>
          <MealsToday litterId={litter.id} bare />
          <section className="part">
            <h2>{words.weaning.beginLateHeading}</h2>
            <WeaningBegin weaning={weaning} />
          </section>
        </>
      )}
      {dam({ weaning, solids: input === null ? 0 : 1 })}
    </>
  );
}

function Begun({ weaning, input, dam }: { weaning: Weaning; input: WeaningInput; dam: DamSlot }) {
  const { litter, order, today, age, facts, reckoned } = weaning;
  const now = useMemo(() => weaningDay(input, today), [input, today]);
  const ahead = useMemo(() => weaningInputOf(reckoned, addDays(today, 1)) ?? input, [reckoned, input, today]);
  const tomorrow = useMemo(() => weaningDay(ahead, addDays(today, 1)), [ahead, today]);
  const spans = useMemo(() => stepSpans(input), [input]);
  const holding = now.step === null ? [] : holdingOn(now, order);
  return (
    <>
      <Head weaning={weaning} input={input} now={now} />
      <WeaningSteps plan={input.plan} spans={spans} nowStep={now.step} today={age} dam={litter.dam} holding={holding} />
      {holding.map((h) => (
        <p key={h.puppyId} className="weaning-hold">
          <CollarBand collar={h.collar} height={22} label={null} />
          <span>
            <b>
              <bdi>{puppyName(h.puppy)}</bdi>
            </b>{' '}
            {words.weaning.hold(h.share, h.puppy.sex)}
          </span>
        </p>
      ))}
      <Rests weaning={weaning} now={now} />
      <WeaningPrep weaning={weaning} input={ahead} day={tomorrow} />
      <MealsToday litterId={litter.id} bare />
      <section className="part weaning-two">
        <StoolNotes weaning={weaning} />
        <Findings input={input} now={now} />
      </section>
      {dam({ weaning, solids: now.step === null ? 0 : solidShare(now) })}
      <WeaningPlanPart weaning={weaning} spans={spans} />
      <Diary weaning={weaning} unit={facts.house.massUnit} />
    </>
  );
}

function Head({ weaning, input, now }: { weaning: Weaning; input: WeaningInput; now: WeaningDay }) {
  const { age, born, facts } = weaning;
  const unit = facts.house.massUnit;
  const { plan } = input;
  const next = nextStep(plan, daysAhead(input));
  const starts = daysBetween(born, plan.starts);
  const figure = words.foodText(now.dayGrams, unit);
  return (
    <header className="title">
      <div>
        <h1>{words.weaning.title}</h1>
        <p>
          {now.step === null ? words.weaning.leadBefore(age, plan.starts, starts) : words.weaning.lead(age, starts)}{' '}
          {now.step !== null &&
            now.weaned &&
            `${words.weaning.weaned} ${words.weaning.goHome(earliestGoHome(born, { fromDay: EIGHT_WEEKS }))}`}
          {now.step !== null &&
            !now.weaned &&
            (next !== null ? nextSentence(weaning, input, next) : now.rests ? '' : words.weaning.lastStep)}
        </p>
      </div>
      {now.step !== null && (
        <p className="right weaning-today">
          <b className="big">{figure}</b>
          <br />
          <span className="note">
            {words.weaning.todayForLitter}{' '}
            <Why explanation={explainDay(input, now, unit, `${figure}.`)}>
              {words.weaning.fromBowl(words.weaning.percent(plan.steps[now.step]?.share ?? 0))}
            </Why>
          </span>
        </p>
      )}
    </header>
  );
}

function nextSentence({ born }: Weaning, { plan }: WeaningInput, next: { day: WeaningDay['day']; step: number }): string {
  const step = plan.steps[next.step];
  const before = plan.steps[next.step - 1];
  if (step === undefined) return '';
  const what =
    before?.texture === step.texture
      ? words.weaning.fromBowl(words.weaning.percent(step.share))
      : words.weaning.textures[step.texture];
  return words.weaning.next(daysBetween(born, next.day), next.day, what);
}

/** The steps stand still, and why; or the way to make them. */
function Rests({ weaning: { litter, events, today }, now }: { weaning: Weaning; now: WeaningDay }) {
  if (now.step === null || now.weaned) return null;
  const pauses = events.filter((e) => e.note.kind === 'pause');
  const paused = restsOn(pauses, today);
  const pause = (on: boolean) => void writeToday(litter.id, { kind: 'pause', paused: on });
  return (
    <p className="weaning-rests">
      {now.rests && <b>{paused ? words.weaning.restsPaused : words.weaning.restsLoose} </b>}
      <button type="button" className="link" onClick={() => pause(!paused)}>
        {paused ? words.weaning.goOn : words.weaning.pause}
      </button>
    </p>
  );
}

function Findings({ input, now }: { input: WeaningInput; now: WeaningDay }) {
  const found = weaningFindings(input, now);
  if (found.length === 0) return null;
  return (
    <div>
      <h3>{words.weaning.findings}</h3>
      {found.map((f) => {
        const said = words.weaning.finding(f);
        return (
          <p key={f.code} className="line weaning-finding">
            <span>
              {said.sentence} {said.mend} <span className="note">{words.weaning.source(said.source, f.known)}</span>
            </span>
          </p>
        );
      })}
    </div>
  );
}

const LAST_NOTES = 8;

function Diary({ weaning: { events, order } }: { weaning: Weaning; unit: string }) {
  const latest = events.toReversed().slice(0, LAST_NOTES);
  return (
    <section className="part">
      <h2>{words.weaning.diary}</h2>
      {latest.length === 0 && <p className="line soft">{words.weaning.diaryNone}</p>}
      {latest.map((e) => {
        const puppy = order.find((p) => p.id === e.puppyId);
        const what = `${puppy === undefined ? '' : words.weaning.whose(puppyName(puppy))}${noteWords(e)}`;
        return (
          <p key={e.id} className="line">
            <span className="soft">
              {words.dayOfWeek(e.day)} {clockOf(e.at)}
            </span>
            <span>{what}</span>
            <button
              type="button"
              className="link"
              aria-label={`${words.weaning.takeBack}: ${what}`}
              onClick={() => void takeNoteBack(e.id)}
            >
              {words.weaning.takeBack}
            </button>
          </p>
        );
      })}
    </section>
  );
}

function noteWords({ note }: WeaningEvent): string {
  switch (note.kind) {
    case 'meal':
      return words.weaning.diaryMeal(note.meal, note.ate);
    case 'stool':
      return words.weaning.diaryStool(note.stool);
    case 'pause':
      return words.weaning.diaryPause(note.paused);
    case 'answer':
      return words.weaning.diaryAnswer(note.suggestion, note.accepted);
  }
}
