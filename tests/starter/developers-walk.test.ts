import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { showFigure } from '../../src/formula/show.ts';
import { LiveNotebook } from '../../src/notebook/live-notebook.ts';
import { defaultNotebook } from '../../src/starter/default-notebook.ts';
import { tripFiles } from './support.ts';

const page = readFileSync('DEVELOPERS.md', 'utf8');
const LINES = [...page.matchAll(/^\|\s*`([\w.]+)`\s*\|\s*(\d+)\s*\|\s*([^|]+)\|/gm)].map(
  ([, node, row, shown]) => ({
    node: node as string,
    row: Number(row),
    shown: (shown as string).trim(),
  }),
);

test('the walk from CSV row to call in DEVELOPERS.md shows the figures the notebook works out', async () => {
  const live = LiveNotebook.open(defaultNotebook(tripFiles()));
  await live.settled();
  expect(LINES.length).toBeGreaterThan(15);
  for (const { node, row, shown } of LINES) {
    const state = live.read(node);
    if (state.state !== 'settled') throw new Error(`${node} is ${state.state}`);
    expect(showFigure(state.column, row, state.type), `${node}, row ${row}`).toBe(shown);
  }
});
