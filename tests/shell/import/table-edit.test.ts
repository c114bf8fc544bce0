import { describe, expect, test } from 'vitest';
import type { ReadTable } from '../../../src/import/read-table.ts';
import { applyEdit } from '../../../src/notebook/apply-edit.ts';
import type { EnteredColumn, NotebookDocument, TableCell } from '../../../src/notebook/document.ts';
import { invert } from '../../../src/notebook/edits.ts';
import { gpxTable } from '../../../src/shell/import/gpx-table.ts';
import { keyColumn, rowsInCommon, type TableWay, tableEdit } from '../../../src/shell/import/table-edit.ts';

const wear: TableCell = {
  id: 'w',
  kind: 'table',
  name: 'wear',
  title: 'Wear',
  columns: [
    { id: 'p', name: 'part', kind: 'text', entries: ['Chain', 'Pads'] },
    { id: 'n', name: 'now', kind: 'number', entries: [319, 4] },
    { id: 'l', name: 'limit', kind: 'number', entries: [324, 2] },
  ],
};
const notebook: NotebookDocument = {
  format: 'sparewell-notebook',
  version: 1,
  id: 'n',
  title: 'Trip',
  gist: '',
  money: 'EUR',
  cells: [wear],
};
const read: ReadTable = {
  columns: [
    { name: 'part', entries: ['pads', 'Chain', 'Cable'] },
    { name: 'now', entries: [3.1, null, 7] },
    { name: 'limit', entries: [null, null, null] },
  ],
  rows: 3,
  lines: [2, 3, 4],
  remarks: [],
  aside: [],
};
const filled = ['part', 'now'];

const broughtIn = (way: TableWay): Record<string, unknown> => {
  const edit = tableEdit(notebook, 'w', {
    read,
    filled,
    way,
    key: 'part',
    fileName: 'r.csv',
    date: '2 March 2026',
  });
  const made = applyEdit(notebook, edit);
  expect(applyEdit(made, invert(edit))).toEqual(notebook);
  const cell = made.cells[0] as TableCell;
  return {
    ...Object.fromEntries(cell.columns.map((column) => [column.name, (column as EnteredColumn).entries])),
    source: cell.source,
  };
};

describe('rows of any table', () => {
  test('are told apart by the first text column that is filled', () => {
    expect(keyColumn(wear, filled)).toBe('part');
    expect(keyColumn(wear, ['now'])).toBeNull();
    expect(rowsInCommon(wear, read, 'part')).toBe(2);
  });

  test('go over those of the same name: an empty field says nothing, other columns stay', () => {
    expect(broughtIn('update')).toEqual({
      part: ['Chain', 'Pads', 'Cable'],
      now: [319, 3.1, 7],
      limit: [324, 2, null],
      source: 'Wear: r.csv, 2 March 2026, 3 rows.',
    });
  });

  test('go in the place of all, or below', () => {
    expect(broughtIn('replace')).toMatchObject({
      part: ['pads', 'Chain', 'Cable'],
      limit: [null, null, null],
    });
    expect(broughtIn('below')).toMatchObject({
      part: ['Chain', 'Pads', 'pads', 'Chain', 'Cable'],
      now: [319, 4, 3.1, null, 7],
    });
  });
});

describe('a GPX file', () => {
  const point = (lon: number, name: string): string =>
    `<rtept lat="0" lon="${lon}"><name>${name}</name></rtept>`;
  const route = `<gpx version="1.1"><rte><name>Loop</name>${point(0, 'Ansel')}${point(1, 'Ash, Siding')}</rte></gpx>`;

  test('becomes a table of legs: a degree of the equator is 111.3 km', () => {
    // WGS84: the equatorial radius is 6378.137 km (NIMA TR8350.2), of which a degree is 111.3195 km.
    expect(gpxTable(route, 0)).toEqual({
      csv: 'leg,start place,end place,distance (km)\r\n"Ansel to Ash, Siding",Ansel,"Ash, Siding",111.3\r\n',
      remarks: [],
      ways: ['Loop'],
    });
  });

  test('without a way is refused with a sentence', () => {
    const words = gpxTable('<gpx><wpt lat="0" lon="0"><name>A</name></wpt></gpx>', 0);
    expect(words).toEqual({
      refusal: 'The file has waypoints but no track and no route, so it gives no distances.',
    });
  });
});
