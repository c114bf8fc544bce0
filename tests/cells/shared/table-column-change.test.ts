import { describe, expect, test } from 'vitest';
import {
  canConvert,
  changeDecimals,
  changeKind,
  changeOptions,
  changeUnit,
} from '../../../cells/shared/table-column-change.ts';
import { newColumn } from '../../../cells/shared/table-new-column.ts';
import type { EnteredColumn, TableCell } from '../../../src/notebook/document.ts';
import { entered, table, worked } from '../../notebook/small-notebook.ts';

const miles = entered('km', 'number', [4, 'far', null], { unit: 'mi' });

describe('another unit', () => {
  test('turns the figures into it and leaves what could not be read', () => {
    const change = changeUnit(miles, 'km', true);
    // 1 mile = 1.609344 km exactly (NIST SP 811, appendix B.8), so 4 mi = 6.437376 km.
    expect(change).toMatchObject({ column: { unit: 'km', entries: [6.437376, 'far', null] } });
  });

  test('or leaves them as they were typed', () => {
    expect(changeUnit(miles, 'km', false)).toMatchObject({
      column: { unit: 'km', entries: [4, 'far', null] },
    });
  });

  test('that measures another thing leaves them too', () => {
    expect(canConvert('mi', 'kg')).toBe(false);
    expect(changeUnit(miles, 'kg', true)).toMatchObject({
      column: { unit: 'kg', entries: [4, 'far', null] },
    });
  });

  test('that is none is refused by name', () => {
    expect(changeUnit(miles, 'leagues', true)).toMatchObject({
      reason: "'leagues' is no unit that is known here",
    });
  });

  test('nothing at all makes plain numbers', () => {
    expect(changeUnit(miles, ' ', true)).toMatchObject({
      column: { unit: undefined, entries: [4, 'far', null] },
    });
  });
});

describe('decimals', () => {
  const column = worked('cost', 'km * 2');
  test('a whole number from 0 to 10', () => {
    expect(changeDecimals(column, '2')).toMatchObject({ column: { decimals: 2 } });
    expect(changeDecimals(column, '')).toMatchObject({ column: { decimals: undefined } });
  });
  test.each(['-1', '2.5', 'two', '11'])('%s is refused', (text) => {
    expect(changeDecimals(column, text)).toMatchObject({ reason: `'${text}' is no count of decimals` });
  });
});

describe('another kind', () => {
  test('reads the entries again and keeps what cannot be read as its text', () => {
    const texts = entered('now', 'text', ['4,5', 'new', null]);
    expect(changeKind(texts, 'number').entries).toEqual([4.5, 'new', null]);
  });

  test('there and back loses nothing', () => {
    const numbers = entered('now', 'number', [4.5, null, 1020]);
    expect(changeKind(changeKind(numbers, 'text'), 'number').entries).toEqual([4.5, null, 1020]);
  });

  test('a list offers what is in the column', () => {
    const texts = entered('surface', 'text', ['sand', 'rock', 'sand', null]);
    expect(changeKind(texts, 'choice').options).toEqual(['sand', 'rock']);
  });

  test('only numbers have a unit', () => {
    expect(changeKind(miles, 'text').unit).toBeUndefined();
  });
});

test('choices are written with commas; none is refused', () => {
  const column: EnteredColumn = entered('surface', 'choice', [], { options: ['a'] });
  expect(changeOptions(column, 'sealed, gravel,, sealed')).toMatchObject({
    column: { options: ['sealed', 'gravel'] },
  });
  expect(changeOptions(column, ' , ')).toMatchObject({ reason: 'a choice needs at least one text' });
});

describe('a new column', () => {
  const wear = table('wear', entered('front_pads_mm', 'number', [1, 2])) as TableCell;

  test('has a plain name that no other has, and an empty field for each row', () => {
    const column = newColumn(wear, { title: 'Front pads (mm)', kind: 'number', formula: '' }, 2);
    expect(column).toMatchObject({
      name: 'front_pads_mm_2',
      title: 'Front pads (mm)',
      entries: [null, null],
    });
  });

  test('that is worked out has its formula and no entries', () => {
    const column = newColumn(wear, { title: 'Left', kind: 'worked', formula: 'front_pads_mm - 1' }, 2);
    expect(column).toMatchObject({ kind: 'worked', name: 'left', formula: 'front_pads_mm - 1' });
    expect(column).not.toHaveProperty('entries');
  });
});
