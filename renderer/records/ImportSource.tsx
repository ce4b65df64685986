import { useId, useRef, useState } from 'react';
import { tableOfText } from '../../core/records/table.ts';
import { words } from '../state/words.ts';
import { EMPTY_DRAFT, type ImportDraft, withSource } from './import-draft.ts';
import { readFile } from './read-file.ts';

/** A file or what was pasted; a file is read by what is in it. */
export function ImportSource({ draft, write }: { draft: ImportDraft; write: (draft: ImportDraft) => void }) {
  const id = useId();
  const [reading, setReading] = useState(false);
  const turn = useRef(0);
  const take = async (file: File) => {
    turn.current += 1;
    const mine = turn.current;
    setReading(true);
    const read = await readFile(file);
    if (mine !== turn.current) return;
    setReading(false);
    if (read.is === 'json') write(withSource(draft, { exportFile: { name: file.name, text: read.text }, pasted: '' }));
    else if (read.is === 'fault') write(withSource(draft, { fault: read.fault, pasted: '' }));
    else write(withSource(draft, { source: { name: file.name, tables: read.tables, oldText: read.oldText }, pasted: '' }));
  };
  const paste = (pasted: string) => {
    if (pasted.trim() === '') return write(withSource(draft, { pasted }));
    const read = tableOfText(pasted);
    if (!read.ok) return write(withSource(draft, { pasted, fault: read.fault }));
    write(withSource(draft, { pasted, source: { name: '', tables: [{ name: '', table: read.table }], oldText: false } }));
  };
  const { source, exportFile, fault } = draft;
  const fromFile = (source !== null && source.name !== '') || exportFile !== null;
  return (
    <section className="import-source">
      <h2>{words.import.table}</h2>
      {fromFile ? (
        <p className="line">
          <span>{words.import.fromFile(source?.name ?? exportFile?.name ?? '')}</span>
          <button type="button" className="link" onClick={() => write(EMPTY_DRAFT)}>
            {words.import.another}
          </button>
        </p>
      ) : (
        <div className="form">
          <label htmlFor={`${id}-file`}>{words.import.choose}</label>
          <span className="field-body">
            <input
              id={`${id}-file`}
              type="file"
              className="import-file"
              accept=".csv,.tsv,.txt,.xlsx,.json,text/csv,text/plain"
              aria-describedby={`${id}-hint`}
              onChange={(event) => {
                const file = event.target.files?.[0];
                if (file !== undefined) void take(file);
              }}
            />
            <span className="note" id={`${id}-hint`}>
              {words.import.chooseHint}
            </span>
          </span>
          <label htmlFor={`${id}-paste`}>{words.import.paste}</label>
          <span className="field-body">
            <textarea
              id={`${id}-paste`}
              className="written import-paste"
              rows={4}
              spellCheck={false}
              autoComplete="off"
              aria-describedby={`${id}-paste-hint`}
              value={draft.pasted}
              onChange={(event) => paste(event.target.value)}
            />
            <span className="note" id={`${id}-paste-hint`}>
              {words.import.pasteHint}
            </span>
          </span>
        </div>
      )}
      <p role="status" className="import-said">
        {reading
          ? words.import.reading
          : fault !== null
            ? words.import.fault(fault)
            : source?.oldText === true
              ? words.import.oldText
              : ''}
      </p>
    </section>
  );
}
