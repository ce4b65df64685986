import { useState } from 'react';
import { run } from '../data/query.ts';
import { Confirm } from '../parts/form/Confirm.tsx';
import { words } from '../state/words.ts';

/** Erases what is written about the breeder and the vet. It asks, since it can't be undone. */
export function ErasePart() {
  const [said, setSaid] = useState('');
  const erase = async () => {
    const done = await run('people.eraseHouse', {});
    setSaid(done.ok ? words.keeping.erased : '');
  };
  return (
    <section className="part">
      <h2>{words.keeping.erase}</h2>
      <p className="note records-note">{words.keeping.eraseNote}</p>
      <p className="keeping-do">
        <Confirm
          ask={words.keeping.eraseAsk}
          title={words.keeping.eraseTitle}
          body={words.keeping.eraseBody}
          yes={words.keeping.eraseYes}
          no={words.keeping.eraseNo}
          onYes={() => void erase()}
        />
        <span role="status">{said}</span>
      </p>
    </section>
  );
}
