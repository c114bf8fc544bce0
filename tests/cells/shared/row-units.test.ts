import { describe, expect, test } from 'vitest';
import { changeUnit, changeUnitColumn } from '../../../cells/shared/table-column-change.ts';
import { fillBlock } from '../../../cells/shared/table-fields.ts';
import { figureText } from '../../../cells/shared/table-figure.ts';
import { type Grid, gridOf, typedColumn } from '../../../cells/shared/table-model.ts';
import { pasteBlock } from '../../../cells/shared/table-paste.ts';
import { readTyped } from '../../../cells/shared/typed-entry.ts';
import { applyEdit } from '../../../src/notebook/apply-edit.ts';
import type { EnteredColumn, NotebookDocument, TableCell } from '../../../src/notebook/document.ts';
import type { Edit } from '../../../src/notebook/edit.ts';
import { rename } from '../../../src/notebook/edits.ts';
import { invertEdit } from '../../../src/notebook/invert-edit.ts';
import { LiveNotebook } from '../../../src/notebook/live-notebook.ts';
import { readNotebookFile, writeNotebookFile } from '../../../src/notebook/notebook-file.ts';
import { entered, notebook, table, worked } from '../../notebook/small-notebook.ts';

const NOW = 1;

/** Readings of five parts, each in the unit of its own gauge; the fourth has none, and none knows teeth. */
const WEAR = table(
  'wear',
  entered('part', 'text', ['Tyre', 'Fluid', 'Cable', 'Tube', 'Sprocket']),
  entered('now', 'number', [10.4, 2, 0.25, null, 15], { unit_column: 'gauge' }),
  entered('gauge', 'text', ['mm', '%', 'inch', null, 'teeth'], { title: 'In' }),
);

async function opened(cell = WEAR): Promise<{ document: NotebookDocument; grid: Grid }> {
  const live = LiveNotebook.open({ ...notebook(cell), measures: 'imperial' });
  await live.settled();
  const grid = gridOf(live, live.document.cells[0] as TableCell, false);
  live.dispose();
  return { document: live.document, grid };
}

async function typed(row: number, text: string): Promise<unknown> {
  const { grid } = await opened();
  return readTyped(text, typedColumn(grid, grid.columns[NOW]!, row));
}

/** The readings after an edit, which undone must give the document back. */
function readings(document: NotebookDocument, edit: Edit | null): unknown {
  const next = applyEdit(document, edit!);
  expect(applyEdit(next, invertEdit(edit!))).toEqual(document);
  return ((next.cells[0] as TableCell).columns[NOW] as EnteredColumn).entries;
}

describe('a figure typed where each row has its own unit', () => {
  test('is turned into the unit of its row, and alone is in it, whatever the notebook shows', async () => {
    // An inch is 25.4 mm exactly (NIST SP 811, appendix B.8).
    expect(await typed(0, '3/8 in')).toEqual({ entry: 9.525 });
    expect(await typed(2, '5.08 mm')).toEqual({ entry: 0.2 });
    expect(await typed(0, '9.5')).toEqual({ entry: 9.5 });
    expect(await typed(1, '3 %')).toEqual({ entry: 3 });
    expect(await typed(4, '14 teeth')).toEqual({ entry: 14 });
  });

  test('is refused with the reason where the row has another kind of unit, or none', async () => {
    expect(await typed(1, '3/8 in')).toEqual({
      reason: "'in' does not fit: this field is in %",
      mend: 'Type it in %, or in a unit of the same kind.',
    });
    expect(await typed(4, '3 mm')).toMatchObject({ reason: "'mm' does not fit: this field is in teeth" });
    expect(await typed(3, '3 mm')).toEqual({
      reason: "'mm' does not fit: this row has no unit yet",
      mend: 'Write its unit under In first, or type the number alone.',
    });
    expect(await typed(3, '3')).toEqual({ entry: 3 });
  });

  test('stands as it was typed, beside whatever other rows are read to', async () => {
    const { grid } = await opened();
    const shown = [0, 1, 2, 3].map((row) => figureText(grid.columns[NOW]!, row));
    expect(shown).toEqual(['10.4', '2', '0.25', '–']);
  });

  test('the unit may be worked out', async () => {
    const { grid } = await opened(
      table('taken', entered('read', 'number', [null], { unit_column: 'gauge' }), worked('gauge', '"cm"')),
    );
    expect(readTyped('15 mm', typedColumn(grid, grid.columns[0]!, 0))).toEqual({ entry: 1.5 });
  });
});

describe('a block where each row has its own unit', () => {
  test('is pasted in the units that come with it, else in those that stand there', async () => {
    const { document, grid } = await opened();
    const into = (top: number) => ({
      block: { top, left: NOW, bottom: top, right: NOW },
      placeCount: 5,
      rowAt: (row: number) => row,
    });
    const alone = pasteBlock(document, grid, into(0), [['1 cm'], ['4 mm'], ['1 mm']]);
    // 1 mm of 25.4 to the inch; what does not fit stands as its text, with its fault.
    expect(readings(document, alone!.edit)).toEqual([10, '4 mm', 0.0393700787401575, null, 15]);
    expect(alone!.unread).toBe(1);
    const withUnits = pasteBlock(document, grid, into(3), [
      ['1 inch', 'mm'],
      ['2 cm', 'mm'],
      ['3 cm', 'cm'],
    ]);
    expect(readings(document, withUnits!.edit)).toEqual([10.4, 2, 0.25, 25.4, 20, 3]);
  });

  test('is filled down as the same length, and as the same number where no length fits', async () => {
    const { document, grid } = await opened();
    const block = { top: 0, left: NOW, bottom: 3, right: NOW };
    const edit = fillBlock(document, grid, block, 'down', (row) => row);
    // 10.4 mm of 25.4 to the inch are 0.40944881889763779... inch.
    expect(readings(document, edit)).toEqual([10.4, 10.4, 0.409448818897638, 10.4, 15]);
  });
});

describe('a rate, which is counted per its unit and by the gauge of its row', () => {
  const RATES = table(
    'wear',
    entered('part', 'text', ['Tyre', 'Cable', 'Sprocket', 'Tube', 'Odd']),
    entered('rate', 'number', [1.05, 0.2, 0.1, null, null], { unit: '1/(1000 km)', unit_column: 'gauge' }),
    entered('gauge', 'text', ['mm', 'inch', 'teeth', null, '$&'], { title: 'In' }),
  );
  const rate = async (row: number, text: string): Promise<unknown> => {
    const { grid } = await opened(RATES);
    return readTyped(text, typedColumn(grid, grid.columns[1]!, row));
  };

  test('may be typed with the unit of the gauge, in another of its kind, or per another distance', async () => {
    expect(await rate(0, '0.7 mm/1000 km')).toEqual({ entry: 0.7 });
    expect(await rate(0, '0.7 mm per 1,000 km')).toEqual({ entry: 0.7 });
    expect(await rate(2, '0.3 teeth/(1000 km)')).toEqual({ entry: 0.3 });
    // 25.4 mm to the inch, 1.609344 km to the mile, both exact (NIST SP 811, appendix B.8).
    expect(await rate(1, '5.08 mm/(1000 km)')).toEqual({ entry: 0.2 });
    expect(await rate(0, '1.609344 mm/(1000 mi)')).toEqual({ entry: 1 });
  });

  test('may still be typed per its distance alone, and alone is in what is shown', async () => {
    expect(await rate(0, '0.7/(1000 km)')).toEqual({ entry: 0.7 });
    // The notebook shows miles: 1.609344 per 1,000 miles is 1 per 1,000 km.
    expect(await rate(0, '1.609344')).toEqual({ entry: 1 });
  });

  test('is refused with the reason in another kind of unit, and where the gauge has none', async () => {
    expect(await rate(0, '0.7 kg/(1000 km)')).toEqual({
      reason: "'kg/(1000 km)' does not fit: this field is in mm/(1000 km)",
      mend: 'Type it in mm/(1000 km), or in a unit of the same kind.',
    });
    expect(await rate(3, '0.7 mm/(1000 km)')).toMatchObject({
      reason: expect.stringContaining('does not fit'),
    });
    // What a hand wrote as a unit is told as it was written.
    expect(await rate(4, '0.7 mm/(1000 km)')).toMatchObject({
      reason: expect.stringContaining('$&/(1000 km)'),
    });
  });

  test('keeps what it is counted per when its gauges are named, and its gauges when that changes', async () => {
    const { document } = await opened(RATES);
    const column = (document.cells[0] as TableCell).columns[1] as EnteredColumn;
    expect(changeUnit(column, '1/(1000 mi)', true)).toMatchObject({ column: { unit_column: 'gauge' } });
    expect(changeUnit(column, 'mm', false)).toMatchObject({ column: { unit: 'mm', unit_column: undefined } });
    const { unit_column: _, ...bare } = column;
    expect(changeUnitColumn(bare as EnteredColumn, 'gauge')).toEqual(column);
  });
});

describe('the column that says the units', () => {
  test('is followed to its new name, in one step', async () => {
    const { document } = await opened();
    const edit = rename(document, 'wear', 'gauge', 'measured_in');
    const wear = applyEdit(document, edit).cells[0] as TableCell;
    expect(wear.columns.map((column) => 'unit_column' in column && column.unit_column)).toEqual([
      false,
      'measured_in',
      false,
    ]);
    expect(applyEdit(applyEdit(document, edit), invertEdit(edit))).toEqual(document);
  });

  test('is kept in the file, and given up for one unit', async () => {
    const { document } = await opened();
    const read = readNotebookFile(writeNotebookFile(document));
    expect('document' in read && read.document).toEqual(document);
    const now = (document.cells[0] as TableCell).columns[NOW] as EnteredColumn;
    expect(changeUnit(now, 'mm', false)).toMatchObject({ column: { unit: 'mm', unit_column: undefined } });
    expect(changeUnitColumn({ ...now, unit: 'mm', unit_column: undefined }, 'gauge')).toEqual({
      ...now,
      unit: undefined,
    });
  });
});
