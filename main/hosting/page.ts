/** The window's page as it is served: the built one with this answer's nonce and, over loopback, the header secret. */

const HEAD = /<head(?:\s[^>]*)?>/i;

/**
 * Writes the meta tags into the page's head. `secret` is what the window must send as `x-whelpside`, or null where a
 * bridge carries the calls. Both are base64url, so that neither can close the attribute. Throws when there is no head.
 */
export function windowPage(page: string, nonce: string, secret: string | null): string {
  const safe = /^[A-Za-z0-9_-]+$/;
  if (!safe.test(nonce) || (secret !== null && !safe.test(secret))) throw new RangeError('a nonce or secret is not base64url');
  const head = HEAD.exec(page);
  if (head === null) throw new Error('the page has no head');
  const tags = [`<meta property="csp-nonce" nonce="${nonce}">`];
  if (secret !== null) tags.push(`<meta name="x-whelpside" content="${secret}">`);
  const after = head.index + head[0].length;
  return `${page.slice(0, after)}${tags.join('')}${page.slice(after)}`;
}
