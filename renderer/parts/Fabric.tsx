import type { CollarColour, CollarPattern } from '../../core/litter/collar.ts';

/** Base and figure of every colour: once dark on light, once light on dark, so that grey keeps the patterns apart. */
const FABRIC: Record<CollarColour, { base: string; figure: string }> = {
  red: { base: '#A63128', figure: '#F3D9C4' },
  blue: { base: '#2B5583', figure: '#E9DFC9' },
  yellow: { base: '#E9BF3C', figure: '#5A3E0C' },
  green: { base: '#2F5D36', figure: '#EBDDB4' },
  white: { base: '#F4EFE2', figure: '#6E6358' },
  orange: { base: '#E08A3C', figure: '#5E2A08' },
  purple: { base: '#5B3470', figure: '#F0DDEB' },
  pink: { base: '#E9A9B4', figure: '#76223A' },
  brown: { base: '#5C3A20', figure: '#C9A77F' },
  teal: { base: '#1F6F70', figure: '#CFE6DC' },
  sand: { base: '#D9C69B', figure: '#5D4A1E' },
  lime: { base: '#B9C552', figure: '#42500F' },
  black: { base: '#221D1A', figure: '#F4EFE2' },
  sky: { base: '#A9CBDD', figure: '#2A4B63' },
};

/** Darkened by mixing, not by a filter: a filter would turn the band into pixels on paper. */
const dyed = (hex: string): string => `color-mix(in srgb, ${hex} calc(var(--fabric-brightness, 1) * 100%), black)`;

export const baseOf = (colour: CollarColour): string => dyed(FABRIC[colour].base);

const PERIOD: Record<CollarPattern, number> = {
  plain: 0,
  stripe: 0,
  edges: 0,
  dots: 20,
  zigzag: 20,
  check: 22.8,
  bars: 12.5,
  slant: 14,
};

/**
 * The pattern of a strap that runs from y 4 to 36, between two places along it. Each stretch begins anew, so that both
 * halves of a band look alike. The caller clips what hangs over.
 */
export function Figure({
  colour,
  pattern,
  from,
  to,
}: {
  colour: CollarColour;
  pattern: CollarPattern;
  from: number;
  to: number;
}) {
  const fill = dyed(FABRIC[colour].figure);
  const period = PERIOD[pattern];
  const starts = period === 0 ? [] : Array.from({ length: Math.ceil((to - from) / period) + 1 }, (_, i) => from + i * period);
  switch (pattern) {
    case 'plain':
      return null;
    case 'stripe':
      return <path d={`M${from} 15H${to}V25.5H${from}Z`} fill={fill} />;
    case 'edges':
      return <path d={`M${from} 7.5H${to}V13.5H${from}ZM${from} 26.5H${to}V32.5H${from}Z`} fill={fill} />;
    case 'dots':
      return <path d={starts.map((x) => `${dot(x + 7, 12)}${dot(x + 7, 28)}${dot(x + 17, 20)}`).join('')} fill={fill} />;
    case 'zigzag':
      return (
        <path
          d={`M${from - 4} 30${starts.map((x) => `L${x + 6} 11L${x + 16} 29`).join('')}`}
          fill="none"
          stroke={fill}
          strokeWidth="6.5"
          strokeLinejoin="miter"
        />
      );
    case 'check':
      return <path d={starts.map((x) => `${square(x, 4)}${square(x + 11.4, 14.7)}${square(x, 25.4)}`).join('')} fill={fill} />;
    case 'bars':
      return <path d={starts.map((x) => `M${x + 8} 2h5.5v36h-5.5Z`).join('')} fill={fill} />;
    case 'slant':
      return <path d={[from - 14, ...starts].map((x) => `M${x - 6} 38L${x + 14} 2`).join('')} stroke={fill} strokeWidth="5.5" />;
  }
}

const dot = (x: number, y: number): string => `M${x - 4.6} ${y}a4.6 4.6 0 1 0 9.2 0a4.6 4.6 0 1 0 -9.2 0Z`;
const square = (x: number, y: number): string => `M${x} ${y}h11.4v10.7h-11.4Z`;
