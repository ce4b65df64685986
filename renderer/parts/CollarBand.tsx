import { useId } from 'react';
import type { Collar } from '../../core/litter/collar.ts';
import { collarWords } from './collar-words.ts';
import { baseOf, Figure } from './Fabric.tsx';
import './parts.css';

const STRAP = 'M7 4H93Q98.5 4 98.5 9.5V30.5Q98.5 36 93 36H7Q1.5 36 1.5 30.5V9.5Q1.5 4 7 4Z';
const LOWEST = 16;

/**
 * A puppy's collar: fabric, pattern and letter plate; 2.5 times as wide as high, in CSS pixels, never under 16 high.
 * `label` is read aloud in place of "D, green zigzag"; null hides the band from readers, for when its name stands beside it.
 */
export function CollarBand({
  collar,
  height = 26,
  faded = false,
  label,
}: {
  collar: Collar;
  height?: number;
  faded?: boolean;
  label?: string | null;
}) {
  const clip = useId();
  const high = Math.max(LOWEST, height);
  const spoken = label === undefined ? `${collar.letter}, ${collarWords(collar)}` : label;
  return (
    <svg
      className={faded ? 'collar faded' : 'collar'}
      viewBox="0 0 100 40"
      width={high * 2.5}
      height={high}
      {...(spoken === null ? { 'aria-hidden': true } : { role: 'img', 'aria-label': spoken })}
    >
      <clipPath id={clip}>
        <path d={STRAP} />
      </clipPath>
      <path d={STRAP} fill={baseOf(collar.colour)} />
      <g clipPath={`url(#${clip})`}>
        <Figure colour={collar.colour} pattern={collar.pattern} from={0} to={34} />
        <Figure colour={collar.colour} pattern={collar.pattern} from={66} to={100} />
      </g>
      <path d={STRAP} fill="none" stroke="var(--band-line)" strokeWidth="2.4" />
      <rect x="32.5" y="1.3" width="35" height="37.4" rx="3" fill="var(--plate)" stroke="var(--band-line)" strokeWidth="2.6" />
      <text className="collar-letter" x="50" y="31" fontSize="31" textAnchor="middle">
        {collar.letter}
      </text>
    </svg>
  );
}

/** The collar laid flat along the whole width of a sheet; `width` and `height` give only its proportions. */
export function CollarRibbon({
  collar,
  width = 184,
  height = 13,
  label,
}: {
  collar: Collar;
  width?: number;
  height?: number;
  /** Read aloud in place of what the window calls it. */
  label?: string;
}) {
  const clip = useId();
  const long = (width * 32) / height;
  return (
    <svg
      className="collar-ribbon"
      viewBox={`0 4 ${long} 32`}
      role="img"
      aria-label={label ?? `${collar.letter}, ${collarWords(collar)}`}
    >
      {/* a little inside the frame, so that no printer lets the pattern look out over it */}
      <clipPath id={clip}>
        <path d={`M.6 4.6H${long - 0.6}V35.4H.6Z`} />
      </clipPath>
      <g clipPath={`url(#${clip})`}>
        <path d={`M0 4H${long}V36H0Z`} fill={baseOf(collar.colour)} />
        <Figure colour={collar.colour} pattern={collar.pattern} from={0} to={24} />
        {/* what hung over from the left of the plate is covered before the pattern begins anew */}
        <path d={`M63 4H${long}V36H63Z`} fill={baseOf(collar.colour)} />
        <Figure colour={collar.colour} pattern={collar.pattern} from={63} to={long} />
      </g>
      <path d={`M.8 4.8H${long - 0.8}V35.2H.8Z`} fill="none" stroke="var(--band-line)" strokeWidth="1.6" />
      <path d="M23.6 4.8h39.6v30.4h-39.6Z" fill="var(--plate)" stroke="var(--band-line)" strokeWidth="1.6" />
      <text className="collar-letter" x="43.4" y="29.6" fontSize="27.5" textAnchor="middle">
        {collar.letter}
      </text>
    </svg>
  );
}
