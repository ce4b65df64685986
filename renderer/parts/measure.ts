/** How wide a text is, and how wide a part may be: asked of the browser in one place, so that the placing stays pure. */
import { type RefObject, useEffect, useLayoutEffect, useState } from 'react';

/** Width of a text in CSS pixels at a size and weight of the text face. */
export type Measure = (text: string, size: number, weight?: number) => number;

/** Without a canvas (before the page stands, or in a plain test): a little wider than the face really is. */
export const roughMeasure: Measure = (text, size, weight = 400) => text.length * size * (weight >= 600 ? 0.58 : 0.55);

let pen: CanvasRenderingContext2D | null = null;

const penMeasure: Measure = (text, size, weight = 400) => {
  pen ??= document.createElement('canvas').getContext('2d');
  if (pen === null) return roughMeasure(text, size, weight);
  pen.font = `${weight} ${size}px ${textFace()}`;
  return pen.measureText(text).width;
};

export function textFace(): string {
  const face = getComputedStyle(document.documentElement).getPropertyValue('--face-text').trim();
  return face === '' ? 'sans-serif' : face;
}

/** The browser's own measure; a new function once the faces have loaded, so that what was placed by it is placed again. */
export function useMeasure(): Measure {
  const [measure, setMeasure] = useState<{ with: Measure }>(() => ({
    with: typeof document === 'undefined' ? roughMeasure : penMeasure,
  }));
  useEffect(() => {
    let gone = false;
    void document.fonts.ready.then(() => {
      if (!gone) setMeasure({ with: (text, size, weight) => penMeasure(text, size, weight) });
    });
    return () => {
      gone = true;
    };
  }, []);
  return measure.with;
}

/** Width of an element in CSS pixels, 0 until it stands on the page. */
export function useWidth(of: RefObject<HTMLElement | null>): number {
  const [width, setWidth] = useState(0);
  useLayoutEffect(() => {
    const element = of.current;
    if (element === null) return;
    const look = () => setWidth(Math.floor(element.getBoundingClientRect().width));
    look();
    const observer = new ResizeObserver(look);
    observer.observe(element);
    return () => observer.disconnect();
  }, [of]);
  return width;
}
