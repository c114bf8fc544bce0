import { expect, test } from 'vitest';
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

/** Pastes a block and gives the entries of the table after it. */
async function pasted(row: number, column: number, block: string[][]): Promise<[Paste | null, unknown[][]]> {
  const live = LiveNotebook.open(notebook(legs));
  await live.settled();
  const cell = live.document.cells[0] as TableCell;
  const paste = pasteBlock(live.document, gridOf(live, cell, false), { row, column }, block);
  if (paste !== null) live.apply(paste.edit);
  const after = live.document.cells[0] as TableCell;
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
