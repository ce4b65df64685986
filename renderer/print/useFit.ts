/**
 * Whether every sheet holds all of its text. Letters that must stay in one line are made smaller until they do; a sheet that is still too full is
 * set a little closer, step by step, before it is refused. All of it goes by boxes as the browser has laid them out.
 */
import { type RefObject, useLayoutEffect, useState } from 'react';

export interface ClippedSheet {
  readonly name: string;
  readonly sheet: number;
}

export type Fit = { at: 'measuring' } | { at: 'fits' } | { at: 'clipped'; sheets: readonly ClippedSheet[] };

/** Steps of density in the stylesheets: 0 is as drawn, 3 the closest. */
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

/** Fits every sheet under `root` as it stands in the page, and answers those that do not hold their text even so. */
export function fitSheets(root: HTMLElement): ClippedSheet[] {
  const clipped: ClippedSheet[] = [];
  for (const sheet of root.querySelectorAll<HTMLElement>('.sheet')) {
    let density = 0;
    const isTooFull = () => {
      sheet.dataset['density'] = String(density);
      return !fitLetters(sheet) || isClipped(sheet);
    };
    let tooFull = isTooFull();
    while (tooFull && density < CLOSEST) {
      density += 1;
      tooFull = isTooFull();
    }
    if (tooFull) clipped.push({ name: sheet.dataset['name'] ?? '', sheet: Number(sheet.dataset['sheet']) });
  }
  return clipped;
}

/** Rounds of making letters smaller; each comes as near as widths of whole pixels tell. */
const ROUNDS = 4;

/**
 * In a part with `data-fit` all places of class `fit` are set smaller alike, by `--fit`, until the widest is as wide as its box. What may
 * wrap (`data-wraps`) does so at the smallest size that the part allows. Answers whether nothing else had to be smaller than that.
 */
function fitLetters(sheet: HTMLElement): boolean {
  let fits = true;
  for (const part of sheet.querySelectorAll<HTMLElement>('[data-fit]')) {
    part.classList.remove('wrapped');
    const places = [...part.querySelectorAll<HTMLElement>('.fit')];
    let size = 1;
    part.style.setProperty('--fit', '1');
    for (let i = 0; i < ROUNDS; i += 1) {
      const over = Math.max(...places.map((p) => p.scrollWidth / Math.max(1, p.clientWidth)));
      if (!(over > 1)) break;
      size /= over + 0.002;
      part.style.setProperty('--fit', size.toFixed(4));
    }
    const least = Number(part.dataset['fit']);
    const wraps = size < least && part.dataset['wraps'] === 'true';
    part.classList.toggle('wrapped', wraps);
    if (wraps) part.style.setProperty('--fit', String(least));
    else if (size < least) fits = false;
  }
  return fits;
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
