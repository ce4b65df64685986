/** Paper on the desktop: a hidden window opens the very page that the window previews, and prints it. */
import { BrowserWindow } from 'electron';
import { finishPdf } from '../hosting/finish-pdf.ts';
import { printRoute, READY_WITHIN, requireWhole } from '../hosting/printed.ts';
import type { PaperSlots } from '../hosting/slots.ts';
import type { PaperPort } from '../service/program.ts';
import { WINDOW_ADDRESS } from './address.ts';
import { webPreferences } from './window.ts';

/** Runs in the page: answers `data-ready` of the root as soon as the page sets it, or null when it never does. */
const WAIT_UNTIL_READY = `new Promise((done) => {
  const root = document.documentElement;
  const watch = new MutationObserver(look);
  const late = setTimeout(() => finish(null), ${READY_WITHIN});
  function finish(ready) { watch.disconnect(); clearTimeout(late); done(ready); }
  function look() { if (root.dataset.ready) finish(root.dataset.ready); }
  watch.observe(root, { attributes: true, attributeFilter: ['data-ready'] });
  look();
})`;

async function printSlot(preload: string, slot: string, paper: 'a4' | 'letter', author: string): Promise<Uint8Array> {
  const window = new BrowserWindow({
    show: false,
    // A hidden page is otherwise slowed down, and may never come to lay out its sheets.
    webPreferences: { ...webPreferences(preload), backgroundThrottling: false },
  });
  try {
    await window.loadURL(`${WINDOW_ADDRESS}${printRoute(slot, paper)}`);
    const ready: unknown = await window.webContents.executeJavaScript(WAIT_UNTIL_READY);
    requireWhole(typeof ready === 'string' ? ready : null);
    const bytes = await window.webContents.printToPDF({
      preferCSSPageSize: true,
      printBackground: true,
      generateTaggedPDF: true,
      generateDocumentOutline: true,
    });
    return await finishPdf(bytes, author);
  } finally {
    window.destroy();
  }
}

/** `print` throws a ContractFailure: `refused` when a sheet would be clipped, `internal` when the page is not ready in time. */
export function windowPaper(preload: string, slots: PaperSlots): PaperPort {
  return {
    async print(document, paper, author = '') {
      const slot = slots.put(document);
      try {
        return await printSlot(preload, slot, paper, author);
      } finally {
        slots.drop(slot);
      }
    },
  };
}
