import { expect, test } from 'vitest';
import { dayAfter } from '../../../cells/shared/figure-field.ts';

test('a date is stepped over the ends of months and years; other text is left alone', () => {
  expect(dayAfter('2026-02-28', 1)).toBe('2026-03-01');
  expect(dayAfter('2027-01-01', -1)).toBe('2026-12-31');
  expect(dayAfter('soon', 1)).toBeNull();
  expect(dayAfter('', 1)).toBeNull();
});
