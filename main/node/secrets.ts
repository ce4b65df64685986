/** The secrets of one run: 256 random bits each, never stored, compared in constant time. */
import { createHash, randomBytes, timingSafeEqual } from 'node:crypto';

export interface Secrets {
  /** In the printed address: opens a session, once; then there is another. */
  key: string;
  /** The value of the session cookie. */
  readonly session: string;
  /** In the tab that opened the session and in the header of each call, where a cookie alone must not be enough. */
  readonly header: string;
}

export function secret(): string {
  return randomBytes(32).toString('base64url');
}

export function newSecrets(): Secrets {
  return { key: secret(), session: secret(), header: secret() };
}

/** Whether the text is the secret. Takes the same time wherever they differ, and whatever their lengths. */
export function isSecret(text: string | null | undefined, secret: string): boolean {
  const digest = (t: string): Buffer => createHash('sha256').update(t).digest();
  return timingSafeEqual(digest(text ?? ''), digest(secret));
}

/** The cookie's name. Cookies are shared by all ports of a host, so the port is part of the name. */
export function cookieName(port: number): string {
  return `whelpside-${port}`;
}

/** Whether a Cookie header carries this run's session. */
export function hasSession(header: string | undefined, port: number, session: string): boolean {
  const name = `${cookieName(port)}=`;
  return (header ?? '')
    .split(';')
    .map((part) => part.trim())
    .some((part) => part.startsWith(name) && isSecret(part.slice(name.length), session));
}
