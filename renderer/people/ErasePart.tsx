import { useState } from 'react';
import { keepingWords as w } from '../../core/words/en/keeping.ts';
import { run } from '../data/query.ts';
import { Confirm } from '../parts/form/Confirm.tsx';

/** Erases what is written about the breeder and the vet. It asks, since it can't be undone. */
export function ErasePart() {
  const [said, setSaid] = useState('');
  const erase = async () => {
    const done = await run('people.eraseHouse', {});
    setSaid(done.ok ? w.erased : '');
  };
  return (
    <section className="part">
      <h2>{w.erase}</h2>
      <p className="note records-note">{w.eraseNote}</p>
      <p className="keeping-do">
        <Confirm
          ask={w.eraseAsk}
          title={w.eraseTitle}
          body={w.eraseBody}
          yes={w.eraseYes}
          no={w.eraseNo}
          onYes={() => void erase()}
        />
        <span role="status">{said}</span>
      </p>
    </section>
  );
}
