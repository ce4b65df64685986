import { useState } from 'react';
import { puppyName } from '../../core/litter/litter.ts';
import { STOOLS } from '../../core/weaning/eaten.ts';
import { weaningWords as w } from '../../core/words/en/weaning.ts';
import type { Weaning } from '../facts/useWeaning.ts';
import { writeToday } from './weaning-notes.ts';

/** One key a stool: of the litter, or of one puppy. */
export function StoolNotes({ weaning: { litter, order } }: { weaning: Weaning }) {
  const [whose, setWhose] = useState('');
  return (
    <div className="stools">
      <h3>{w.stools}</h3>
      <label>
        <span className="note">{w.stoolOf}</span>{' '}
        <select className="written" value={whose} onChange={(event) => setWhose(event.target.value)}>
          <option value="">{w.everyone}</option>
          {order.map((p) => (
            <option key={p.id} value={p.id}>
              {puppyName(p)}
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
            aria-label={w.noteStool(w.stool[stool])}
            onClick={() => void writeToday(litter.id, { kind: 'stool', stool }, whose === '' ? null : whose)}
          >
            {w.stool[stool]}
          </button>
        ))}
      </p>
      <p className="note">{w.stoolNote}</p>
    </div>
  );
}
