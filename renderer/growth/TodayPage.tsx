import type { ReactNode } from 'react';
import { clockOf, dateOf, fromLocalMinutes, localMinutes } from '../../core/calendar/clock.ts';
import { type CivilDate, daysBetween } from '../../core/calendar/day.ts';
import type { Assessment, Level } from '../../core/growth/assess.ts';
import type { GrowthInput } from '../../core/growth/input.ts';
import { weighInOrder } from '../../core/litter/in-the-house.ts';
import { type Puppy, puppyName } from '../../core/litter/litter.ts';
import type { House } from '../../core/people/house.ts';
import type { MassUnit } from '../../core/units/mass.ts';
import { now, useToday } from '../data/now.ts';
import { type LitterGrowthFacts, useLitterGrowth } from '../facts/useLitterGrowth.ts';
import { readingOf, sessionAt } from '../facts/weigh-in.ts';
import { weighingsCount } from '../facts/weighings-count.ts';
import { href } from '../links.ts';
import { CollarBand } from '../parts/CollarBand.tsx';
import { LevelMark } from '../parts/LevelMark.tsx';
import { words } from '../state/words.ts';
import { LitterDrift } from './LitterDrift.tsx';
import { FindingLine, Questions } from './TodayQuestions.tsx';
import { VetLine } from './VetLine.tsx';
import './today.css';

/** What another feature shows of a puppy that is to be looked at. */
export type TopUpSlot = (of: { puppy: Puppy; assessment: Assessment; house: House }) => ReactNode;

const RANK: Record<Level, number> = { act: 0, watch: 1, steady: 2 };

/** Who to look at, where everyone stands, what to feed. */
export function TodayPage({
  litterId,
  topUp,
  after,
}: {
  litterId: string;
  /** Milk by bottle, for a puppy that is to be looked at. */
  topUp: TopUpSlot;
  /** What to feed and to thaw, under the rest. */
  after: (shown: { facts: LitterGrowthFacts; order: readonly Puppy[]; today: CivilDate }) => ReactNode;
}) {
  const facts = useLitterGrowth(litterId);
  const today = useToday();
  const { litter, input, growth, puppies } = facts;
  if (litter === null || input === null || growth === null) return null;
  const order = weighInOrder(puppies, today);
  const flagged = order
    .map((puppy) => ({ puppy, assessment: growth.puppies.get(puppy.id) }))
    .filter((f): f is { puppy: Puppy; assessment: Assessment } => f.assessment !== undefined && f.assessment.level !== 'steady')
    .toSorted((a, b) => RANK[a.assessment.level] - RANK[b.assessment.level]);
  const state = weighState(facts, order, today);
  // One that is in question is asked about above already.
  const findings = growth.findings.filter((f) => !facts.readings.some((r) => r.id === f.readingId && r.held));
  return (
    <>
      <header className="title">
        <div>
          <h1>{words.longDate(today)}</h1>
          <p>
            {words.growth.dayOfLife(words.litterName(litter), daysBetween(dateOf(litter.whelpedAt), today))} {state.sentence}
          </p>
        </div>
        <div className="right today-middle">
          {growth.medianGrams !== null && (
            <p>
              <b className="big">{words.massText(growth.medianGrams, facts.house.massUnit)}</b>
              <br />
              <span className="note">{words.growth.middleOfLitter}</span>
            </p>
          )}
          {!state.done && order.length > 0 && (
            <a className="button main" href={href({ at: 'litter', litterId, page: 'weigh-in', puppyId: null })}>
              {words.growth.startWeighIn}
            </a>
          )}
        </div>
      </header>
      {today < dateOf(litter.whelpedAt) && (
        <p className="line" role="alert">
          {words.growth.clockBehind(words.fullDate(today), words.fullDate(dateOf(litter.whelpedAt)))}
        </p>
      )}
      <Questions facts={facts} order={order} />
      {growth.litter.level !== 'steady' && (
        <Flagged
          topUp={topUp}
          heading={words.growth.lookAtLitter(litter.dam)}
          level={growth.litter.level}
          sentence={words.growthFinding.litter(growth.litter.finding, facts.house.massUnit)}
          todo={growth.litter.todo.map((t) => words.growthFinding.litterTodo(t))}
          by={null}
          house={facts.house}
        />
      )}
      {flagged.map(({ puppy, assessment }, at) => (
        <Flagged
          topUp={topUp}
          key={puppy.id}
          puppy={puppy}
          heading={words.growth.lookAt(puppyName(puppy))}
          level={assessment.level}
          sentence={words.growthFinding.puppy(assessment.finding, facts.house.massUnit)}
          todo={assessment.todo.map((t) => words.growthFinding.todo(t, puppy.sex))}
          by={weighAgainBy(assessment)}
          house={facts.house}
          assessment={assessment}
          weigh={{ href: href({ at: 'litter', litterId, page: 'weigh-in', puppyId: puppy.id }), main: at === 0 && state.done }}
        />
      ))}
      <div className="today-drift">
        <LitterDrift
          litterId={litterId}
          puppies={puppies}
          growth={growth}
          input={input}
          unit={facts.house.massUnit}
          today={today}
          weighedIds={null}
        />
      </div>
      <p className="soft today-others">{othersSentence(order, input, growth.puppies, flagged.length, facts.house.massUnit)}</p>
      {findings.length > 0 && (
        <section className="part">
          <h2>{words.growth.findings}</h2>
          {findings.map((f) => (
            <FindingLine key={`${f.readingId} ${f.kind}`} finding={f} facts={facts} />
          ))}
        </section>
      )}
      {after({ facts, order, today })}
    </>
  );
}

function weighState(facts: LitterGrowthFacts, order: readonly Puppy[], today: CivilDate): { done: boolean; sentence: string } {
  const session = sessionAt(clockOf(now().local));
  const done = order.map((p) => readingOf(facts.readings, p.id, today, session)).filter((r) => r !== null);
  if (order.length > 0 && done.length === order.length) {
    const last = done.reduce((a, b) => (a.instant > b.instant ? a : b));
    return { done: true, sentence: words.growth.everyoneWeighed(clockOf(last.at)) };
  }
  if (done.length === 0) return { done: false, sentence: words.growth.nobodyWeighed(words.growth.session[session]) };
  return { done: false, sentence: words.growth.weighedSoFar(done.length, order.length) };
}

function weighAgainBy(a: Assessment): string | null {
  if (a.weighAgainHours === null || a.at === null) return null;
  const due = fromLocalMinutes(localMinutes(a.at) + a.weighAgainHours * 60);
  const { local } = now();
  if (due <= local) return words.growth.weighAgainSince(words.when(due, dateOf(local)));
  return words.growth.weighAgainBy(clockOf(due), dateOf(due) !== dateOf(local));
}

function othersSentence(
  order: readonly Puppy[],
  input: GrowthInput,
  assessments: ReadonlyMap<string, Assessment>,
  flagged: number,
  unit: MassUnit,
): string {
  const weighed = order.filter((p) => assessments.get(p.id)?.grams != null);
  if (weighed.length === 0) return '';
  const steady = weighed.length - flagged;
  if (flagged === 0 && weighed.every((p) => weighingsCount(input, p.id) === 'once')) return words.growth.weighedOnce;
  const first = flagged === 0 ? words.growth.everyoneSteady : steady > 0 ? words.growth.othersSteady(steady) : '';
  const smallest = weighed
    .filter((p) => assessments.get(p.id)?.level === 'steady')
    .toSorted((a, b) => (assessments.get(a.id)?.standing ?? 0) - (assessments.get(b.id)?.standing ?? 0))[0];
  const standing = smallest === undefined ? null : (assessments.get(smallest.id)?.standing ?? null);
  const finding = smallest === undefined ? undefined : assessments.get(smallest.id)?.finding;
  const more =
    smallest !== undefined && finding !== undefined && standing !== null && standing < -0.08
      ? words.growthFinding.puppyByName(puppyName(smallest), finding, unit)
      : '';
  return [first, more].filter((s) => s !== '').join(' ');
}

interface FlaggedProps {
  topUp: TopUpSlot;
  heading: string;
  level: Level;
  sentence: string;
  todo: readonly string[];
  by: string | null;
  house: House;
  puppy?: Puppy;
  assessment?: Assessment;
  weigh?: { href: string; main: boolean };
}

function Flagged({ heading, level, sentence, todo, by, house, topUp, puppy, assessment, weigh }: FlaggedProps) {
  return (
    <section className="flagged">
      {puppy !== undefined && <CollarBand collar={puppy.collar} height={40} label={null} />}
      <div>
        <h2>
          {puppy === undefined ? heading : <a href={href({ at: 'puppy', puppyId: puppy.id, view: 'notes' })}>{heading}</a>}{' '}
          <LevelMark level={level} />
        </h2>
        <p>
          {sentence} {by}
        </p>
        {todo.length > 0 && (
          <ol className="todo">
            {todo.map((t) => (
              <li key={t}>{t}</li>
            ))}
          </ol>
        )}
        {level === 'act' && <VetLine house={house} />}
        {puppy !== undefined && assessment !== undefined && topUp({ puppy, assessment, house })}
        <p className="note">{words.growth.notDiagnosis}</p>
      </div>
      {weigh !== undefined && puppy !== undefined && (
        <a className={weigh.main ? 'button main' : 'button'} href={weigh.href}>
          {words.growth.weigh(puppyName(puppy))}
        </a>
      )}
    </section>
  );
}
