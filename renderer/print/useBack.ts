import { useLitter, useLitterOfPuppy } from '../facts/useLitter.ts';
import { href } from '../links.ts';
import { words } from '../state/words.ts';
import type { PrintRoute } from './papers.ts';

export interface Back {
  readonly href: string;
  readonly words: string;
}

/** The page that a paper was asked for on. `puppyId` is whose the sheets are, empty when they are nobody's. */
export function useBack(route: PrintRoute, puppyId: string): Back {
  const ofLitter = useLitter(route.of === 'litter' || route.of === 'prep' ? route.id : null);
  const ofPuppy = useLitterOfPuppy(route.of === 'puppy' ? route.id : puppyId);
  if (route.of === 'thaw' || route.of === 'labels') return { href: href({ at: 'freezer' }), words: words.freezerPaper.back };
  const litter = (ofLitter ?? ofPuppy)?.litter;
  if (litter === undefined) return { href: href({ at: 'litters' }), words: words.print.backToLitters };
  const name = words.litterName(litter);
  const page = route.of === 'prep' ? 'weaning' : 'homes';
  return {
    href: href({ at: 'litter', litterId: litter.id, page, puppyId: null }),
    words: page === 'weaning' ? words.prep.back(name) : words.print.backToHomes(name),
  };
}
