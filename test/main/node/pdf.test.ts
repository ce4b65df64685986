/** A plan through a real Chromium: the page that the window previews, as a PDF. Needs the built window and a browser. */

import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { dateOf } from '../../../core/calendar/clock.ts';
import { anyPlanSchema, type PlanDocument } from '../../../core/homing/document.ts';
import { now } from '../../../main/hosting/clock.ts';
import { readWindowFiles } from '../../../main/hosting/files.ts';
import { PaperSlots } from '../../../main/hosting/slots.ts';
import { type ChromiumPaper, chromiumPaper, printingBrowser } from '../../../main/node/pdf.ts';
import { createServer, type Served } from '../../../main/node/server.ts';
import type { Program } from '../../../main/service/program.ts';
import { call, planOn } from '../../contract/world.ts';
import { onlyWhere } from '../../only-where.ts';
import { openOn, scratchFolder } from '../open.ts';

const PLANS = fileURLToPath(new URL('../../fixtures/plans/', import.meta.url));
const BUILT = fileURLToPath(new URL('../../../out/renderer/', import.meta.url));
const isBuilt = existsSync(`${BUILT}index.html`);
const browser = await printingBrowser();

interface Pdf {
  readonly title: string;
  readonly language: string;
  readonly isTagged: boolean;
  /** Width and height of each page, in points. */
  readonly sizes: number[][];
  readonly texts: string[];
}

async function read(bytes: Uint8Array): Promise<Pdf> {
  const pdf = await getDocument({ data: new Uint8Array(bytes), verbosity: 0 }).promise;
  const { info } = await pdf.getMetadata();
  const { Title: title, Language: language } = info as { Title?: string; Language?: string };
  const pages = await Promise.all(Array.from({ length: pdf.numPages }, (_, n) => pdf.getPage(n + 1)));
  const contents = await Promise.all(pages.map((page) => page.getTextContent()));
  return {
    title: title ?? '',
    language: language ?? '',
    isTagged: (await pages[0]?.getStructTree()) !== null,
    sizes: pages.map((page) => page.view.slice(2).map(Math.round)),
    texts: contents.map((content) => content.items.map((item) => ('str' in item ? item.str : '')).join(' ')),
  };
}

const canPrint = onlyWhere(
  isBuilt && browser !== null,
  'the window is not built ("npm test" builds it first), or no Chromium is installed',
);
describe.runIf(canPrint)('paper through Chromium', () => {
  const { folder, remove } = scratchFolder();
  const slots = new PaperSlots(() => performance.now());
  let program: Program;
  let server: Served;
  let paper: ChromiumPaper;
  let document: PlanDocument;

  beforeAll(async () => {
    paper = chromiumPaper(browser ?? '', slots, () => server);
    program = openOn(folder, { paper });
    server = await createServer({ dispatch: program.dispatch, files: readWindowFiles(BUILT), slots, port: 0 });
    const { dispatch } = program;
    const { local } = now();
    await call(dispatch, 'records.addDemo', { now: local, utcOffsetMinutes: -new Date().getTimezoneOffset() });
    const { litters } = await call(dispatch, 'litter.all', {});
    document = await planOn(dispatch, litters[0]?.puppies[0]?.id ?? '', dateOf(local));
  });
  afterAll(async () => {
    await paper.close();
    await server.close();
    program.close();
    remove();
  });

  // Sizes: ISO 216 A4 is 210 × 297 mm; Letter is 8.5 × 11 in (ANSI/ASME Y14.1); 72 points are an inch.
  test.each([
    ['a4', [595, 842]],
    ['letter', [612, 792]],
  ] as const)(
    '%s: three whole sheets, tagged, with title, language and words',
    async (size, points) => {
      const bytes = await paper.print(document, size);
      expect(new TextDecoder('latin1').decode(bytes.slice(0, 5))).toBe('%PDF-');
      const pdf = await read(bytes);
      expect(pdf.sizes).toHaveLength(3);
      for (const sides of pdf.sizes) {
        for (const [at, side] of sides.entries()) expect(Math.abs(side - (points[at] ?? 0))).toBeLessThanOrEqual(1);
      }
      expect(pdf.isTagged).toBe(true);
      expect(pdf.language).toBe('en');
      expect(pdf.title).not.toBe('');
      expect(pdf.texts[0]).toContain(document.name);
    },
    60_000,
  );

  // ISO 14289-1 (PDF/UA): 7.1 roles that the format does not define are mapped, the title is shown; 7.21 fonts are embedded as fonts; ISO 32000-1, 14.8.4: bodies of list items.
  test('it says who wrote it and with what, and its structure holds only roles that readers know', async () => {
    const { PDFDict, PDFDocument, PDFName } = await import('pdf-lib');
    const pdf = await PDFDocument.load(await paper.print(document, 'a4', 'Anke Holm'), { updateMetadata: false });
    expect([pdf.getAuthor(), pdf.getCreator(), pdf.getTitle()]).toEqual(['Anke Holm', 'Whelpside', document.title]);
    const objects = pdf.context.enumerateIndirectObjects().flatMap(([, o]) => (o instanceof PDFDict ? [o] : []));
    const named = (key: string) => objects.flatMap((o) => o.get(PDFName.of(key))?.toString() ?? []);
    expect(named('Subtype')).toContain('/Type0');
    expect(named('Subtype')).not.toContain('/Type3');
    const roles = named('S');
    for (const role of ['/H1', '/H2', '/Table', '/Caption', '/TH', '/TD', '/L', '/Figure']) expect(roles).toContain(role);
    expect(roles.filter((r) => r === '/LBody')).toHaveLength(roles.filter((r) => r === '/LI').length);
    const map = pdf.catalog.lookup(PDFName.of('StructTreeRoot'), PDFDict).lookup(PDFName.of('RoleMap'), PDFDict);
    expect(map.get(PDFName.of('Strong'))?.toString()).toBe('/Span');
    expect(pdf.catalog.lookup(PDFName.of('ViewerPreferences'), PDFDict).toString()).toContain('/DisplayDocTitle true');
  }, 60_000);

  // Documents as commit 0fe7f8e kept them, and where each of their words stood on its paper: page, x, y in points.
  test.each([
    ['eight-weeks', 'a4'],
    ['ounces', 'letter'],
    ['long-keep', 'letter'],
  ] as const)(
    'a plan that was handed over, %s on %s, is printed again word for word in its place',
    async (name, size) => {
      const kept = anyPlanSchema.parse(JSON.parse(readFileSync(`${PLANS}${name}.json`, 'utf8')));
      const words = await places(await paper.print(kept, size));
      expect(words).toEqual(readFileSync(`${PLANS}${name}-${size}.txt`, 'utf8').trimEnd().split('\n'));
    },
    60_000,
  );
});

async function places(bytes: Uint8Array): Promise<string[]> {
  const pdf = await getDocument({ data: new Uint8Array(bytes), verbosity: 0 }).promise;
  const pages = await Promise.all(Array.from({ length: pdf.numPages }, (_, n) => pdf.getPage(n + 1)));
  const contents = await Promise.all(pages.map((page) => page.getTextContent()));
  return contents.flatMap(({ items }, n) =>
    items.flatMap((item) => {
      if (!('str' in item) || item.str.trim() === '') return [];
      const [, , , , x, y] = item.transform as number[];
      return [`${n + 1} ${Math.round(x ?? 0)} ${Math.round(y ?? 0)} ${item.str}`];
    }),
  );
}
