import { expect, it } from 'vitest';
import { concernsAll } from '../../../cells/shared/notebook-controller.ts';
import type { Edit } from '../../../src/notebook/edit.ts';

const NONE: ReadonlySet<string> = new Set();
const figure: Edit = { kind: 'entry', cell: 'wear', column: 'now', row: 0, before: 1, after: 2 };
const formula: Edit = { kind: 'formula', cell: 'total', before: '1', after: '2' };

it('an element that shows something of everything is drawn once for an edit of figures, when all are told', () => {
  expect(concernsAll({ document: true, edit: figure, nodes: NONE })).toBe(false);
  expect(
    concernsAll({ document: true, edit: { kind: 'group', label: '', edits: [figure] }, nodes: NONE }),
  ).toBe(false);
  expect(concernsAll({ document: false, edit: null, nodes: new Set(['wear.now']), isPartial: true })).toBe(
    false,
  );
  expect(concernsAll({ document: false, edit: null, nodes: new Set(['total']), isPartial: false })).toBe(
    true,
  );
  // What was told in part may have been all of it.
  expect(concernsAll({ document: false, edit: null, nodes: NONE, isPartial: false })).toBe(true);
});

it('and at once for any other edit', () => {
  expect(concernsAll({ document: true, edit: formula, nodes: NONE })).toBe(true);
  expect(
    concernsAll({
      document: true,
      edit: { kind: 'group', label: '', edits: [figure, formula] },
      nodes: NONE,
    }),
  ).toBe(true);
  expect(concernsAll({ document: true, edit: null, nodes: NONE })).toBe(true);
});
