import { useId, useState } from 'react';
import type { Assessment } from '../../core/growth/assess.ts';
import { bandOf, gainsOf, seriesOf, standingsOf } from '../../core/growth/series.ts';
import { inTheHouse } from '../../core/litter/in-the-house.ts';
import { type Puppy, puppyName } from '../../core/litter/litter.ts';
import { useToday } from '../data/now.ts';
import type { useLine } from '../facts/useLine.ts';
import type { LitterGrowthFacts } from '../facts/useLitterGrowth.ts';
import { href, type PuppyView } from '../links.ts';
import { GainChart } from '../parts/charts/GainChart.tsx';
import { StandingStrip } from '../parts/charts/StandingStrip.tsx';
import { WeightChart } from '../parts/charts/WeightChart.tsx';
import { Why } from '../parts/Why.tsx';
import { words } from '../state/words.ts';
import { fastestPoints } from './fastest-growth.ts';
import { lineByReading, linePoints } from './own-line.ts';
import type { recordOf } from './puppy-days.ts';
import { RecordTable } from './RecordTable.tsx';
import './puppy.css';

const LAST_ROWS = 9;

export interface ViewProps {
  facts: LitterGrowthFacts;
  puppy: Puppy;
  view: PuppyView;
  assessment: Assessment | null;
  unit: LitterGrowthFacts['house']['massUnit'];
}

/** What was weighed, by day: rows of the record, and the breeder's own line. */
export function PuppyCharts(props: ViewProps & { rows: ReturnType<typeof recordOf>; line: ReturnType<typeof useLine> }) {
  const { facts, puppy, view, unit, rows, line } = props;
  const today = useToday();
  const [allDays, setAllDays] = useState(false);
  const [showMost, setShowMost] = useState(false);
  const tableId = useId();
  const { input } = facts;
  if (input === null) return null;
  const name = puppyName(puppy);
  const series = seriesOf(input, puppy.id);
  if (series.length === 0) return <NoReadings puppy={puppy} />;
  const standings = standingsOf(input, puppy.id);
  const span = { from: 0, until: series.at(-1)?.ageDays ?? 0 };
  const fastest = fastestPoints(series);
  const ownLine = linePoints(line, series);
  return (
    <div className="charts-and-record">
      <div className="charts">
        {view === 'weight' && (
          <>
            <WeightChart
              own={series}
              band={bandOf(input, puppy.id)}
              {...(showMost ? { fastest: fastest } : {})}
              line={ownLine}
              name={name}
              collar={puppy.collar}
              unit={unit}
              span={span}
              describedBy={tableId}
            />
            <StandingStrip points={standings} name={name} collar={puppy.collar} span={span} describedBy={tableId} />
            {fastest.length > 0 && (
              <p className="note">
                <button type="button" className="link" aria-pressed={showMost} onClick={() => setShowMost(!showMost)}>
                  {showMost ? words.puppyNote.hideMost : words.puppyNote.showMost}
                </button>{' '}
                <Why
                  explanation={{
                    figure: words.puppyNote.most,
                    how: words.puppyNote.mostHow(words.massText(series[0]?.grams ?? 0, unit)),
                    sum: [],
                  }}
                >
                  {words.puppyNote.whereFrom}
                </Why>
              </p>
            )}
          </>
        )}
        {view === 'gain' && <GainChart gains={gainsOf(series)} name={name} unit={unit} describedBy={tableId} />}
        {view === 'standing' && (
          <StandingStrip points={standings} name={name} collar={puppy.collar} height={360} describedBy={tableId} />
        )}
        {inTheHouse(puppy, today) && props.assessment?.expectedNext != null && (
          <p className="soft">{words.growth.atOwnPace(words.massText(props.assessment.expectedNext, unit))}</p>
        )}
      </div>
      <div id={tableId}>
        <RecordTable
          rows={allDays ? rows : rows.slice(0, LAST_ROWS)}
          facts={facts}
          today={today}
          caption={`${name}: ${words.growth.wholeRecord}`}
          line={lineByReading(line, series)}
        />
        {rows.length > LAST_ROWS && (
          <p className="note">
            {!allDays && words.growth.onlyLast}{' '}
            <button type="button" className="link" aria-expanded={allDays} onClick={() => setAllDays(!allDays)}>
              {allDays ? words.growth.lastDays : words.growth.wholeRecord}
            </button>
          </p>
        )}
      </div>
    </div>
  );
}

export function NoReadings({ puppy }: { puppy: Puppy }) {
  const today = useToday();
  return (
    <p className="line soft">
      {words.growth.noReadings}{' '}
      {inTheHouse(puppy, today) && (
        <a href={href({ at: 'litter', litterId: puppy.litterId, page: 'weigh-in', puppyId: puppy.id })}>{words.growth.goWeigh}</a>
      )}
    </p>
  );
}
