import { useEffect, useState } from 'react';
import type { House } from '../../core/people/house.ts';
import { now } from '../data/now.ts';
import { useWindow } from '../state/window.ts';

/** Day or night, as chosen for this run, else as the house says: by day, by night, or by the hour. */
export function useTheme(house: House): 'day' | 'night' {
  const chosen = useWindow((w) => w.theme);
  const [clock, setClock] = useState(() => now().local.slice(11));
  useEffect(() => {
    const timer = setInterval(() => setClock(now().local.slice(11)), 30_000);
    return () => clearInterval(timer);
  }, []);
  const theme = chosen ?? (house.theme === 'by-hour' ? byHour(clock, house.nightFrom, house.nightUntil) : house.theme);
  useEffect(() => {
    document.documentElement.dataset['theme'] = theme;
  }, [theme]);
  return theme;
}

/** Night may run over midnight. Clock times `hh:mm` compare as text. */
export function byHour(clock: string, from: string, until: string): 'day' | 'night' {
  const night = from <= until ? clock >= from && clock < until : clock >= from || clock < until;
  return night ? 'night' : 'day';
}
