import { dateOf } from '../../core/calendar/clock.ts';
import { addDays, date } from '../../core/calendar/day.ts';
import type { HandedPlan } from '../../core/contract/homing.ts';
import { earliestGoHome } from '../../core/homing/go-home-day.ts';
import { EIGHT_WEEKS } from '../../core/litter/ages.ts';
import { PUPPY_STATES, type Puppy, puppyName } from '../../core/litter/litter.ts';
import { GO_HOME_RULES } from '../../core/reference/go-home.ts';
import { now, useToday } from '../data/now.ts';
import { useQuery } from '../data/query.ts';
import { changeState } from '../facts/changes.ts';
import { useLitter } from '../facts/useLitter.ts';
import { href } from '../links.ts';
import { CollarBand } from '../parts/CollarBand.tsx';
import { collarWords } from '../parts/collar-words.ts';
import { SavedChoice, SavedField } from '../parts/form/fields.tsx';
import { readDate } from '../parts/form/read.ts';
import { PageTitle } from '../parts/PageTitle.tsx';
import { waitsForPlan } from '../print/papers.ts';
import { words } from '../state/words.ts';
import './homes.css';
import { TableHead } from '../parts/TableHead.tsx';

const NO_PLANS: readonly HandedPlan[] = [];

/** Who goes when: each puppy with where it is now, its plan, and the plans that were handed over. */
export function HomesPage({ litterId }: { litterId: string }) {
  const facts = useLitter(litterId);
  const kept = useQuery('homing.handedOver', { litterId }).value?.plans ?? NO_PLANS;
  const today = useToday();
  if (facts === null) return null;
  const { litter, puppies } = facts;
  const born = date(litter.whelpedAt.slice(0, 10));
  const earliest = addDays(born, EIGHT_WEEKS);
  const waiting = puppies.filter(waitsForPlan).length;
  return (
    <>
      <PageTitle title={words.homes.title} lead={words.homes.lead(words.litterName(litter), words.ageInWords(born, today))}>
        <p>
          <b>{words.homes.earliest(words.longDate(earliest))}</b> {words.homes.localRule}
        </p>
      </PageTitle>
      {puppies.length === 0 ? (
        <p className="line">
          {words.homes.none}{' '}
          <a href={href({ at: 'litter', litterId, page: 'puppies', puppyId: null })}>{words.homes.writePuppies}</a>
        </p>
      ) : (
        <>
          <table className="homes">
            <TableHead heads={[words.homes.puppy, words.homes.state, words.homes.plan, words.homes.handedOver]} />
            <tbody>
              {puppies.map((p) => (
                <HomeRow key={p.id} puppy={p} kept={kept.filter((k) => k.puppyId === p.id)} />
              ))}
            </tbody>
          </table>
          <p className="homes-foot">
            <span>{words.homes.waiting(waiting)}</span>
            {waiting > 0 && (
              <a className="button main" href={href({ at: 'print', of: 'litter', id: litterId, day: null, paper: null })}>
                {words.homes.printAll}
              </a>
            )}
          </p>
          <p className="note">{words.homes.keptNote}</p>
          <p className="note">
            {words.homes.rules(
              GO_HOME_RULES.map((r) => words.homes.rule(r.where, words.longDate(earliestGoHome(born, r)), r.source, r.known)),
            )}
          </p>
        </>
      )}
    </>
  );
}

function HomeRow({ puppy, kept }: { puppy: Puppy; kept: readonly HandedPlan[] }) {
  const name = puppyName(puppy);
  return (
    <tr>
      <th scope="row">
        <a className="homes-puppy" href={href({ at: 'puppy', puppyId: puppy.id, view: 'notes' })}>
          <CollarBand collar={puppy.collar} height={26} label={null} faded={puppy.state === 'died'} />
          <span>
            <b>
              <bdi>{name}</bdi>
            </b>{' '}
            <span className="note">{collarWords(puppy.collar)}</span>
          </span>
        </a>
      </th>
      <td data-label={words.homes.state}>
        <div className="homes-state">
          <SavedChoice
            inCell
            label={words.homes.stateOf(name)}
            value={puppy.state}
            options={PUPPY_STATES.map((s) => ({ value: s, word: words.state[s] }))}
            save={(value) => {
              const state = PUPPY_STATES.find((s) => s === value) ?? puppy.state;
              return changeState(puppy, state, state === 'litter' ? null : dateOf(now().local));
            }}
          />
          {puppy.state !== 'litter' && (
            <SavedField
              inCell
              type="date"
              label={words.homes.dateOf(name)}
              value={puppy.stateOn ?? ''}
              max={dateOf(now().local)}
              read={readDate}
              save={(on) => changeState(puppy, puppy.state, on)}
            />
          )}
        </div>
      </td>
      <td data-label={words.homes.plan}>
        {puppy.state !== 'died' && (
          <a
            href={href({ at: 'print', of: 'puppy', id: puppy.id, day: null, paper: null })}
            aria-label={words.homes.previewOf(name)}
          >
            {words.homes.preview}
          </a>
        )}
      </td>
      <td data-label={words.homes.handedOver}>
        <Kept kept={kept} name={name} />
      </td>
    </tr>
  );
}

function Kept({ kept, name }: { kept: readonly HandedPlan[]; name: string }) {
  const today = useToday();
  if (kept.length === 0) return <span className="soft">{words.homes.notYet}</span>;
  return (
    <ul className="homes-kept">
      {kept.map((k) => {
        const day = words.shortDate(k.handedOver, today);
        return (
          <li key={k.id}>
            <a
              href={href({ at: 'print', of: 'handed-over', id: k.id, day: null, paper: null })}
              aria-label={words.homes.openKept(name, day)}
            >
              {day}
            </a>
          </li>
        );
      })}
    </ul>
  );
}
