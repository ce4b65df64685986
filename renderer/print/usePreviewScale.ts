import { type RefObject, useLayoutEffect } from 'react';
import type { Paper } from '../links.ts';

/** Pages in CSS pixels at 96 an inch, and the 6 mm between the two sheets of a plan. */
const PAGE: Record<Paper, { wide: number; high: number }> = {
  a4: { wide: 793.7, high: 1122.5 },
  letter: { wide: 816, high: 1056 },
};
const BETWEEN = 22.7;
/** Sheets of a plan. */
const SHEETS = 2;

/** Gives the box the size of the scaled sheets. Set on the element, because print must be able to take it off again. */
export function usePreviewScale(box: RefObject<HTMLElement | null>, paper: Paper, sheets = SHEETS): void {
  useLayoutEffect(() => {
    const element = box.current;
    const desk = element?.parentElement;
    const drawn = element?.firstElementChild;
    if (element === null || desk == null || !(drawn instanceof HTMLElement)) return;
    const look = () => {
      const style = getComputedStyle(desk);
      const room = desk.clientWidth - Number.parseFloat(style.paddingLeft) - Number.parseFloat(style.paddingRight);
      const scale = Math.min(1, room / PAGE[paper].wide);
      element.style.setProperty('--scale', String(scale));
      element.style.setProperty('--preview-wide', `${PAGE[paper].wide * scale}px`);
      element.style.setProperty('--preview-high', `${(PAGE[paper].high * sheets + BETWEEN * (sheets - 1)) * scale}px`);
    };
    look();
    const observer = new ResizeObserver(look);
    observer.observe(desk);
    return () => observer.disconnect();
  }, [box, paper, sheets]);
}
