/** The window's page as it is served: the built one with this answer's nonce. It holds no secret. */

const HEAD = /<head(?:\s[^>]*)?>/i;

/** Writes the meta tag into the page's head. `nonce` is base64url, so that it can't close the attribute. Throws when there is no head. */
export function windowPage(page: string, nonce: string): string {
  if (!/^[A-Za-z0-9_-]+$/.test(nonce)) throw new RangeError('a nonce is not base64url');
  const head = HEAD.exec(page);
  if (head === null) throw new Error('the page has no head');
  const after = head.index + head[0].length;
  return `${page.slice(0, after)}<meta property="csp-nonce" nonce="${nonce}">${page.slice(after)}`;
}
