import type { Level } from '../../core/growth/assess.ts';
import { words } from '../state/words.ts';
import './parts.css';

/** Steady is a level stroke, watch a hollow pennant, act a filled one: word and shape together, colour third. */
export function LevelMark({ level, word = true }: { level: Level; word?: boolean }) {
  return (
    <span className={`level ${level}`}>
      <svg
        width="18"
        height="18"
        viewBox="0 0 18 18"
        {...(word ? { 'aria-hidden': true } : { role: 'img', 'aria-label': words.level[level] })}
      >
        {level === 'steady' ? (
          <path d="M1 9.5H17" stroke="currentColor" strokeWidth="2.4" />
        ) : (
          <>
            <path d="M1 3.5H17" stroke="currentColor" strokeWidth="2.4" />
            <path
              d="M4 5L9 16.2L14 5Z"
              fill={level === 'act' ? 'currentColor' : 'none'}
              stroke="currentColor"
              strokeWidth="2"
              strokeLinejoin="round"
            />
          </>
        )}
      </svg>
      {word && words.level[level]}
    </span>
  );
}
