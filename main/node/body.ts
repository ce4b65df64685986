/** Reads the body of a call: bounded in size and in time. */
import type { IncomingMessage } from 'node:http';

export type Body = { ok: true; text: string } | { ok: false; status: 400 | 408 | 413; reason: string };

/** A body this many times too large is read to its end and thrown away, so that the refusal reaches the sender. */
const DRAINED = 8;

/** Whether a body of this announced length is not even worth draining. */
export function isHopeless(contentLength: string | null, limit: number): boolean {
  return Number(contentLength ?? 0) > limit * DRAINED;
}

/** The body as UTF-8 text. Never throws; after `ok: false` a body that is not read to its end stays unread. */
export function readBody(request: IncomingMessage, limits: { bytes: number; milliseconds: number }): Promise<Body> {
  return new Promise((resolve) => {
    const parts: Buffer[] = [];
    let size = 0;
    const tooLarge: Body = { ok: false, status: 413, reason: 'the body is too large' };
    const done = (body: Body): void => {
      clearTimeout(timer);
      request.off('data', more);
      resolve(body);
    };
    const more = (part: Buffer): void => {
      size += part.length;
      if (size <= limits.bytes) parts.push(part);
      else if (size > limits.bytes * DRAINED) done(tooLarge);
      else parts.length = 0;
    };
    const end = (): void => {
      if (size > limits.bytes) return done(tooLarge);
      try {
        done({ ok: true, text: new TextDecoder('utf-8', { fatal: true }).decode(Buffer.concat(parts)) });
      } catch {
        done({ ok: false, status: 400, reason: 'the body is not UTF-8' });
      }
    };
    const timer = setTimeout(() => done({ ok: false, status: 408, reason: 'the body is too slow' }), limits.milliseconds);
    request.on('data', more);
    request.once('end', end);
    request.once('error', () => done({ ok: false, status: 400, reason: 'the body broke off' }));
    request.once('close', () => done({ ok: false, status: 400, reason: 'the body broke off' }));
  });
}
