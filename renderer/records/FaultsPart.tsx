import { useQuery } from '../data/query.ts';
import { words } from '../state/words.ts';

/** The program's own mistakes, as one text that can be marked and copied whole. */
export function FaultsPart() {
  const found = useQuery('records.faults', {}).value;
  if (found === null) return null;
  return (
    <section className="part">
      <h2>{words.records.faults}</h2>
      <p className="note records-note">{words.records.faultsNote(found.file)}</p>
      {found.lines.length === 0 ? (
        <p className="soft">{words.records.noFaults}</p>
      ) : (
        <textarea
          className="records-faults"
          readOnly
          rows={Math.min(8, found.lines.length + 1)}
          aria-label={words.records.faults}
          value={found.lines.join('\n')}
          onFocus={(event) => event.currentTarget.select()}
        />
      )}
    </section>
  );
}
