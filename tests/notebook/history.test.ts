import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { applyEdit } from '../../src/notebook/apply-edit.ts';
import type { NotebookDocument } from '../../src/notebook/document.ts';
import type { Edit } from '../../src/notebook/edit.ts';
import {
  addRows,
  entryEdit,
  moveCell,
  notebookEdit,
  removeCell,
  removeColumn,
  removeRows,
} from '../../src/notebook/edits.ts';
import { History } from '../../src/notebook/history.ts';
import { findCell, rowCount } from '../../src/notebook/lookup.ts';
import { sampleNotebook } from './sample.ts';

/** Makes the n-th sort of edit on whatever the notebook now holds; null when it cannot be made. */
function someEdit(document: NotebookDocument, sort: number, figure: number): Edit | null {
  const table = findCell(document, 'route');
  const cell = document.cells[figure % document.cells.length];
  if (sort === 0) return notebookEdit(document, 'title', `Trip ${figure}`);
  if (sort === 1) return cell === undefined ? null : moveCell(document, cell.id, figure % 7);
  if (sort === 2) return cell === undefined ? null : removeCell(document, cell.id);
  if (table?.kind !== 'table' || table.columns.length < 2) return null;
  if (sort === 3) return addRows(document, 'route', figure % 3, [{ 'route-km': figure }]);
  if (sort === 4) return removeColumn(document, 'route', 'route-leg');
  if (rowCount(table) === 0) return null;
  const row = figure % rowCount(table);
  return sort === 5
    ? removeRows(document, 'route', row, 1)
    : entryEdit(document, 'route', 'route-km', row, figure);
}

describe('History', () => {
  it('undoes and redoes any run of edits, as far as it goes', () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(fc.nat(6), fc.nat(50)), { maxLength: 30 }), (plan) => {
        const history = new History();
        const states = [sampleNotebook()];
        for (const [sort, figure] of plan) {
          const edit = someEdit(states.at(-1)!, sort, figure);
          if (edit === null) continue;
          states.push(applyEdit(states.at(-1)!, edit));
          history.done(edit);
        }
        let now = states.at(-1)!;
        for (const state of states.slice(0, -1).reverse()) {
          now = applyEdit(now, history.undo()!);
          expect(now).toEqual(state);
        }
        expect(history.undo()).toBe(null);
        for (const state of states.slice(1)) {
          now = applyEdit(now, history.redo()!);
          expect(now).toEqual(state);
        }
        expect(history.redo()).toBe(null);
      }),
    );
  });

  it('forgets what was undone once another edit is made', () => {
    const doc = sampleNotebook();
    const history = new History();
    expect([history.canUndo, history.canRedo]).toEqual([false, false]);
    history.done(notebookEdit(doc, 'title', 'A'));
    history.undo();
    expect([history.canUndo, history.canRedo]).toEqual([false, true]);
    const other = notebookEdit(doc, 'title', 'B');
    history.done(other);
    expect([history.canUndo, history.canRedo, history.redo()]).toEqual([true, false, null]);
    expect(history.made).toEqual([other]);
  });
});
