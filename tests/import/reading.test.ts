import { describe, expect, test } from 'vitest';
import { collectBytes } from '../../src/import/collect-bytes.ts';
import { findLetters } from '../../src/import/find-letters.ts';
import { findSeparator } from '../../src/import/find-separator.ts';
import { progressOf } from '../../src/import/in-steps.ts';
import { matchColumns } from '../../src/import/match-columns.ts';
import { readFileInSteps, readPasted, readSteps } from '../../src/import/read-file.ts';
import { readRows } from '../../src/import/read-rows.ts';
import { kindOfRecord, rawText } from '../../src/import/reading.ts';
import { bytesOf, reading } from './support.ts';

const wide = (text: string, order: 'le' | 'be', mark: boolean): Uint8Array => {
  const units = [...(mark ? '\ufeff' : ''), ...text].map((letter) => letter.charCodeAt(0));
  return Uint8Array.from(
    units.flatMap((unit) => (order === 'le' ? [unit & 255, unit >> 8] : [unit >> 8, unit & 255])),
  );
};

describe('letters', () => {
  test.each([
    ['utf-8 with its mark', Uint8Array.from([0xef, 0xbb, 0xbf, 0x61]), 'utf-8'],
    ['plain letters', bytesOf('a,b\n1,2'), 'utf-8'],
    ['utf-8 without mark', bytesOf('prix €'), 'utf-8'],
    ['utf-16, small end first, with mark', wide('a;b', 'le', true), 'utf-16le'],
    ['utf-16, big end first, with mark', wide('a;b', 'be', true), 'utf-16be'],
    ['utf-16, small end first, without', wide('part;price\n', 'le', false), 'utf-16le'],
    ['utf-16, big end first, without', wide('part;price\n', 'be', false), 'utf-16be'],
    // é in the middle of a word: 0xe9 in windows-1252.
    ['a western letter', Uint8Array.from([0x52, 0xe9, 0x66]), 'windows-1252'],
    // 'Цепь' in windows-1251, twice.
    [
      'Cyrillic words',
      Uint8Array.from([0xd6, 0xe5, 0xef, 0xfc, 0x2c, 0xd6, 0xe5, 0xef, 0xfc]),
      'windows-1251',
    ],
  ])('%s', (_, bytes, letters) => {
    expect(findLetters(bytes).letters).toBe(letters);
  });

  test('are changed by hand, and the preview follows', () => {
    const bytes = Uint8Array.from([...bytesOf('part;price\n'), 0xd6, 0x3b, 0x31, 0x0a]);
    expect(reading(bytes).records.at(1)).toEqual(['Ö', '1']);
    const changed = reading(bytes, { letters: 'windows-1251' });
    expect(changed.records.at(1)).toEqual(['Ц', '1']);
    expect(changed.letters.by).toBe('reader');
  });
});

describe('separators', () => {
  test.each([
    ['part;price\nChain;48,50\nHub;9,10\n', ';'],
    ['part,price\nChain,48.50\n', ','],
    ['part\tprice, net\nChain\t48,50\nHub, rear\t9,10\n', '\t'],
    ['part|price\nChain|48,50\n', '|'],
    ['part,material,price\nChain,STEEL;ZINC,4\nHub,ALLOY;STEEL,9\n', ','],
    ['1,5;2,5\n3,5;4,5\n', ';'],
    ['sep=|\na,b|c\n', '|'],
  ])('%j', (text, separator) => {
    expect(findSeparator(text).separator).toBe(separator);
  });
});

describe('what is found can be changed', () => {
  const text = 'Supplier list\nPart;Price\nA-1;1.250\nA-2;1.300\nnote below;\n';

  test('the decimal mark: the question is asked once and answered for the file', () => {
    const open = reading(text);
    expect(open.question?.sentence).toBe(
      'The file writes 1.250, and nothing in it tells whether that is 1250 or a little over 1. Which is it?',
    );
    expect(open.question?.answers.map(({ decimal }) => decimal)).toEqual([',', '.']);
    const prices = ([decimal]: readonly [',' | '.']) => {
      const read = reading(text, { decimal });
      expect(read.question).toBe(null);
      return readRows(read, matchColumns(read)).taken.map(({ price }) => price);
    };
    expect(prices([','])).toEqual([1250, 1300]);
    expect(prices(['.'])).toEqual([1.25, 1.3]);
  });

  test('the header and the foot', () => {
    const read = reading(text, { head: { at: 0, rows: 2 }, footFrom: 4 });
    expect(read.heads.map(({ title }) => title)).toEqual(['Supplier list Part', 'Price']);
    expect(kindOfRecord(read, 4)).toBe('note');
    expect(reading(text, { head: { at: 2, rows: 0 } }).heads.map(({ label }) => label)).toEqual([
      'Column 1',
      'Column 2',
    ]);
    expect(kindOfRecord(reading('a,b,price\nx,y,1\n,Total,1\n', { footFrom: null }), 2)).toBe('row');
  });

  test('the separator and the quote', () => {
    expect(reading("a|b\n'x|y'|2\n", { separator: '|', quote: "'" }).records.at(1)).toEqual(['x|y', '2']);
  });
});

test('lines are counted through quoted breaks of every kind, and raw text is as in the file', () => {
  const read = reading('a,b\r\n"x\r\ny",1\r\n"p\nq\nr",2\r\nlast,3\r\n');
  expect([...read.lines]).toEqual([1, 2, 4, 7]);
  expect(rawText(read, 1)).toBe('"x\r\ny",1');
});

test("a legs' distance that would go round the earth tells the mark", () => {
  const read = reading('from;to;way\nA;B;29.676 KM\nB;C;125.525 KM\n');
  expect(read.decimal.value).toBe('.');
  expect(read.question).toBe(null);
});

test('pasted text is read the same way', () => {
  const read = readPasted('part\tprice\nChain\t48,50\n');
  expect('refusal' in read ? read.refusal : read.records.at(1)).toEqual(['Chain', '48,50']);
});

describe('in steps', () => {
  const big = bytesOf(`part,description,price\n${'HK-1,"a chain, long",48.50\n'.repeat(60_000)}`);

  test('gives what reading at once gives, and tells its progress in order', async () => {
    const stages: string[] = [];
    const read = await readFileInSteps(
      big,
      {},
      { sliceMs: 0, onProgress: ({ stage }) => stages.push(stage) },
    );
    if ('refusal' in read) throw new Error(read.refusal);
    expect(read.records.length).toBe(60_001);
    expect([...new Set(stages)]).toEqual(['letters', 'records', 'figures']);
  });

  test('others have their turn between the steps', async () => {
    let turns = 0;
    const timer = setInterval(() => {
      turns += 1;
    }, 1);
    await readFileInSteps(big, {}, { sliceMs: 1 });
    clearInterval(timer);
    expect(turns).toBeGreaterThan(2);
  });

  test('stops at a signal', async () => {
    const stop = new AbortController();
    const reading = readFileInSteps(
      big,
      {},
      {
        sliceMs: 0,
        signal: stop.signal,
        onProgress: ({ stage }) => {
          if (stage === 'records') stop.abort();
        },
      },
    );
    await expect(reading).rejects.toThrow('This operation was aborted');
  });

  test('as a generator that the caller loops over', async () => {
    let steps = 0;
    const progress = progressOf(readSteps(big), { sliceMs: 0 });
    for (;;) {
      const step = await progress.next();
      if (step.done === true) break;
      expect(step.value.done).toBeLessThanOrEqual(step.value.of);
      steps += 1;
    }
    expect(steps).toBeGreaterThan(4);
  });
});

test('bytes of a stream are gathered, and a signal ends it', async () => {
  async function* stream(): AsyncGenerator<Uint8Array> {
    yield bytesOf('a,b\n');
    yield bytesOf('1,2\n');
  }
  const told: number[] = [];
  const bytes = await collectBytes(stream(), { onProgress: (length) => told.push(length) });
  expect(new TextDecoder().decode(bytes as Uint8Array)).toBe('a,b\n1,2\n');
  expect(told).toEqual([4, 8]);
  await expect(collectBytes(stream(), { signal: AbortSignal.abort() })).rejects.toThrow('aborted');
});
