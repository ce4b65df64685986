/**
 * What a browser leaves out of a PDF that is to be read aloud and found again: who wrote it and with what, a title in the bar, roles of PDF 2.0 that
 * older readers do not know, and the body of each item of a list (ISO 14289-1, sections 7.1 and 7.2; ISO 32000-1, 14.8.4).
 */
import { PDFArray, PDFDict, PDFDocument, PDFName, PDFRef } from 'pdf-lib';

const CREATOR = 'Whelpside';
/** Roles that the engine takes from HTML and that PDF 1.7 does not define, as the ones that it does. */
const ROLES: Readonly<Record<string, string>> = { Strong: 'Span', Em: 'Span' };

/** The same pages with its author (left out when empty), its creator, and a structure that follows the standard. */
export async function finishPdf(bytes: Uint8Array, author: string): Promise<Uint8Array> {
  const pdf = await PDFDocument.load(bytes, { updateMetadata: false });
  pdf.setCreator(CREATOR);
  if (author.trim() !== '') pdf.setAuthor(author.trim());
  const { catalog, context } = pdf;
  catalog.set(PDFName.of('ViewerPreferences'), context.obj({ DisplayDocTitle: true }));
  const root = catalog.lookupMaybe(PDFName.of('StructTreeRoot'), PDFDict);
  root?.set(PDFName.of('RoleMap'), context.obj(ROLES));
  for (const page of pdf.getPages()) page.node.set(PDFName.of('Tabs'), PDFName.of('S'));
  for (const [ref, object] of context.enumerateIndirectObjects()) {
    if (object instanceof PDFDict && object.get(PDFName.of('S')) === PDFName.of('LI')) giveBody(pdf, ref, object);
  }
  return await pdf.save({ useObjectStreams: false });
}

/** Puts the elements of a list item into a body of their own; content that is not in an element stays where it is. */
function giveBody({ context }: PDFDocument, ref: PDFRef, item: PDFDict): void {
  const kids = item.lookup(PDFName.of('K'));
  const all = kids instanceof PDFArray ? kids.asArray() : [item.get(PDFName.of('K'))];
  const elements = all.filter((kid) => kid instanceof PDFRef);
  if (elements.length === 0) return;
  const body = context.register(context.obj({ Type: 'StructElem', S: 'LBody', P: ref, K: elements }));
  for (const element of elements) context.lookup(element, PDFDict).set(PDFName.of('P'), body);
  // The dash before an item is content of the item itself.
  item.set(PDFName.of('K'), context.obj([...all.filter((kid) => !(kid instanceof PDFRef)), body]));
}
