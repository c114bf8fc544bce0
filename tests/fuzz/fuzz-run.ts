import { Canary } from './canary.ts';
import { Chance } from './random.ts';

/** What a run of one kind of text found. */
export interface FuzzReport {
  readonly cases: number;
  /** Cases that were taken rather than refused: a run that only meets refusals tests little. */
  readonly taken: number;
  /** Computing of the slowest case, ms. */
  readonly slowestMs: number;
}

/** Milliseconds of computing so far: a clock on the wall would count what else a busy machine does. */
function computedMs(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
}

/** Longest that one case may compute, ms. */
export const MOST_CASE_MS = 1_000;

const MINUTES = Number(process.env.SPAREWELL_FUZZ_MINUTES ?? 0);
const WHOLE = process.env.SPAREWELL_FUZZ_WHOLE === '1';
const SEED = Number(process.env.SPAREWELL_FUZZ_SEED ?? 20260314);

/**
 * How long the test of one kind may last, ms: `npm run fuzz -- --minutes N` shares N among four kinds, and a
 * whole run lasts as long as it takes.
 */
export const FUZZ_TIMEOUT_MS = WHOLE
  ? 4 * 3_600_000
  : MINUTES > 0
    ? (MINUTES / 4) * 60_000 + 120_000
    : 60_000;

/** How many cases are run by `npm test` and by `npm run fuzz -- --whole`. */
export interface FuzzCases {
  readonly test: number;
  readonly whole: number;
}

/**
 * Runs cases, a fixed number of them in `npm test` and in a whole run, for a time in `npm run fuzz`. A case that throws, takes
 * longer than a second or touches the globals ends the run with the seed that shows it again.
 *
 * @param oneCase makes and tries one case; true if it was taken, false if it was refused
 */
export async function fuzz(
  what: string,
  cases: FuzzCases,
  oneCase: (chance: Chance) => boolean | Promise<boolean>,
): Promise<FuzzReport> {
  const canary = new Canary();
  const untilMs = MINUTES > 0 ? performance.now() + (MINUTES / 4) * 60_000 : Number.POSITIVE_INFINITY;
  const most = WHOLE ? cases.whole : cases.test;
  let [done, taken, slowestMs] = [0, 0, 0];
  try {
    while (MINUTES > 0 ? performance.now() < untilMs : done < most) {
      const seed = SEED + done * 7919;
      const startMs = computedMs();
      let wasTaken: boolean;
      try {
        const answer = oneCase(new Chance(seed));
        wasTaken = typeof answer === 'boolean' ? answer : await answer;
      } catch (error) {
        throw new Error(`${what}, case ${done} (seed ${seed}): ${error}`, { cause: error });
      }
      const tookMs = computedMs() - startMs;
      if (tookMs > MOST_CASE_MS) throw new Error(`${what}, case ${done} (seed ${seed}) took ${tookMs} ms.`);
      if (canary.song) throw new Error(`${what}, case ${done} (seed ${seed}): ${canary.song}.`);
      slowestMs = Math.max(slowestMs, tookMs);
      if (wasTaken) taken++;
      done++;
      // Lets the runner breathe: it takes a silent worker for a dead one.
      if (done % 2000 === 0) await new Promise((resolve) => setImmediate(resolve));
    }
  } finally {
    canary.leave();
  }
  process.stdout.write(
    `${what}: ${done} cases, ${taken} taken, ${done - taken} refused; slowest ${slowestMs.toFixed(0)} ms.\n`,
  );
  return { cases: done, taken, slowestMs };
}
