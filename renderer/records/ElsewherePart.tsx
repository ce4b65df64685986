import { useState } from 'react';
import type { Backup } from '../../core/contract/records.ts';
import { call } from '../data/host.ts';
import { localOf, useToday } from '../data/now.ts';
import { run } from '../data/query.ts';
import { words } from '../state/words.ts';
import { FolderField } from './FolderField.tsx';
import { GoBack } from './GoBack.tsx';
import './keeping.css';

/** Copies to a stick or another folder, and back from one. */
export function ElsewherePart({ canChoose, canCopy }: { canChoose: boolean; canCopy: boolean }) {
  const [folder, setFolder] = useState('');
  const [sentence, setSentence] = useState<string | null>(null);
  const [said, setSaid] = useState('');
  const [found, setFound] = useState<readonly Backup[] | null>(null);
  const change = (text: string) => {
    setFolder(text);
    setSentence(null);
    setFound(null);
  };
  const copy = async () => {
    setSaid(words.keeping.copying);
    const answer = await run('records.backUpTo', { folder: folder.trim() }, { quiet: true });
    setSaid(answer.ok ? words.keeping.copied(answer.value.backup.file) : '');
    setSentence(answer.ok ? null : words.keeping.failed(answer.error.code));
  };
  const look = async () => {
    setSaid(words.keeping.looking);
    const answer = await call('records.backupsIn', { folder: folder.trim() });
    setFound(answer.ok ? answer.value.backups : null);
    setSaid(answer.ok ? foundText(answer.value.backups.length) : '');
    setSentence(answer.ok ? null : words.keeping.failed(answer.error.code));
  };
  return (
    <>
      <FolderField value={folder} onChange={change} sentence={sentence} canChoose={canChoose} />
      <p className="keeping-do">
        {canCopy && (
          <button type="button" className="button" onClick={() => void copy()}>
            {words.keeping.copyThere}
          </button>
        )}
        <button type="button" className="button" onClick={() => void look()}>
          {words.keeping.look}
        </button>
        <span role="status">{said}</span>
      </p>
      {found !== null && <Found folder={folder.trim()} backups={found} />}
    </>
  );
}

function foundText(n: number): string {
  return n === 0 ? words.keeping.foundNone : words.keeping.found(n);
}

function Found({ folder, backups }: { folder: string; backups: readonly Backup[] }) {
  const today = useToday();
  return (
    <ul className="keeping-found">
      {backups.map((backup) => (
        <li key={backup.file} className="line">
          <span className="keeping-when">{words.when(localOf(backup.instant), today)}</span>
          <span className="soft keeping-file">
            {words.records.bytesFigure(backup.bytes)}, {backup.checked ? backup.file : words.records.notChecked}
          </span>
          <GoBack folder={folder} backup={backup} />
        </li>
      ))}
    </ul>
  );
}
