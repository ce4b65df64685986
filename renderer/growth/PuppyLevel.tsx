import type { Level } from '../../core/growth/assess.ts';
import { growthWords } from '../../core/words/en/growth.ts';
import type { Known } from '../facts/known.ts';
import { LevelMark } from '../parts/LevelMark.tsx';

/** The level of a puppy in the litter; a steady one is called so from its second weight on. */
export function PuppyLevel({ level, known }: { level: Level; known: Known }) {
  if (level === 'steady' && known !== 'more') return <span className="soft">{growthWords.known[known]}</span>;
  return <LevelMark level={level} />;
}
