/** Everything that is built: the window, and the three programs around it. One configuration, one `vite build --app`. */
import { builtinModules } from 'node:module';
import { fileURLToPath } from 'node:url';
import react from '@vitejs/plugin-react';
import { defineConfig, type EnvironmentOptions } from 'vite';

const at = (path: string) => fileURLToPath(new URL(`../${path}`, import.meta.url));

/** What a program finds at run time instead of carrying it along: the platform, native code, and a driver that starts browsers. */
const external = [
  'electron',
  'better-sqlite3',
  'playwright-core',
  ...builtinModules,
  ...builtinModules.map((name) => `node:${name}`),
];

function program(entry: string, outFile: string, format: 'es' | 'cjs'): EnvironmentOptions {
  const [folder = '', file = ''] = outFile.split('/');
  return {
    consumer: 'server',
    resolve: { noExternal: true, external },
    build: {
      ssr: true,
      target: 'node24',
      outDir: at(`out/${folder}`),
      emptyOutDir: true,
      minify: false,
      rolldownOptions: {
        input: at(entry),
        external,
        output: { format, entryFileNames: file, codeSplitting: false },
      },
    },
  };
}

export default defineConfig({
  root: at('renderer'),
  base: '/',
  publicDir: false,
  cacheDir: at('node_modules/.vite'),
  logLevel: 'warn',
  plugins: [react()],
  builder: {},
  environments: {
    client: {
      build: {
        outDir: at('out/renderer'),
        emptyOutDir: true,
        // The window's policy allows neither inline scripts nor data: addresses.
        assetsInlineLimit: 0,
        modulePreload: { polyfill: false },
        chunkSizeWarningLimit: 2_000,
        rolldownOptions: { input: at('renderer/index.html') },
      },
    },
    main: program('main/electron/main.ts', 'main/main.mjs', 'es'),
    host: program('main/node/host.ts', 'host/host.mjs', 'es'),
    // A sandboxed preload must be one CommonJS file.
    preload: program('main/preload/preload.ts', 'preload/preload.cjs', 'cjs'),
  },
});
