import type { LabelSheet } from '../../core/freezer/paper-document.ts';
import { readNumber } from '../parts/form/read.ts';
import { words } from '../state/words.ts';

export interface LabelChoiceProps {
  readonly sheet: LabelSheet;
  readonly setSheet: (sheet: LabelSheet) => void;
  /** As typed. */
  readonly first: string;
  readonly setFirst: (first: string) => void;
  readonly isPlaced: boolean;
}

/** The first free label of a sheet that was begun before, from 1. */
export function readFirst(text: string, places: number) {
  return readNumber({ low: 1, high: places, integer: true, example: '1' })(text);
}

/** Small labels or plain paper, and where the first of them goes. */
export function LabelChoice({ sheet, setSheet, first, setFirst, isPlaced }: LabelChoiceProps) {
  const w = words.freezerPaper;
  return (
    <>
      <fieldset>
        <legend>{w.kind}</legend>
        {(['small', 'plain'] as const).map((k) => (
          <label key={k} className="box">
            <input type="radio" name="kind" checked={sheet === k} onChange={() => setSheet(k)} />
            {w.kinds[k]}
          </label>
        ))}
      </fieldset>
      {sheet === 'small' && (
        <label className="labels-first">
          {w.first}
          <input
            className="written"
            inputMode="numeric"
            value={first}
            aria-invalid={!isPlaced}
            onChange={(event) => setFirst(event.target.value)}
          />
        </label>
      )}
    </>
  );
}
