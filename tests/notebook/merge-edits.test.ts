import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { applyEdit } from '../../src/notebook/apply-edit.ts';
import { differenceEdit } from '../../src/notebook/difference-edit.ts';
import type { Cell, NotebookDocument, TableCell } from '../../src/notebook/document.ts';
import type { Edit } from '../../src/notebook/edit.ts';
import {
  addCell,
  addColumn,
  addRows,
  entryEdit,
  group,
  invert,
  moveCell,
  notebookEdit,
  removeCell,
  removeRows,
  rename,
  replaceCell,
  replaceColumn,
} from '../../src/notebook/edits.ts';
import { findCell, findColumn, isEntered } from '../../src/notebook/lookup.ts';
import { mergeEdits } from '../../src/notebook/merge-edits.ts';
import { sampleNotebook } from './sample.ts';

const base = sampleNotebook();

function entries(document: NotebookDocument, cellId: string, columnId: string): readonly unknown[] {
  const column = findColumn(findCell(document, cellId)!, columnId)!;
  return isEntered(column) ? column.entries : [];
}

/** What comes out when this tab made `mine` while another made `theirs`, both on the sample. */
function merge(mine: readonly Edit[], theirs: readonly Edit[]) {
  return mergeEdits(base, theirs.reduce(applyEdit, base), mine);
}

const now = (row: number, after: number): Edit => entryEdit(base, 'wear', 'wear-now', row, after);
const tubes = { 'wear-part': 'Tubes', 'wear-now': 7 };

describe('mergeEdits', () => {
  it('keeps the edits of both tabs', () => {
    const { document, conflicts } = merge(
      [now(0, 2.9), notebookEdit(base, 'title', 'Mine')],
      [now(1, 11), notebookEdit(base, 'gist', 'Theirs')],
    );
    expect(conflicts).toEqual([]);
    expect(document).toMatchObject({ title: 'Mine', gist: 'Theirs' });
    expect(entries(document, 'wear', 'wear-now')).toEqual([2.9, 11, null]);
  });

  it.each<[string, Edit[]]>([
    ['put in above', [addRows(base, 'wear', 0, [tubes])]],
    ['put in below', [addRows(base, 'wear', 3, [tubes])]],
    ['taken out above', [removeRows(base, 'wear', 0, 1)]],
    [
      'taken out and put in',
      [removeRows(base, 'wear', 0, 1), { kind: 'rows', cell: 'wear', at: 2, before: [], after: [tubes] }],
    ],
  ])('finds a row again when rows were %s', (_, theirs) => {
    const { document, conflicts } = merge([now(1, 11.5)], theirs);
    expect(conflicts).toEqual([]);
    const at = entries(document, 'wear', 'wear-part').indexOf('Chain');
    expect(entries(document, 'wear', 'wear-now')[at]).toBe(11.5);
    expect(entries(document, 'wear', 'wear-now').filter((entry) => entry === 11.5)).toHaveLength(1);
  });

  it('finds the place of new rows again, and rows to be taken out', () => {
    const theirs = [addRows(base, 'wear', 0, [tubes])];
    const added = merge(
      [
        addRows(base, 'wear', 1, [{ 'wear-part': 'Levers' }]),
        addRows(base, 'wear', 3, [{ 'wear-part': 'Bulbs' }]),
      ],
      theirs,
    );
    expect(entries(added.document, 'wear', 'wear-part')).toEqual([
      'Tubes',
      'Front brake pads',
      'Levers',
      'Chain',
      'Bulbs',
      'Fork seals',
    ]);
    const removed = merge([removeRows(base, 'wear', 1, 2)], theirs);
    expect(entries(removed.document, 'wear', 'wear-part')).toEqual(['Tubes', 'Front brake pads']);
  });

  it('never writes into a row that it cannot be sure of', () => {
    const twice: NotebookDocument = {
      ...base,
      cells: [
        {
          id: 't',
          kind: 'table',
          name: 't',
          title: 'T',
          columns: [
            { id: 'a', name: 'a', kind: 'number', entries: [1, 2, 1, 3] },
            { id: 'b', name: 'b', kind: 'number', entries: [5, 6, 5, 7] },
          ],
        },
      ],
    };
    const theirs = [removeRows(twice, 't', 1, 1), entryEdit(twice, 't', 'b', 3, 8)];
    const saved = applyEdit(applyEdit(twice, theirs[1]!), theirs[0]!);
    const result = mergeEdits(twice, saved, [entryEdit(twice, 't', 'a', 2, 9)]);
    expect(result.conflicts.map((conflict) => conflict.reason)).toEqual([
      "Row 3 of 'T' cannot be found again: another tab added or removed rows.",
    ]);
    expect(result.document).toEqual(saved);
  });

  it('reports two edits of one field and goes on with the rest', () => {
    const mine = [now(0, 2.9), notebookEdit(base, 'title', 'Mine')];
    const { document, conflicts, edits } = merge(mine, [now(0, 2.5)]);
    expect(conflicts).toEqual([
      {
        edit: mine[0],
        reason:
          "'wear', column 'now', row 1 has been changed since, so this edit no longer fits; make it again.",
      },
    ]);
    expect(edits).toEqual([mine[1]]);
    expect(entries(document, 'wear', 'wear-now')[0]).toBe(2.5);
    expect(document.title).toBe('Mine');
  });

  it('merges a cell that both changed, field by field', () => {
    const wear = findCell(base, 'wear') as TableCell;
    const mine = replaceCell(base, 'wear', { ...wear, title: 'Fitted parts' });
    const { document, conflicts } = merge(
      [mine],
      [now(0, 2.5), replaceColumn(base, 'wear', 'wear-rate', { ...wear.columns[2]!, title: 'Rate' })],
    );
    expect(conflicts).toEqual([]);
    expect(findCell(document, 'wear')).toMatchObject({ title: 'Fitted parts' });
    expect(entries(document, 'wear', 'wear-now')[0]).toBe(2.5);
    const both = merge([mine], [replaceCell(base, 'wear', { ...wear, title: 'Parts' })]);
    expect(both.conflicts.map((conflict) => conflict.reason)).toEqual([
      'Another tab has changed the title of the same thing.',
    ]);
  });

  it('renames over figures that another tab typed', () => {
    const { document, conflicts } = merge(
      [rename(base, 'wear', 'wear-now', 'reading')],
      [now(0, 2.5), addCell(base, { id: 'n', kind: 'note', title: 'N', text: '' }, 0)],
    );
    expect(conflicts).toEqual([]);
    expect(findCell(document, 'wear')).toMatchObject({
      columns: {
        1: { name: 'reading', entries: [2.5, 12, null] },
        5: { formula: 'reading * rate * budget / total_km' },
      },
    });
  });

  it.each<[string, Edit, Edit, string]>([
    ['a cell that is gone', now(0, 2.9), removeCell(base, 'wear'), 'The table was removed in another tab.'],
    [
      'a cell removed that was changed',
      removeCell(base, 'wear'),
      now(0, 2.5),
      'What was removed here was changed in another tab.',
    ],
    [
      'a cell removed twice',
      removeCell(base, 'wear'),
      removeCell(base, 'wear'),
      'What was changed here was removed in another tab.',
    ],
    [
      'two cells of one name',
      addCell(base, { id: 'a', kind: 'formula', name: 'x', title: 'X', formula: '1' }, 0),
      addCell(base, { id: 'b', kind: 'formula', name: 'x', title: 'X', formula: '2' }, 0),
      "Another cell is named 'x' already; choose another name.",
    ],
  ])('reports %s', (_, mine, theirs, reason) => {
    const saved = applyEdit(base, theirs);
    const result = mergeEdits(base, saved, [mine]);
    expect(result).toEqual({ document: saved, edits: [], conflicts: [{ edit: mine, reason }] });
  });

  it('moves cells and adds columns among those of the other tab', () => {
    const column = { id: 'n', name: 'limit', kind: 'number', entries: [1, 2, 3] } as const;
    const { document, conflicts } = merge(
      [moveCell(base, 'decision', 0), addColumn(base, 'wear', column, 6)],
      [removeCell(base, 'note'), addColumn(base, 'wear', { ...column, id: 'm', name: 'least' }, 0)],
    );
    expect(conflicts).toEqual([]);
    expect(document.cells.map((cell) => cell.id).slice(0, 2)).toEqual(['decision', 'budget']);
    expect((findCell(document, 'wear') as TableCell).columns.map((each) => each.name)).toEqual([
      'least',
      'part',
      'now',
      'rate',
      'critical',
      'fitted',
      'limit',
      'worn',
    ]);
  });
});

describe('differenceEdit', () => {
  const some = fc.subarray<Cell>([...base.cells], { minLength: 0 });
  const shuffled = some.chain((cells) => fc.shuffledSubarray(cells, { minLength: cells.length }));

  it('turns any state of a notebook into any other, and back', () => {
    fc.assert(
      fc.property(shuffled, shuffled, fc.boolean(), (before, after, swap) => {
        const renamed = swap
          ? after.map(
              (cell): Cell =>
                cell.id === 'wear'
                  ? ({ ...cell, name: 'route' } as Cell)
                  : cell.id === 'route'
                    ? ({ ...cell, name: 'wear' } as Cell)
                    : cell,
            )
          : after;
        const [from, to] = [
          { ...base, cells: before },
          { ...base, title: 'Other', cells: renamed },
        ];
        const edit = differenceEdit(from, to, 'Changes');
        expect(applyEdit(from, edit)).toEqual(to);
        expect(applyEdit(to, invert(edit))).toEqual(from);
      }),
    );
  });

  it('changes a table field by field where only entries differ', () => {
    const after = applyEdit(base, now(0, 2.9));
    expect(differenceEdit(base, after, 'Changes')).toEqual(group('Changes', [now(0, 2.9)]));
    expect(differenceEdit(base, base, 'Changes')).toEqual(group('Changes', []));
  });
});
