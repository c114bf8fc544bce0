import { readdirSync, readFileSync } from 'node:fs';
import type { EnteredColumn } from '../../src/notebook/document.ts';
import { entryEdit } from '../../src/notebook/edits.ts';
import { LiveNotebook } from '../../src/notebook/live-notebook.ts';
import { defaultNotebook } from '../../src/starter/default-notebook.ts';
import { reckonByHand, tripFigures } from './hand-written-trip.ts';
import { type RatioResult, ratio } from './support.ts';

/** The demo's slowest edits against a hand-written loop that does the same sums from the same figures. */
export async function bench(): Promise<readonly RatioResult[]> {
  const files: Record<string, string> = {};
  const folder = 'datasets/plateau-loop';
  for (const file of readdirSync(folder)) files[file] = readFileSync(`${folder}/${file}`, 'utf8');
  const live = LiveNotebook.open(defaultNotebook(files));
  await live.settled();
  const results: RatioResult[] = [];
  for (const [cellName, columnName] of [
    ['route', 'distance'],
    ['wear', 'now'],
  ] as const) {
    const cell = live.document.cells.find((held) => held.kind === 'table' && held.name === cellName);
    if (cell?.kind !== 'table') throw new Error(`the default notebook has no table ${cellName}`);
    const column = cell.columns.find((held) => held.name === columnName) as EnteredColumn;
    const first = column.entries[0] as number;
    let turn = 0;
    const edit = async (): Promise<void> => {
      turn = (turn + 1) % 997;
      live.apply(entryEdit(live.document, cell.id, column.id, 0, first * (1 + turn * 1e-5)));
      await live.settled();
    };
    // By hand, with the figures of a trip that changes each time as it does in the notebook.
    const trip = tripFigures(live);
    const step = trip.step.slice();
    const byHand = (): Float64Array => {
      turn = (turn + 1) % 997;
      for (let part = 0; part < trip.parts; part++)
        step[part * trip.legs] = (trip.step[part * trip.legs] as number) * (1 + turn * 1e-5);
      return reckonByHand({ ...trip, step });
    };
    results.push(
      await ratio(`demo: one edit of ${cellName}.${columnName}, settled`, edit, byHand, { rounds: 25 }),
    );
  }
  return results;
}
