/** One comparison of two ways to do the same work. */
export interface RatioResult {
  readonly name: string;
  /** What the two figures are in, where they are not times in milliseconds. */
  readonly unit?: 'MB';
  /** Median time of one run, milliseconds. */
  readonly candidateMs: number;
  readonly baselineMs: number;
  /** candidateMs / baselineMs: 2 means that the candidate takes twice as long. */
  readonly ratio: number;
}

export interface RatioOptions {
  /** Samples taken of each, after the warm-up; 41 if absent. */
  readonly rounds?: number;
  /** Samples of each that are thrown away first, so that both are compiled; 8 if absent. */
  readonly warmUps?: number;
  /** Runs are repeated within a sample until it lasts this long, ms; 2 if absent. Clocks are coarse. */
  readonly sampleMs?: number;
  /** The clock, ms; tests put their own here. */
  readonly now?: () => number;
}

/** What a bench file exports as `bench`. */
export type Bench = () => Promise<readonly RatioResult[]>;

type Work = () => unknown;

/** Results go here, so that the compiler cannot leave out work whose result nobody reads. */
let sink: unknown;

/**
 * Times `candidate` against `baseline`. They take turns, and swap who goes first each round, so that a
 * machine that slows down half-way slows both; medians keep single hiccups out.
 * @param candidate,baseline do the work once; a promise is awaited, and its wait is part of the time
 * @returns times of one run, and their ratio.
 *   With a candidate of 3 ms and a baseline of 2 ms: { candidateMs: 3, baselineMs: 2, ratio: 1.5 }
 */
export async function ratio(
  name: string,
  candidate: Work,
  baseline: Work,
  options: RatioOptions = {},
): Promise<RatioResult> {
  const { rounds = 41, warmUps = 8, sampleMs = 2, now = () => performance.now() } = options;
  const candidateRuns = await runsPerSample(candidate, sampleMs, now);
  const baselineRuns = await runsPerSample(baseline, sampleMs, now);
  const candidateSamplesMs: number[] = [];
  const baselineSamplesMs: number[] = [];
  for (let round = -warmUps; round < rounds; round += 1) {
    const turns = [
      { work: candidate, runs: candidateRuns, samplesMs: candidateSamplesMs },
      { work: baseline, runs: baselineRuns, samplesMs: baselineSamplesMs },
    ];
    for (const { work, runs, samplesMs } of round % 2 === 0 ? turns : turns.reverse()) {
      const runMs = await timeOneRun(work, runs, now);
      if (round >= 0) samplesMs.push(runMs);
    }
  }
  const candidateMs = median(candidateSamplesMs);
  const baselineMs = median(baselineSamplesMs);
  return { name, candidateMs, baselineMs, ratio: candidateMs / baselineMs };
}

/** The middle value; the mean of the middle two of an even number. median([4, 1, 3, 2]) is 2.5. */
export function median(values: readonly number[]): number {
  if (values.length === 0) throw new RangeError('There is no median of no values.');
  const sorted = [...values].sort((a, b) => a - b);
  const half = sorted.length >> 1;
  const upper = sorted[half]!;
  return sorted.length % 2 === 1 ? upper : (sorted[half - 1]! + upper) / 2;
}

/** How many runs a sample needs to last `sampleMs`: doubled until it does. */
async function runsPerSample(work: Work, sampleMs: number, now: () => number): Promise<number> {
  let runs = 1;
  while (runs < 1 << 20 && (await timeOneRun(work, runs, now)) * runs < sampleMs) runs *= 2;
  return runs;
}

async function timeOneRun(work: Work, runs: number, now: () => number): Promise<number> {
  const startMs = now();
  for (let run = 0; run < runs; run += 1) {
    const result = work();
    // Awaiting what is no promise would add a turn of the event loop to every run.
    sink = result instanceof Promise ? await result : result;
  }
  return (now() - startMs) / runs;
}

/** The last result, for a caller that wants to see that the work was really done. */
export const lastResult = (): unknown => sink;
