/** The places of the window, kept in the address after `#`, so that back and forward work and a place can be printed. */
import { useSyncExternalStore } from 'react';
import { type CivilDate, parseDate } from '../core/calendar/day.ts';

export const LITTER_PAGES = ['today', 'weigh-in', 'growth', 'weaning', 'care', 'puppies', 'homes'] as const;
export type LitterPage = (typeof LITTER_PAGES)[number];
export const PUPPY_VIEWS = ['notes', 'weight', 'gain', 'standing'] as const;
export type PuppyView = (typeof PUPPY_VIEWS)[number];
export type Paper = 'a4' | 'letter';

/** Papers of something that has an id, and of the house. */
const PRINT_BY_ID = ['puppy', 'litter', 'handed-over', 'prep', 'slot'] as const;
const PRINT_OF_HOUSE = ['thaw', 'labels'] as const;
export type PrintOf = (typeof PRINT_BY_ID)[number] | (typeof PRINT_OF_HOUSE)[number];

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
  | { at: 'rules' }
  /** The house: vet, telephone, units, paper. A field may be asked for. */
  | { at: 'house'; field: 'vetPhone' | null }
  | { at: 'records' }
  | { at: 'import' }
  | { at: 'help' }
  /** A paper: of a puppy, litter, kept plan or slot by its id; the thaw list and the labels have none. The day is a prep sheet's, tomorrow when null. */
  | { at: 'print'; of: PrintOf; id: string; day: CivilDate | null; paper: Paper | null }
  /** A dam by her id. */
  | { at: 'dam'; damId: string }
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
  if (first === 'house' && parts.length === 1)
    return { at: 'house', field: query.get('field') === 'vetPhone' ? 'vetPhone' : null };
  if (first === 'foods' && parts.length <= 2) return second === undefined ? { at: 'foods' } : { at: 'food', foodId: second };
  if (first === 'week' && parts.length <= 2) return { at: 'week', litterId: second ?? null };
  if (first === 'litter' && second !== undefined) {
    const page = LITTER_PAGES.find((p) => p === (third ?? 'today'));
    return page === undefined ? { at: 'nowhere' } : { at: 'litter', litterId: second, page, puppyId: query.get('puppy') };
  }
  if (first === 'dam' && second !== undefined) return { at: 'dam', damId: second };
  if (first === 'puppy' && second !== undefined) {
    const view = PUPPY_VIEWS.find((v) => v === (third ?? 'notes'));
    return view === undefined ? { at: 'nowhere' } : { at: 'puppy', puppyId: second, view };
  }
  if (first === 'print') return printRoute(second, third, query);
  return { at: 'nowhere' };
}

function printRoute(of: string | undefined, id: string | undefined, query: URLSearchParams): Route {
  const day = parseDate(query.get('day') ?? '');
  const paper = readPaper(query);
  const byId = PRINT_BY_ID.find((p) => p === of);
  if (byId !== undefined && id !== undefined) return { at: 'print', of: byId, id, day, paper };
  const ofHouse = PRINT_OF_HOUSE.find((p) => p === of);
  return ofHouse === undefined || id !== undefined ? { at: 'nowhere' } : { at: 'print', of: ofHouse, id: '', day: null, paper };
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
    case 'house':
      return route.field === null ? '#/house' : `#/house?field=${route.field}`;
    case 'print':
      return `#/print/${route.of}${route.id === '' ? '' : `/${route.id}`}${printQuery(route)}`;
    default:
      return `#/${route.at}`;
  }
}

function printQuery({ day, paper }: Extract<Route, { at: 'print' }>): string {
  const query = new URLSearchParams({ ...(day === null ? {} : { day }), ...(paper === null ? {} : { paper }) }).toString();
  return query === '' ? '' : `?${query}`;
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
