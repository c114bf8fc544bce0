// npm test: the whole gate, in order, ending at the first step that fails.
// npm test -- tests/trade: only those tests.
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { availableParallelism, tmpdir } from 'node:os';
import { join } from 'node:path';
import { ensureBrowser } from './find-browser.mjs';
import { requireNode } from './node-version.mjs';
import { buildWhenStale, install } from './prepare.mjs';
import { hearTool, runTool, TOOL } from './project.mjs';
import { closingLine, countReport } from './test-totals.mjs';

requireNode();
await install();

// What the tools print is shown when they end: they cannot tell by themselves whether it may have colours.
const isSeen = process.stdout.isTTY === true;

/**
 * What needs no other's result, the longest first; as many run at a time as there are cores.
 * @type {readonly { heading: string, mend: string, script: string, args: readonly string[] }[]}
 */
const CHECKS = [
  {
    heading: 'Types',
    mend: 'Mend the lines above.',
    script: TOOL.typescript,
    args: ['--noEmit', '--pretty', `${isSeen}`],
  },
  {
    heading: 'Types without a page (trade, formula, tables, notebook)',
    mend: 'These layers run in Node and in workers: nothing of the page may be used there.',
    script: TOOL.typescript,
    args: ['--noEmit', '--pretty', `${isSeen}`, '-p', 'src/tsconfig.headless.json'],
  },
  {
    heading: 'Build',
    mend: 'The lines above say which file stopped it.',
    script: TOOL.vite,
    args: ['build', '--logLevel', 'warn'],
  },
  {
    heading: 'Dependencies between layers',
    mend: '.dependency-cruiser.cjs says what each layer may import, and why.',
    script: TOOL.dependencies,
    args: ['--config', '.dependency-cruiser.cjs', 'src', 'cells'],
  },
  {
    heading: 'Format and lint',
    mend: '`npm run format` mends most of it.',
    script: TOOL.biome,
    args: ['ci', '--error-on-warnings', `--colors=${isSeen ? 'force' : 'off'}`, '.'],
  },
];

/** @type {import('./test-totals.mjs').Totals[]} */
const runs = [];
const only = process.argv.slice(2);
const passed = only.length > 0 ? await runOnly(only) : await runGate();
if (runs.length > 0) console.log(closingLine(runs));
process.exitCode = passed ? 0 : 1;

async function runGate() {
  const steps = [
    { heading: 'Checks and build', mend: 'Mend what failed above.', run: runChecks },
    { heading: 'Unit tests', mend: 'Mend what failed above.', run: () => runTests(['--project', 'unit']) },
    {
      heading: 'Browser tests',
      mend: 'Mend what failed above.',
      run: () => runBrowserTests(['--project', 'browser']),
    },
  ];
  for (const [index, { heading, mend, run }] of steps.entries()) {
    console.log(`\n${index + 1} of ${steps.length}: ${heading}`);
    if (!(await run())) {
      console.error(`\nStopped at step ${index + 1}, ${heading}. ${mend}`);
      return false;
    }
  }
  console.log('');
  return true;
}

/** Runs all checks, also after one has failed: what is to be mended is then known at once. */
async function runChecks() {
  const waiting = [...CHECKS];
  let passed = true;
  const runNext = async () => {
    for (let check = waiting.shift(); check !== undefined; check = waiting.shift()) {
      const { heading, mend, script, args } = check;
      const heard = await hearTool(script, args);
      console.log(`${heading}: ${heard.passed ? 'passed' : 'failed'}`);
      if (heard.printed.trim() !== '') console.log(heard.printed.trimEnd());
      if (!heard.passed) console.error(mend);
      passed &&= heard.passed;
    }
  };
  await Promise.all(Array.from({ length: Math.min(CHECKS.length, availableParallelism()) }, runNext));
  return passed;
}

/** @param {string[]} args */
async function runOnly(args) {
  if (!args.some((arg) => arg.includes('browser'))) return runTests(args);
  await buildWhenStale();
  return runBrowserTests(args);
}

/** @param {string[]} args */
async function runBrowserTests(args) {
  try {
    return await runTests(args, { CHROME_PATH: await ensureBrowser() });
  } catch (error) {
    console.error(error instanceof Error ? error.message : error);
    return false;
  }
}

/**
 * @param {string[]} args
 * @param {Record<string, string>} [env]
 */
async function runTests(args, env = {}) {
  const folder = mkdtempSync(join(tmpdir(), 'sparewell-test-'));
  const reportPath = join(folder, 'report.json');
  try {
    const reporters = ['--reporter=default', '--reporter=json', `--outputFile.json=${reportPath}`];
    const ok = await runTool(TOOL.vitest, ['run', ...reporters, ...args], { env });
    runs.push(readTotals(reportPath));
    return ok;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** @param {string} reportPath */
function readTotals(reportPath) {
  try {
    return countReport(JSON.parse(readFileSync(reportPath, 'utf8')));
  } catch {
    return { passed: 0, failed: 1 }; // the runner ended before it could write: that is a failure
  }
}
