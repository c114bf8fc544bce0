import { describe, expect, test } from 'vitest';
import { blockBetween, blockInWords, inBlock } from '../../../cells/shared/table-block.ts';
import { answerOf, blockCommand } from '../../../cells/shared/table-keys.ts';
import { GridMarks } from '../../../cells/shared/table-marks.ts';

const EXTENT = { rows: 8, columns: 5, pageRows: 10 };
const at = (row: number, column: number) => ({ row, column });
const press = (key: string, held = {}) => ({ key, ctrlKey: false, metaKey: false, altKey: false, ...held });

test('a block is the same whichever corner came first, and never takes the head', () => {
  expect(blockBetween(at(3, 1), at(2, 4))).toEqual({ top: 2, left: 1, bottom: 3, right: 4 });
  expect(blockBetween(at(-1, 1), at(2, 1))).toEqual({ top: 0, left: 1, bottom: 2, right: 1 });
  expect(inBlock(blockBetween(at(0, 0), at(1, 1)), 1, 2)).toBe(false);
  expect(blockInWords(blockBetween(at(0, 1), at(2, 1)))).toBe('3 rows × 1 column');
});

describe('marking', () => {
  test('with Shift the first corner stays and the second moves; back on one figure nothing is marked', () => {
    const marks = new GridMarks();
    marks.extend(at(2, 2), at(3, 2));
    marks.extend(at(3, 2), at(1, 3));
    expect(marks.block).toEqual({ top: 1, left: 2, bottom: 2, right: 3 });
    marks.extend(at(1, 3), at(2, 2));
    expect(marks.block).toBeNull();
    expect(marks.corner(at(0, 0))).toEqual(at(2, 2));
  });

  test('whole rows, whole columns, everything', () => {
    const marks = new GridMarks();
    marks.extend(at(2, 2), at(3, 3));
    marks.whole('rows', at(3, 3), EXTENT);
    expect(marks.block).toEqual({ top: 2, left: 0, bottom: 3, right: 4 });
    marks.whole('columns', at(3, 3), EXTENT);
    expect(marks.block).toEqual({ top: 0, left: 0, bottom: 7, right: 4 });
    marks.clear();
    marks.whole('columns', at(3, 1), EXTENT);
    expect(marks.block).toEqual({ top: 0, left: 1, bottom: 7, right: 1 });
  });

  test('taps: the first sets a corner, later ones the other; one figure counts while tapping', () => {
    const marks = new GridMarks();
    marks.tapping = true;
    marks.tap(at(1, 1));
    expect(marks.block).toEqual({ top: 1, left: 1, bottom: 1, right: 1 });
    marks.tap(at(3, 2));
    marks.tap(at(0, 0));
    expect(marks.block).toEqual({ top: 0, left: 0, bottom: 1, right: 1 });
    expect(marks.clear()).toBe(true);
    expect(marks.clear()).toBe(false);
  });

  test('a drag over other figures takes the click that ends it; a press alone does not', () => {
    const marks = new GridMarks();
    marks.pressed(at(1, 1));
    expect(marks.draggedTo(at(1, 1))).toBe(false);
    expect(marks.tookClick()).toBe(false);
    expect(marks.draggedTo(at(2, 3))).toBe(true);
    marks.released();
    expect(marks.block).toEqual({ top: 1, left: 1, bottom: 2, right: 3 });
    expect([marks.tookClick(), marks.tookClick()]).toEqual([true, false]);
    expect(marks.draggedTo(at(4, 4))).toBe(false);
  });

  test('a grid that lost the marked rows marks nothing', () => {
    const marks = new GridMarks();
    marks.mark(at(0, 0), at(7, 1));
    marks.keepWithin(EXTENT);
    expect(marks.block).not.toBeNull();
    marks.keepWithin({ ...EXTENT, rows: 7 });
    expect(marks.block).toBeNull();
  });
});

test.each([
  [' ', { shiftKey: true }, 'rows'],
  [' ', { ctrlKey: true }, 'columns'],
  ['a', { metaKey: true }, 'all'],
  ['f', { ctrlKey: true }, 'find'],
  ['d', { ctrlKey: true }, 'fill-down'],
  ['D', { ctrlKey: true, shiftKey: true }, 'fill-across'],
  [' ', {}, null],
  ['d', {}, null],
  ['a', {}, null],
])('the key %o with %o asks for %s', (key, held, command) => {
  expect(blockCommand(press(key, held), false)).toBe(command);
});

test('Delete empties a marked block, and is the figure’s own otherwise', () => {
  expect(blockCommand(press('Delete'), true)).toBe('clear');
  expect(blockCommand(press('Delete'), false)).toBeNull();
});

test('y and n answer a yes/no figure', () => {
  expect([answerOf(press('y'), 'yes_no'), answerOf(press('N'), 'yes_no')]).toEqual([true, false]);
  expect([answerOf(press('y'), 'text'), answerOf(press('y', { ctrlKey: true }), 'yes_no')]).toEqual([
    null,
    null,
  ]);
});
