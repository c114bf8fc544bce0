import fc from 'fast-check';
import { expect, test } from 'vitest';
import { keepReading } from '../../../cells/picture/keep-reading.ts';
import { headWords, legEdges, placeIn, riskFrame } from '../../../cells/picture/risk-frame.ts';
import { readRisk } from '../../../cells/picture/risk-reading.ts';
import type { Entry, PictureCell, TableCell } from '../../../src/notebook/document.ts';
import type { LiveNotebook } from '../../../src/notebook/live-notebook.ts';
import { demo, entriesOf, within } from '../../starter/support.ts';

test.each([
  // 100 and 300 of 400 km on 400 px.
  [[100, 300], 400, 20, [0, 100, 400]],
  // A leg too short for its figure has the least; the others share what is left by their lengths.
  [[1, 100, 200], 320, 20, [0, 20, 120, 320]],
  // A route that is longer than there is room for is wider than it.
  [[5, 5, 5], 30, 20, [0, 20, 40, 60]],
  [[Number.NaN, 0], 100, 20, [0, 50, 100]],
  [[], 100, 20, [0]],
])('legs of %o on %d px, none under %d px, begin at %o', (lengths, room, least, edges) => {
  expect(legEdges(lengths, room, least)).toEqual(edges);
});

test('legs fill the room there is, none is under the least, and a longer one is never narrower', () => {
  const length = fc.integer({ min: 1, max: 900 });
  fc.assert(
    fc.property(
      fc.array(length, { minLength: 1, maxLength: 60 }),
      fc.integer({ min: 0, max: 2000 }),
      (all, room) => {
        const edges = legEdges(all, room, 20);
        expect(edges.at(-1)).toBe(Math.max(room, 20 * all.length));
        const widths = all.map((_, at) => edges[at + 1]! - edges[at]!);
        // Edges stand on whole pixels, so that a width may be off by one.
        for (const width of widths) expect(width).toBeGreaterThanOrEqual(19);
        all.forEach((one, at) => {
          all.forEach((other, place) => {
            if (one >= other) expect(widths[at]).toBeGreaterThanOrEqual(widths[place]! - 1);
          });
        });
      },
    ),
  );
});

test('a place of the drawing is told as its leg and row, and beside the cells as none', () => {
  const leg = { name: 'a', place: 'a', length: 100, far: Number.NaN };
  const frame = riskFrame([leg, { ...leg, length: 300 }], 520, 1);
  expect(frame.edges).toEqual([0, 100, 400]);
  expect(placeIn(frame, 99, frame.top)).toEqual({ leg: 0, row: 0 });
  expect(placeIn(frame, 100, frame.top + frame.row)).toEqual({ leg: 1, row: 1 });
  expect(placeIn(frame, 400, frame.top)).toBeNull();
  expect(placeIn(frame, -1, frame.top)).toBeNull();
  expect(placeIn(frame, 50, frame.top - 1)).toBeNull();
  // At twice the text size everything but the gap between cells is twice as large.
  expect(riskFrame([leg], 520, 2).row).toBe(2 * frame.row);
});

test('a long name of a place is cut where its head ends', () => {
  expect(headWords('Lantern Bore')).toBe('Lantern Bore');
  expect(headWords('Saint Bartholomew by the Water')).toBe('Saint Bartholomew…');
});

test('what a picture reads is read again only when a column of it has changed', async () => {
  await within(demo(), async (notebook) => {
    const cell = notebook.document.cells.find((one): one is PictureCell => one.id === 'risk_map')!;
    const reading = keepReading(readRisk);
    const first = reading(notebook, cell, 'left');
    expect(reading(notebook, cell, 'left')).toBe(first);
    expect(reading(notebook, cell, 'called')).not.toBe(first);
    const again = reading(notebook, cell, 'left');
    await editWear(notebook, 'remark', 'looked at twice');
    expect(reading(notebook, cell, 'left')).toBe(again);
    await editWear(notebook, 'rate_high', 0.6);
    const changed = reading(notebook, cell, 'left');
    expect(changed).not.toBe(again);
    expect(changed.parts).not.toEqual(again.parts);
  });
});

/** Writes one figure of the drive chain. */
async function editWear(notebook: LiveNotebook, name: string, after: Entry): Promise<void> {
  const wear = notebook.document.cells.find((one): one is TableCell => one.id === 'wear')!;
  const column = wear.columns.find((one) => one.name === name)!;
  if (column.kind === 'worked') throw new Error(`${name} is worked out.`);
  const row = entriesOf(notebook.document, 'wear', 'part').indexOf('Drive chain');
  const before = column.entries[row] ?? null;
  notebook.apply({ kind: 'entry', cell: 'wear', column: column.id, row, before, after });
  await notebook.settled();
}
