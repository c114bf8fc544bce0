import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vite';

const rootFolder = fileURLToPath(new URL('.', import.meta.url));

/**
 * The page is served under a Content-Security-Policy without 'unsafe-inline' (src/commands/serve.mjs), so
 * nothing may be inlined: no data: scripts, no module-preload shim, no small assets folded into the code.
 */
export default defineConfig({
  root: 'src/shell',
  // Relative addresses, so that the built folder also works from a sub-folder of a static host.
  base: './',
  publicDir: false,
  build: {
    outDir: `${rootFolder}dist`,
    emptyOutDir: true,
    target: 'es2022',
    sourcemap: true,
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
  },
  worker: { format: 'es' },
  server: {
    host: '127.0.0.1',
    fs: { allow: [rootFolder] },
  },
});
