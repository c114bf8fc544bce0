import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build, defineConfig, type Plugin } from 'vite';
import { writeNotebookFile } from './src/notebook/notebook-file.ts';
import { FIRST_FACES } from './src/shell/look/first-faces.ts';
import { WORKED_EXAMPLE } from './src/shell/make-default.ts';
import { namesItsContent, type VersionFile } from './src/shell/offline/version-files.ts';
import { defaultNotebook } from './src/starter/default-notebook.ts';

const rootFolder = fileURLToPath(new URL('.', import.meta.url));

/** The worked example as the text of a notebook file, made from its data and formulas. */
function workedExampleText(): string {
  const folder = `${rootFolder}datasets/plateau-loop/`;
  const names = readdirSync(folder).filter((name) => name.endsWith('.csv'));
  return writeNotebookFile(
    defaultNotebook(Object.fromEntries(names.map((name) => [name, readFileSync(folder + name, 'utf8')]))),
  );
}

/**
 * Puts the worked example beside the page as a notebook file. A first visit then reads a file like any other,
 * and needs neither the code that lays it out nor the reader of its CSV files.
 */
function workedExample(): Plugin {
  return {
    name: 'worked-example',
    generateBundle() {
      this.emitFile({ type: 'asset', fileName: WORKED_EXAMPLE, source: workedExampleText() });
    },
    configureServer(server) {
      server.middlewares.use(`/${WORKED_EXAMPLE}`, (_request, response) => {
        response.setHeader('Content-Type', 'application/json; charset=utf-8').end(workedExampleText());
      });
    },
  };
}

/** What a browser needs to install the page: its manifest and icons, under names that stay the same. */
function installable(): Plugin {
  const files = {
    'manifest.webmanifest': 'manifest.json',
    'icon-192.png': 'icons/icon-192.png',
    'icon-512.png': 'icons/icon-512.png',
  };
  return {
    name: 'installable',
    apply: 'build',
    transformIndexHtml: () => [
      { tag: 'link', attrs: { rel: 'manifest', href: './manifest.webmanifest' }, injectTo: 'head' },
      { tag: 'link', attrs: { rel: 'apple-touch-icon', href: './icon-192.png' }, injectTo: 'head' },
    ],
    generateBundle() {
      for (const [fileName, from] of Object.entries(files))
        this.emitFile({
          type: 'asset',
          fileName,
          source: readFileSync(`${rootFolder}src/shell/${from}`),
        });
    },
  };
}

/** Has the browser fetch the first faces beside the scripts, not after them. */
function facesAtOnce(): Plugin {
  return {
    name: 'faces-at-once',
    apply: 'build',
    transformIndexHtml: {
      order: 'post',
      handler: (_html, { bundle = {} }) =>
        FIRST_FACES.map(({ file }) => {
          const href = Object.keys(bundle).find((name) => name.startsWith(`assets/${file}-`));
          if (href === undefined) throw new Error(`The build has no file of the face ${file}.`);
          const attrs = {
            rel: 'preload',
            as: 'font',
            type: 'font/woff2',
            href: `./${href}`,
            crossorigin: '',
          };
          return { tag: 'link', attrs, injectTo: 'head' as const };
        }),
    },
  };
}

/** All files of the built app but the source maps, each with the hashes that tell it from another. */
function versionFiles(folder: string): readonly VersionFile[] {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && !entry.name.endsWith('.map'))
    .map((entry) => {
      const path = join(entry.parentPath, entry.name);
      const url = path.slice(join(folder, '/').length).replaceAll('\\', '/');
      const hash = createHash('sha256').update(readFileSync(path)).digest('base64');
      return { url, revision: namesItsContent(url) ? null : hash, integrity: `sha256-${hash}` };
    })
    .sort((a, b) => (a.url < b.url ? -1 : 1));
}

/** Builds the service worker last, when all the files that it is to keep are there. */
function offline(): Plugin {
  return {
    name: 'offline',
    apply: 'build',
    async writeBundle({ dir = '' }) {
      const files = versionFiles(dir);
      const version = createHash('sha256').update(JSON.stringify(files)).digest('hex').slice(0, 16);
      await build({
        configFile: false,
        logLevel: 'warn',
        define: {
          VERSION: JSON.stringify(version),
          VERSION_FILES: JSON.stringify(files),
          'process.env.NODE_ENV': '"production"',
        },
        build: {
          outDir: dir,
          emptyOutDir: false,
          copyPublicDir: false,
          target: 'es2022',
          rolldownOptions: {
            input: `${rootFolder}src/shell/offline/service-worker.ts`,
            output: { format: 'iife', entryFileNames: 'service-worker.js' },
          },
        },
      });
    },
  };
}

/**
 * Files of packages that have something else in their place here: @stdlib words the errors of a
 * function that every browser has, which nothing ever runs; micromark's names of characters would be looked
 * up in a way that the page's policy forbids.
 */
const LEFT_OUT: readonly (readonly [RegExp, string])[] = [
  [
    /\/decode-named-character-reference\/index\.(dom\.)?js$/,
    `export * from '${rootFolder}cells/note/named-characters.ts';`,
  ],
  [/\/@stdlib\/string-format\/lib\/index\.js$/, 'module.exports = String;'],
];

function leaveOut(): Plugin {
  return {
    name: 'leave-out',
    load(id) {
      return LEFT_OUT.find(([file]) => file.test(id))?.[1] ?? null;
    },
  };
}

/**
 * Takes comments and the space around signs out of the style sheets that stand in the code, which the minifier of
 * scripts leaves as they are. What stands in quotes is left alone.
 */
function bareStyles(): Plugin {
  const bare = (sheet: string): string =>
    sheet.replace(
      /("[^"]*"|'[^']*')|\/\*[\s\S]*?\*\/|\s*([{};])\s*|\s+/g,
      (_, quoted?: string, sign?: string) => quoted ?? sign ?? ' ',
    );
  return {
    name: 'bare-styles',
    apply: 'build',
    enforce: 'pre',
    transform(code, id) {
      if (!id.startsWith(rootFolder) || !/\.ts$/.test(id) || !code.includes('css`')) return null;
      const found = code.replace(/\bcss`([^`]*)`/g, (_, sheet: string) => `css\`${bare(sheet)}\``);
      // Lines are counted from another text then: a fault in a style sheet has no place in the script.
      return { code: found, map: null };
    },
  };
}

/**
 * The page is served under a Content-Security-Policy without 'unsafe-inline' (src/commands/serve.mjs), so
 * nothing may be inlined: no data: scripts, no module-preload shim, no small assets folded into the code.
 */
export default defineConfig({
  root: 'src/shell',
  // Relative addresses, so that the built folder also works from a sub-folder of a static host.
  base: './',
  publicDir: false,
  plugins: [workedExample(), installable(), facesAtOnce(), leaveOut(), bareStyles(), offline()],
  build: {
    outDir: `${rootFolder}dist`,
    emptyOutDir: true,
    target: 'es2022',
    sourcemap: true,
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    // What a page opens with is one file: the dozen that would be shared with what comes later take longer to come.
    rolldownOptions: { output: { codeSplitting: { groups: [{ name: 'first', tags: ['$initial'] }] } } },
    // What is too much is said by tests/browser/weight.test.ts, gzipped.
    chunkSizeWarningLimit: 2_000,
  },
  worker: { format: 'es' },
  server: {
    host: '127.0.0.1',
    fs: { allow: [rootFolder] },
  },
});
