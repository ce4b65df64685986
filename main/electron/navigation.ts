/** The window stays where it is: it goes nowhere else, opens nothing, holds no web view and saves only what it made itself. */
import type { App, Session, WebContents } from 'electron';
import { isOwn } from './address.ts';

interface Leaving {
  readonly url: string;
  preventDefault(): void;
}

function stayHome(details: Leaving): void {
  if (!isOwn(details.url)) details.preventDefault();
}

function restrict(contents: WebContents): void {
  contents.on('will-navigate', stayHome);
  contents.on('will-frame-navigate', stayHome);
  contents.on('will-redirect', stayHome);
  contents.on('will-attach-webview', (event) => event.preventDefault());
  contents.setWindowOpenHandler(() => ({ action: 'deny' }));
}

export function restrictNavigation(app: App): void {
  app.on('web-contents-created', (_event, contents) => restrict(contents));
}

/** A download is a file the page made (`blob:app://whelpside/…`), such as a saved plan. */
export function restrictDownloads(session: Session): void {
  session.on('will-download', (event, item) => {
    const address = item.getURL();
    if (!(address.startsWith('blob:') && isOwn(address.slice('blob:'.length)))) event.preventDefault();
  });
}

const FOREIGN = ['http://*/*', 'https://*/*', 'ws://*/*', 'wss://*/*', 'ftp://*/*'];

/** Nothing of the program is fetched from a network, so whatever tries to is not ours. */
export function restrictNetwork(session: Session): void {
  session.webRequest.onBeforeRequest({ urls: FOREIGN }, (_details, answer) => answer({ cancel: true }));
}
