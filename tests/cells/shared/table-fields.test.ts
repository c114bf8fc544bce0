import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Block } from '../../../cells/shared/table-block.ts';
import { copyBlock } from '../../../cells/shared/table-copy.ts';
import {
  clearBlock,
  fieldsEdit,
  fillBlock,
  insertRows,
  moveRows,
  removeTheseRows,
} from '../../../cells/shared/table-fields.ts';
import { type Grid, gridOf } from '../../../cells/shared/table-model.ts';
import { pasteBlock } from '../../../cells/shared/table-paste.ts';
import { applyEdit } from '../../../src/notebook/apply-edit.ts';
import type { Cell, Entry, NotebookDocument, TableCell } from '../../../src/notebook/document.ts';
import type { Edit } from '../../../src/notebook/edit.ts';
import { invertEdit } from '../../../src/notebook/invert-edit.ts';
import { LiveNotebook } from '../../../src/notebook/live-notebook.ts';
import { readBlock } from '../../../src/tables/block.ts';
import { entered, notebook, table, worked } from '../../notebook/small-notebook.ts';

const asTheyStand = (place: number): number => place;

async function opened(cell: Cell): Promise<{ document: NotebookDocument; grid: Grid }> {
  const live = LiveNotebook.open(notebook(cell));
  await live.settled();
  const grid = gridOf(live, live.document.cells[0] as TableCell, false);
  live.dispose();
  return { document: live.document, grid };
}

/** Entries of all columns after an edit, which undone must give back the document as it was. */
function entriesAfter(document: NotebookDocument, edit: Edit | null): (readonly Entry[])[] {
  const next = edit === null ? document : applyEdit(document, edit);
  if (edit !== null) expect(applyEdit(next, invertEdit(edit))).toEqual(document);
  return (next.cells[0] as TableCell).columns.flatMap((each) =>
    each.kind === 'worked' ? [] : [each.entries],
  );
}

const LEGS = table(
  'route',
  entered('leg', 'text', ['a', 'b', 'c', 'd']),
  entered('km', 'number', [1, 2, 3, 4], { unit: 'km' }),
  worked('twice', 'km * 2', 'km'),
  entered('mi', 'number', [null, null, null, null], { unit: 'mi' }),
);

describe('filling', () => {
  test('down: the first row of the block goes into the others, worked columns stay', async () => {
    const { document, grid } = await opened(LEGS);
    const block: Block = { top: 1, left: 0, bottom: 3, right: 2 };
    expect(entriesAfter(document, fillBlock(document, grid, block, 'down', asTheyStand))).toEqual([
      ['a', 'b', 'b', 'b'],
      [1, 2, 2, 2],
      [null, null, null, null],
    ]);
  });

  test('down over a single row takes the row above; the first row has none', async () => {
    const { document, grid } = await opened(LEGS);
    const row = (top: number): Block => ({ top, left: 1, bottom: top, right: 1 });
    expect(entriesAfter(document, fillBlock(document, grid, row(2), 'down', asTheyStand))[1]).toEqual([
      1, 2, 2, 4,
    ]);
    expect(fillBlock(document, grid, row(0), 'down', asTheyStand)).toBeNull();
  });

  test('across converts between units', async () => {
    const { document, grid } = await opened(LEGS);
    const block: Block = { top: 0, left: 1, bottom: 1, right: 3 };
    const [, , miles] = entriesAfter(document, fillBlock(document, grid, block, 'across', asTheyStand));
    // 1 mile is 1.609344 km exactly (NIST SP 811, appendix B.8); 1/1.609344 = 0.621371192237334.
    expect(miles![0]).toBeCloseTo(0.621371192237334, 12);
    expect(miles!.slice(2)).toEqual([null, null]);
  });
});

test('emptying follows the rows as they are shown, and says nothing changed when all is empty', async () => {
  const { document, grid } = await opened(LEGS);
  const order = [3, 0, 2, 1];
  const edit = clearBlock(document, grid, { top: 0, left: 1, bottom: 1, right: 3 }, (place) => order[place]!);
  expect(entriesAfter(document, edit)[1]).toEqual([null, 2, 3, null]);
  expect(clearBlock(document, grid, { top: 0, left: 3, bottom: 3, right: 3 }, asTheyStand)).toBeNull();
});

test('many fields are written column by column, few are edits of single fields', async () => {
  const long = table(
    'long',
    entered(
      'n',
      'number',
      Array.from({ length: 300 }, (_, i) => i),
    ),
  );
  const { document, grid } = await opened(long);
  const writes = (count: number) =>
    new Map([['n', new Map(Array.from({ length: count }, (_, i): [number, Entry] => [i, -1]))]]);
  const many = fieldsEdit(document, grid, writes(150), 'many')!;
  expect(many.kind === 'group' && many.edits.map((edit) => edit.kind)).toEqual(['column']);
  expect(entriesAfter(document, many)[0]!.filter((entry) => entry === -1)).toHaveLength(150);
  const few = fieldsEdit(document, grid, writes(3), 'few')!;
  expect(few.kind === 'group' && few.edits.map((edit) => edit.kind)).toEqual(['entry', 'entry', 'entry']);
});

describe('rows', () => {
  test('are removed wherever they stand, as one step', async () => {
    const { document, grid } = await opened(LEGS);
    expect(entriesAfter(document, removeTheseRows(document, grid, [3, 0, 2]))[0]).toEqual(['b']);
  });

  test('are put in, and moved past their neighbour', async () => {
    const { document, grid } = await opened(LEGS);
    expect(entriesAfter(document, insertRows(document, grid, 1, 2))[0]).toEqual([
      'a',
      null,
      null,
      'b',
      'c',
      'd',
    ]);
    expect(entriesAfter(document, moveRows(document, grid, 1, 2, -1))[0]).toEqual(['b', 'c', 'a', 'd']);
    expect(entriesAfter(document, moveRows(document, grid, 1, 2, 1))[0]).toEqual(['a', 'd', 'b', 'c']);
    expect(moveRows(document, grid, 0, 1, -1)).toBeNull();
    expect(moveRows(document, grid, 2, 3, 1)).toBeNull();
  });
});

describe('copying', () => {
  test('figures in full, worked ones too, without units; both as text and as HTML', async () => {
    const { document, grid } = await opened(
      table(
        'wear',
        entered('part', 'text', ['Tube <rear>', '=cmd']),
        entered('now', 'number', [1020.125, 'x']),
        worked('third', 'now / 3'),
      ),
    );
    expect(document.cells).toHaveLength(1);
    const block = copyBlock(grid, { top: 0, left: 0, bottom: 1, right: 2 }, asTheyStand);
    // 1020.125 / 3 = 340.041666..., by hand.
    expect(block.text).toBe(`Tube <rear>\t1020.125\t${1020.125 / 3}\r\n'=cmd\tx\t\r\n`);
    expect(block.html).toContain('<td>Tube &lt;rear&gt;</td>');
    expect(copyBlock(grid, { top: 0, left: 1, bottom: 0, right: 1 }, asTheyStand).text).toBe('1020.125');
  });

  test('whatever is copied and pasted over itself changes nothing', async () => {
    const text = fc.oneof(
      fc.string({ maxLength: 12 }).map((each) => each.trim()),
      fc.constantFrom('=1+1', "'quoted", '"', 'a\tb', 'two\nlines', '-', '–'),
    );
    const figure = fc.oneof(
      fc.double({ noNaN: true, noDefaultInfinity: true }).map((each) => each + 0),
      fc.constant(null),
    );
    await fc.assert(
      fc.asyncProperty(
        fc.array(fc.tuple(text, figure, fc.constantFrom(true, false, null)), { minLength: 1, maxLength: 5 }),
        async (rows) => {
          const { document, grid } = await opened(
            table(
              'any',
              entered(
                'words',
                'text',
                rows.map(([words]) => (words === '' ? null : words)),
              ),
              entered(
                'n',
                'number',
                rows.map(([, n]) => n),
              ),
              entered(
                'yes',
                'yes_no',
                rows.map(([, , yes]) => yes),
              ),
            ),
          );
          const block: Block = { top: 0, left: 0, bottom: rows.length - 1, right: 2 };
          const fields = readBlock(copyBlock(grid, block, asTheyStand).text);
          const into = { block, placeCount: rows.length, rowAt: asTheyStand };
          expect(pasteBlock(document, grid, into, fields)?.edit).toBeNull();
        },
      ),
      { numRuns: 60, seed: 5 },
    );
  });
});
