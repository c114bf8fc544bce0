import { describe, expect, test } from 'vitest';
import { shapeOf } from '../../src/import/cell-shape.ts';
import { moneyIn, moneyOf } from '../../src/import/currency-signs.ts';
import { markEvidence, readMarkedNumber } from '../../src/import/marked-number.ts';
import { priceWord } from '../../src/import/price-words.ts';
import { readPrice } from '../../src/import/read-price.ts';
import { readLeadDays, readPack, readShare, readStock } from '../../src/import/read-quantities.ts';

describe('figures with marks', () => {
  // text, decimal mark of the column, figure; each worked out by hand from the marks.
  test.each([
    ['1234', null, 1234],
    ['1.234,50', ',', 1234.5],
    ['1,234.50', '.', 1234.5],
    ["1'234.50", '.', 1234.5],
    ['1’234.50', '.', 1234.5],
    ['1 234,50', ',', 1234.5],
    ['1\u00a0234,50', ',', 1234.5],
    ['1\u202f234,50', ',', 1234.5],
    ['1.234.567', ',', 1234567],
    ['1,23,456.00', '.', 123456],
    ['1.234', ',', 1234],
    ['1.234', '.', 1.234],
    ['0.125', null, 0.125],
    ['1234.567', null, 1234.567],
    ['12,5', null, 12.5],
    ['25,-', ',', 25],
    ['25.–', '.', 25],
    ['.95', null, 0.95],
    ['-3,5', ',', -3.5],
    ['−3,5', ',', -3.5],
    ['+4', null, 4],
  ] as const)('%j with %j is %d', (text, decimal, figure) => {
    expect(readMarkedNumber(text, decimal)).toMatchObject({ figure });
  });

  test.each([
    ['1.234', null, 'either'],
    ['1,234', null, 'either'],
    ['4,26E+12', ',', 'exponent'],
    ['20.100.0', null, 'not-a-number'],
    ['1.23.456', null, 'not-a-number'],
    ['1,2,3', ',', 'not-a-number'],
    ['12.50.2026', '.', 'not-a-number'],
    ['', '.', 'not-a-number'],
    ['.', '.', 'not-a-number'],
  ] as const)('%j with %j: %s', (text, decimal, trouble) => {
    expect(readMarkedNumber(text, decimal)).toEqual({ trouble });
  });

  test('the other decimal mark is read where no other reading is possible, and said', () => {
    expect(readMarkedNumber('12,50', '.')).toEqual({ figure: 12.5, odd: true });
    expect(readMarkedNumber('1.234,50', '.')).toEqual({ figure: 1234.5, odd: true });
  });

  test.each([
    ['€ 1.234,50', ','],
    ['1,234,567', '.'],
    ['12,5 EUR/St.', ','],
    ['Fr. 12.50', '.'],
    ['1.234', 'either'],
    ['20.100.0', 'none'],
    ['25,-', 'none'],
    ['725', 'none'],
    ['0.125', '.'],
  ] as const)('%j shows %s', (text, evidence) => {
    expect(markEvidence(text)).toBe(evidence);
  });
});

describe('prices', () => {
  test.each([
    ['€ 1.234,50', ',', 1234.5, 'EUR', ''],
    ['12,5 EUR/St.', ',', 12.5, 'EUR', 'St'],
    ['1 234,50 €/m²', ',', 1234.5, 'EUR', 'm²'],
    ['3 750 руб.', null, 3750, 'RUB', ''],
    ['12.50 zł', '.', 12.5, 'PLN', ''],
    ["CHF 1'234.50", '.', 1234.5, 'CHF', ''],
    ['£12.50 ea', '.', 12.5, 'GBP', 'ea'],
    ['A$ 95', null, 95, 'AUD', ''],
    ['12.50 per pair', '.', 12.5, null, 'pair'],
    ['120 kr', null, 120, null, ''],
    [' 48 € ', ',', 48, 'EUR', ''],
    ["'12.50", '.', 12.5, null, ''],
  ] as const)('%j', (text, decimal, price, currency, per) => {
    expect(readPrice(text, decimal)).toMatchObject({ price, currency, per, perCount: 1 });
  });

  test.each([
    ['', 'no-price'],
    ['-', 'no-price'],
    ['–', 'no-price'],
    ['n/a', 'no-price'],
    ['N.A.', 'no-price'],
    ['k. A.', 'no-price'],
    ['Цена не указана', 'no-price'],
    ['POA', 'on-request'],
    ['P.O.A.', 'on-request'],
    ['ask', 'on-request'],
    ['Auf Anfrage', 'on-request'],
    ['sur demande', 'on-request'],
    ['a consultar', 'on-request'],
    ['op aanvraag', 'on-request'],
    ['на запрос', 'not-a-price'],
    ['24,80/46,00', 'two-prices'],
    ['24.80 / 46.00', 'two-prices'],
    ['18,50 € (24,00 €)', 'two-prices'],
    ['12.50 EUR 13.80 USD', 'two-prices'],
    ['$25-$41', 'price-range'],
    ['12,50 - 14,00', 'price-range'],
    ['25 to 41', 'price-range'],
    ['from 12.50', 'from-price'],
    ['ab 12,50 €', 'from-price'],
    ['0', 'zero-price'],
    ['0,00 €', 'zero-price'],
    ['-12.50', 'below-zero'],
    ['(12.50)', 'below-zero'],
    ['#REF!', 'spoilt-number'],
    ['#ЗНАЧ!', 'spoilt-number'],
    ['1,2E+03', 'spoilt-number'],
    ['22,1O', 'letter-in-figure'],
    ['€ l4,50', 'letter-in-figure'],
    ['1o0,00 EUR', 'letter-in-figure'],
    ['10.00%', 'not-a-price'],
    ['12.05.2026', 'not-a-price'],
    ['see list', 'not-a-price'],
    ['2 for 10.00', 'not-a-price'],
  ])('%j: %s', (text, none) => {
    expect(readPrice(text, ',')).toEqual({ none });
  });

  test('1.234 is no price until its mark is known', () => {
    expect(readPrice('€ 1.234', null)).toEqual({ none: 'either-mark' });
    expect(readPrice('€ 1.234', ',')).toMatchObject({ price: 1234 });
  });

  test('a sign that several currencies share is kept, not guessed', () => {
    expect(readPrice('$34', null)).toMatchObject({ price: 34, currency: null, sharedSign: '$' });
  });

  test('a price for a hundred', () => {
    expect(readPrice('4,50 EUR/100 St.', ',')).toMatchObject({ price: 4.5, per: 'St', perCount: 100 });
  });

  test('words beside a price are kept', () => {
    expect(readPrice('12.50 ex VAT', '.')).toMatchObject({ price: 12.5, words: 'ex VAT' });
  });
});

describe('currencies', () => {
  test.each([
    ['Preis (EUR)', ['EUR']],
    ['Стоимость, руб', ['RUB']],
    ['Prix €', ['EUR']],
    ['Price', []],
    ['All try parts', []],
    ['EUR / USD', ['EUR', 'USD']],
    ['Price $', [null]],
  ])('%j', (text, codes) => {
    expect(moneyIn(text).map(({ code }) => code)).toEqual(codes);
  });

  test('a word that is no currency is none', () => {
    expect(moneyOf('pcs')).toBe(undefined);
    expect(moneyOf('__proto__')).toBe(undefined);
  });
});

describe('quantities', () => {
  test.each([
    ['10', 10],
    ['10 pcs', 10],
    ['VE 10', 10],
    ['pack of 10', 10],
    ['10er', 10],
    ['pair', 2],
    ['Paar', 2],
    ['2 szt', 2],
    ['1.000', 1000],
  ])('pack %j', (text, figure) => {
    expect(readPack(text, ',')).toEqual({ figure });
  });

  test.each(['box', '2x10', '', '0', 'garść'])('pack %j is not understood', (text) => {
    expect(readPack(text, ',')).toBe(null);
  });

  test.each([
    ['5', '', 5],
    ['5 days', '', 5],
    ['1 week', '', 7],
    ['3', 'lieferzeit wochen', 21],
    ['48 h', '', 2],
    ['3 дня', '', 3],
    ['2 недели', '', 14],
    ['5 dni', '', 5],
  ])('lead time %j under %j', (text, head, figure) => {
    expect(readLeadDays(text, head, null)).toEqual({ figure });
  });

  test('a range of days takes the longer, with a remark', () => {
    expect(readLeadDays('2-3 Wochen', '', ',')).toEqual({
      figure: 21,
      remark: 'The lead time 2-3 Wochen is a range; the longer time is taken.',
    });
  });

  test.each(['in stock', 'soon', '12.05.2026'])('lead time %j is not read', (text) => {
    expect(readLeadDays(text, '', '.')).toBe(null);
  });

  test.each([
    ['15 %', false, 0.15],
    ['15', false, 0.15],
    ['0.15', false, 0.15],
    ['0.5', true, 0.005],
    ['-8%', false, 0.08],
  ])('share %j', (text, isPercent, figure) => {
    expect(readShare(text, '.', isPercent)).toEqual({ figure });
  });

  test('no share above the whole', () => {
    expect(readShare('150', '.')).toBe(null);
  });

  test('stock is a figure or nothing', () => {
    expect([
      readStock('26.067,00', ','),
      readStock('12 Stk', ','),
      readStock('yes', ','),
      readStock('> 10', ','),
    ]).toEqual([
      26067, // 26.067,00 with a decimal comma, by hand
      12,
      null,
      null,
    ]);
  });
});

test.each([
  ['€ 1.234,50', 'money'],
  ['CHF 12', 'money'],
  ['12.50', 'figure'],
  ['10.00%', 'percent'],
  ['29.676 KM', 'measure'],
  ['10 pcs', 'measure'],
  ['19.05.2026', 'date'],
  ['NG-1104', 'code'],
  ['520X', 'code'],
  ['Rear tyre', 'words'],
  ['  ', 'blank'],
])('%j looks like %s', (text, shape) => {
  expect(shapeOf(text)).toBe(shape);
});

test('words that may stand for a price are known in capitals and small letters alike', () => {
  expect(['POA', 'poa', 'Poa', 'N/A', 'n/a'].map(priceWord)).toEqual([
    'on-request',
    'on-request',
    'on-request',
    'no-price',
    'no-price',
  ]);
});
