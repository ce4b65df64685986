import { useState } from 'react';
import type { OutputOf } from '../../core/contract/operations.ts';
import { run, useQuery } from '../data/query.ts';
import { Confirm } from '../parts/form/Confirm.tsx';
import { words } from '../state/words.ts';

type Somebody = OutputOf<'people.all'>['people'][number];

/** Everybody who is written down, each to be written out alone or erased. It asks before it erases, since that can't be undone. */
export function PeoplePart() {
  const people = useQuery('people.all', {}).value?.people;
  const [said, setSaid] = useState('');
  return (
    <section className="part">
      <h2>{words.people.title}</h2>
      <p className="note records-note">{words.people.lead}</p>
      {people?.length === 0 && <p className="soft">{words.people.nobody}</p>}
      {(people ?? []).map((person) => (
        <PersonLine key={person.id} person={person} say={setSaid} />
      ))}
      <p role="status">{said}</p>
    </section>
  );
}

function PersonLine({ person, say }: { person: Somebody; say: (said: string) => void }) {
  const [papers, setPapers] = useState(false);
  const name = person.name === '' ? words.people.roles[person.role] : person.name;
  const writeOut = async () => {
    const written = await run('people.export', { personId: person.id });
    const file = written.ok ? written.value.files[0]?.file : undefined;
    say(written.ok && file !== undefined ? words.people.writtenOut(file, written.value.folder) : '');
  };
  const erase = async () => {
    const done = await run('people.erase', { personId: person.id, papers });
    say(done.ok ? words.people.erased(done.value.starters, done.value.papers, papers) : '');
  };
  return (
    <p className="line keeping-do">
      <b>{name}</b>
      <span className="soft">{about(person)}</span>
      <button type="button" className="link" aria-label={words.people.writeOutOf(name)} onClick={() => void writeOut()}>
        {words.people.writeOut}
      </button>
      <Confirm
        ask={words.people.eraseAsk(name)}
        title={words.people.eraseTitle(name)}
        body={words.people.eraseBody}
        more={
          person.papers === 0 ? null : (
            <label className="confirm-more">
              <input type="checkbox" checked={papers} onChange={(event) => setPapers(event.target.checked)} />{' '}
              {words.people.papersToo}
            </label>
          )
        }
        yes={words.people.eraseYes}
        no={words.people.eraseNo}
        onYes={() => void erase()}
      />
    </p>
  );
}

/** What is kept of a person beside the name, in one line. */
function about({ role, name, address, phone, email, isNamed, starters, papers }: Somebody): string {
  return [
    name === '' ? '' : words.people.roles[role],
    address,
    phone,
    email,
    starters === 0 ? '' : words.people.starters(starters),
    papers === 0 ? '' : words.people.papers(papers),
    isNamed ? '' : words.people.gone,
  ]
    .filter((part) => part !== '')
    .join(' · ');
}
