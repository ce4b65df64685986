/** The window and the browser host in the language that nobody speaks, beside the real build. */
import { fileURLToPath } from 'node:url';
import { mergeConfig, type Plugin } from 'vite';
import real from '../../../build/vite.config.ts';

const ENGLISH = /\/core\/words\/en\/catalogue\.ts$/;
const PSEUDO = fileURLToPath(new URL('./catalogue.ts', import.meta.url));
const out = (folder: string) => fileURLToPath(new URL(`../../../test-results/pseudo/${folder}`, import.meta.url));

const instead: Plugin = {
  name: 'pseudo-language',
  enforce: 'pre',
  async resolveId(source, importer) {
    if (importer === undefined || importer === PSEUDO || !source.endsWith('/catalogue.ts')) return null;
    const found = await this.resolve(source, importer, { skipSelf: true });
    return found !== null && ENGLISH.test(found.id) ? PSEUDO : null;
  },
};

const { main: _main, preload: _preload, ...kept } = real.environments ?? {};
export default mergeConfig(
  { ...real, environments: kept },
  {
    plugins: [instead],
    environments: { client: { build: { outDir: out('renderer') } }, host: { build: { outDir: out('host') } } },
  },
);
