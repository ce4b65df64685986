import { useId } from 'react';
import { type Explanation, useWindow } from '../state/window.ts';

/**
 * A figure that can say where it came from: hover, focus or tap puts one line in the foot; Enter draws the foot up into
 * the worked sum.
 */
export function Why({ explanation, children }: { explanation: Explanation; children: React.ReactNode }) {
  const explain = useWindow((w) => w.explain);
  const drawUp = useWindow((w) => w.drawUp);
  const id = useId();
  return (
    <button
      type="button"
      className="why"
      aria-describedby={id}
      onMouseEnter={() => explain(explanation)}
      onFocus={() => explain(explanation)}
      onClick={() => {
        explain(explanation);
        drawUp(true);
      }}
    >
      {children}
      <span id={id} hidden>
        {explanation.how}
      </span>
    </button>
  );
}
