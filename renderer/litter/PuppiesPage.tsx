import { useState } from 'react';
import { dateOf } from '../../core/calendar/clock.ts';
import { puppyName } from '../../core/litter/litter.ts';
import { useToday } from '../data/now.ts';
import { run } from '../data/query.ts';
import { addPuppy, birthReading, bornAnotherDay, moveToWhelping } from '../facts/changes.ts';
import { useLitterGrowth } from '../facts/useLitterGrowth.ts';
import { href } from '../links.ts';
import { PageTitle } from '../parts/PageTitle.tsx';
import { words } from '../state/words.ts';
import { LitterForm } from './LitterForm.tsx';
import { PuppyRow } from './PuppyRow.tsx';
import './puppies.css';
import { type LitterFacts, useLitter } from '../facts/useLitter.ts';
import { TableHead } from '../parts/TableHead.tsx';

const MOST = 16;
const COLUMNS = 9;

/** The puppies of one litter in the order of the weigh-in, and the litter itself. Everything is saved when a field is left. */
export function PuppiesPage({ litterId }: { litterId: string }) {
  const facts = useLitter(litterId);
  const { readings, house } = useLitterGrowth(litterId);
  const today = useToday();
  const [said, setSaid] = useState('');
  if (facts === null) return null;
  const { litter, puppies } = facts;
  const born = dateOf(litter.whelpedAt);
  const add = async () => {
    const id = await addPuppy(litterId);
    if (id !== null) focusSoon(`puppy-${id}`);
  };
  const move = (puppyId: string, step: -1 | 1) => void arrange(facts, puppyId, step, setSaid);
  return (
    <>
      <PageTitle
        title={words.puppies.title}
        lead={words.puppies.lead(words.litterName(litter), words.fullDate(born), words.ageInWords(born, today))}
      >
        {puppies.length < MOST ? (
          <button type="button" className="button main" onClick={() => void add()}>
            {words.puppies.add}
          </button>
        ) : (
          <span className="note">{words.puppies.full}</span>
        )}
      </PageTitle>
      <OtherDay facts={facts} />
      <p className="unseen" role="status">
        {said}
      </p>
      <table className="puppies">
        <TableHead
          heads={[
            words.puppies.order,
            words.puppies.collar,
            words.puppies.name,
            words.puppies.sex,
            words.puppies.birthWeight(words.unitShort[house.massUnit]),
            words.puppies.born,
            words.puppies.markings,
            words.puppies.state,
            words.puppies.more,
          ]}
        />
        <tbody>
          {puppies.length === 0 && (
            <tr>
              <td colSpan={COLUMNS} className="soft">
                {words.puppies.none}
              </td>
            </tr>
          )}
          {puppies.map((p) => (
            <PuppyRow
              key={p.id}
              puppy={p}
              facts={facts}
              birth={birthReading(p.id, readings)}
              unit={house.massUnit}
              columns={COLUMNS}
              move={move}
              announce={setSaid}
            />
          ))}
        </tbody>
      </table>
      {puppies.length > 0 && (
        <p className="note puppies-note">
          {words.puppies.orderNote}{' '}
          <a href={href({ at: 'litter', litterId, page: 'weigh-in', puppyId: null })}>{words.puppies.weighIn}</a>
        </p>
      )}
      <LitterForm litter={litter} unit={house.massUnit} />
    </>
  );
}

function focusSoon(id: string): void {
  requestAnimationFrame(() => document.getElementById(id)?.querySelector<HTMLElement>('input')?.focus());
}

/** Moves a puppy one place in the weigh-in; what had the focus keeps it, though its row was moved in the page. */
async function arrange(facts: LitterFacts, puppyId: string, step: -1 | 1, announce: (text: string) => void): Promise<void> {
  const ids = facts.puppies.map((p) => p.id);
  const at = ids.indexOf(puppyId);
  const to = at + step;
  const puppy = facts.puppies[at];
  if (puppy === undefined || to < 0 || to >= ids.length) return;
  ids.splice(at, 1);
  ids.splice(to, 0, puppyId);
  const active = document.activeElement;
  const done = await run('litter.arrange', { litterId: facts.litter.id, puppyIds: ids });
  if (!done.ok) return;
  announce(words.puppies.moved(puppyName(puppy), to + 1, ids.length));
  requestAnimationFrame(() => {
    if (active instanceof HTMLElement && active.isConnected) active.focus();
  });
}

/** After the day of the whelping was mended, the puppies still have the old one: one click moves them. */
function OtherDay({ facts }: { facts: LitterFacts }) {
  const away = bornAnotherDay(facts);
  if (away.length === 0) return null;
  return (
    <p className="puppies-other-day">
      <b>{words.puppies.otherDay(away.length)}</b>{' '}
      <button type="button" className="link" onClick={() => void moveToWhelping(away, facts.litter)}>
        {words.puppies.moveThem}
      </button>
    </p>
  );
}
