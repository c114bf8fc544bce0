import fc from 'fast-check';
import { afterAll, describe, expect, it } from 'vitest';
import { plainNumber, showCount, showNumber, writeNumbersAs } from '../../src/formula/show.ts';

/** As the browser's own Intl writes it, with a true minus sign. */
function byIntl(locale: string, figure: number, least: number, most: number): string {
  const written = new Intl.NumberFormat(locale, {
    numberingSystem: 'latn',
    minimumFractionDigits: least,
    maximumFractionDigits: most,
  }).format(figure);
  if (!written.startsWith('-')) return written;
  return /[1-9]/.test(written) ? `−${written.slice(1)}` : written.slice(1);
}

const figures = fc.oneof(
  fc.double({ noNaN: true, noDefaultInfinity: true, min: -1e14, max: 1e14 }),
  fc.tuple(fc.integer({ min: -2_000_000_000, max: 2_000_000_000 }), fc.nat(6)).map(([n, k]) => n / 10 ** k),
  fc.constantFrom(0, -0, 1e14, 1234567.5, 999.995, 1.005, 0.1 + 0.2, -1000),
);

describe('numbers in the English of', () => {
  afterAll(() => writeNumbersAs('en'));

  it.each(['en', 'en-US', 'en-GB', 'en-AU', 'en-CA', 'en-IE', 'en-NZ', 'en-ZA', 'en-IN', 'de-CH'])(
    '%s are written as Intl writes them (property)',
    (locale) => {
      writeNumbersAs(locale);
      fc.assert(
        fc.property(figures, fc.nat(4), (figure, decimals) => {
          if (figure !== 0 && Math.abs(figure) < 0.5 * 10 ** -decimals) return;
          expect(showNumber(figure, decimals)).toBe(byIntl(locale, figure, decimals, decimals));
        }),
        { numRuns: 400 },
      );
      expect(showNumber(1234.5)).toBe(byIntl(locale, 1234.5, 0, 0));
      expect(showNumber(12.5)).toBe(byIntl(locale, 12.5, 0, 3));
      expect(showCount(1234567)).toBe(byIntl(locale, 1234567, 0, 0));
      expect(plainNumber(1.5)).toBe(byIntl(locale, 1.5, 0, 1));
    },
  );
});
