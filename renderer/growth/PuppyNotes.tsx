import type { ReactNode } from 'react';
import { useMemo } from 'react';
import { clockOf, dateOf } from '../../core/calendar/clock.ts';
import { expectedAdultKg } from '../../core/growth/forecast.ts';
import type { OwnLineCurve } from '../../core/growth/own-line/own-line.ts';
import { puppyWeights } from '../../core/growth/puppy-weights.ts';
import { seriesOf } from '../../core/growth/series.ts';
import { type Puppy, puppyName } from '../../core/litter/litter.ts';
import { useToday } from '../data/now.ts';
import type { LitterGrowthFacts } from '../facts/useLitterGrowth.ts';
import { weighingsCount } from '../facts/weighings-count.ts';
import { href } from '../links.ts';
import { ForecastChart } from '../parts/charts/ForecastChart.tsx';
import { words } from '../state/words.ts';
import { BirthFacts } from './BirthFacts.tsx';
import { OwnLine } from './OwnLine.tsx';
import { NoReadings, type ViewProps } from './PuppyCharts.tsx';
import { PuppyLog } from './PuppyLog.tsx';
import type { recordOf } from './puppy-days.ts';
import { RecordTable } from './RecordTable.tsx';
import './puppy.css';

/** The months ahead and what it is fed, which another feature shows. */
export type FeedingSlot = (of: { facts: LitterGrowthFacts; puppy: Puppy }) => ReactNode;

/** Notes and facts of a puppy, what was seen of its weights, what comes next. */
export function PuppyNotes({
  facts,
  puppy,
  unit,
  rows,
  line,
  feeding,
}: ViewProps & { rows: ReturnType<typeof recordOf>; line: OwnLineCurve | null; feeding: FeedingSlot }) {
  const today = useToday();
  const { litter } = facts;
  if (litter === null) return null;
  const adult = expectedAdultKg(litter, puppy.sex);
  return (
    <>
      <div className="two-columns">
        <section>
          <h2>{words.growth.writtenDown}</h2>
          {rows.length === 0 ? (
            <NoReadings puppy={puppy} />
          ) : (
            <RecordTable
              rows={rows.slice(0, 6)}
              facts={facts}
              today={today}
              caption={`${puppyName(puppy)}: ${words.growth.lastDays}`}
            />
          )}
          {rows.length > 6 && (
            <p className="note">
              {words.growth.onlyLast}{' '}
              <a href={href({ at: 'puppy', puppyId: puppy.id, view: 'weight' })}>{words.growth.wholeRecord}</a>
            </p>
          )}
        </section>
        <section>
          <h2>{words.growth.facts}</h2>
          <dl className="facts">
            <dt>{words.growth.born}</dt>
            <dd>
              {words.longDate(dateOf(puppy.bornAt))}, {clockOf(puppy.bornAt)}
            </dd>
            {facts.input !== null && <BirthFacts litter={litter} input={facts.input} puppyId={puppy.id} unit={unit} />}
            <dt>{words.growth.markings}</dt>
            <dd>{puppy.markings === '' ? '–' : puppy.markings}</dd>
            <dt>{words.growth.grown}</dt>
            <dd>
              {adult === null ? words.growth.grownUnknown : words.growth.grownWeight(adult.kg, unit)}{' '}
              {adult !== null && <span className="note">{words.growth.grownFrom[adult.from]}</span>}
            </dd>
            <dt>{words.growth.state}</dt>
            <dd>
              {words.growth.states[puppy.state]}
              {puppy.stateOn !== null && `, ${words.fullDate(puppy.stateOn)}`}
            </dd>
            {puppy.state !== 'died' && (
              <>
                <dt>{words.growth.plan}</dt>
                <dd>
                  <a href={href({ at: 'print', of: 'puppy', id: puppy.id, day: null, paper: null })}>
                    {words.growth.previewPlan}
                  </a>
                </dd>
              </>
            )}
          </dl>
          <p>
            <a href={href({ at: 'litter', litterId: litter.id, page: 'puppies', puppyId: null })}>{words.growth.changeFacts}</a>
          </p>
        </section>
      </div>
      {facts.input !== null && line !== null && puppy.state !== 'died' && (
        <OwnLine line={line} breed={litter.breed} series={seriesOf(facts.input, puppy.id)} sex={puppy.sex} unit={unit} />
      )}
      {facts.input !== null && weighingsCount(facts.input, puppy.id) === 'more' && (
        <PuppyLog input={facts.input} readings={facts.readings} puppyId={puppy.id} unit={unit} />
      )}
      {puppy.state !== 'died' && (
        <>
          {feeding({ facts, puppy })}
          <AdultForecast facts={facts} puppy={puppy} unit={unit} />
        </>
      )}
    </>
  );
}

function AdultForecast({ facts, puppy, unit }: { facts: LitterGrowthFacts; puppy: Puppy; unit: ViewProps['unit'] }) {
  const { litter, input } = facts;
  const today = useToday();
  const data = useMemo(() => {
    if (litter === null || input === null) return null;
    const { own: series, last, adult, at } = puppyWeights(litter, puppy, input, today);
    if (last === null || adult === null) return null;
    const points = [];
    for (let day = last.ageDays; day <= 548; day += 7) {
      const band = at(day);
      if (band !== null) points.push({ ageDays: day, ...band });
    }
    return { series, points };
  }, [litter, input, puppy, today]);
  if (data === null) return null;
  const name = puppyName(puppy);
  return (
    <section className="part">
      <h2>{words.growth.forecast}</h2>
      <ForecastChart own={data.series} forecast={data.points} name={name} unit={unit} />
    </section>
  );
}
