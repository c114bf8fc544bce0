import { describe, expect, it } from 'vitest';
import { applyEdit } from '../../src/notebook/apply-edit.ts';
import type { Cell, NotebookDocument, TableCell } from '../../src/notebook/document.ts';
import type { Edit } from '../../src/notebook/edit.ts';
import { EditError } from '../../src/notebook/edit-error.ts';
import {
  addCell,
  addColumn,
  addRows,
  describe as describeLine,
  entryEdit,
  forbidEdit,
  formulaEdit,
  group,
  invert,
  moveCell,
  moveColumn,
  notebookEdit,
  pinEdit,
  removeCell,
  removeColumn,
  removeRows,
  rename,
  replaceCell,
  replaceColumn,
  replaceRows,
  valueEdit,
} from '../../src/notebook/edits.ts';
import { findCell } from '../../src/notebook/lookup.ts';
import { same } from '../../src/notebook/same.ts';
import { openDocument } from '../../src/notebook/schema.ts';
import { sampleNotebook } from './sample.ts';

const doc = sampleNotebook();
const table = (document: NotebookDocument, id: string): TableCell => findCell(document, id) as TableCell;
const ids = (document: NotebookDocument): string[] => document.cells.map((cell) => cell.id);
const note: Cell = { id: 'fresh', kind: 'note', title: 'Fresh', text: '' };
const figure: Cell = { id: 'fresh', kind: 'formula', name: 'fresh', title: 'Fresh', formula: '1' };

/** One of each kind of edit, by name. */
const EDITS: [string, Edit][] = [
  ['entry', entryEdit(doc, 'wear', 'wear-now', 0, 2.9)],
  ['entry that could not be read', entryEdit(doc, 'wear', 'wear-fitted', 1, 'last spring')],
  ['value', valueEdit(doc, 'budget', { type: 'number', unit: 'EUR', value: 500, control: 'field' })],
  ['formula of a cell', formulaEdit(doc, 'total', undefined, 'most(route.km)')],
  ['formula of a column', formulaEdit(doc, 'ride', 'ride-cost', 'reach')],
  ['cell added', addCell(doc, note, 2)],
  ['cell removed', removeCell(doc, 'wear')],
  ['cell moved down', moveCell(doc, 'note', 4)],
  ['cell moved up', moveCell(doc, 'decision', 0)],
  ['cell replaced', replaceCell(doc, 'note', { ...note, id: 'note', text: 'Other words.' })],
  ['column added', addColumn(doc, 'wear', { id: 'new', name: 'limit', kind: 'number', entries: [1] }, 2)],
  [
    'worked column added',
    addColumn(doc, 'ride', { id: 'new', name: 'risk', kind: 'worked', formula: '1' }, 99),
  ],
  ['column removed', removeColumn(doc, 'wear', 'wear-now')],
  ['column moved', moveColumn(doc, 'wear', 'wear-part', 3)],
  [
    'column replaced',
    replaceColumn(doc, 'wear', 'wear-worn', {
      id: 'x',
      name: 'worn',
      kind: 'worked',
      formula: '2',
      unit: 'km',
    }),
  ],
  ['rows added', addRows(doc, 'wear', 1, [{ 'wear-part': 'Tubes' }, { 'wear-now': 4 }])],
  ['rows removed', removeRows(doc, 'wear', 1, 2)],
  ['rows replaced', replaceRows(doc, 'wear', 0, 1, [{ 'wear-part': 'Tubes' }, { 'wear-part': 'Levers' }])],
  ['pin changed', pinEdit(doc, 'decision', 'Fork seals', 'leave')],
  ['pin set', pinEdit(doc, 'decision', 'Chain', 'carry')],
  ['call forbidden', forbidEdit(doc, 'decision', 'Chain', 'leave', true)],
  ['set call forbidden', forbidEdit(doc, 'decision', 'Fork seals', 'replace', true)],
  ['pin taken back', pinEdit(doc, 'decision', 'Fork seals', null)],
  ['notebook', notebookEdit(doc, 'money', 'AUD')],
  ['renaming', rename(doc, 'wear', undefined, 'fitted_parts')],
  ['group', group('Two', [notebookEdit(doc, 'title', 'A'), addCell(doc, note, 0)])],
];

describe('applyEdit', () => {
  it.each(EDITS)('%s: the result opens, differs, and its inverse gives back what was', (_, edit) => {
    const before = structuredClone(doc);
    const after = applyEdit(doc, edit);
    expect(same(after, doc)).toBe(false);
    expect(openDocument(JSON.parse(JSON.stringify(after)))).toEqual({ document: after });
    expect(applyEdit(after, invert(edit))).toEqual(before);
    expect(doc).toEqual(before);
  });

  // Rows alone may be added again and again.
  it.each(EDITS.filter(([name]) => name !== 'rows added'))('%s: does not fit twice', (_, edit) => {
    expect(() => applyEdit(applyEdit(doc, edit), edit)).toThrow(EditError);
  });

  it('shares what an edit does not touch', () => {
    const after = applyEdit(doc, entryEdit(doc, 'wear', 'wear-now', 0, 2.9));
    expect(table(after, 'wear').columns[0]).toBe(table(doc, 'wear').columns[0]);
    expect(after.cells[4]).toBe(doc.cells[4]);
    expect(table(after, 'wear').columns[1]).toMatchObject({ entries: [2.9, 12, null] });
  });

  it('puts cells where it says', () => {
    expect(ids(applyEdit(doc, moveCell(doc, 'note', 2)))).toEqual([
      'budget',
      'season',
      'note',
      'wear',
      'route',
      'total',
      'ride',
      'tally',
      'decision',
    ]);
    expect(ids(applyEdit(doc, moveCell(doc, 'note', 99))).at(-1)).toBe('note');
    expect(ids(applyEdit(doc, addCell(doc, note, -5)))[0]).toBe('fresh');
  });

  it('fills the fields that new rows and new columns do not name', () => {
    const rows = applyEdit(doc, addRows(doc, 'wear', 3, [{ 'wear-now': 4 }]));
    expect(table(rows, 'wear').columns.slice(0, 2)).toMatchObject([
      { entries: ['Front brake pads', 'Chain', 'Fork seals', null] },
      { entries: [3.1, 12, null, 4] },
    ]);
    const column = applyEdit(
      doc,
      addColumn(doc, 'wear', { id: 'n', name: 'n', kind: 'text', entries: [] }, 0),
    );
    expect(table(column, 'wear').columns[0]).toMatchObject({ entries: [null, null, null] });
  });

  it.each<[string, Edit, string]>([
    [
      'a cell that is gone',
      { kind: 'entry', cell: 'gone', column: 'c', row: 0, before: 1, after: 2 },
      'no longer in the notebook',
    ],
    [
      'a column that is gone',
      { kind: 'entry', cell: 'wear', column: 'gone', row: 0, before: 1, after: 2 },
      "no longer in 'wear'",
    ],
    [
      'a row that is not there',
      { kind: 'entry', cell: 'wear', column: 'wear-now', row: 3, before: null, after: 2 },
      "'wear', column 'now', row 4: the table has no such row",
    ],
    [
      'another figure before',
      { kind: 'entry', cell: 'wear', column: 'wear-now', row: 0, before: 3, after: 2 },
      "'wear', column 'now', row 1 has been changed since",
    ],
    [
      'an entry of another kind',
      entryEdit(doc, 'wear', 'wear-now', 0, true),
      "'wear', column 'now', row 1: must be a number or empty",
    ],
    [
      'an endless figure',
      entryEdit(doc, 'wear', 'wear-now', 0, Number.POSITIVE_INFINITY),
      'must be a finite number',
    ],
    [
      'an entry of a worked column',
      { kind: 'entry', cell: 'wear', column: 'wear-worn', row: 0, before: null, after: 2 },
      'is worked out; change its formula instead',
    ],
    [
      'a name that is taken',
      addCell(doc, { ...figure, name: 'wear' } as Cell, 0),
      "Another cell is named 'wear' already",
    ],
    [
      'a name that is not plain',
      addCell(doc, { ...figure, name: 'two words' } as Cell, 0),
      'is not a plain name',
    ],
    ['an id that is taken', addCell(doc, { ...note, id: 'wear' }, 0), 'is in the notebook already'],
    [
      'a column name that is taken',
      addColumn(doc, 'wear', { id: 'n', name: 'now', kind: 'text', entries: [] }, 0),
      "has two columns named 'now'",
    ],
    [
      'too long a column',
      addColumn(doc, 'wear', { id: 'n', name: 'n', kind: 'text', entries: ['', '', '', ''] }, 0),
      'all must have as many',
    ],
    [
      'an entered column of a pairing',
      addColumn(doc, 'ride', { id: 'n', name: 'n', kind: 'text', entries: [] }, 0),
      'entered by hand; it has no formula',
    ],
    [
      'rows past the end',
      { kind: 'rows', cell: 'wear', at: 2, before: [{}, {}], after: [] },
      'are not all there; it has 3',
    ],
    ['rows with a strange column', addRows(doc, 'wear', 0, [{ gone: 1 }]), 'for a column that is not there'],
    [
      'a pin on a hostile word',
      { kind: 'pin', cell: 'decision', part: '__proto__', before: null, after: 'leave' },
      'a word that cannot be used',
    ],
    [
      'a currency of no code',
      notebookEdit(doc, 'money', 'euro'),
      'must be a currency code of three capitals',
    ],
    [
      'a low above the high',
      valueEdit(doc, 'budget', { type: 'number', unit: '', value: 1, low: 3, high: 2, control: 'field' }),
      'low is 3, above high, which is 2',
    ],
    [
      'a value edit of a table',
      {
        kind: 'value',
        cell: 'wear',
        before: { type: 'yes_no', value: null },
        after: { type: 'yes_no', value: true },
      },
      "'wear' is not a value",
    ],
  ])('refuses %s with a sentence', (_, edit, sentence) => {
    expect(() => applyEdit(doc, edit)).toThrow(EditError);
    expect(() => applyEdit(doc, edit)).toThrow(sentence);
  });

  it('applies a group all or not at all', () => {
    const broken = group('Both', [
      notebookEdit(doc, 'title', 'A'),
      removeCell(doc, 'wear'),
      removeCell(doc, 'wear'),
    ]);
    expect(() => applyEdit(doc, broken)).toThrow(EditError);
    expect(doc.title).toBe('Plateau loop');
  });

  it('keeps one entry of a long table cheap', () => {
    const long: NotebookDocument = {
      ...doc,
      cells: [
        {
          id: 't',
          kind: 'table',
          name: 't',
          title: 'T',
          columns: [
            { id: 'k', name: 'k', kind: 'number', entries: new Array(200_000).fill(1) },
            { id: 'x', name: 'x', kind: 'number', entries: new Array(200_000).fill(1) },
          ],
        },
      ],
    };
    const after = applyEdit(long, entryEdit(long, 't', 'k', 199_999, 2));
    expect(table(after, 't').columns[1]).toBe(table(long, 't').columns[1]);
    expect(table(after, 't').columns[0]).toHaveProperty(['entries', '199999'], 2);
  });
});

describe('makers of edits', () => {
  it('refuse to speak of what is not there', () => {
    expect(() => entryEdit(doc, 'wear', 'wear-now', 9, 1)).toThrow("Column 'now' has no row 10.");
    expect(() => entryEdit(doc, 'wear', 'wear-worn', 0, 1)).toThrow('change its formula instead');
    expect(() => formulaEdit(doc, 'wear', 'wear-now', '1')).toThrow('it has no formula');
    expect(() => removeCell(doc, 'gone')).toThrow('no longer in the notebook');
    expect(() => removeColumn(doc, 'wear', 'gone')).toThrow("no longer in 'wear'");
    expect(() => valueEdit(doc, 'wear', { type: 'date', value: null })).toThrow("'wear' is not a value.");
  });
});

describe('describe', () => {
  it.each<[Edit, string]>([
    [entryEdit(doc, 'wear', 'wear-now', 0, 2.9), 'Front brake pads, now: 3.1 to 2.9 mm'],
    [entryEdit(doc, 'wear', 'wear-rate', 0, 0.25), 'Front brake pads, rate: 0.21 to 0.25 per 1,000 km'],
    [entryEdit(doc, 'wear', 'wear-now', 2, 4), 'Fork seals, now: empty to 4 mm'],
    [entryEdit(doc, 'wear', 'wear-part', 1, 'Drive chain'), 'Wear, row 2, part: Chain to Drive chain'],
    [entryEdit(doc, 'wear', 'wear-critical', 2, true), 'Fork seals, critical: no to yes'],
    [entryEdit(doc, 'route', 'route-km', 1, 12500.5), 'Salt Gate, km: 1,310 to 12,500.5 km'],
    [
      valueEdit(doc, 'budget', {
        type: 'number',
        unit: 'EUR',
        value: 500,
        low: 0,
        high: 2000,
        control: 'slider',
      }),
      'Budget: 480 to 500 EUR',
    ],
    [
      valueEdit(doc, 'budget', {
        type: 'number',
        unit: 'USD',
        value: 480,
        low: 0,
        high: 2000,
        control: 'slider',
      }),
      'Budget: unit EUR to USD',
    ],
    [formulaEdit(doc, 'ride', 'ride-cost', '1'), 'Ride, cost: formula changed'],
    [removeCell(doc, 'wear'), 'Wear: removed'],
    [moveCell(doc, 'wear', 0), 'Wear: moved'],
    [addRows(doc, 'wear', 0, [{}, {}]), 'Wear: 2 rows added'],
    [removeRows(doc, 'wear', 0, 1), 'Wear: 1 row removed'],
    [pinEdit(doc, 'decision', 'Fork seals', 'leave'), 'Fork seals: replace to leave'],
    [pinEdit(doc, 'decision', 'Chain', 'leave'), 'Chain: as proposed to leave'],
    [forbidEdit(doc, 'decision', 'Chain', 'leave', true), 'Chain: leave forbidden'],
    [notebookEdit(doc, 'title', 'Long way'), 'Notebook name: Plateau loop to Long way'],
    [rename(doc, 'total', undefined, 'trip_km'), 'Rename total_km to trip_km'],
    [group('', [notebookEdit(doc, 'title', 'Long way')]), 'Notebook name: Plateau loop to Long way'],
  ])('puts an edit in words %#', (edit, words) => {
    expect(describeLine(doc, edit)).toBe(words);
  });
});
