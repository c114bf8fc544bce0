import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { LiveNotebook } from '../../src/notebook/live-notebook.ts';
import { defaultNotebook } from '../../src/starter/default-notebook.ts';
import { reckonByHand, tripFigures } from '../bench/hand-written-trip.ts';

test('the hand-written loop of the bench does the same sums as the notebook', async () => {
  const files: Record<string, string> = {};
  for (const file of readdirSync('datasets/plateau-loop'))
    files[file] = readFileSync(`datasets/plateau-loop/${file}`, 'utf8');
  const live = LiveNotebook.open(defaultNotebook(files));
  await live.settled();
  const expected = live.read('calls.expected');
  const byHand = reckonByHand(tripFigures(live));
  if (expected.state !== 'settled' || expected.column.kind === 'text')
    throw new Error('calls.expected has no figures');
  const allowed = live.read('calls.allowed');
  let compared = 0;
  expected.column.values.forEach((figure, row) => {
    // Calls barred on the way have no best place, those sent out no workshop; they carry no figure.
    const told = allowed.state === 'settled' && allowed.column.values[row] === 1;
    if (!told && (row % 8 === 6 || row % 8 === 7)) return;
    compared++;
    expect(
      Math.abs(figure - (byHand[row] as number)),
      `row ${row}: ${figure} by hand ${byHand[row]}`,
    ).toBeLessThanOrEqual(1e-9 * Math.max(1, Math.abs(figure)));
  });
  expect(compared).toBeGreaterThan(200);
});
