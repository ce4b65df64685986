import { useState } from 'react';
import { puppyName } from '../../core/litter/litter.ts';
import { STOOLS } from '../../core/weaning/eaten.ts';
import type { Weaning } from '../facts/useWeaning.ts';
import { words } from '../state/words.ts';
import { writeToday } from './weaning-notes.ts';

/** One key a stool: of the litter, or of one puppy. */
export function StoolNotes({ weaning: { litter, order } }: { weaning: Weaning }) {
  const [whose, setWhose] = useState('');
  return (
    <div className="stools">
      <h3>{words.weaning.stools}</h3>
      <label>
        <span className="note">{words.weaning.stoolOf}</span>{' '}
        <select className="written" value={whose} onChange={(event) => setWhose(event.target.value)}>
          <option value="">{words.weaning.everyone}</option>
          {order.map((p) => (
            <option key={p.id} value={p.id}>
              <bdi>{puppyName(p)}</bdi>
            </option>
          ))}
        </select>
      </label>
      <p className="stools-keys">
        {STOOLS.map((stool) => (
          <button
            key={stool}
            type="button"
            className="meal-key"
            aria-label={words.weaning.noteStool(words.weaning.stool[stool])}
            onClick={() => void writeToday(litter.id, { kind: 'stool', stool }, whose === '' ? null : whose)}
          >
            {words.weaning.stool[stool]}
          </button>
        ))}
      </p>
      <p className="note">{words.weaning.stoolNote}</p>
    </div>
  );
}
