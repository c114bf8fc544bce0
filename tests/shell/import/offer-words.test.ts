import { afterEach, expect, test } from 'vitest';
import { writeNumbersAs } from '../../../src/formula/show.ts';
import { countWords, priceWords, shareWords } from '../../../src/shell/import/offer-words.ts';
import { sizeWords } from '../../../src/shell/size-words.ts';

afterEach(() => writeNumbersAs('en'));

const price = (amount: number, priceFor = 1) => ({ price: amount, currency: 'EUR', priceFor });

test('prices, shares, counts and sizes are written as the browser writes numbers', () => {
  writeNumbersAs('de-DE');
  expect(priceWords(price(1250))).toBe('1.250,00 EUR');
  expect(priceWords(price(40, 1000))).toBe('40,00 EUR for 1.000');
  expect(shareWords(-0.053)).toBe('−5,3 %');
  expect(countWords(50_001, 'row', 'rows')).toBe('50.001 rows');
  expect(sizeWords(1_540)).toBe('1,5 kB');
});

test.each([
  [0.125, '0.125 EUR'],
  [0.0625, '0.0625 EUR'],
  [31.5, '31.50 EUR'],
  [19.999, '19.999 EUR'],
])('%d has the decimals that it needs, two at least', (amount, words) => {
  expect(priceWords(price(amount))).toBe(words);
});
