import type { Level } from '../../core/growth/assess.ts';
import type { WeighingsCount } from '../facts/weighings-count.ts';
import { LevelMark } from '../parts/LevelMark.tsx';
import { words } from '../state/words.ts';

/** The level of a puppy in the litter; a steady one is called so from its second weight on. */
export function PuppyLevel({ level, known: count }: { level: Level; known: WeighingsCount }) {
  if (level === 'steady' && count !== 'more') return <span className="soft">{words.growth.known[count]}</span>;
  return <LevelMark level={level} />;
}
