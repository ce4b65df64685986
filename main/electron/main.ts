/** The desktop program's entry: says where the built files are and starts it. */
import { fileURLToPath } from 'node:url';
import { readDesktopArguments } from './arguments.ts';
import { endInASentence, startDesktop } from './desktop.ts';

const built = (path: string): string => fileURLToPath(new URL(path, import.meta.url));

// Not awaited: the app is not ready before this module is.
startDesktop({
  args: readDesktopArguments(process.argv.slice(1), process.cwd()),
  windowFolder: built('../renderer/'),
  preload: built('../preload/preload.cjs'),
}).catch(endInASentence);
