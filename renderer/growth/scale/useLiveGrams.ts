import { useScaleStore } from './scale-store.ts';

/** What the scale shows now, in grams; null while nothing is on it or the weight was taken already. */
export function useLiveGrams(): number | null {
  return useScaleStore((s) => (s.capture.loaded && !s.capture.taken ? (s.capture.samples.at(-1)?.grams ?? null) : null));
}
