import { useState } from 'react';
import type { OutputOf } from '../../core/contract/operations.ts';
import { EXPORTS, type ExportKind } from '../../core/contract/records.ts';
import { run } from '../data/query.ts';
import { href } from '../links.ts';
import { words } from '../state/words.ts';
import './import.css';
import { TableHead } from '../parts/TableHead.tsx';

/** Everything in open formats: written into the exports folder, and offered to be opened or kept elsewhere. */
export function ExportPart() {
  const [written, setWritten] = useState<OutputOf<'records.export'> | null>(null);
  const [writing, setWriting] = useState<ExportKind | null>(null);
  const [refused, setRefused] = useState<string | null>(null);
  const write = async (as: ExportKind) => {
    setWriting(as);
    setWritten(null);
    setRefused(null);
    const answer = await run('records.export', { as });
    setWriting(null);
    if (answer.ok) setWritten(answer.value);
  };
  return (
    <section className="part">
      <h2>{words.export.title}</h2>
      <p className="note records-note">{words.export.lead}</p>
      <p className="line">
        <a href={href({ at: 'import' })}>{words.export.bringIn}</a>
      </p>
      <table className="export-kinds">
        <TableHead heads={[words.export.what, words.export.how, words.export.write]} unseen />
        <tbody>
          {EXPORTS.map((as) => (
            <tr key={as}>
              <th scope="row">{words.export.kinds[as].what}</th>
              <td className="note">{words.export.kinds[as].how}</td>
              <td className="figure">
                <button
                  type="button"
                  className="link"
                  disabled={writing !== null}
                  aria-label={words.export.writeOf(words.export.kinds[as].what)}
                  onClick={() => void write(as)}
                >
                  {words.export.write}
                </button>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <div role="status">
        {writing !== null && <p>{words.export.writing}</p>}
        {written !== null && (
          <>
            <p className="export-written">{words.export.written(written.folder, written.files.length)}</p>
            <ul className="export-files">
              {written.files.map(({ file, bytes }) => (
                <li key={file}>
                  <button type="button" className="link" onClick={() => void openFile(file).then(setRefused)}>
                    {words.export.open(file, words.records.bytesFigure(bytes))}
                  </button>
                </li>
              ))}
            </ul>
            {refused !== null && <p>{refused}</p>}
          </>
        )}
      </div>
      <p className="note">{words.export.caution}</p>
    </section>
  );
}

/** A window can't reach the folder, so the host hands the file over and the browser keeps it where she says. Answers why not. */
async function openFile(file: string): Promise<string | null> {
  const answer = await run('records.exportFile', { file }, { quiet: true });
  if (!answer.ok) return answer.error.code === 'too-large' ? words.export.tooLarge : words.failure[answer.error.code];
  const bytes = Uint8Array.from(atob(answer.value.base64), (c) => c.codePointAt(0) ?? 0);
  const address = URL.createObjectURL(new Blob([bytes], { type: 'application/octet-stream' }));
  const link = document.createElement('a');
  link.href = address;
  link.download = file;
  link.click();
  URL.revokeObjectURL(address);
  return null;
}
