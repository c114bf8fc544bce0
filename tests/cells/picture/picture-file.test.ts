import { expect, test } from 'vitest';
import type { NotebookDocument, PictureCell } from '../../../src/notebook/document.ts';
import { LiveNotebook } from '../../../src/notebook/live-notebook.ts';
import { readNotebookFile, writeNotebookFile } from '../../../src/notebook/notebook-file.ts';
import { renameEdit } from '../../../src/notebook/rename-edit.ts';
import { demo } from '../../starter/support.ts';

/** The demo with one cell changed as a stranger's file might have it. */
const withCell = (id: string, change: object): string => {
  const document = demo();
  const cells = document.cells.map((cell) => (cell.id === id ? { ...cell, ...change } : cell));
  return writeNotebookFile({ ...document, cells } as NotebookDocument);
};

test('pictures and the prep sheet are saved and opened again as they were', () => {
  const opened = readNotebookFile(writeNotebookFile(demo()));
  expect('document' in opened && opened.document.cells).toEqual(demo().cells);
});

test.each([
  ['risk_map', { shape: 'pie' }, /shape.*reading, map, bars/],
  ['risk_map', { reads: { of: 'ride.part', colour: 'ride.p' } }, /colour/],
  ['risk_map', { figures: ['not a name!'] }, /plain name/],
  ['prep', { reads: { cash: 'calls..cash' } }, /plain name/],
  ['prep', { reads: { speed: 'calls.cash' } }, /speed/],
])('a file whose %s is %o is refused with what is wrong', (id, change, words) => {
  const opened = readNotebookFile(withCell(id, change));
  expect('refusal' in opened ? opened.refusal : 'opened').toMatch(words);
});

test('a renamed table is renamed where a picture reads it, and the picture knows what feeds it', () => {
  const notebook = LiveNotebook.open(demo());
  notebook.apply(renameEdit(notebook.document, 'ride', undefined, 'journey'));
  const picture = notebook.document.cells.find((cell): cell is PictureCell => cell.id === 'risk_map')!;
  expect(Object.values(picture.reads).every((name) => name.startsWith('journey.'))).toBe(true);
  expect(notebook.links('risk_map').fedBy).toEqual(['ride']);
  expect(notebook.links('cost_picture').fedBy).toContain('fuel_total');
  expect(notebook.links('spending_picture').fedBy).toEqual(['plan']);
  notebook.apply(renameEdit(notebook.document, 'plan', undefined, 'best_set'));
  const spending = notebook.document.cells.find((cell) => cell.id === 'spending_picture') as PictureCell;
  expect(spending.reads.plan).toBe('best_set');
  notebook.dispose();
});
