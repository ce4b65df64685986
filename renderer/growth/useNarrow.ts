import { useSyncExternalStore } from 'react';

const QUERY = '(max-width: 999px)';

function subscribe(listener: () => void): () => void {
  const media = window.matchMedia(QUERY);
  media.addEventListener('change', listener);
  return () => media.removeEventListener('change', listener);
}

/** Whether the margin is folded: a narrow window, 200 % zoom, a telephone. */
export function useNarrow(): boolean {
  return useSyncExternalStore(subscribe, () => window.matchMedia(QUERY).matches);
}
