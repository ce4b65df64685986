/**
 * Who may ask at all, before any path is looked at. A hostile page can make the browser send requests here, and a
 * hostile name can be made to mean 127.0.0.1; both are told apart from the window by headers a page cannot forge.
 */
import type { IncomingMessage } from 'node:http';

export interface Refusal {
  readonly status: number;
  /** For developers; people see one plain page. */
  readonly reason: string;
}

/** Headers of which a second one would leave open which of them counts. */
const SINGLE = ['host', 'origin', 'content-type', 'content-length', 'sec-fetch-site', 'sec-fetch-dest', 'x-whelpside'];
const FRAMES = new Set(['iframe', 'frame', 'object', 'embed', 'fencedframe']);

function repeated(request: IncomingMessage): string | null {
  const seen = new Set<string>();
  for (let i = 0; i < request.rawHeaders.length; i += 2) {
    const name = (request.rawHeaders[i] ?? '').toLowerCase();
    if (seen.has(name) && SINGLE.includes(name)) return name;
    seen.add(name);
  }
  return null;
}

/** One header as text; a list, which Node makes only of cookies, counts as none. */
export function headerOf(request: IncomingMessage, name: string): string | null {
  const value = request.headers[name];
  return typeof value === 'string' ? value : null;
}

/** Why this request is refused, or null when it may go on. The door, which holds nothing, may be come to from elsewhere. */
export function refusalOf(request: IncomingMessage, port: number, isDoor = false): Refusal | null {
  const twice = repeated(request);
  if (twice !== null) return { status: 400, reason: `two ${twice} headers` };
  const host = headerOf(request, 'host');
  // Browsers leave the usual port out.
  const at = port === 80 ? '' : `:${port}`;
  if (host !== `127.0.0.1${at}` && host !== `localhost${at}`) return { status: 403, reason: 'a foreign host name' };
  const origin = headerOf(request, 'origin');
  if (origin !== null && origin !== `http://${host}`) return { status: 403, reason: 'a foreign origin' };
  const site = headerOf(request, 'sec-fetch-site');
  if (!isDoor && site !== null && site !== 'same-origin' && site !== 'none')
    return { status: 403, reason: 'asked by another site' };
  if (FRAMES.has(headerOf(request, 'sec-fetch-dest') ?? '')) return { status: 403, reason: 'asked into a frame' };
  if (!(request.url ?? '').startsWith('/')) return { status: 400, reason: 'not a path' };
  return null;
}
