import { describe, expect, test } from 'vitest';
import { enteredDecimals, workedDecimals } from '../../../cells/shared/table-decimals.ts';

describe('decimals of a column of entries', () => {
  test.each([
    [[4.8, 12, 0.25], 2],
    [[640, 910], 0],
    [[0.1 + 0.2], 1],
    [[1 / 3], 4],
    [[0.0125, 1.0325], 4],
    [[0], 0],
    [[Number.NaN, 1.5, Number.NaN], 1],
    [[], 0],
  ])('%o are shown with %d', (figures, decimals) => {
    expect(enteredDecimals(figures)).toBe(decimals);
  });

  test('more than were asked for are shown where more were typed', () => {
    expect(enteredDecimals([142, 26.9], 2)).toBe(2);
    expect(enteredDecimals([260, 265.5], 0)).toBe(1);
  });

  // 1 mile = 1.609344 km, 1 lb = 0.45359237 kg, 1 inch = 25.4 mm exactly (NIST SP 811, appendix B.8).
  test.each([
    ['200 mi among whole km', [260, 310, 200 * 1.609344], 0],
    ['50 mi beside 265.5 km', [265.5, 50 * 1.609344], 1],
    ['4 mi among whole km', [260, 4 * 1.609344], 1],
    ['200 mi alone', [200 * 1.609344], 1],
    ['22 lb and 1 lb alone', [22 * 0.45359237, 0.45359237], 3],
    ['1/64 in beside 1.5 mm', [1.5, 25.4 / 64], 2],
    ['3/8 in beside 10.4 mm, which needs its three', [10.4, (3 * 25.4) / 8], 3],
  ])('%s does not widen its column', (_words, figures, decimals) => {
    expect(enteredDecimals(figures)).toBe(decimals);
  });

  test('a turned figure does not move what was asked for', () => {
    expect(enteredDecimals([142, 80.4672], 2)).toBe(2);
    expect(enteredDecimals([260, 200 * 1.609344], 0)).toBe(0);
  });

  test('a small turned figure is not rounded to another: two of its digits are seen', () => {
    expect(enteredDecimals([260, 4 * 1.609344], 0)).toBe(1);
    expect(enteredDecimals([260, (3 / 8) * 1.609344], 0)).toBe(2);
  });

  test('rows in units of their own are each shown as typed', () => {
    expect(enteredDecimals([0.09, 4.8, 21_400])).toBeUndefined();
  });

  test('large and small whole figures are not', () => {
    expect(enteredDecimals([1, 21_400])).toBe(0);
  });
});

describe('decimals of a column of worked figures', () => {
  test.each([
    [[0.45, 0.0312], 3],
    [[914.2, 14.25], 0],
    [[9.14, 0.5], 2],
    [[9.6], 1],
    [[640, 1138, 0], 0],
    [[0.00012], 4],
    [[Number.NaN], 0],
  ])('%o are shown with %d', (figures, decimals) => {
    expect(workedDecimals(figures)).toBe(decimals);
  });

  test('chances stay equal however small some are', () => {
    expect(workedDecimals([0.88, 1e-9])).toBe(3);
  });

  test('broken figures under ten beside thousands are rows in units of their own', () => {
    expect(workedDecimals([2.9, 8600])).toBeUndefined();
  });
});
