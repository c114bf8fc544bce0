import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readBlock, writeBlock } from '../../src/tables/block.ts';
import { decodeText } from '../../src/tables/decode-text.ts';

describe('blocks on the clipboard', () => {
  it('are read by tabs and line breaks', () => {
    expect(readBlock('240\tgravel\r\n90\t\r\n')).toEqual([
      ['240', 'gravel'],
      ['90', ''],
    ]);
    expect(readBlock('"two\nlines"\tx')).toEqual([['two\nlines', 'x']]);
    expect(readBlock('alone')).toEqual([['alone']]);
  });

  it('may hold inches', () => {
    expect(readBlock('3/8"\t2\n"5\t1')).toEqual([
      ['3/8"', '2'],
      ['"5', '1'],
    ]);
  });

  it('are read back as they were written', () => {
    const row = fc.array(fc.string({ unit: 'binary', maxLength: 10 }), { minLength: 2, maxLength: 4 });
    fc.assert(
      fc.property(fc.array(row, { minLength: 1 }), (rows) => {
        expect(readBlock(writeBlock(rows))).toEqual(rows);
      }),
    );
  });
});

describe('decodeText', () => {
  it.each<[string, number[], { text: string; letters: string }]>([
    ['UTF-8', [0x47, 0xc3, 0xbc], { text: 'Gü', letters: 'utf-8' }],
    ['UTF-8 with its mark', [0xef, 0xbb, 0xbf, 0x47], { text: 'G', letters: 'utf-8' }],
    ['UTF-16, little end first', [0xff, 0xfe, 0x47, 0, 0xfc, 0], { text: 'Gü', letters: 'utf-16le' }],
    ['UTF-16, big end first', [0xfe, 0xff, 0, 0x47, 0, 0xfc], { text: 'Gü', letters: 'utf-16be' }],
    ['windows-1252', [0x47, 0xfc, 0x80], { text: 'Gü€', letters: 'windows-1252' }],
  ])('reads %s', (_, bytes, expected) => {
    expect(decodeText(Uint8Array.from(bytes))).toEqual(expected);
  });
});
