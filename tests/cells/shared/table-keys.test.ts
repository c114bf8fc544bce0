import { describe, expect, test } from 'vitest';
import { beginsWriting, gridMove, type KeyPress, tabMove } from '../../../cells/shared/table-keys.ts';

const EXTENT = { rows: 24, columns: 6, pageRows: 10 };

function press(key: string, held: Partial<KeyPress> = {}): KeyPress {
  return { key, ctrlKey: false, metaKey: false, altKey: false, ...held };
}

describe('moving in the grid', () => {
  test.each([
    ['ArrowUp', {}, { row: 4, column: 2 }],
    ['ArrowDown', {}, { row: 6, column: 2 }],
    ['ArrowLeft', {}, { row: 5, column: 1 }],
    ['ArrowRight', {}, { row: 5, column: 3 }],
    ['Home', {}, { row: 5, column: 0 }],
    ['End', {}, { row: 5, column: 5 }],
    ['Home', { ctrlKey: true }, { row: 0, column: 0 }],
    ['End', { metaKey: true }, { row: 23, column: 5 }],
    ['PageDown', {}, { row: 15, column: 2 }],
    ['PageUp', {}, { row: 0, column: 2 }],
    ['ArrowDown', { ctrlKey: true }, { row: 23, column: 2 }],
  ])('%s with %o', (key, held, to) => {
    expect(gridMove({ row: 5, column: 2 }, press(key, held), EXTENT)).toEqual(to);
  });

  test('up from the first row reaches the head, and no further', () => {
    expect(gridMove({ row: 0, column: 2 }, press('ArrowUp'), EXTENT)).toEqual({ row: -1, column: 2 });
    expect(gridMove({ row: -1, column: 2 }, press('ArrowUp'), EXTENT)).toEqual({ row: -1, column: 2 });
  });

  test('with Alt held the arrows belong to the card, which they move', () => {
    expect(gridMove({ row: 5, column: 2 }, press('ArrowUp', { altKey: true }), EXTENT)).toBeNull();
  });

  test('other keys move nothing', () => {
    expect(gridMove({ row: 5, column: 2 }, press('f'), EXTENT)).toBeNull();
  });
});

describe('Tab after an entry', () => {
  test('goes to the next row at the end of a row, and back with Shift', () => {
    const end = { row: 0, column: 5 };
    expect(tabMove(end, false, EXTENT)).toEqual({ row: 1, column: 0 });
    expect(tabMove({ row: 1, column: 0 }, true, EXTENT)).toEqual(end);
  });

  test('stays on the last figure and on the first', () => {
    expect(tabMove({ row: 23, column: 5 }, false, EXTENT)).toEqual({ row: 23, column: 5 });
    expect(tabMove({ row: 0, column: 0 }, true, EXTENT)).toEqual({ row: 0, column: 0 });
  });
});

describe('a key that begins to write', () => {
  test.each(['7', '-', '−', '.', ','])('%s over a number', (key) => {
    expect(beginsWriting(press(key), 'number')).toBe(true);
  });

  test('letters over a number are left to the page: F goes to the next fault', () => {
    expect(beginsWriting(press('f'), 'number')).toBe(false);
    expect(beginsWriting(press('f'), 'text')).toBe(true);
  });

  test('a shortcut never writes, nor does a named key', () => {
    expect(beginsWriting(press('z', { ctrlKey: true }), 'text')).toBe(false);
    expect(beginsWriting(press('Escape'), 'text')).toBe(false);
  });

  test('a list is opened with Enter, not by typing', () => {
    expect(beginsWriting(press('g'), 'choice')).toBe(false);
  });
});
