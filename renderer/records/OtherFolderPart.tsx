import { useState } from 'react';
import type { Rescue } from '../../core/contract/records.ts';
import { run } from '../data/query.ts';
import { useWindow } from '../state/window.ts';
import { words } from '../state/words.ts';
import { FolderField } from './FolderField.tsx';
import { Way } from './Way.tsx';

/** Another folder to go on in, with the data file taken along where it can be read. */
export function OtherFolderPart({ rescue }: { rescue: Rescue }) {
  const { canTakeAlong, usualFolder, canChooseFolder } = rescue;
  const [folder, setFolder] = useState(usualFolder ?? '');
  const [along, setAlong] = useState(canTakeAlong);
  const go = async () => {
    const to = folder.trim();
    const answer = await run('records.elsewhere', { folder: to, takeAlong: along }, { quiet: true });
    if (!answer.ok) return answer.error.code === 'conflict' ? words.rescue.otherIsThere : words.keeping.failed(answer.error.code);
    const how = words.rescue.movedHow(to, answer.value.remembered);
    useWindow.getState().explain({ figure: words.rescue.moved, how, sum: [] });
    return null;
  };
  return (
    <section className="part">
      <h2>{words.rescue.other}</h2>
      <p>{along ? words.rescue.otherAlongNote : words.rescue.otherNote}</p>
      {usualFolder !== null && <p>{words.rescue.otherUsual(usualFolder)}</p>}
      {canTakeAlong && (
        <p>
          <label>
            <input type="checkbox" checked={along} onChange={(event) => setAlong(event.target.checked)} /> {words.rescue.along}
          </label>
        </p>
      )}
      <FolderField value={folder} onChange={setFolder} sentence={null} canChoose={canChooseFolder} />
      <Way word={words.rescue.otherNow} main={false} go={go} />
    </section>
  );
}
