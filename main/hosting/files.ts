/** The window's files, read once at start. A request is looked up in this list; no path is ever made from a request. */
import { readdirSync, readFileSync } from 'node:fs';
import { extname, join } from 'node:path';

export interface WindowFile {
  readonly type: string;
  readonly bytes: Uint8Array<ArrayBuffer>;
  /** Its name carries a hash of its content, so that it never changes. */
  readonly lasting: boolean;
}

/** Paths as a request writes them (`/assets/app-3f2a.js`) to files. The page itself is not among them: see `page`. */
export interface WindowFiles {
  readonly page: string;
  readonly others: ReadonlyMap<string, WindowFile>;
}

const TYPES: Readonly<Record<string, string>> = {
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.ico': 'image/x-icon',
  '.webp': 'image/webp',
  '.woff2': 'font/woff2',
  '.woff': 'font/woff',
  '.json': 'application/json',
  '.txt': 'text/plain; charset=utf-8',
};

/** The names of the plain files under a folder, relative to it, with `/` between the parts. Links are left out. */
function namesUnder(folder: string, prefix: string): string[] {
  return readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
    const name = `${prefix}${entry.name}`;
    if (entry.isDirectory()) return namesUnder(join(folder, entry.name), `${name}/`);
    return entry.isFile() ? [name] : [];
  });
}

/** Reads the built window. Files of a kind that the window does not use are left out. Throws when there is no page. */
export function readWindowFiles(folder: string): WindowFiles {
  const others = new Map<string, WindowFile>();
  for (const name of namesUnder(folder, '')) {
    const type = TYPES[extname(name)];
    if (type === undefined) continue;
    others.set(`/${name}`, {
      type,
      bytes: new Uint8Array(readFileSync(join(folder, name))),
      lasting: name.startsWith('assets/'),
    });
  }
  return { page: readFileSync(join(folder, 'index.html'), 'utf8'), others };
}

/** How long a file may be kept by the browser. */
export function cachingOf(file: WindowFile): string {
  return file.lasting ? 'private, max-age=31536000, immutable' : 'no-store';
}
