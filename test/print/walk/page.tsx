/** A page that draws many plans at once and tells of their boxes: see walk.test.ts. */
import { useRef } from 'react';
import { createRoot } from 'react-dom/client';
import type { PlanDocument } from '../../../core/homing/document.ts';
import type { Paper } from '../../../renderer/links.ts';
import { PaperSheets } from '../../../renderer/print/PaperSheets.tsx';
import { useFit } from '../../../renderer/print/useFit.ts';
import '../../../renderer/app/fonts.css';
import '../../../renderer/app/tokens.css';
import '../../../renderer/app/base.css';
import '../../../renderer/print/print-page.css';

function Walk({ documents, paper }: { documents: readonly PlanDocument[]; paper: Paper }) {
  const sheets = useRef<HTMLElement>(null);
  useFit(sheets, `${paper} ${documents.map((d) => d.title).join()}`);
  return (
    <main ref={sheets}>
      {documents.map((d) => (
        <PaperSheets key={d.title} document={d} paper={paper} />
      ))}
    </main>
  );
}

const root = createRoot(document.getElementById('root') as HTMLElement);

interface Box {
  readonly text: string;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** 10 pt in CSS pixels, and rounding. */
const LEAST = (10 * 96) / 72 - 0.05;
const SLACK = 1.5;

/** The middle half of each line of text: whole line boxes touch where lines are set close. */
function boxesOf(node: Text): Box[] {
  const range = document.createRange();
  range.selectNodeContents(node);
  return [...range.getClientRects()].map((r) => ({
    text: (node.textContent ?? '').trim(),
    left: r.left,
    right: r.right,
    top: r.top + r.height / 4,
    bottom: r.bottom - r.height / 4,
  }));
}

function sizeOf(element: Element): number {
  const size = Number.parseFloat(getComputedStyle(element).fontSize);
  return element instanceof SVGTextElement ? size * (element.getScreenCTM()?.a ?? 1) : size;
}

/** What is wrong with a sheet: too full, text outside of it, text over text, or text that is too small. */
function complaintsOf(sheet: HTMLElement): string[] {
  const body = sheet.querySelector('.sheet-body') as HTMLElement;
  const edge = body.getBoundingClientRect();
  const complaints: string[] = [];
  const boxes: Box[] = [];
  const walker = document.createTreeWalker(body, NodeFilter.SHOW_TEXT);
  for (let node = walker.nextNode(); node !== null; node = walker.nextNode()) {
    const parent = node.parentElement;
    if (parent === null || (node.textContent ?? '').trim() === '') continue;
    if (sizeOf(parent) < LEAST) complaints.push(`small: ${node.textContent}`);
    boxes.push(...boxesOf(node as Text));
  }
  for (const [i, a] of boxes.entries()) {
    if (a.left < edge.left - SLACK || a.right > edge.right + SLACK || a.top < edge.top - SLACK || a.bottom > edge.bottom + SLACK)
      complaints.push(`outside: ${a.text}`);
    for (const b of boxes.slice(i + 1)) {
      const across = Math.min(a.right, b.right) - Math.max(a.left, b.left);
      const down = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top);
      if (across > SLACK && down > SLACK) complaints.push(`over each other: ${a.text} | ${b.text}`);
    }
  }
  return complaints;
}

declare global {
  interface Window {
    /** Draws the plans, fits them, and answers what is wrong with each sheet that something is wrong with. */
    walk(documents: readonly PlanDocument[], paper: Paper): Promise<string[]>;
  }
}

window.walk = async (documents, paper) => {
  const html = document.documentElement;
  root.render(<Walk documents={documents} paper={paper} />);
  await new Promise<void>((done) => {
    const look = () => (html.dataset['ready'] === undefined ? requestAnimationFrame(look) : done());
    requestAnimationFrame(look);
  });
  return [...document.querySelectorAll<HTMLElement>('.sheet')].flatMap((sheet) => {
    const where = `${sheet.closest('article')?.getAttribute('aria-label')}, sheet ${sheet.dataset['sheet']}`;
    const body = sheet.querySelector('.sheet-body') as HTMLElement;
    const full = body.scrollHeight > body.clientHeight + 1 ? ['too full'] : [];
    return [...full, ...complaintsOf(sheet)].map((c) => `${where}: ${c}`);
  });
};
document.documentElement.dataset['loaded'] = 'true';
