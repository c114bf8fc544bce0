// npm run fuzz -- --minutes N: random and mutated formulas, CSV files, notebook files and edits, for N minutes
// (10 if not given). `--seed S` begins elsewhere; a case that fails prints the seed that shows it again.
// npm run fuzz -- --whole: a million formulas, 100,000 CSV files, 150,000 notebook files, 20,000 edit sequences.
// npm run fuzz -- --kills: 200 kills of the browser and 50 power cuts while editing.
import { ensureBrowser } from './find-browser.mjs';
import { requireNode } from './node-version.mjs';
import { buildWhenStale, install } from './prepare.mjs';
import { giveUp, runTool, TOOL } from './project.mjs';

const USAGE =
  'npm run fuzz takes --minutes N and --seed S, or --whole, or --kills: npm run fuzz -- --minutes 30';

requireNode();
const args = process.argv.slice(2);
const [only] = args.length === 1 ? args : [];
const run = only === '--kills' ? kill : only === '--whole' ? fuzzWhole : fuzzFor(readNumbers(args));
await install();
process.exitCode = (await run()) ? 0 : 1;

/**
 * @param {string[]} given
 * @returns {{ minutes: number, seed: number }}
 */
function readNumbers(given) {
  const numbers = { minutes: 10, seed: (Date.now() % 2_000_000_000) + 1 };
  for (let at = 0; at < given.length; at += 2) {
    const [option, text] = [given[at], given[at + 1]];
    const value = Number(text);
    if (!(value > 0) || (option !== '--minutes' && option !== '--seed')) giveUp(USAGE);
    if (option === '--minutes') numbers.minutes = value;
    else numbers.seed = value;
  }
  return numbers;
}

/** @param {{ minutes: number, seed: number }} numbers */
function fuzzFor({ minutes, seed }) {
  return () => {
    console.log(`Fuzzing for ${minutes} minutes from seed ${seed}.`);
    return fuzz({ SPAREWELL_FUZZ_MINUTES: String(minutes), SPAREWELL_FUZZ_SEED: String(seed) });
  };
}

function fuzzWhole() {
  console.log('Fuzzing until every count is reached; this takes an hour or so.');
  return fuzz({ SPAREWELL_FUZZ_WHOLE: '1' });
}

/** @param {Record<string, string>} env */
function fuzz(env) {
  return runTool(TOOL.vitest, ['run', '--project', 'unit', '--no-file-parallelism', 'tests/fuzz'], { env });
}

async function kill() {
  await buildWhenStale();
  return runTool(TOOL.vitest, ['run', '--project', 'browser', 'tests/browser/lost-deaths'], {
    env: { SPAREWELL_KILLS: '200', SPAREWELL_POWER_CUTS: '50', CHROME_PATH: await ensureBrowser() },
  });
}
