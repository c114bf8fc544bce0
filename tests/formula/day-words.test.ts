import fc from 'fast-check';
import { expect, test } from 'vitest';
import { dateWords, weekdayWord } from '../../src/formula/day-words.ts';

test.each([
  [20939, 'Sat 1 May 2027'],
  // ISO 8601:2004, 3.2.1: 1 January 2000 is a Saturday.
  [10957, 'Sat 1 January 2000'],
  [0, 'Thu 1 January 1970'],
  [-1, 'Wed 31 December 1969'],
  [Number.NaN, ''],
])('day %d is %s', (day, words) => {
  expect(dateWords(day)).toBe(words);
});

// Reference: the dates of the Unicode library (ICU), as Intl gives them.
test('every day reads as the Unicode library writes it', () => {
  const whole = new Intl.DateTimeFormat('en-GB', {
    weekday: 'short',
    day: 'numeric',
    month: 'long',
    year: 'numeric',
    timeZone: 'UTC',
  });
  const weekday = new Intl.DateTimeFormat('en', { weekday: 'short', timeZone: 'UTC' });
  fc.assert(
    fc.property(fc.integer({ min: -200_000, max: 400_000 }), (day) => {
      expect(dateWords(day)).toBe(whole.format(day * 86_400_000).replaceAll(',', ''));
      expect(weekdayWord(day)).toBe(weekday.format(day * 86_400_000));
    }),
    { numRuns: 500 },
  );
});
