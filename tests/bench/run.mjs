// Runs every tests/bench/*.bench.ts: each is bundled as the app is, and then run by Node. Bundled, because
// a module runner puts a look-up before each imported function, which a bench of inner loops would measure.
import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'vite';

const benchFolder = fileURLToPath(new URL('.', import.meta.url));
const projectFolder = fileURLToPath(new URL('../..', import.meta.url));

const args = process.argv.slice(2);
const asJson = args.includes('--json');
const wanted = args.filter((arg) => !arg.startsWith('-'));
const all = readdirSync(benchFolder)
  .filter((name) => name.endsWith('.bench.ts'))
  .sort();
// A whole name means that bench alone: `page` is also a part of others' names.
const files = all.filter(
  (name) =>
    wanted.length === 0 ||
    wanted.some((part) =>
      all.includes(`${part}.bench.ts`) ? name === `${part}.bench.ts` : name.includes(part),
    ),
);

const outFolder = mkdtempSync(join(tmpdir(), 'sparewell-bench-'));
try {
  if (files.length === 0)
    throw new Error('No bench has such a name: look into tests/bench for the names there are.');
  /** @type {import('./support.ts').RatioResult[]} */
  const results = [];
  for (const file of files) {
    const name = file.replace('.bench.ts', '');
    console.error(`Timing ${name}.`);
    try {
      results.push(...(await runBench(file)));
    } catch (error) {
      // What the others find is not lost with it.
      console.error(`The bench of ${name} ended early: ${error instanceof Error ? error.message : error}`);
      process.exitCode = 1;
    }
  }
  console.log(asJson ? JSON.stringify(results, null, 2) : table(results));
} catch (error) {
  console.error(error instanceof Error ? error.message : error);
  process.exitCode = 1;
} finally {
  rmSync(outFolder, { recursive: true, force: true });
}

/**
 * @param {string} file
 * @returns {Promise<readonly import('./support.ts').RatioResult[]>}
 */
async function runBench(file) {
  const name = file.replace('.ts', '');
  await build({
    configFile: false,
    root: projectFolder,
    logLevel: 'error',
    ssr: { noExternal: true },
    build: {
      ssr: join(benchFolder, file),
      outDir: join(outFolder, name),
      target: 'es2022',
      minify: false,
      rolldownOptions: { output: { entryFileNames: 'bench.mjs' } },
    },
  });
  const { bench } = await import(pathToFileURL(join(outFolder, name, 'bench.mjs')).href);
  return bench();
}

/** @param {readonly import('./support.ts').RatioResult[]} results */
function table(results) {
  const rows = results.map(({ name, unit, candidateMs, baselineMs, ratio }) => [
    unit === undefined ? name : `${name} (${unit}, no times)`,
    candidateMs.toFixed(3),
    baselineMs.toFixed(3),
    ratio.toFixed(2),
  ]);
  const lines = [['what is timed', 'ours, ms', 'baseline, ms', 'ratio'], ...rows];
  const widths = [0, 1, 2, 3].map((column) => Math.max(...lines.map((line) => line[column]?.length ?? 0)));
  return lines
    .map((line) =>
      line
        .map((text, column) =>
          column === 0 ? text.padEnd(widths[0] ?? 0) : text.padStart(widths[column] ?? 0),
        )
        .join('   '),
    )
    .join('\n');
}
