/**
 * The door: the one page that is shown to anybody on this computer. It holds nothing. Its script takes the key out of the
 * address (behind the #, which a browser never sends), exchanges it for the session, and keeps the window's secret for
 * this tab only, so that neither a look at the address bar, nor at a list of processes, nor a copied cookie lets anybody in.
 */

/** What the page reads when the key is not, or no longer, good. */
export const SHUT =
  'Open the address that Whelpside printed last. Numbers that were typed here and are not written yet are kept in this window: open the address in it.';

/** Where the window finds its secret; the same word is in `renderer/data/host.ts`. */
export const SECRET_ITEM = 'whelpside';

export const DOOR_PAGE =
  '<!doctype html><html lang="en"><head><meta charset="utf-8"><title>Whelpside</title><link rel="icon" href="data:,"></head>' +
  '<body><p id="said">Opening …</p><script src="/enter.js"></script></body></html>';

export const DOOR_SCRIPT = `const key = location.hash.slice(1);
history.replaceState(null, '', '/enter');
const shut = () => { document.getElementById('said').textContent = ${JSON.stringify(SHUT)}; };
fetch('/enter', { method: 'POST', headers: { 'content-type': 'application/json' }, body: JSON.stringify({ key }) })
  .then(async (answer) => {
    if (!answer.ok) return shut();
    sessionStorage.setItem(${JSON.stringify(SECRET_ITEM)}, (await answer.json()).secret);
    location.replace('/');
  })
  .catch(shut);
`;
