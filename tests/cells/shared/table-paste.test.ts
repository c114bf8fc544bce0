import { expect, test } from 'vitest';
import { pastedFields } from '../../../cells/shared/table-hands.ts';
import { gridOf } from '../../../cells/shared/table-model.ts';
import { type Paste, pasteBlock, pasteInWords } from '../../../cells/shared/table-paste.ts';
import type { TableCell } from '../../../src/notebook/document.ts';
import { LiveNotebook } from '../../../src/notebook/live-notebook.ts';
import { entered, notebook, table, worked } from '../../notebook/small-notebook.ts';

const legs = table(
  'route',
  entered('leg', 'text', ['out', 'back']),
  entered('km', 'number', [640, 910], { unit: 'km' }),
  worked('twice', 'km * 2', 'km'),
  entered('surface', 'choice', ['sealed', 'sand'], { options: ['sealed', 'sand', 'rock'] }),
);

/** Pastes a block and gives the entries of the table after it; one undo must bring the first ones back. */
async function pasted(
  row: number,
  column: number,
  block: string[][],
  marked: { readonly rows?: number; readonly columns?: number; readonly order?: readonly number[] } = {},
): Promise<[Paste | null, unknown[][]]> {
  const live = LiveNotebook.open(notebook(legs));
  await live.settled();
  const { rows = 1, columns = 1, order = [0, 1] } = marked;
  const cell = live.document.cells[0] as TableCell;
  const into = {
    block: { top: row, left: column, bottom: row + rows - 1, right: column + columns - 1 },
    placeCount: order.length,
    rowAt: (place: number) => order[place]!,
  };
  const before = live.document;
  const paste = pasteBlock(before, gridOf(live, cell, false), into, block);
  if (paste?.edit) live.apply(paste.edit);
  const after = live.document.cells[0] as TableCell;
  if (paste?.edit) live.undo();
  expect(live.document).toEqual(before);
  live.dispose();
  return [paste, after.columns.flatMap((each) => (each.kind === 'worked' ? [] : [[...each.entries]]))];
}

test('a block is read as if typed, passes over worked columns and adds the rows it needs', async () => {
  const [paste, entries] = await pasted(1, 1, [
    ['900,5', 'nought', 'Rock'],
    ['4 mi', '', 'sand'],
  ]);
  // 4 miles of 1.609344 km exactly (NIST SP 811, appendix B.8) are 6.437376 km.
  expect(entries).toEqual([
    ['out', 'back', null],
    [640, 900.5, 6.437376],
    ['sealed', 'rock', 'sand'],
  ]);
  expect(pasteInWords(paste!)).toBe('1 row written over, 1 row added');
  expect(paste?.block).toEqual({ top: 1, left: 1, bottom: 2, right: 3 });
});

test('what cannot be read stands as its text', async () => {
  const [paste, entries] = await pasted(0, 1, [['far']]);
  expect(entries[1]).toEqual(['far', 910]);
  expect(pasteInWords(paste!)).toBe('1 row written over, 1 could not be read');
});

test('a block on a worked column alone changes nothing', async () => {
  const [paste, entries] = await pasted(0, 2, [['1'], ['2']]);
  expect(paste).toBeNull();
  expect(entries[1]).toEqual([640, 910]);
});

test('one field fills all that is marked, a row is repeated down, and what does not fit is pasted once', async () => {
  expect((await pasted(0, 1, [['7']], { rows: 2, columns: 3 }))[1]).toEqual([
    ['out', 'back'],
    [7, 7],
    ['7', '7'],
  ]);
  expect((await pasted(0, 0, [['a', '1']], { rows: 2, columns: 2 }))[1].slice(0, 2)).toEqual([
    ['a', 'a'],
    [1, 1],
  ]);
  expect((await pasted(0, 1, [['1'], ['2'], ['3']], { rows: 2 }))[1][1]).toEqual([1, 2, 3]);
});

test('into a sorted table a block goes down the rows as they are shown', async () => {
  const [paste, entries] = await pasted(0, 1, [['1'], ['2'], ['3']], { order: [1, 0] });
  expect(entries[1]).toEqual([2, 1, 3]);
  expect(pasteInWords(paste!)).toBe('2 rows written over, 1 row added');
});

test('an apostrophe that only kept a sheet from running the text is taken off', async () => {
  expect((await pasted(0, 0, [["'=SUM(A1)"]]))[1][0]).toEqual(['=SUM(A1)', 'back']);
});

test('the HTML table is read where the text has no tabs, and the text where it has', () => {
  const html = '<table><tr><td>240<td>gravel</table>';
  expect(pastedFields('240 gravel', html)).toEqual([['240', 'gravel']]);
  expect(pastedFields('1\t2', html)).toEqual([['1', '2']]);
  expect(pastedFields('240\n90\n', '')).toEqual([['240'], ['90']]);
  expect(pastedFields('plain words', '<p>plain words</p>')).toEqual([['plain words']]);
});
