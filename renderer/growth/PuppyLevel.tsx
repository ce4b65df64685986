import type { Level } from '../../core/growth/assess.ts';
import type { Known } from '../facts/known.ts';
import { LevelMark } from '../parts/LevelMark.tsx';
import { words } from '../state/words.ts';

/** The level of a puppy in the litter; a steady one is called so from its second weight on. */
export function PuppyLevel({ level, known }: { level: Level; known: Known }) {
  if (level === 'steady' && known !== 'more') return <span className="soft">{words.growth.known[known]}</span>;
  return <LevelMark level={level} />;
}
