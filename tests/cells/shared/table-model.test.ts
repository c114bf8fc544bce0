import { describe, expect, test } from 'vitest';
import { rowName, shortReason, tableFaults } from '../../../cells/shared/table-faults.ts';
import { figureText } from '../../../cells/shared/table-figure.ts';
import { type Grid, gridOf, needsCaution } from '../../../cells/shared/table-model.ts';
import type { PairingCell, TableCell } from '../../../src/notebook/document.ts';
import { LiveNotebook } from '../../../src/notebook/live-notebook.ts';
import { entered, notebook, number, pairing, table, worked } from '../../notebook/small-notebook.ts';

const wear = {
  ...table(
    'wear',
    entered('part', 'text', ['Rear tyre', 'Chain', 'Chain']),
    entered('place', 'text', ['rear', 'left', 'right']),
    entered('now', 'number', [4.8, '31,5O', null], { title: 'Reading now' }),
    entered('critical', 'yes_no', [true, false, null]),
    worked('twice', 'now * 2'),
    { ...worked('sum_here', 'now + day_value'), folded: true },
    worked('later', 'sum_here * 2'),
  ),
  caution_column: 'critical',
} as TableCell;

async function gridWith(cell: TableCell | PairingCell, withFolded = false): Promise<Grid> {
  const live = LiveNotebook.open(
    notebook(
      number('day_value', 90, 'EUR/day'),
      wear,
      table('legs', entered('leg', 'text', ['out', 'back']), entered('km', 'number', [1, 2], { unit: 'km' })),
      pairing('ride', 'wear', 'legs', worked('reach', 'running(km, part)', 'km')),
    ),
  );
  await live.settled();
  const grid = gridOf(live, live.document.cells.find((each) => each.id === cell.id) as TableCell, withFolded);
  live.dispose();
  return grid;
}

const columnOf = (grid: Grid, name: string) => grid.columns.find((column) => column.name === name)!;

describe('a table as a grid', () => {
  test('folded columns are left out until asked for, and counted', async () => {
    const grid = await gridWith(wear);
    expect(grid.columns.map((column) => column.name)).not.toContain('sum_here');
    expect(grid.foldedCount).toBe(1);
    expect((await gridWith(wear, true)).columns.map((column) => column.name)).toContain('sum_here');
  });

  test('heads, figures and missing figures', async () => {
    const grid = await gridWith(wear);
    expect(columnOf(grid, 'now').title).toBe('Reading now');
    expect(columnOf(grid, 'twice').title).toBe('Twice');
    expect(figureText(columnOf(grid, 'now'), 0)).toBe('4.8');
    expect(figureText(columnOf(grid, 'now'), 2)).toBe('–');
    expect(figureText(columnOf(grid, 'twice'), 0)).toBe('9.6');
    expect(columnOf(grid, 'twice').entered).toBeNull();
    expect([0, 1, 2].map((row) => needsCaution(grid.caution, row))).toEqual([true, false, false]);
  });

  test('rows are called by their first figure, and by the second where neighbours share it', async () => {
    const grid = await gridWith(wear);
    expect([0, 1, 2].map((row) => rowName(grid, row))).toEqual(['Rear tyre', 'Chain, left', 'Chain, right']);
  });

  test('faults: the column whose formula is wrong, the entry that cannot be read, not those that wait', async () => {
    const grid = await gridWith(wear);
    const { columns, rows, rowCount } = tableFaults(grid, 5);
    expect(columns.map((each) => [each.place, each.fault.kind])).toEqual([['Sum here', 'units']]);
    expect(rowCount).toBe(1);
    expect(rows).toMatchObject([{ place: 'Chain, left, reading now', row: 1, entry: '31,5O' }]);
    expect(rows.map((each) => shortReason(each.fault, each.column.entered?.kind))).toEqual(['not a number']);
    expect(columnOf(grid, 'later').state.state).toBe('waiting');
  });
});

test('a pairing has its parents’ names before its own columns', async () => {
  const grid = await gridWith(pairing('ride', 'wear', 'legs') as PairingCell);
  expect(grid.columns.map((column) => [column.name, column.own])).toEqual([
    ['part', false],
    ['leg', false],
    ['reach', true],
  ]);
  expect(grid.rowCount).toBe(6);
  expect([0, 1, 2].map((row) => rowName(grid, row))).toEqual([
    'Rear tyre, out',
    'Rear tyre, back',
    'Chain, out',
  ]);
});
