import { expect, test } from 'vitest';
import { applyEdit } from '../../src/notebook/apply-edit.ts';
import { differences } from '../../src/notebook/compare.ts';
import type { NotebookDocument } from '../../src/notebook/document.ts';
import type { Edit } from '../../src/notebook/edit.ts';
import {
  addCell,
  addRows,
  entryEdit,
  formulaEdit,
  group,
  notebookEdit,
  removeColumn,
  rename,
  replaceColumn,
  valueEdit,
} from '../../src/notebook/edits.ts';
import { entered, formula, notebook, number, table, worked } from './small-notebook.ts';

const before = notebook(
  number('cash_limit', 480, 'EUR'),
  table(
    'wear',
    entered('part', 'text', ['Rear tyre', 'Chain']),
    entered('now', 'number', [4.8, 319.6], { unit: 'mm' }),
    worked('twice', 'now * 2'),
  ),
  formula('whole', 'sum(wear.twice)'),
);

function words(...edits: ((document: NotebookDocument) => Edit)[]): string[] {
  const after = edits.reduce((document, edit) => applyEdit(document, edit(document)), before);
  return differences(before, after, 50).listed.map(({ what, change }) => `${what}: ${change}`);
}

test('inputs with what they were and are', () => {
  expect(
    words(
      (document) =>
        valueEdit(document, 'cash_limit', { type: 'number', unit: 'EUR', value: 520, control: 'field' }),
      (document) => entryEdit(document, 'wear', 'now', 0, 4.1),
      (document) => formulaEdit(document, 'whole', undefined, 'sum(wear.now)'),
      (document) => notebookEdit(document, 'title', 'Long trip'),
    ),
  ).toEqual([
    'Notebook name: Small trip to Long trip',
    'cash_limit: 480 to 520 EUR',
    'Rear tyre, now: 4.8 to 4.1 mm',
    'whole: formula changed',
  ]);
});

test('rows, columns, cells and names that came, went or changed', () => {
  expect(words((document) => addRows(document, 'wear', 2, [{ part: 'Pads' }, {}]))).toEqual([
    'wear: 2 rows added',
  ]);
  expect(words((document) => removeColumn(document, 'wear', 'twice'))).toEqual([
    'wear, twice: column removed',
  ]);
  expect(
    words((document) => {
      const now = entered('now', 'number', [4.8, 319.6], { unit: 'inch' });
      return group('unit', [replaceColumn(document, 'wear', 'now', now)]);
    }),
  ).toEqual(['wear, now: unit mm to inch']);
  expect(
    words((document) => addCell(document, { kind: 'note', id: 'n', title: 'Note', text: '' }, 0)),
  ).toEqual(['Note: added']);
  expect(words((document) => rename(document, 'cash_limit', undefined, 'cash'))).toEqual([
    'cash_limit: renamed to cash',
  ]);
});

test('nothing differs from itself, and what is past the bound is counted', () => {
  expect(differences(before, structuredClone(before), 5)).toEqual({ listed: [], more: 0 });
  const after = applyEdit(
    applyEdit(before, entryEdit(before, 'wear', 'now', 0, 1)),
    entryEdit(before, 'wear', 'now', 1, 2),
  );
  expect(differences(before, after, 1)).toMatchObject({ listed: [{ what: 'Rear tyre, now' }], more: 1 });
});
