import fc from 'fast-check';
import { expect, test } from 'vitest';
import { readHtmlBlock } from '../../src/tables/html-block.ts';

test('cells of a table, closed or not, heads among them', () => {
  expect(readHtmlBlock('<table><tr><th>km<td>240<tr><td>90</td><td>sand</td></tr></table>')).toEqual([
    ['km', '240'],
    ['90', 'sand'],
  ]);
});

test('what other programs wrap round it: comments, styles, groups, line breaks and signs', () => {
  const html = `<html><head><style>td{color:red}</style></head><body><!--StartFragment-->
    <table border="0" title="a > b"><colgroup><col></colgroup><tbody>
    <tr><td class='x'>1&nbsp;234,5</td><td>Front<br>pads &amp; pins &#8364; &#x20AC; &unknown;</td></tr>
    </tbody></table><!--EndFragment--></body></html>`;
  expect(readHtmlBlock(html)).toEqual([['1 234,5', 'Front\npads & pins € € &unknown;']]);
});

test('merged cells keep their text in their first field', () => {
  const html = '<table><tr><td rowspan=2>a<td colspan="2">b<tr><td>c<td>d</table>';
  expect(readHtmlBlock(html)).toEqual([
    ['a', 'b', ''],
    ['', 'c', 'd'],
  ]);
});

test('only the first table is read, and a table inside a cell gives that cell its text', () => {
  expect(readHtmlBlock('<table><tr><td>1</table><table><tr><td>2</table>')).toEqual([['1']]);
  expect(readHtmlBlock('<table><tr><td>a<table><tr><td>b</table></td><td>c</table>')).toEqual([['ab', 'c']]);
});

test('no table, no block', () => {
  expect(readHtmlBlock('<p>two words</p>')).toBeNull();
  expect(readHtmlBlock('')).toBeNull();
  expect(readHtmlBlock('<td>loose</td>')).toBeNull();
});

test('broken and hostile pieces are read in the time that sound ones take', () => {
  const hostile = [
    '<a'.repeat(200_000),
    '<td "'.repeat(100_000),
    '<!--'.repeat(100_000),
    '&#x41'.repeat(100_000),
  ];
  const before = performance.now();
  for (const text of hostile) readHtmlBlock(`<table><tr><td>${text}`);
  // Each takes some tens of milliseconds; what grew with the square of its length would take minutes.
  expect(performance.now() - before).toBeLessThan(5_000);
});

test('any fields written as a table come back', () => {
  const field = fc.string({ maxLength: 8 }).map((text) => text.replace(/\s+/g, ' ').trim());
  const escaped = (text: string): string =>
    text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');
  fc.assert(
    fc.property(
      fc.array(fc.array(field, { minLength: 2, maxLength: 4 }), { minLength: 1, maxLength: 4 }),
      (rows) => {
        const html = rows
          .map((row) => `<tr>${row.map((text) => `<td>${escaped(text)}</td>`).join('')}</tr>`)
          .join('');
        expect(readHtmlBlock(`<table>${html}</table>`)).toEqual(rows);
      },
    ),
    { numRuns: 200, seed: 3 },
  );
});
