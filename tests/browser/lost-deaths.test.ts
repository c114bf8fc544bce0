import { expect, it } from 'vitest';
import { type DeathReport, killTrials, powerCutTrials } from './support/death-trials.ts';

/** `npm run fuzz -- --kills` asks for 200 and 50. */
const KILLS = Number(process.env.SPAREWELL_KILLS ?? 6);
const POWER_CUTS = Number(process.env.SPAREWELL_POWER_CUTS ?? 2);
/** What one trial may take on a busy machine, ms. */
const TRIAL_MS = 15_000;

const say = (words: string, { trials, keptEdits, lost }: DeathReport): void => {
  process.stdout.write(
    `${trials} ${words} while editing: ${keptEdits} edits shown as kept, ${lost} times one was lost.\n`,
  );
};

it(
  'every edit shown as kept survives the death of the browser',
  async () => {
    const report = await killTrials(KILLS);
    say('kills', report);
    expect(report.lost).toBe(0);
    // Edits were really made, and kept, before most deaths.
    expect(report.keptEdits).toBeGreaterThan(KILLS);
  },
  (KILLS + 1) * TRIAL_MS,
);

it(
  'every edit shown as kept survives a power cut',
  async () => {
    const report = await powerCutTrials(POWER_CUTS);
    if (report.weaker)
      process.stdout.write(`Power cuts are copies of the browser's files here: ${report.weaker}\n`);
    say('power cuts', report);
    expect(report.lost).toBe(0);
    expect(report.keptEdits).toBeGreaterThan(POWER_CUTS);
  },
  (POWER_CUTS + 2) * TRIAL_MS,
);

it(
  'power cuts do find the loss when saves are not strict',
  async () => {
    const report = await powerCutTrials(
      2,
      `const { transaction } = IDBDatabase.prototype;
      IDBDatabase.prototype.transaction = function relaxed(names, mode) { return transaction.call(this, names, mode); };`,
    );
    say('power cuts without strict saves', report);
    // Copies of files show what the system has not yet written, too: no loss can be found in them.
    expect(report.weaker !== '' || report.lost > 0).toBe(true);
  },
  4 * TRIAL_MS,
);
