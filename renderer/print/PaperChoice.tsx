import { printWords as w } from '../../core/words/en/print.ts';
import type { Paper } from '../links.ts';

/** A4 or US Letter. */
export function PaperChoice({ paper, choose }: { paper: Paper; choose: (paper: Paper) => void }) {
  return (
    <fieldset>
      <legend>{w.paper}</legend>
      {(['a4', 'letter'] as const).map((p) => (
        <label key={p} className="box">
          <input type="radio" name="paper" value={p} checked={paper === p} onChange={() => choose(p)} />
          {w.papers[p]}
        </label>
      ))}
    </fieldset>
  );
}
