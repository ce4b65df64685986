import { useState } from 'react';
import { words } from '../state/words.ts';

/** A button that works for a while and says how it went, in its own place. It keeps the focus while it works. */
export function Way({ word, main, go }: { word: string; main: boolean; go: () => Promise<string | null> }) {
  const [said, setSaid] = useState('');
  const [working, setWorking] = useState(false);
  const start = async () => {
    if (working) return;
    setWorking(true);
    setSaid(words.rescue.working);
    const failure = await go();
    setWorking(false);
    setSaid(failure ?? '');
  };
  return (
    <p className="keeping-do">
      <button type="button" className={main ? 'button main' : 'button'} aria-disabled={working} onClick={() => void start()}>
        {word}
      </button>
      <span role="status">{said}</span>
    </p>
  );
}
