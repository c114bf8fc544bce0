import { describe, expect, test } from 'vitest';
import { refuseFile } from '../../src/import/refuse-file.ts';
import { imported, reading, refusal } from './support.ts';

const withStart = (...start: number[]): Uint8Array => Uint8Array.from([...start, ...new Array(64).fill(0)]);
const letters = (text: string): number[] => [...text].map((letter) => letter.charCodeAt(0));

describe('a file that is no table of text is refused with a sentence that says what it is', () => {
  test.each([
    [
      'a workbook renamed .csv',
      withStart(...letters('PK\u0003\u0004....[Content_Types].xml')),
      'a workbook of a sheet program',
    ],
    ['a zip', withStart(...letters('PK\u0003\u0004....photo.jpg')), 'a packed archive (zip)'],
    ['a PNG renamed .csv', withStart(0x89, ...letters('PNG\r\n\u001a\n')), 'a picture (PNG)'],
    ['a JPEG', withStart(0xff, 0xd8, 0xff, 0xe0), 'a picture (JPEG)'],
    ['a GIF', withStart(...letters('GIF89a')), 'a picture (GIF)'],
    ['a WebP', withStart(...letters('RIFF1234WEBP')), 'a picture (WebP)'],
    ['a PDF', withStart(...letters('%PDF-1.7')), 'a PDF document'],
    ['an older sheet', withStart(0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1), 'an older binary format'],
    ['gzip', withStart(0x1f, 0x8b, 8), 'packed by gzip'],
    ['a web page', Uint8Array.from(letters('<!DOCTYPE html><html></html>')), 'a web page'],
    [
      'a GPX track',
      Uint8Array.from(letters('<?xml version="1.0"?>\n<gpx version="1.1"></gpx>')),
      'a GPX track or route',
    ],
    ['nothing', new Uint8Array(0), 'The file is empty: it has no bytes'],
  ])('%s', (_, bytes, words) => {
    expect(refusal(bytes)).toContain(words);
  });

  test('blank lines alone are an empty file', () => {
    expect(refusal(' \r\n\n')).toContain('nothing but blank lines');
  });

  test('a text that begins like none of them is not refused for it', () => {
    expect(refuseFile(Uint8Array.from(letters('BM-12,price\n')))).toBe(null);
  });
});

describe('damaged text', () => {
  test('NUL signs: the line is named', () => {
    expect(refusal('part,price\nchain,1\nx\u0000y,2\n')).toContain('Line 3 has a NUL sign');
  });

  test('an unclosed quote: the line and sign where it began are named', () => {
    expect(refusal('part,price\n"chain\n520",84\nHub,"12\nAxle,9\n')).toContain(
      'Line 4, sign 5: a quote opens a field ("12) and is never closed',
    );
  });

  test('an unclosed quote is read when quotes are set to be ordinary signs', () => {
    const read = reading('part,price\nHub,"12\nAxle,9\n', { quote: 'none' });
    expect(read.records.at(1)).toEqual(['Hub', '"12']);
  });

  test('a line of 5 MB', () => {
    expect(refusal(`part,price\nchain,84\n${'x'.repeat(5_000_000)}\n`)).toContain(
      'Line 3 has more than 1,000,000 signs',
    );
    expect(refusal(`part,price\n"${'x'.repeat(5_000_000)}",1\n`)).toContain(
      'Line 2 has more than 1,000,000 signs',
    );
    expect(refusal('x'.repeat(5_000_000))).toContain('Line 1 has more than 1,000,000 signs');
  });

  test('more columns than a table has', () => {
    expect(refusal(`a,b\n${new Array(401).fill('x').join(',')}\n`)).toContain(
      'Line 2 has 401 fields; at most 400',
    );
  });

  test('more rows than a table has', () => {
    expect(refusal(`a,b\n${'x,1\n'.repeat(200_001)}`)).toContain('at most 200,000 can be brought in');
  });
});

describe('hostile heads', () => {
  const text =
    '__proto__,constructor,prototype,,toString,Price (EUR)\nHX-1,Guard,a,b,c,21.00\nHX-2,Flap,d,e,f,9.50\n';

  test('no column is lost, and each has a plain name of its own', () => {
    const names = reading(text).heads.map(({ name }) => name);
    expect(names).toEqual([
      'proto',
      'column_constructor',
      'column_prototype',
      'column_4',
      'tostring',
      'price',
    ]);
    expect(new Set(names).size).toBe(6);
  });

  test('nothing reaches a prototype', () => {
    imported(text);
    expect(Object.hasOwn(Object.prototype, 'Guard')).toBe(false);
    expect(Reflect.ownKeys(Object.prototype).sort()).toEqual(
      Reflect.ownKeys(Object.getPrototypeOf({})).sort(),
    );
    expect(({} as Record<string, unknown>).price).toBe(undefined);
  });

  test('hostile words as currency, unit and pack are text', () => {
    const { remarked } = imported(
      'Part no,Price,Currency,Pack\nA-1,2.50,__proto__,constructor\nA-2,3.50,EUR,2\n',
      {
        roles: { 0: 'part_number', 1: 'price', 2: 'currency', 3: 'pack_quantity' },
      },
    );
    expect(remarked[0]!.currency).toBe(null);
    expect(remarked[0]!.remarks).toEqual([
      "Its currency '__proto__' is not known.",
      "Its pack quantity cannot be read: 'constructor'.",
    ]);
  });
});
