/** The window's scheme: serves its files from the list read at start, and one-time papers. There is no file:// anywhere. */
import { type Protocol, protocol } from 'electron';
import { cachingOf, type WindowFiles } from '../hosting/files.ts';
import { newNonce, securityHeaders } from '../hosting/headers.ts';
import { windowPage } from '../hosting/page.ts';
import type { PaperSlots } from '../hosting/slots.ts';
import { isOwn, SCHEME } from './address.ts';

/** Must run before the app is ready. Standard, so that the page has an origin; secure, so that WebHID and serial are there. */
export function registerScheme(): void {
  protocol.registerSchemesAsPrivileged([
    {
      scheme: SCHEME,
      privileges: {
        standard: true,
        secure: true,
        supportFetchAPI: true,
        bypassCSP: false,
        corsEnabled: false,
        allowServiceWorkers: false,
        stream: false,
      },
    },
  ]);
}

function answer(
  status: number,
  type: string,
  caching: string,
  content: string | Uint8Array<ArrayBuffer>,
  nonce: string | null = null,
): Response {
  return new Response(content, {
    status,
    headers: { ...securityHeaders(nonce), 'content-type': type, 'cache-control': caching },
  });
}

/** The answer to one request of the window. */
function answerWindow(request: Request, files: WindowFiles, slots: PaperSlots): Response {
  if (request.method !== 'GET') return answer(405, 'text/plain', 'no-store', '');
  if (!isOwn(request.url)) return answer(403, 'text/plain', 'no-store', '');
  const { pathname, search } = new URL(request.url);
  if (pathname === '/') {
    const nonce = newNonce();
    return answer(200, 'text/html; charset=utf-8', 'no-store', windowPage(files.page, nonce), nonce);
  }
  const document = slots.take(pathname);
  if (document !== null) return answer(200, 'application/json', 'no-store', JSON.stringify(document));
  const file = search === '' ? files.others.get(pathname) : undefined;
  if (file === undefined) return answer(404, 'text/plain', 'no-store', '');
  return answer(200, file.type, cachingOf(file), file.bytes);
}

export function serveWindow(on: Protocol, files: WindowFiles, slots: PaperSlots): void {
  on.handle(SCHEME, (request) => answerWindow(request, files, slots));
}
