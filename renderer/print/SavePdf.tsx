import { useRef, useState } from 'react';
import { run } from '../data/query.ts';
import type { Paper as PaperSize } from '../links.ts';
import { words } from '../state/words.ts';
import type { Paper } from './papers.ts';

interface Saved {
  readonly files: readonly string[];
  readonly folder: string;
  readonly failures: readonly string[];
}

/** One PDF for each document, one after the other, with how far it is. Every file can be opened from the list that follows. */
export function SavePdf({ papers, paper, ready }: { papers: readonly Paper[]; paper: PaperSize; ready: boolean }) {
  const [writing, setWriting] = useState<{ done: number; name: string } | null>(null);
  const [saved, setSaved] = useState<Saved | null>(null);
  const busy = useRef(false);

  async function save() {
    if (busy.current) return;
    busy.current = true;
    const files: string[] = [];
    const failures: string[] = [];
    let folder = '';
    setSaved(null);
    for (const [done, { of, document }] of papers.entries()) {
      if (of === null) continue;
      setWriting({ done, name: document.name });
      const result = await run('records.savePaper', { of, paper }, { quiet: true });
      if (!result.ok) {
        failures.push(words.print.notSaved(document.name, words.failure[result.error.code]));
        // Without an engine, or a place to write to, the next one fails for the same reason.
        if (result.error.code !== 'refused') break;
        continue;
      }
      files.push(result.value.file);
      folder = result.value.folder;
    }
    setWriting(null);
    setSaved({ files, folder, failures });
    busy.current = false;
  }

  const many = papers.length > 1;
  return (
    <div>
      <div className="print-row">
        <button type="button" className="button" disabled={!ready || writing !== null} onClick={() => void save()}>
          {many ? words.print.savePdfs : words.print.savePdf}
        </button>
        {writing !== null && (
          <>
            {many && <progress aria-label={words.print.progress} value={writing.done} max={papers.length} />}
            <span role="status">
              {many ? words.print.saving(writing.done + 1, papers.length, writing.name) : words.print.savingOne}
            </span>
          </>
        )}
      </div>
      {saved !== null && <SavedFiles saved={saved} />}
    </div>
  );
}

function SavedFiles({ saved }: { saved: Saved }) {
  return (
    <div role="status">
      {saved.failures.map((f) => (
        <p key={f}>{f}</p>
      ))}
      {saved.files.length > 0 && (
        <>
          <p>{words.print.saved(saved.files, saved.folder)}</p>
          <ul className="print-saved">
            {saved.files.map((f) => (
              <li key={f}>
                <button type="button" className="link" onClick={() => void openFile(f)}>
                  {words.print.open(f)}
                </button>
              </li>
            ))}
          </ul>
        </>
      )}
    </div>
  );
}

/** How long the bytes of an opened file are kept, in ms. */
const KEPT_FOR = 60_000;

/** A window can't reach the folder, so the host hands the file over and the browser opens or keeps it. */
async function openFile(file: string): Promise<void> {
  const result = await run('records.paperFile', { file });
  if (!result.ok) return;
  const bytes = Uint8Array.from(atob(result.value.base64), (c) => c.codePointAt(0) ?? 0);
  const address = URL.createObjectURL(new Blob([bytes], { type: 'application/pdf' }));
  const link = window.document.createElement('a');
  link.href = address;
  link.download = file;
  link.click();
  // The download reads it after this turn.
  setTimeout(() => URL.revokeObjectURL(address), KEPT_FOR);
}
