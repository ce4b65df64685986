/**
 * The loopback server: carries the window's files, its calls and its changes, and nothing else. It listens on 127.0.0.1
 * only. The printed address leads to the door with a key that opens a session (cookie) once; a call needs the session and
 * a second secret that only the tab has which came through the door. GET changes nothing. There are no cross-origin headers.
 */
import { createServer as createHttpServer, type IncomingMessage, type ServerResponse } from 'node:http';
import { type AddressInfo, Socket } from 'node:net';
import type { Duplex } from 'node:stream';
import { isOperation, OPERATIONS } from '../../core/contract/operations.ts';
import type { ErrorCode, Result, Tag } from '../../core/contract/result.ts';
import { cachingOf, type WindowFiles } from '../hosting/files.ts';
import { newNonce, securityHeaders } from '../hosting/headers.ts';
import { windowPage } from '../hosting/page.ts';
import type { PaperSlots } from '../hosting/slots.ts';
import type { Dispatch } from '../service/dispatch.ts';
import { isHopeless, readBody } from './body.ts';
import { DOOR_PAGE, DOOR_SCRIPT, SHUT } from './door.ts';
import { headerOf, refusalOf } from './gate.ts';
import { cookieName, hasSession, isSecret, newSecrets, type Secrets, secret } from './secrets.ts';
import { ChangeStream } from './stream.ts';

export interface ServerOptions {
  readonly dispatch: Dispatch;
  readonly files: WindowFiles;
  readonly slots: PaperSlots;
  /** 0 takes a free one. */
  readonly port: number;
  /** A key was used: there is another address now. */
  readonly onEntered?: () => void;
  /** How long a connection may be open before its request's head is there; 10 s unless said otherwise. */
  readonly headMilliseconds?: number;
  /** Of one call's body; 1 MB and 10 s unless said otherwise. An operation of the contract may take more bytes. */
  readonly limits?: { readonly bytes: number; readonly milliseconds: number };
}

export interface Served {
  readonly port: number;
  /** `http://127.0.0.1:PORT` as browsers write it, without a key. */
  readonly origin: string;
  /** The address to open, with the key that is good now. */
  readonly address: string;
  /** What a browser of our own (for paper) needs to be let in. */
  readonly cookie: { readonly name: string; readonly value: string };
  readonly secret: string;
  /** Tells every open tab what changed. */
  tell(tags: readonly Tag[]): void;
  /** Ends every connection and stops listening. */
  close(): Promise<void>;
}

/** Bytes of the body that holds a key. */
const LARGEST_KEY = 1_000;

const LIMITS = { bytes: 1_000_000, milliseconds: 10_000 };

const SHUT_PAGE = `<!doctype html><html lang="en"><head><meta charset="utf-8"><title>Whelpside</title></head><body><p>${SHUT}</p></body></html>`;

class Carrier {
  readonly #options: ServerOptions;
  readonly #secrets: Secrets;
  readonly #limits: { readonly bytes: number; readonly milliseconds: number };
  readonly changes = new ChangeStream();
  port = 0;

  constructor(options: ServerOptions, secrets: Secrets) {
    this.#options = options;
    this.#secrets = secrets;
    this.#limits = options.limits ?? LIMITS;
  }

  async answer(request: IncomingMessage, response: ServerResponse): Promise<void> {
    const url = request.url ?? '';
    const refusal = refusalOf(request, this.port, request.method === 'GET' && url === '/enter');
    if (refusal !== null) return this.#refuse(request, response, refusal.status);
    if (url === '/enter' && request.method === 'POST') return this.#enter(request, response);
    if (url.startsWith('/call/')) return this.#call(request, response, url.slice('/call/'.length));
    if (request.method !== 'GET') return this.#refuse(request, response, 405, { allow: 'GET' });
    if (url === '/enter') return this.#send(response, 200, { 'content-type': 'text/html; charset=utf-8' }, DOOR_PAGE);
    if (url === '/enter.js') return this.#send(response, 200, { 'content-type': 'text/javascript; charset=utf-8' }, DOOR_SCRIPT);
    if (!this.#known(request)) return this.#refuse(request, response, 403);
    if (url === '/' || url === '/index.html') return this.#page(response);
    if (url === '/changed') return this.#follow(request, response);
    if (url.startsWith('/paper/')) return this.#paper(request, response, url);
    return this.#file(request, response, url);
  }

  #known(request: IncomingMessage): boolean {
    return hasSession(request.headers.cookie, this.port, this.#secrets.session);
  }

  async #enter(request: IncomingMessage, response: ServerResponse): Promise<void> {
    if (!isPlainJson(request)) return this.#refuse(request, response, 415);
    const body = await readBody(request, { bytes: LARGEST_KEY, milliseconds: this.#limits.milliseconds });
    if (!body.ok) return this.#refuse(request, response, body.status);
    if (!isSecret(keyIn(body.text), this.#secrets.key)) return this.#refuse(request, response, 403);
    this.#secrets.key = secret();
    const cookie = `${cookieName(this.port)}=${this.#secrets.session}; Path=/; HttpOnly; SameSite=Strict`;
    const headers = { 'content-type': 'application/json', 'set-cookie': cookie };
    this.#send(response, 200, headers, JSON.stringify({ secret: this.#secrets.header }));
    this.#options.onEntered?.();
  }

  #page(response: ServerResponse): void {
    const nonce = newNonce();
    const page = windowPage(this.#options.files.page, nonce);
    this.#send(response, 200, { 'content-type': 'text/html; charset=utf-8' }, page, nonce);
  }

  #file(request: IncomingMessage, response: ServerResponse, url: string): void {
    const file = this.#options.files.others.get(url);
    if (file === undefined) return this.#refuse(request, response, 404);
    this.#send(response, 200, { 'content-type': file.type, 'cache-control': cachingOf(file) }, file.bytes);
  }

  #follow(request: IncomingMessage, response: ServerResponse): void {
    if (!this.#hasSecret(request)) return this.#refuse(request, response, 403);
    if (!this.changes.open(response, securityHeaders(null))) this.#refuse(request, response, 503);
  }

  #paper(request: IncomingMessage, response: ServerResponse, url: string): void {
    const document = this.#options.slots.take(url);
    if (document === null) return this.#refuse(request, response, 404);
    this.#send(response, 200, { 'content-type': 'application/json' }, JSON.stringify(document));
  }

  async #call(request: IncomingMessage, response: ServerResponse, name: string): Promise<void> {
    if (request.method !== 'POST') return this.#refuse(request, response, 405, { allow: 'POST' });
    if (!this.#known(request)) return this.#fail(request, response, 403, 'forbidden', 'no session');
    if (!this.#hasSecret(request)) {
      return this.#fail(request, response, 403, 'forbidden', 'no secret in the header');
    }
    if (!isPlainJson(request)) {
      return this.#fail(request, response, 415, 'forbidden', 'not plain application/json');
    }
    if (!isOperation(name)) return this.#fail(request, response, 404, 'unknown-operation', 'no such operation');
    const limits = { ...this.#limits, bytes: Math.max(this.#limits.bytes, OPERATIONS[name].largest ?? 0) };
    if (isHopeless(headerOf(request, 'content-length'), limits.bytes)) {
      return this.#fail(request, response, 413, 'too-large', 'the body is too large');
    }
    const body = await readBody(request, limits);
    if (!body.ok) return this.#fail(request, response, body.status, body.status === 413 ? 'too-large' : 'bad-input', body.reason);
    const input = parsed(body.text);
    if (!input.ok) return this.#fail(request, response, 400, 'bad-input', 'the body is not JSON');
    this.#result(response, 200, await this.#options.dispatch(name, input.value));
  }

  #hasSecret(request: IncomingMessage): boolean {
    return isSecret(headerOf(request, 'x-whelpside'), this.#secrets.header);
  }

  #fail(request: IncomingMessage, response: ServerResponse, status: number, code: ErrorCode, message: string): void {
    hangUpUnlessRead(request, response);
    this.#result(response, status, { ok: false, error: { code, message } });
  }

  #result(response: ServerResponse, status: number, result: Result<unknown>): void {
    this.#send(response, status, { 'content-type': 'application/json' }, JSON.stringify(result));
  }

  #refuse(request: IncomingMessage, response: ServerResponse, status: number, headers: Record<string, string> = {}): void {
    hangUpUnlessRead(request, response);
    const page = status === 403 ? SHUT_PAGE : '';
    this.#send(response, status, { 'content-type': 'text/html; charset=utf-8', ...headers }, page);
  }

  #send(
    response: ServerResponse,
    status: number,
    headers: Record<string, string>,
    content: string | Uint8Array,
    nonce: string | null = null,
  ): void {
    // She may have closed the tab while the answer was made.
    if (response.destroyed || response.headersSent) return;
    response.writeHead(status, { 'cache-control': 'no-store', ...securityHeaders(nonce), ...headers });
    response.end(content);
  }
}

function isPlainJson(request: IncomingMessage): boolean {
  return headerOf(request, 'content-type') === 'application/json' && request.headers['content-encoding'] === undefined;
}

function keyIn(text: string): string {
  const body = parsed(text);
  const key: unknown = body.ok && typeof body.value === 'object' && body.value !== null ? Reflect.get(body.value, 'key') : '';
  return typeof key === 'string' ? key : '';
}

function parsed(text: string): { ok: true; value: unknown } | { ok: false } {
  try {
    return { ok: true, value: JSON.parse(text) };
  } catch {
    return { ok: false };
  }
}

/** A refused request's body is not read on, so the connection must not be used again: what is left would count as a request. */
function hangUpUnlessRead(request: IncomingMessage, response: ServerResponse): void {
  if (request.complete) return;
  response.setHeader('connection', 'close');
  response.once('finish', () => request.socket.destroySoon());
}

/** What cannot even be read as HTTP is answered by hand and hung up on. */
function refuseUnreadable(socket: Duplex): void {
  // Behind an answer, another one would be taken for the answer to something else.
  if (!socket.writable || (socket instanceof Socket && socket.bytesWritten > 0)) {
    socket.destroy();
    return;
  }
  const headers = Object.entries({ ...securityHeaders(null), 'content-length': '0', connection: 'close' });
  socket.end(`HTTP/1.1 400 Bad Request\r\n${headers.map(([name, value]) => `${name}: ${value}\r\n`).join('')}\r\n`);
}

/**
 * A connection that was open too long without a request, by the clock. When the host itself was held up, the request may
 * lie unread behind it, so what is there is read first. It is closed without an answer: browsers open connections ahead,
 * and would take a word said into one for the answer to what they are just sending.
 */
function hangUpUnlessSpoken(socket: Duplex): void {
  const read = socket instanceof Socket ? socket.bytesRead : 0;
  setImmediate(() => {
    if (!(socket instanceof Socket) || socket.bytesRead === read) socket.destroy();
  });
}

/** Listens on 127.0.0.1. Rejects with Node's own error (`EADDRINUSE`, `EACCES`) when the port cannot be had. */
export async function createServer(options: ServerOptions): Promise<Served> {
  const secrets = newSecrets();
  const carrier = new Carrier(options, secrets);
  // Node would answer a missing Host by itself, without our headers; the gate refuses it as a foreign one.
  const server = createHttpServer({ requireHostHeader: false, connectionsCheckingInterval: 2_000 });
  server.headersTimeout = options.headMilliseconds ?? 10_000;
  server.requestTimeout = 30_000;
  server.on('request', (request, response) => {
    carrier.answer(request, response).catch(() => response.destroy());
  });
  server.on('checkContinue', (_request, response) => {
    response.writeHead(417, { ...securityHeaders(null), 'content-length': '0', connection: 'close' }).end();
  });
  server.on('clientError', (error: NodeJS.ErrnoException, socket) => {
    if (error.code === 'ERR_HTTP_REQUEST_TIMEOUT') hangUpUnlessSpoken(socket);
    else refuseUnreadable(socket);
  });

  const port = await new Promise<number>((resolve, reject) => {
    server.once('error', reject);
    server.listen(options.port, '127.0.0.1', () => {
      server.off('error', reject);
      resolve((server.address() as AddressInfo).port);
    });
  });
  carrier.port = port;
  const { origin } = new URL(`http://127.0.0.1:${port}`);
  return {
    port,
    origin,
    get address() {
      return `${origin}/enter#${secrets.key}`;
    },
    cookie: { name: cookieName(port), value: secrets.session },
    secret: secrets.header,
    tell: (tags) => carrier.changes.tell(tags),
    close: () =>
      new Promise((resolve) => {
        carrier.changes.close();
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  };
}
