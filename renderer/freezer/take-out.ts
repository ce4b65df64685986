import type { Take } from '../../core/freezer/plan-shape.ts';
import { now } from '../data/now.ts';
import { run } from '../data/query.ts';

/** Ticks off: these portions went into the refrigerator this minute. */
export async function takeOut(takes: readonly Take[]): Promise<boolean> {
  const { instant, local } = now();
  const done = await run('freezer.thaw', {
    takes: takes.map(({ packId, portions }) => ({ packId, portions })),
    at: local,
    instant,
    way: 'refrigerator',
  });
  return done.ok;
}

/** What was thawed is used up, or thrown away, now. */
export async function endThaws(thawIds: readonly string[], ended: 'used' | 'thrown'): Promise<void> {
  const { instant, local } = now();
  await run('freezer.endThaw', { thawIds: [...thawIds], ended, at: local, instant });
}
