/** Every test that needs no browser: core, main, renderer parts, evidence, layers, set-up, package. */
import { fileURLToPath } from 'node:url';
import react from '@vitejs/plugin-react';
import { defineConfig } from 'vitest/config';

export default defineConfig({
  root: fileURLToPath(new URL('..', import.meta.url)),
  plugins: [react()],
  test: {
    environment: 'node',
    include: ['test/**/*.test.ts', 'test/**/*.test.tsx'],
    exclude: ['test/e2e/**', 'test/desktop/**'],
    // Native modules need a process of their own.
    pool: 'forks',
    testTimeout: 20_000,
    hookTimeout: 20_000,
  },
});
