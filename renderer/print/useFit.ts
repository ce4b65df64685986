/** Whether every sheet holds all of its text. A sheet that does not is set a little closer, step by step, before it is refused. */
import { type RefObject, useLayoutEffect, useState } from 'react';

export interface ClippedSheet {
  readonly name: string;
  readonly sheet: number;
}

export type Fit = { at: 'measuring' } | { at: 'fits' } | { at: 'clipped'; sheets: readonly ClippedSheet[] };

/** Steps of density in print.css: 0 is as drawn, 3 the closest; text is never under 9 pt. */
const CLOSEST = 3;
/** CSS pixels: rounding of millimetres. */
const SLACK = 1;

/**
 * Measures the sheets under `root` once the faces have loaded, and again when `key` changes. What comes out stands in
 * `data-ready` of the document element for the engine that makes the PDF: `true` or `clipped`; absent while measuring.
 */
export function useFit(root: RefObject<HTMLElement | null>, key: string): Fit {
  const [faces, setFaces] = useState('');
  const [placed, setPlaced] = useState('');
  const [fit, setFit] = useState<Fit>({ at: 'measuring' });

  // Reading a size lays the page out, and only then does the browser begin to fetch the faces that the page needs.
  useLayoutEffect(() => {
    let gone = false;
    delete document.documentElement.dataset['ready'];
    setFit({ at: 'measuring' });
    if (key === '') return;
    for (const sheet of root.current?.querySelectorAll<HTMLElement>('.sheet') ?? []) delete sheet.dataset['density'];
    root.current?.getBoundingClientRect();
    void document.fonts.ready.then(() => {
      if (!gone) setFaces(key);
    });
    return () => {
      gone = true;
      delete document.documentElement.dataset['ready'];
    };
  }, [root, key]);

  // Drawn once more with the loaded faces: the parts that place themselves by what they measure do so in this commit.
  useLayoutEffect(() => setPlaced(faces), [faces]);

  // In the commit after it, when all of them stand in their places.
  useLayoutEffect(() => {
    if (key === '' || faces !== key || placed !== key || root.current === null) return;
    const clipped = fitSheets(root.current);
    setFit(clipped.length === 0 ? { at: 'fits' } : { at: 'clipped', sheets: clipped });
    document.documentElement.dataset['ready'] = clipped.length === 0 ? 'true' : 'clipped';
  }, [root, key, faces, placed]);

  return fit;
}

function fitSheets(root: HTMLElement): ClippedSheet[] {
  const clipped: ClippedSheet[] = [];
  for (const sheet of root.querySelectorAll<HTMLElement>('.sheet')) {
    let density = 0;
    sheet.dataset['density'] = '0';
    while (isClipped(sheet) && density < CLOSEST) {
      density += 1;
      sheet.dataset['density'] = String(density);
    }
    if (isClipped(sheet)) clipped.push({ name: sheet.dataset['name'] ?? '', sheet: Number(sheet.dataset['sheet']) });
  }
  return clipped;
}

/** Sizes of layout, not of the screen: a preview that is scaled down is measured as it will be printed. */
function isClipped(sheet: HTMLElement): boolean {
  const body = sheet.querySelector<HTMLElement>('.sheet-body');
  if (body === null) return true;
  if (body.scrollHeight > body.clientHeight + SLACK || body.scrollWidth > body.clientWidth + SLACK) return true;
  return [...body.querySelectorAll<HTMLElement>('th, td, p, li, dd, h1, h2, h3')].some(
    (e) => e.clientWidth > 0 && e.scrollWidth > e.clientWidth + SLACK,
  );
}
