import { words } from '../state/words.ts';
import './parts.css';

const FIVE = 58;
const STEP = 10;

/** Tally marks in fives, as on a slip of paper: done in ink, the rest pale. */
export function Tally({ done, of }: { done: number; of: number }) {
  const marks = Array.from({ length: of }, (_, i) => ({ d: stroke(i), done: i < done }));
  const width = of === 0 ? 1 : Math.floor((of - 1) / 5) * FIVE + (of % 5 === 0 ? 44 : (of % 5) * STEP + 2);
  return (
    <span className="tally">
      <svg width={width} height="30" viewBox={`0 0 ${width} 30`} aria-hidden="true">
        {/* the pale ones first, so that no pale stroke crosses a done one */}
        {[...marks].reverse().map((mark) => (
          <path key={mark.d} className={mark.done ? 'done' : 'rest'} d={mark.d} />
        ))}
      </svg>
      <span className="unseen">{words.tally.weighed(done, of)}</span>
    </span>
  );
}

function stroke(i: number): string {
  const x = Math.floor(i / 5) * FIVE;
  return i % 5 === 4 ? `M${x + 1} 23L${x + 42} 7` : `M${x + 6 + (i % 5) * STEP} 3V27`;
}
