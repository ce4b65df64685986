import { useId, useMemo } from 'react';
import { dateOf } from '../../core/calendar/clock.ts';
import type { GrowthInput } from '../../core/growth/input.ts';
import type { Reading } from '../../core/litter/litter.ts';
import type { MassUnit } from '../../core/units/mass.ts';
import { LevelMark } from '../parts/LevelMark.tsx';
import { TableHead } from '../parts/TableHead.tsx';
import { words } from '../state/words.ts';
import { logEntries } from './puppy-log.ts';

/** What was seen of one puppy, latest first. */
export function PuppyLog({
  input,
  readings,
  puppyId,
  unit,
}: {
  input: GrowthInput;
  readings: readonly Reading[];
  puppyId: string;
  unit: MassUnit;
}) {
  const id = useId();
  const entries = useMemo(() => logEntries(input, readings, puppyId, unit), [input, readings, puppyId, unit]);
  return (
    <section className="part">
      <h2 id={id}>{words.puppyNote.seen}</h2>
      {entries.length === 0 ? (
        <p className="line soft">{words.puppyNote.nothingSeen}</p>
      ) : (
        <>
          <p className="note">{words.puppyNote.seenNote}</p>
          <table className="puppy-log" aria-labelledby={id}>
            <TableHead heads={[words.puppyNote.seenDay, words.puppyNote.seenLevel, words.puppyNote.seenWhat]} />
            <tbody>
              {entries.map((e) => (
                <tr key={`${e.at} ${e.level ?? ''} ${e.sentence}`}>
                  <th scope="row">{words.dayOfWeek(dateOf(e.at))}</th>
                  <td>{e.level === null ? '' : <LevelMark level={e.level} />}</td>
                  <td>{e.sentence}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </>
      )}
    </section>
  );
}
