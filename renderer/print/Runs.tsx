import type { Run } from '../../core/homing/earlier-plan.ts';

/** A sentence in runs: strong words bold, official ones in italics. */
export function Runs({ runs }: { runs: readonly Run[] }) {
  return runs.map((r, i) => {
    const key = `${i} ${r.text}`;
    if (r.as === 'strong') return <strong key={key}>{r.text}</strong>;
    if (r.as === 'official') return <em key={key}>{r.text}</em>;
    return <span key={key}>{r.text}</span>;
  });
}
