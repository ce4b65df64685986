import type { ReactNode } from 'react';
import { dateOf } from '../../core/calendar/clock.ts';
import type { Level, LitterGrowth } from '../../core/growth/assess.ts';
import type { GrowthInput } from '../../core/growth/input.ts';
import { type Puppy, puppyName } from '../../core/litter/litter.ts';
import { MASS_UNITS } from '../../core/units/mass.ts';
import { now, useToday, utcOffsetMinutes } from '../data/now.ts';
import { run, useQuery } from '../data/query.ts';
import { changeHouse } from '../facts/change-house.ts';
import { useHouse, useLitterGrowth } from '../facts/useLitterGrowth.ts';
import { weighingsCount } from '../facts/weighings-count.ts';
import { href } from '../links.ts';
import { CollarBand } from '../parts/CollarBand.tsx';
import { collarLabel } from '../parts/collar-words.ts';
import { Confirm } from '../parts/form/Confirm.tsx';
import { SavedChoice, SavedField } from '../parts/form/fields.tsx';
import { readText } from '../parts/form/read.ts';
import { LevelMark } from '../parts/LevelMark.tsx';
import { words } from '../state/words.ts';
import './litters.css';
import { inTheHouse, litterInTheHouse } from '../../core/litter/in-the-house.ts';
import { type NextWeighIn, nextWeighIn } from '../facts/next-weigh-in.ts';
import type { LitterFacts } from '../facts/useLitter.ts';
import { TableHead } from '../parts/TableHead.tsx';

/** All litters: those in the house with their level and what is next, below those gone home. */
export function LittersPage({ expecting }: { expecting: ReactNode }) {
  const all = useQuery('litter.all', {});
  const litters = all.value?.litters;
  const today = useToday();
  if (litters === undefined) return <Head lead={all.status === 'failed' ? '' : words.litters.loading} begin={false} />;
  if (litters.length === 0) return <FirstRun />;
  const here = litters.filter((l) => litterInTheHouse(l.puppies, today));
  const gone = litters.filter((l) => !litterInTheHouse(l.puppies, today));
  return (
    <>
      <Head lead={words.litters.count(here.length, gone.length)} begin />
      {litters.some((l) => l.litter.demo) && <InventedLine />}
      <table className="litters">
        <Heads />
        <tbody>
          {here.length === 0 && (
            <tr>
              <td colSpan={5} className="soft">
                {words.litters.noneHere}
              </td>
            </tr>
          )}
          {here.map((l) => (
            <LitterRow key={l.litter.id} facts={l} />
          ))}
        </tbody>
      </table>
      {expecting}
      {gone.length > 0 && <GoneHome gone={gone} />}
    </>
  );
}

function Head({ lead, begin }: { lead: string; begin: boolean }) {
  return (
    <header className="title">
      <div>
        <h1>{words.litters.title}</h1>
        <p>{lead}</p>
      </div>
      {begin && (
        <div className="right">
          <a className="button" href={href({ at: 'begin' })}>
            {words.litters.begin}
          </a>
        </div>
      )}
    </header>
  );
}

function Heads() {
  return (
    <TableHead
      heads={[words.litters.damAndSire, words.litters.born, words.litters.puppies, words.litters.now, words.litters.next]}
    />
  );
}

function Parents({ facts }: { facts: LitterFacts }) {
  const { litter } = facts;
  const today = useToday();
  const page = facts.puppies.length === 0 ? 'puppies' : litterInTheHouse(facts.puppies, today) ? 'today' : 'growth';
  return (
    <td className="litters-who">
      <a href={href({ at: 'litter', litterId: litter.id, page, puppyId: null })}>{litter.dam}</a>
      {litter.sire !== '' && <span className="soft"> {words.litters.and(litter.sire)}</span>}
      {(litter.name !== '' || litter.demo) && (
        <span className="note litters-under">
          {litter.name}
          {litter.demo && <span className="litters-invented"> {words.litters.invented}</span>}
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
  const here = puppies.filter((p) => inTheHouse(p, today));
  return (
    <tr>
      <Parents facts={facts} />
      <td data-label={words.litters.born}>
        {words.shortDate(born, today)}
        <span className="note litters-under">{words.ageInWords(born, today)}</span>
      </td>
      <td data-label={words.litters.puppies}>
        {here.length === 0 ? (
          <a href={href({ at: 'litter', litterId: litter.id, page: 'puppies', puppyId: null })}>{words.litters.writePuppies}</a>
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
      <td data-label={words.litters.now}>
        <Now growth={growth} input={input} puppies={here} weighed={readings.length > 0} />
      </td>
      <td data-label={words.litters.next}>
        {here.length === 0 ? null : (
          <a className="litters-next" href={href({ at: 'litter', litterId: litter.id, page: 'weigh-in', puppyId: null })}>
            {nextWords()[nextWeighIn(litter, puppies, readings, now().local)]}
          </a>
        )}
      </td>
    </tr>
  );
}

const nextWords = (): Record<NextWeighIn, string> => ({
  morning: words.litters.thisMorning,
  evening: words.litters.thisEvening,
  today: words.litters.todayNext,
  done: words.litters.allWeighed,
});

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
  if (puppies.length === 0) return <span className="soft">{words.litters.noPuppies}</span>;
  if (!weighed) return <span className="soft">{words.litters.noWeights}</span>;
  if (growth === null || input === null) return null;
  const levelOf = (p: Puppy): Level => growth.puppies.get(p.id)?.level ?? 'steady';
  const worst = [growth.litter.level, ...puppies.map(levelOf)].reduce((a, b) => (RANK[b] > RANK[a] ? b : a));
  if (worst === 'steady' && !puppies.some((p) => weighingsCount(input, p.id) === 'more')) {
    return <span className="soft">{words.growth.known.once}</span>;
  }
  const who = worst === 'steady' ? [] : puppies.filter((p) => levelOf(p) === worst).map(puppyName);
  if (worst !== 'steady' && growth.litter.level === worst) who.unshift(words.litters.wholeLitter);
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
      <h2 className="litters-gone">{words.litters.goneHome}</h2>
      <table className="litters">
        <TableHead heads={[words.litters.damAndSire, words.litters.born, words.litters.puppies, words.litters.next]} unseen />
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
  const kept = useQuery('homing.handedOver', { litterId: facts.litter.id });
  return (
    <tr>
      <Parents facts={facts} />
      <td data-label={words.litters.born}>{words.fullDate(dateOf(facts.litter.whelpedAt))}</td>
      <td data-label={words.litters.puppies}>{facts.puppies.length}</td>
      <td className="soft">{kept.value === null ? '' : words.litters.plans(kept.value.plans.length)}</td>
    </tr>
  );
}

function InventedLine() {
  return (
    <div className="litters-invented-line">
      <p>
        <b>{words.litters.inventedLine}</b> <span className="soft">{words.litters.inventedMore}</span>
      </p>
      <Confirm
        ask={words.litters.removeInvented}
        title={words.litters.removeTitle}
        body={words.litters.removeBody}
        yes={words.litters.removeYes}
        no={words.litters.removeNo}
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
      <Head lead={words.litters.nothing} begin={false} />
      <table className="litters litters-empty">
        <Heads />
        <tbody>
          <tr>
            <td colSpan={5}>
              <span className="litters-begin">
                <a className="button main" href={href({ at: 'begin' })}>
                  {words.litters.begin}
                </a>
                <span className="soft">{words.litters.enough}</span>
              </span>
            </td>
          </tr>
        </tbody>
      </table>
      <div className="litters-lines" />
      <div className="part litters-once">
        <section>
          <h2>{words.litters.once}</h2>
          <div className="form">
            <SavedField
              label={words.litters.vetPhone}
              hint={words.litters.vetHint}
              inputMode="tel"
              value={house.vetPhone}
              read={readText(200)}
              save={(vetPhone) => changeHouse({ vetPhone })}
            />
            <SavedChoice
              label={words.litters.weightsIn}
              hint={words.litters.weightsHint}
              value={house.massUnit}
              options={MASS_UNITS.map((u) => ({ value: u, word: words.unit[u] }))}
              save={(value) => changeHouse({ massUnit: MASS_UNITS.find((u) => u === value) ?? house.massUnit })}
            />
          </div>
        </section>
        <section>
          <h2>{words.litters.already}</h2>
          <div className="line litters-look">
            <button
              type="button"
              className="link"
              onClick={() => void run('records.addDemo', { now: now().local, utcOffsetMinutes: utcOffsetMinutes() })}
            >
              {words.litters.lookRound}
            </button>
            <span className="note">{words.litters.lookRoundMore}</span>
          </div>
        </section>
      </div>
    </>
  );
}
