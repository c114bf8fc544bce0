import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { convertMeasures } from '../../src/notebook/convert-units.ts';
import { LiveNotebook } from '../../src/notebook/live-notebook.ts';
import { defaultNotebook } from '../../src/starter/default-notebook.ts';

function openDemo(): LiveNotebook {
  const files: Record<string, string> = {};
  for (const file of readdirSync('datasets/plateau-loop'))
    files[file] = readFileSync(`datasets/plateau-loop/${file}`, 'utf8');
  return LiveNotebook.open(defaultNotebook(files));
}

function values(live: LiveNotebook, node: string): readonly (number | string | null)[] {
  const state = live.read(node);
  if (state.state !== 'settled')
    throw new Error(`${node}: ${'fault' in state ? state.fault.message : state.state}`);
  return [...state.column.values];
}

test('no call and no cost changes when all units are switched to imperial and back', async () => {
  const live = openDemo();
  await live.settled();
  const calls = values(live, 'decision.call');
  const costs = values(live, 'calls.expected') as number[];
  const distance = values(live, 'route.distance') as number[];

  live.apply(convertMeasures(live.document, 'imperial'));
  await live.settled();
  expect(live.faults()).toEqual([]);
  expect(live.typeOf('route.distance')?.unit?.text).toBe('mi');
  // 1 mile is 1.609344 km exactly (NIST SP 811, appendix B.8).
  expect((values(live, 'route.distance') as number[])[0]).toBeCloseTo((distance[0] as number) / 1.609344, 9);
  expect(values(live, 'decision.call')).toEqual(calls);
  (values(live, 'calls.expected') as number[]).forEach((cost, row) => {
    const before = costs[row] as number;
    if (Number.isNaN(before)) expect(cost).toBeNaN();
    else expect(Math.abs(cost - before)).toBeLessThanOrEqual(1e-7 * Math.max(1, Math.abs(before)));
  });

  live.apply(convertMeasures(live.document, 'metric'));
  await live.settled();
  expect(live.typeOf('route.distance')?.unit?.text).toBe('km');
  expect(values(live, 'decision.call')).toEqual(calls);
});
