import type { Paper } from '../links.ts';
import { words } from '../state/words.ts';

/** A4 or US Letter. */
export function PaperChoice({ paper, choose }: { paper: Paper; choose: (paper: Paper) => void }) {
  return (
    <fieldset>
      <legend>{words.print.paper}</legend>
      {(['a4', 'letter'] as const).map((p) => (
        <label key={p} className="box">
          <input type="radio" name="paper" value={p} checked={paper === p} onChange={() => choose(p)} />
          {words.print.papers[p]}
        </label>
      ))}
    </fieldset>
  );
}
