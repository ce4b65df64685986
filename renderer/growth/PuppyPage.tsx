import { useMemo } from 'react';
import { dateOf } from '../../core/calendar/clock.ts';
import type { CivilDate } from '../../core/calendar/day.ts';
import type { Assessment } from '../../core/growth/assess.ts';
import { inTheHouse, weighInOrder } from '../../core/litter/in-the-house.ts';
import { isCurrent, type Puppy, puppyName } from '../../core/litter/litter.ts';
import { useToday } from '../data/now.ts';
import { useLine } from '../facts/useLine.ts';
import { useLitterOfPuppy } from '../facts/useLitter.ts';
import { type LitterGrowthFacts, useLitterGrowth } from '../facts/useLitterGrowth.ts';
import { weighingsCount } from '../facts/weighings-count.ts';
import { href, PUPPY_VIEWS, type PuppyView } from '../links.ts';
import { CollarBand } from '../parts/CollarBand.tsx';
import { collarWords } from '../parts/collar-words.ts';
import { LevelMark } from '../parts/LevelMark.tsx';
import { Why } from '../parts/Why.tsx';
import { words } from '../state/words.ts';
import { PuppyCharts, type ViewProps } from './PuppyCharts.tsx';
import { PuppyLevel } from './PuppyLevel.tsx';
import { type FeedingSlot, PuppyNotes } from './PuppyNotes.tsx';
import { type RecordRow, recordOf } from './puppy-days.ts';
import type { TopUpSlot } from './TodayPage.tsx';
import { VetLine } from './VetLine.tsx';
import './puppy.css';

interface Slots {
  /** Milk by bottle, for a puppy that is to be looked at. */
  topUp: TopUpSlot;
  feeding: FeedingSlot;
}

/** One page for one puppy: notes and facts, and its weight, daily gain and standing. */
export function PuppyPage({ puppyId, view, ...slots }: { puppyId: string; view: PuppyView } & Slots) {
  const found = useLitterOfPuppy(puppyId);
  if (found === null) return <p className="soft">{words.growth.gone}</p>;
  return <Known puppy={found.puppy} litterId={found.litter.id} view={view} {...slots} />;
}

function Known({ puppy, litterId, view, topUp, feeding }: { puppy: Puppy; litterId: string; view: PuppyView } & Slots) {
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
          <h1>
            <bdi>{name}</bdi>
          </h1>
          <p>
            {collarWords(puppy.collar)}, {words.growth.dogOrBitch[puppy.sex]}, {ageOf(puppy, today)}.{' '}
            {words.growth.nthOf(puppy.birthOrder, facts.puppies.length)}
          </p>
        </div>
        <Head assessment={assessment} facts={facts} puppy={puppy} today={today} />
      </header>
      <nav className="puppy-views" aria-label={name}>
        <ul className="pick-out" aria-label={words.growth.pickOut}>
          {weighInOrder(facts.puppies, today).map((p) => (
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
      {assessment !== null && assessment.level !== 'steady' && inTheHouse(puppy, today) && (
        <section className="puppy-level">
          <LevelMark level={assessment.level} />
          <div>
            <p>{words.growthFinding.puppy(assessment.finding, unit)}</p>
            <ol className="todo">
              {assessment.todo.map((t) => (
                <li key={t}>{t}</li>
              ))}
            </ol>
            {(assessment.level === 'act' || facts.house.vetPhone !== '') && <VetLine house={facts.house} />}
            {topUp({ puppy, assessment, house: facts.house })}
            <p className="note">{words.growth.notDiagnosis}</p>
          </div>
          <a className="button main" href={href({ at: 'litter', litterId, page: 'weigh-in', puppyId: puppy.id })}>
            {words.growth.weigh(name)}
          </a>
        </section>
      )}
      <View facts={facts} puppy={puppy} view={view} assessment={assessment} unit={unit} feeding={feeding} />
    </>
  );
}

/** "+41 g since yesterday". */
function SinceBefore({ rows, unit, today }: { rows: readonly RecordRow[]; unit: ViewProps['unit']; today: CivilDate }) {
  const [last, before] = rows.filter((r) => isCurrent(r.reading) && !r.reading.held);
  if (last?.gain == null || before === undefined) return null;
  const gain = words.signed(words.massText(Math.abs(last.gain), unit), last.gain);
  return <> · {words.growth.since(gain, words.when(before.reading.at, today))}</>;
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
  if (assessment?.grams == null || assessment.at === null || facts.input === null) return null;
  const unit = facts.house.massUnit;
  return (
    <div className="right puppy-figures">
      <p>
        {inTheHouse(puppy, today) ? (
          assessment.level === 'steady' && <PuppyLevel level="steady" known={weighingsCount(facts.input, puppy.id)} />
        ) : (
          <span>{words.growth.states[puppy.state]}</span>
        )}
        {assessment.standing !== null && assessment.medianGrams !== null && (
          <>
            <br />
            <Why
              explanation={{
                figure: `${words.standing(assessment.standing)}.`,
                how: words.growth.againstMiddle(
                  words.massText(assessment.grams, unit),
                  words.massText(assessment.medianGrams, unit),
                ),
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
        <span className="note">
          {words.when(assessment.at, today)}
          <SinceBefore rows={recordOf(facts.readings, facts.input, puppy.id)} unit={unit} today={today} />
        </span>
      </p>
    </div>
  );
}

function View(props: ViewProps & { feeding: FeedingSlot }) {
  const { facts, puppy, view } = props;
  const { input, readings } = facts;
  const line = useLine(puppy.litterId);
  const rows = useMemo(() => (input === null ? [] : recordOf(readings, input, puppy.id)), [readings, input, puppy.id]);
  if (input === null) return null;
  return view === 'notes' ? (
    <PuppyNotes {...props} rows={rows} line={line} />
  ) : (
    <PuppyCharts {...props} rows={rows} line={line} />
  );
}
