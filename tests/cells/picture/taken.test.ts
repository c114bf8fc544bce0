import { expect, test } from 'vitest';
import { placeOnStrip, readTaken, takenWords } from '../../../cells/picture/taken-reading.ts';
import type { NotebookDocument, PictureCell, TableCell } from '../../../src/notebook/document.ts';
import type { LiveNotebook } from '../../../src/notebook/live-notebook.ts';
import { demo, entriesOf, figures, texts, within } from '../../starter/support.ts';

const picture = (notebook: LiveNotebook): PictureCell =>
  notebook.document.cells.find((cell): cell is PictureCell => cell.id === 'taken_picture')!;

/** The worked example with readings taken on its road. */
function withTaken(
  rows: readonly (readonly [part: string, leg: string, reading: number | null])[],
): NotebookDocument {
  const document = demo();
  const cells = document.cells.map((cell) =>
    cell.id === 'taken'
      ? {
          ...(cell as TableCell),
          columns: (cell as TableCell).columns.map((column, at) =>
            column.kind === 'worked' ? column : { ...column, entries: rows.map((row) => row[at]!) },
          ),
        }
      : cell,
  );
  return { ...document, cells };
}

test('before the trip the table is empty, settled, and the picture says so', async () => {
  await within(demo(), (notebook) => {
    const taken = readTaken(notebook, picture(notebook));
    expect(taken.readings).toEqual([]);
    expect(takenWords(taken)).toMatch(/^Nothing has been measured on the road yet\. .*Readings on the road/);
  });
});

test('each reading stands beside what its part was expected to show at that leg’s end', async () => {
  const legs = entriesOf(demo(), 'route', 'leg').map(String);
  const rows = [
    ['Drive chain', legs[7]!, 320.6],
    ['Rear tyre', legs[25]!, 0.5],
    ['Rear tyre', legs[3]!, null],
  ] as const;
  await within(withTaken(rows), (notebook) => {
    expect(notebook.faults()).toEqual([]);
    const taken = readTaken(notebook, picture(notebook));
    expect(taken.readings.map((one) => [one.row, one.part, one.taken])).toEqual([
      [0, 'Drive chain', 320.6],
      [1, 'Rear tyre', 0.5],
    ]);
    const [parts, at] = [texts(notebook, 'readings.part'), texts(notebook, 'readings.leg')];
    const held = figures(notebook, 'taken.held');
    taken.readings.forEach((one, place) => {
      const row = parts.findIndex((part, i) => part === one.part && at[i] === rows[place]![1]);
      expect(one.middle).toBe(figures(notebook, 'readings.middle')[row]);
      const band = [
        figures(notebook, 'readings.much_worn')[row]!,
        figures(notebook, 'readings.little_worn')[row]!,
      ];
      expect([one.low, one.high]).toEqual(band.sort((a, b) => a - b));
      expect(one.along).toBe(figures(notebook, 'route.km_done')[legs.indexOf(rows[place]![1])]);
      expect(one.unit).toBe('mm');
      expect(one.held).toBe(held[place] === 1);
      expect(one.held).toBe(one.low <= one.taken && one.taken <= one.high);
    });
    expect(taken.readings.map((one) => one.held)).toEqual([true, false]);
    expect(takenWords(taken)).toMatch(/^1 of 2 readings lie in the band; eight in ten are expected to\./);
  });
});

test('a leg that is not on the route is a fault that names it, and nothing is expected', async () => {
  await within(withTaken([['Drive chain', 'Nowhere', 320]]), (notebook) => {
    expect(notebook.faults().some((fault) => fault.message.includes('Nowhere'))).toBe(true);
    const taken = readTaken(notebook, picture(notebook));
    expect(taken.readings[0]?.held).toBeNull();
    expect(takenWords(taken)).toMatch(/nothing was expected/);
  });
});

test.each([
  [2, 1 / 3],
  [3, 1 / 2],
  [4, 2 / 3],
  [99, 1],
  [-99, 0],
])('a figure of %d on a band from 2 to 4 stands at %d of the strip', (figure, place) => {
  expect(placeOnStrip({ low: 2, high: 4 }, figure)).toBeCloseTo(place, 12);
});
