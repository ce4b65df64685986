/** The places of the window, kept in the address after `#`, so that back and forward work and a place can be printed. */
import { useSyncExternalStore } from 'react';
import { type CivilDate, parseDate } from '../core/calendar/day.ts';

export const LITTER_PAGES = ['today', 'weigh-in', 'growth', 'weaning', 'puppies', 'homes'] as const;
export type LitterPage = (typeof LITTER_PAGES)[number];
export const PUPPY_VIEWS = ['notes', 'weight', 'gain', 'standing'] as const;
export type PuppyView = (typeof PUPPY_VIEWS)[number];
export type Paper = 'a4' | 'letter';

export type Route =
  | { at: 'litters' }
  | { at: 'begin' }
  | { at: 'litter'; litterId: string; page: LitterPage; puppyId: string | null }
  | { at: 'puppy'; puppyId: string; view: PuppyView }
  | { at: 'foods' }
  /** A food by its id; `new` for one that is being written down. */
  | { at: 'food'; foodId: string }
  /** The week of bowls of a litter, or of the house with null. */
  | { at: 'week'; litterId: string | null }
  | { at: 'freezer' }
  /** The thaw list on paper, or labels for what thaws. */
  | { at: 'freezer-paper'; of: 'labels' | 'list'; paper: Paper | null }
  | { at: 'rules' }
  | { at: 'records' }
  | { at: 'import' }
  | { at: 'help' }
  | { at: 'print'; of: 'puppy' | 'litter' | 'kept' | 'slot'; id: string; paper: Paper | null }
  /** A dam by her id. */
  | { at: 'dam'; damId: string }
  /** The prep sheet of a litter; the day in the address, tomorrow when it is null. */
  | { at: 'prep'; litterId: string; day: CivilDate | null; paper: Paper | null }
  | { at: 'nowhere' };

/** The route of an address fragment; what cannot be read is `nowhere`. */
export function parseRoute(hash: string): Route {
  const [path = '', search = ''] = hash.replace(/^#\/?/, '').split('?');
  const parts = path.split('/').filter((p) => p !== '');
  const query = new URLSearchParams(search);
  const [first, second, third] = parts;
  if (first === undefined) return { at: 'litters' };
  if (
    parts.length === 1 &&
    (first === 'litters' ||
      first === 'begin' ||
      first === 'rules' ||
      first === 'records' ||
      first === 'import' ||
      first === 'help')
  ) {
    return { at: first };
  }
  if (first === 'freezer' && parts.length === 1) return { at: 'freezer' };
  if (first === 'freezer' && parts.length === 2 && (second === 'labels' || second === 'list')) {
    return { at: 'freezer-paper', of: second, paper: readPaper(query) };
  }
  if (first === 'foods' && parts.length <= 2) return second === undefined ? { at: 'foods' } : { at: 'food', foodId: second };
  if (first === 'week' && parts.length <= 2) return { at: 'week', litterId: second ?? null };
  if (first === 'litter' && second !== undefined) {
    const page = LITTER_PAGES.find((p) => p === (third ?? 'today'));
    return page === undefined ? { at: 'nowhere' } : { at: 'litter', litterId: second, page, puppyId: query.get('puppy') };
  }
  if (first === 'dam' && second !== undefined) return { at: 'dam', damId: second };
  if (first === 'prep' && second !== undefined) {
    return { at: 'prep', litterId: second, day: parseDate(third ?? ''), paper: readPaper(query) };
  }
  if (first === 'puppy' && second !== undefined) {
    const view = PUPPY_VIEWS.find((v) => v === (third ?? 'notes'));
    return view === undefined ? { at: 'nowhere' } : { at: 'puppy', puppyId: second, view };
  }
  if (
    first === 'print' &&
    third !== undefined &&
    (second === 'puppy' || second === 'litter' || second === 'kept' || second === 'slot')
  ) {
    return { at: 'print', of: second, id: third, paper: readPaper(query) };
  }
  return { at: 'nowhere' };
}

function readPaper(query: URLSearchParams): Paper | null {
  const paper = query.get('paper');
  return paper === 'a4' || paper === 'letter' ? paper : null;
}

/** The address fragment of a route. */
export function href(route: Exclude<Route, { at: 'nowhere' }>): string {
  switch (route.at) {
    case 'litter':
      return `#/litter/${route.litterId}/${route.page}${route.puppyId === null ? '' : `?puppy=${route.puppyId}`}`;
    case 'puppy':
      return `#/puppy/${route.puppyId}/${route.view}`;
    case 'food':
      return `#/foods/${route.foodId}`;
    case 'week':
      return route.litterId === null ? '#/week' : `#/week/${route.litterId}`;
    case 'dam':
      return `#/dam/${route.damId}`;
    case 'freezer-paper':
      return `#/freezer/${route.of}${route.paper === null ? '' : `?paper=${route.paper}`}`;
    case 'prep':
      return `#/prep/${route.litterId}${route.day === null ? '' : `/${route.day}`}${route.paper === null ? '' : `?paper=${route.paper}`}`;
    case 'print':
      return `#/print/${route.of}/${route.id}${route.paper === null ? '' : `?paper=${route.paper}`}`;
    default:
      return `#/${route.at}`;
  }
}

export function go(route: Exclude<Route, { at: 'nowhere' }>): void {
  window.location.hash = href(route);
}

function subscribe(listener: () => void): () => void {
  window.addEventListener('hashchange', listener);
  return () => window.removeEventListener('hashchange', listener);
}

export function useRoute(): Route {
  return parseRoute(useSyncExternalStore(subscribe, () => window.location.hash));
}
