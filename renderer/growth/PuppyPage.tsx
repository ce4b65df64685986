import { useId, useMemo, useState } from 'react';
import { clockOf, dateOf } from '../../core/calendar/clock.ts';
import { addDays, type CivilDate, daysBetween } from '../../core/calendar/day.ts';
import { mealLadder } from '../../core/feeding/ladder.ts';
import type { Assessment } from '../../core/growth/assess.ts';
import { expectedAdultKg, forecastWeight } from '../../core/growth/forecast.ts';
import type { Line } from '../../core/growth/line/line-curve.ts';
import { bandOf, gainsOf, seriesOf, standingsOf } from '../../core/growth/series.ts';
import { type Puppy, puppyName } from '../../core/litter/litter.ts';
import { WEANED_DAYS } from '../../core/weaning/weaning-plan.ts';
import { useToday } from '../data/now.ts';
import { knownOf } from '../facts/known.ts';
import { useFoodOn } from '../facts/useFoods.ts';
import { useLine } from '../facts/useLine.ts';
import { useLitterOfPuppy } from '../facts/useLitter.ts';
import { type LitterGrowthFacts, useLitterGrowth } from '../facts/useLitterGrowth.ts';
import { useRules } from '../facts/useRules.ts';
import { toWeigh } from '../facts/weigh-in.ts';
import { PuppyBeside } from '../feeding/Beside.tsx';
import { href, PUPPY_VIEWS, type PuppyView } from '../links.ts';
import { CollarBand } from '../parts/CollarBand.tsx';
import { collarWords } from '../parts/collar-words.ts';
import { ForecastChart } from '../parts/ForecastChart.tsx';
import { GainChart } from '../parts/GainChart.tsx';
import { LevelMark } from '../parts/LevelMark.tsx';
import { MealLadder } from '../parts/MealLadder.tsx';
import { StandingStrip } from '../parts/StandingStrip.tsx';
import { WeightChart } from '../parts/WeightChart.tsx';
import { Why } from '../parts/Why.tsx';
import { words } from '../state/words.ts';
import { TopUpPart } from '../weaning/TopUpPart.tsx';
import { BirthFacts } from './BirthFacts.tsx';
import { lineByReading, linePoints } from './line.ts';
import { mostPoints } from './most.ts';
import { OwnLine } from './OwnLine.tsx';
import { PuppyLevel } from './PuppyLevel.tsx';
import { recordOf } from './puppy-days.ts';
import { RecordTable } from './RecordTable.tsx';
import { SeenPart } from './SeenPart.tsx';
import { VetLine } from './VetLine.tsx';
import './puppy.css';

const LAST_ROWS = 9;

/** One page for one puppy: notes and facts, and its weight, daily gain and standing. */
export function PuppyPage({ puppyId, view }: { puppyId: string; view: PuppyView }) {
  const found = useLitterOfPuppy(puppyId);
  if (found === null) return <p className="soft">{words.growth.gone}</p>;
  return <Known puppy={found.puppy} litterId={found.litter.id} view={view} />;
}

function Known({ puppy, litterId, view }: { puppy: Puppy; litterId: string; view: PuppyView }) {
  const facts = useLitterGrowth(litterId);
  const today = useToday();
  const assessment = facts.growth?.puppies.get(puppy.id) ?? null;
  const unit = facts.house.massUnit;
  const name = puppyName(puppy);
  if (facts.input === null) return null;
  return (
    <>
      <header className="title puppy-head">
        <CollarBand collar={puppy.collar} height={48} label={null} faded={puppy.state === 'died'} />
        <div>
          <h1>{name}</h1>
          <p>
            {collarWords(puppy.collar)}, {words.growth.dogOrBitch[puppy.sex]}, {ageOf(puppy, today)}.{' '}
            {words.growth.nthOf(puppy.birthOrder, facts.puppies.length)}
          </p>
        </div>
        <Head assessment={assessment} facts={facts} puppy={puppy} today={today} />
      </header>
      <nav className="puppy-views" aria-label={name}>
        <ul className="pick-out" aria-label={words.growth.pickOut}>
          {toWeigh(facts.puppies).map((p) => (
            <li key={p.id}>
              <a
                href={href({ at: 'puppy', puppyId: p.id, view })}
                aria-current={p.id === puppy.id ? 'page' : undefined}
                aria-label={puppyName(p)}
              >
                <CollarBand collar={p.collar} height={24} label={null} />
              </a>
            </li>
          ))}
        </ul>
        <ul className="views">
          {PUPPY_VIEWS.map((v) => (
            <li key={v}>
              <a href={href({ at: 'puppy', puppyId: puppy.id, view: v })} aria-current={v === view ? 'page' : undefined}>
                {words.growth.views[v]}
              </a>
            </li>
          ))}
        </ul>
      </nav>
      {assessment !== null && assessment.level !== 'steady' && isHere(puppy) && (
        <section className="puppy-level">
          <LevelMark level={assessment.level} />
          <div>
            <p>{assessment.sentence}</p>
            <ol className="todo">
              {assessment.todo.map((t) => (
                <li key={t}>{t}</li>
              ))}
            </ol>
            {(assessment.level === 'act' || facts.house.vetPhone !== '') && <VetLine house={facts.house} />}
            <TopUpPart puppy={puppy} assessment={assessment} house={facts.house} />
            <p className="note">{words.growth.notDiagnosis}</p>
          </div>
          <a className="button main" href={href({ at: 'litter', litterId, page: 'weigh-in', puppyId: puppy.id })}>
            {words.growth.weigh(name)}
          </a>
        </section>
      )}
      <View facts={facts} puppy={puppy} view={view} assessment={assessment} unit={unit} />
    </>
  );
}

/** Whether it is weighed in this house: what it means, and what comes next, is said of these only. */
function isHere(puppy: Puppy): boolean {
  return puppy.state === 'litter' || puppy.state === 'kept';
}

/** "8 weeks"; of one that died "lived 9 days". */
function ageOf(puppy: Puppy, today: CivilDate): string {
  const born = dateOf(puppy.bornAt);
  if (puppy.state !== 'died' || puppy.stateOn === null) return words.ageInWords(born, today);
  return words.growth.livedFor(words.ageInWords(born, puppy.stateOn));
}

function Head({
  assessment,
  facts,
  puppy,
  today,
}: {
  assessment: Assessment | null;
  facts: LitterGrowthFacts;
  puppy: Puppy;
  today: ReturnType<typeof useToday>;
}) {
  if (assessment?.grams == null || assessment.at === null) return null;
  const unit = facts.house.massUnit;
  return (
    <div className="right puppy-figures">
      <p>
        {isHere(puppy) ? (
          assessment.level === 'steady' &&
          facts.input !== null && <PuppyLevel level="steady" known={knownOf(facts.input, puppy.id)} />
        ) : (
          <span>{words.growth.states[puppy.state]}</span>
        )}
        {assessment.standing !== null && assessment.middleGrams !== null && (
          <>
            <br />
            <Why
              explanation={{
                figure: `${words.standing(assessment.standing)}.`,
                how: `${words.massText(assessment.grams, unit)} against ${words.massText(assessment.middleGrams, unit)}, the middle of the littermates.`,
                sum: [],
              }}
            >
              {words.standing(assessment.standing)}
            </Why>
          </>
        )}
      </p>
      <p>
        <b className="big">{words.massText(assessment.grams, unit)}</b>
        <br />
        <span className="note">{words.when(assessment.at, today)}</span>
      </p>
    </div>
  );
}

interface ViewProps {
  facts: LitterGrowthFacts;
  puppy: Puppy;
  view: PuppyView;
  assessment: Assessment | null;
  unit: LitterGrowthFacts['house']['massUnit'];
}

function View(props: ViewProps) {
  const { facts, puppy, view, unit } = props;
  const today = useToday();
  const [whole, setWhole] = useState(false);
  const [showMost, setShowMost] = useState(false);
  const tableId = useId();
  const { input, readings } = facts;
  const line = useLine(puppy.litterId);
  const rows = useMemo(() => (input === null ? [] : recordOf(readings, input, puppy.id)), [readings, input, puppy.id]);
  if (input === null) return null;
  if (view === 'notes') return <Notes {...props} rows={rows} line={line} />;
  const name = puppyName(puppy);
  const series = seriesOf(input, puppy.id);
  if (series.length === 0) return <NoReadings puppy={puppy} />;
  const standings = standingsOf(input, puppy.id);
  const span = { from: 0, until: series.at(-1)?.ageDays ?? 0 };
  const most = mostPoints(series);
  const ownLine = linePoints(line, series);
  return (
    <div className="charts-and-record">
      <div className="charts">
        {view === 'weight' && (
          <>
            <WeightChart
              own={series}
              band={bandOf(input, puppy.id)}
              {...(showMost ? { most } : {})}
              line={ownLine}
              name={name}
              collar={puppy.collar}
              unit={unit}
              span={span}
              describedBy={tableId}
            />
            <StandingStrip points={standings} name={name} collar={puppy.collar} span={span} describedBy={tableId} />
            {most.length > 0 && (
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
        {isHere(puppy) && props.assessment?.expectedNext != null && (
          <p className="soft">{words.growth.atOwnPace(words.massText(props.assessment.expectedNext, unit))}</p>
        )}
      </div>
      <div id={tableId}>
        <RecordTable
          rows={whole ? rows : rows.slice(0, LAST_ROWS)}
          unit={unit}
          today={today}
          caption={`${name}: ${words.growth.wholeRecord}`}
          line={lineByReading(line, series)}
        />
        {rows.length > LAST_ROWS && (
          <p className="note">
            {!whole && words.growth.onlyLast}{' '}
            <button type="button" className="link" aria-expanded={whole} onClick={() => setWhole(!whole)}>
              {whole ? words.growth.lastDays : words.growth.wholeRecord}
            </button>
          </p>
        )}
      </div>
    </div>
  );
}

function NoReadings({ puppy }: { puppy: Puppy }) {
  return (
    <p className="line soft">
      {words.growth.noReadings}{' '}
      {isHere(puppy) && (
        <a href={href({ at: 'litter', litterId: puppy.litterId, page: 'weigh-in', puppyId: puppy.id })}>{words.growth.goWeigh}</a>
      )}
    </p>
  );
}

function Notes({
  facts,
  puppy,
  assessment,
  unit,
  rows,
  line,
}: ViewProps & { rows: ReturnType<typeof recordOf>; line: Line | null }) {
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
              unit={unit}
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
              {adult === null ? words.growth.grownUnknown : `${adult.kg.toFixed(adult.kg < 10 ? 1 : 0)} kg`}{' '}
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
                  <a href={href({ at: 'print', of: 'puppy', id: puppy.id, paper: null })}>{words.growth.previewPlan}</a>
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
      {facts.input !== null && knownOf(facts.input, puppy.id) === 'more' && (
        <SeenPart input={facts.input} readings={facts.readings} puppyId={puppy.id} unit={unit} />
      )}
      {puppy.state !== 'died' && (
        <>
          <Ladder facts={facts} puppy={puppy} assessment={assessment} />
          <AdultForecast facts={facts} puppy={puppy} unit={unit} />
        </>
      )}
    </>
  );
}

function Ladder({ facts, puppy, assessment }: { facts: LitterGrowthFacts; puppy: Puppy; assessment: Assessment | null }) {
  const today = useToday();
  const rules = useRules(today, puppy.litterId);
  const food = useFoodOn(puppy.litterId, rules, dateOf(puppy.bornAt), today);
  const { litter, house } = facts;
  const steps = useMemo(() => {
    if (litter === null || assessment?.grams == null || assessment.at === null) return [];
    const adultKg = expectedAdultKg(litter, puppy.sex)?.kg ?? null;
    const born = dateOf(puppy.bornAt);
    const anchorAgeDays = daysBetween(born, dateOf(assessment.at));
    const forecast = forecastWeight({ adultKg, sizeClass: litter.sizeClass, anchorAgeDays, anchorGrams: assessment.grams });
    const age = daysBetween(born, today);
    const from = Math.max(age, WEANED_DAYS);
    return mealLadder({
      rules,
      food,
      born,
      from: addDays(born, from),
      adultKg,
      forecast: (day) => forecast.at(day)?.mid ?? null,
      unit: house.massUnit,
    });
  }, [litter, assessment, puppy, today, rules, food, house.massUnit]);
  return (
    <>
      <section className="part">
        <h2>{words.growth.ladder}</h2>
        <p className="note">{steps.length === 0 ? words.growth.ladderNone : words.growth.ladderNote}</p>
        {steps.length > 0 && (
          <MealLadder
            steps={steps}
            born={dateOf(puppy.bornAt)}
            nowDay={daysBetween(dateOf(puppy.bornAt), today)}
            unit={house.massUnit}
          />
        )}
      </section>
      <PuppyBeside facts={facts} puppy={puppy} rules={rules} food={food} today={today} />
    </>
  );
}

function AdultForecast({ facts, puppy, unit }: { facts: LitterGrowthFacts; puppy: Puppy; unit: ViewProps['unit'] }) {
  const { litter, input } = facts;
  const data = useMemo(() => {
    if (litter === null || input === null) return null;
    const series = seriesOf(input, puppy.id);
    const last = series.at(-1);
    const adultKg = expectedAdultKg(litter, puppy.sex)?.kg ?? null;
    if (last === undefined || adultKg === null) return null;
    const forecast = forecastWeight({
      adultKg,
      sizeClass: litter.sizeClass,
      anchorAgeDays: last.ageDays,
      anchorGrams: last.grams,
    });
    const points = [];
    for (let day = last.ageDays; day <= 548; day += 7) {
      const band = forecast.at(day);
      if (band !== null) points.push({ ageDays: day, ...band });
    }
    return { series, points };
  }, [litter, input, puppy]);
  if (data === null) return null;
  const name = puppyName(puppy);
  return (
    <section className="part">
      <h2>{words.growth.forecast}</h2>
      <ForecastChart own={data.series} forecast={data.points} name={name} unit={unit} />
    </section>
  );
}
