import { useState } from 'react';
import type { Backup } from '../../core/contract/records.ts';
import { run } from '../data/query.ts';
import { useWindow } from '../state/window.ts';
import { words } from '../state/words.ts';

/** Goes back to a copy; answers the sentence of a failure, or null. Where it went well, the foot says what became of the old. */
export async function goBackTo(folder: string | null, file: string): Promise<string | null> {
  const answer = await run('records.restore', { folder, file }, { quiet: true });
  if (!answer.ok) return words.keeping.failed(answer.error.code);
  useWindow.getState().explain({ figure: words.keeping.wentBack, how: words.keeping.wentBackHow(answer.value.kept), sum: [] });
  return null;
}

/** Asked in its own place, twice: what was written since is set aside, and can be gone back to. */
export function GoBack({ folder, backup }: { folder: string | null; backup: Backup }) {
  const [asking, setAsking] = useState(false);
  const [said, setSaid] = useState('');
  if (!backup.checked) return null;
  const goBack = async () => {
    setSaid(words.keeping.goingBack);
    const failure = await goBackTo(folder, backup.file);
    setAsking(false);
    setSaid(failure ?? '');
  };
  return (
    <span className="keeping-back">
      {asking ? (
        <>
          <span className="note">{words.keeping.goBackAsk}</span>
          <button type="button" className="link" onClick={() => void goBack()}>
            {words.keeping.goBackNow}
          </button>
          <button type="button" className="link" onClick={() => setAsking(false)}>
            {words.keeping.leaveIt}
          </button>
        </>
      ) : (
        <button
          type="button"
          className="link"
          aria-label={`${words.keeping.goBack}: ${backup.file}`}
          onClick={() => setAsking(true)}
        >
          {words.keeping.goBack}
        </button>
      )}
      <span role="status" className={said === '' ? 'mistake-none' : ''}>
        {said}
      </span>
    </span>
  );
}
