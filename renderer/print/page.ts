/** What every printed page does with the browser: its key, and the name of its PDF. */
import { useEffect } from 'react';

/** Ctrl P prints the sheets, not the bar; a clipped sheet is not printed. */
export function usePrintKey(ready: boolean): void {
  useEffect(() => {
    const listener = (event: KeyboardEvent) => {
      if (!(event.ctrlKey || event.metaKey) || event.key.toLowerCase() !== 'p' || event.shiftKey || event.altKey) return;
      event.preventDefault();
      if (ready) window.print();
    };
    window.addEventListener('keydown', listener);
    return () => window.removeEventListener('keydown', listener);
  }, [ready]);
}

/** The PDF takes its title from the page; empty leaves the page's own. */
export function usePageTitle(title: string): void {
  useEffect(() => {
    if (title === '') return;
    const before = document.title;
    document.title = title;
    return () => {
      document.title = before;
    };
  }, [title]);
}
