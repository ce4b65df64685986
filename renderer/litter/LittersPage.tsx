import { ageInWords } from '../../core/calendar/age.ts';
import { dateOf } from '../../core/calendar/clock.ts';
import { fullDate } from '../../core/calendar/words.ts';
import type { Level, LitterGrowth } from '../../core/growth/assess.ts';
import type { GrowthInput } from '../../core/growth/input.ts';
import { type Puppy, puppyName } from '../../core/litter/litter.ts';
import { MASS_UNITS } from '../../core/units/mass.ts';
import { shortDate } from '../../core/words/en/dates.ts';
import { unitWords } from '../../core/words/en/feeding.ts';
import { growthWords } from '../../core/words/en/growth.ts';
import { littersWords as w } from '../../core/words/en/litter.ts';
import { now, useToday, utcOffsetMinutes } from '../data/now.ts';
import { run, useQuery } from '../data/query.ts';
import { DamExpecting } from '../dogs/DamExpecting.tsx';
import { changeHouse } from '../facts/change-house.ts';
import { knownOf } from '../facts/known.ts';
import { useHouse, useLitterGrowth } from '../facts/useLitterGrowth.ts';
import { href } from '../links.ts';
import { CollarBand } from '../parts/CollarBand.tsx';
import { collarLabel } from '../parts/collar-words.ts';
import { Confirm } from '../parts/form/Confirm.tsx';
import { SavedChoice, SavedField } from '../parts/form/fields.tsx';
import { readLine } from '../parts/form/read.ts';
import { LevelMark } from '../parts/LevelMark.tsx';
import './litters.css';
import { type NextWeighIn, nextWeighIn } from '../facts/next-weigh-in.ts';
import { inTheHouse, type LitterFacts } from '../facts/useLitter.ts';

/** All litters: those in the house with their level and what is next, below those gone home. */
export function LittersPage() {
  const all = useQuery('litter.all', {});
  const litters = all.value?.litters;
  if (litters === undefined) return <Head lead={all.status === 'failed' ? '' : w.loading} begin={false} />;
  if (litters.length === 0) return <FirstRun />;
  const here = litters.filter(inTheHouse);
  const gone = litters.filter((l) => !inTheHouse(l));
  return (
    <>
      <Head lead={w.count(here.length, gone.length)} begin />
      {litters.some((l) => l.litter.demo) && <InventedLine />}
      <table className="litters">
        <Heads />
        <tbody>
          {here.length === 0 && (
            <tr>
              <td colSpan={5} className="soft">
                {w.noneHere}
              </td>
            </tr>
          )}
          {here.map((l) => (
            <LitterRow key={l.litter.id} facts={l} />
          ))}
        </tbody>
      </table>
      <DamExpecting />
      {gone.length > 0 && <GoneHome gone={gone} />}
    </>
  );
}

function Head({ lead, begin }: { lead: string; begin: boolean }) {
  return (
    <header className="title">
      <div>
        <h1>{w.title}</h1>
        <p>{lead}</p>
      </div>
      {begin && (
        <div className="right">
          <a className="button" href={href({ at: 'begin' })}>
            {w.begin}
          </a>
        </div>
      )}
    </header>
  );
}

function Heads() {
  return (
    <thead>
      <tr>
        {[w.damAndSire, w.born, w.puppies, w.now, w.next].map((word) => (
          <th key={word} scope="col">
            {word}
          </th>
        ))}
      </tr>
    </thead>
  );
}

function Parents({ facts }: { facts: LitterFacts }) {
  const { litter } = facts;
  const page = facts.puppies.length === 0 ? 'puppies' : inTheHouse(facts) ? 'today' : 'growth';
  return (
    <td className="litters-who">
      <a href={href({ at: 'litter', litterId: litter.id, page, puppyId: null })}>{litter.dam}</a>
      {litter.sire !== '' && <span className="soft"> {w.and(litter.sire)}</span>}
      {(litter.name !== '' || litter.demo) && (
        <span className="note litters-under">
          {litter.name}
          {litter.demo && <span className="litters-invented"> {w.invented}</span>}
        </span>
      )}
    </td>
  );
}

function LitterRow({ facts }: { facts: LitterFacts }) {
  const { litter, puppies } = facts;
  const today = useToday();
  const { input, growth, readings } = useLitterGrowth(litter.id);
  const born = dateOf(litter.whelpedAt);
  const here = puppies.filter((p) => p.state === 'litter' || p.state === 'kept');
  return (
    <tr>
      <Parents facts={facts} />
      <td data-label={w.born}>
        {shortDate(born, today)}
        <span className="note litters-under">{ageInWords(born, today)}</span>
      </td>
      <td data-label={w.puppies}>
        {here.length === 0 ? (
          <a href={href({ at: 'litter', litterId: litter.id, page: 'puppies', puppyId: null })}>{w.writePuppies}</a>
        ) : (
          <ul className="litters-collars">
            {here.map((p) => (
              <li key={p.id}>
                <a href={href({ at: 'puppy', puppyId: p.id, view: 'notes' })}>
                  <CollarBand collar={p.collar} height={16} label={collarLabel(p.collar, puppyName(p))} />
                </a>
              </li>
            ))}
          </ul>
        )}
      </td>
      <td data-label={w.now}>
        <Now growth={growth} input={input} puppies={here} weighed={readings.length > 0} />
      </td>
      <td data-label={w.next}>
        {here.length === 0 ? null : (
          <a className="litters-next" href={href({ at: 'litter', litterId: litter.id, page: 'weigh-in', puppyId: null })}>
            {NEXT_WORDS[nextWeighIn(litter, puppies, readings, now().local)]}
          </a>
        )}
      </td>
    </tr>
  );
}

const NEXT_WORDS: Record<NextWeighIn, string> = {
  morning: w.thisMorning,
  evening: w.thisEvening,
  today: w.todayNext,
  done: w.allWeighed,
};

const RANK: Record<Level, number> = { steady: 0, watch: 1, act: 2 };

function Now({
  growth,
  input,
  puppies,
  weighed,
}: {
  growth: LitterGrowth | null;
  input: GrowthInput | null;
  puppies: readonly Puppy[];
  weighed: boolean;
}) {
  if (puppies.length === 0) return <span className="soft">{w.noPuppies}</span>;
  if (!weighed) return <span className="soft">{w.noWeights}</span>;
  if (growth === null || input === null) return null;
  const levelOf = (p: Puppy): Level => growth.puppies.get(p.id)?.level ?? 'steady';
  const worst = [growth.litter.level, ...puppies.map(levelOf)].reduce((a, b) => (RANK[b] > RANK[a] ? b : a));
  if (worst === 'steady' && !puppies.some((p) => knownOf(input, p.id) === 'more')) {
    return <span className="soft">{growthWords.known.once}</span>;
  }
  const who = worst === 'steady' ? [] : puppies.filter((p) => levelOf(p) === worst).map(puppyName);
  if (worst !== 'steady' && growth.litter.level === worst) who.unshift(w.wholeLitter);
  return (
    <>
      <LevelMark level={worst} />
      {who.length > 0 && <span className="note litters-under">{who.join(', ')}</span>}
    </>
  );
}

function GoneHome({ gone }: { gone: readonly LitterFacts[] }) {
  return (
    <>
      <h2 className="litters-gone">{w.goneHome}</h2>
      <table className="litters">
        <thead className="unseen">
          <tr>
            {[w.damAndSire, w.born, w.puppies, w.next].map((word) => (
              <th key={word} scope="col">
                {word}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {gone.map((l) => (
            <GoneRow key={l.litter.id} facts={l} />
          ))}
        </tbody>
      </table>
    </>
  );
}

function GoneRow({ facts }: { facts: LitterFacts }) {
  const kept = useQuery('homing.kept', { litterId: facts.litter.id });
  return (
    <tr>
      <Parents facts={facts} />
      <td data-label={w.born}>{fullDate(dateOf(facts.litter.whelpedAt))}</td>
      <td data-label={w.puppies}>{facts.puppies.length}</td>
      <td className="soft">{kept.value === null ? '' : w.plans(kept.value.plans.length)}</td>
    </tr>
  );
}

function InventedLine() {
  return (
    <div className="litters-invented-line">
      <p>
        <b>{w.inventedLine}</b> <span className="soft">{w.inventedMore}</span>
      </p>
      <Confirm
        ask={w.removeInvented}
        title={w.removeTitle}
        body={w.removeBody}
        yes={w.removeYes}
        no={w.removeNo}
        onYes={() => void run('records.removeDemo', {})}
      />
    </div>
  );
}

/** The ruled table, empty, with the one button in its first line. Nothing else is asked. */
function FirstRun() {
  const house = useHouse();
  return (
    <>
      <Head lead={w.nothing} begin={false} />
      <table className="litters litters-empty">
        <Heads />
        <tbody>
          <tr>
            <td colSpan={5}>
              <span className="litters-begin">
                <a className="button main" href={href({ at: 'begin' })}>
                  {w.begin}
                </a>
                <span className="soft">{w.enough}</span>
              </span>
            </td>
          </tr>
        </tbody>
      </table>
      <div className="litters-lines" />
      <div className="part litters-once">
        <section>
          <h2>{w.once}</h2>
          <div className="form">
            <SavedField
              label={w.vetPhone}
              hint={w.vetHint}
              inputMode="tel"
              value={house.vetPhone}
              read={readLine(200)}
              save={(vetPhone) => changeHouse({ vetPhone })}
            />
            <SavedChoice
              label={w.weightsIn}
              hint={w.weightsHint}
              value={house.massUnit}
              options={MASS_UNITS.map((u) => ({ value: u, word: unitWords[u] }))}
              save={(value) => changeHouse({ massUnit: MASS_UNITS.find((u) => u === value) ?? house.massUnit })}
            />
          </div>
        </section>
        <section>
          <h2>{w.already}</h2>
          <div className="line litters-look">
            <button
              type="button"
              className="link"
              onClick={() => void run('records.addDemo', { now: now().local, utcOffsetMinutes: utcOffsetMinutes() })}
            >
              {w.lookRound}
            </button>
            <span className="note">{w.lookRoundMore}</span>
          </div>
        </section>
      </div>
    </>
  );
}
