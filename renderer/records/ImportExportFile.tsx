import { useState } from 'react';
import type { ContractError } from '../../core/contract/result.ts';
import { run } from '../data/query.ts';
import { href } from '../links.ts';
import { words } from '../state/words.ts';

/** An export of a whole house, for a data file where nothing is written yet. */
export function ImportExportFile({
  whole: exportFile,
  done,
}: {
  whole: { readonly name: string; readonly text: string };
  done: () => void;
}) {
  const [sending, setSending] = useState(false);
  const [said, setSaid] = useState('');
  const [taken, setTaken] = useState(false);
  const take = async () => {
    setSending(true);
    const answer = await run('records.takeIn', { text: exportFile.text }, { quiet: true });
    setSending(false);
    setTaken(answer.ok);
    setSaid(
      answer.ok ? words.import.wholeDone(answer.value.counts.litters, answer.value.counts.readings) : sentenceOf(answer.error),
    );
  };
  return (
    <section className="part">
      <h2>{words.import.whole}</h2>
      <p>{words.import.wholeLead(exportFile.name)}</p>
      <p className="import-take">
        {!taken && (
          <button type="button" className="button main" disabled={sending} onClick={() => void take()}>
            {words.import.wholeTake}
          </button>
        )}
        <span role="status">{said}</span>
        {taken && (
          <a href={href({ at: 'litters' })} onClick={done}>
            {words.import.wholeTo}
          </a>
        )}
      </p>
    </section>
  );
}

function sentenceOf({ code, field }: ContractError): string {
  if (code === 'conflict') return words.import.wholeConflict;
  if (code === 'refused') return words.import.wholeNewer;
  if (code !== 'bad-input') return words.failure[code];
  return field === undefined || field === 'text'
    ? words.import.wholeMisfit
    : `${words.import.wholeMisfit} ${words.import.wholeAt(field)}`;
}
