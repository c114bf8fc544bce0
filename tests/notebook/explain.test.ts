import { describe, expect, test } from 'vitest';
import type { NotebookDocument } from '../../src/notebook/document.ts';
import { LiveNotebook } from '../../src/notebook/live-notebook.ts';
import { entered, notebook, number, pairing, table, worked } from './small-notebook.ts';

const trip = notebook(
  number('spare', 2.25, 'EUR'),
  table(
    'parts',
    entered('part', 'text', ['Chain', 'Pads', 'Tyre']),
    entered('class', 'text', ['drive', 'brake', 'tread']),
    entered('rate', 'number', [1234.5, 0.304, 0.8573]),
    worked('hard', 'pick(classes.load, classes.class, class)'),
    worked('cost', 'total(offers.price, offers.fits, part, offers.open, true)', 'EUR'),
    worked('worst', 'most_of(met.share, met.part, part)'),
    worked('so_far', 'running(rate)'),
    worked('last', 'before(rate)'),
    worked('odd', 'total(offers.price, offers.fits, class == "brake" ? "Pads" : "Chain")', 'EUR'),
  ),
  table(
    'classes',
    entered('class', 'text', ['tread', 'drive', 'brake']),
    entered('load', 'number', [1, 1.5, 2]),
  ),
  table(
    'offers',
    entered('fits', 'text', ['Pads', 'Chain', 'Pads', 'Pads']),
    entered('open', 'yes_no', [true, true, false, true]),
    entered('price', 'number', [20, 90, 22, 24.5], { unit: 'EUR' }),
  ),
  table('legs', entered('leg', 'text', ['out', 'back']), entered('km', 'number', [100, 50], { unit: 'km' })),
  pairing('met', 'parts', 'legs', worked('share', 'rate * km / 1 km')),
  {
    kind: 'formula',
    id: 'all',
    name: 'all',
    title: 'all',
    formula: 'sum(offers.price) + spare',
    unit: 'EUR',
    decimals: 2,
  },
);

async function opened(document: NotebookDocument = trip): Promise<LiveNotebook> {
  const live = LiveNotebook.open(document);
  await live.settled();
  return live;
}

/** What is read for a row: each name with its row or rows, and what is said of it. */
async function read(node: string, row: number): Promise<readonly unknown[]> {
  const live = await opened();
  const terms = live.explain(node, row).terms;
  live.dispose();
  return terms.map((term) => [term.text, term.rows ?? term.row, term.figure]);
}

describe('where a figure comes from', () => {
  test('a look-up by keys leads to the rows whose keys match, and to those alone', async () => {
    expect(await read('parts.hard', 1)).toEqual([
      ['classes.load', 2, '2'],
      ['classes.class', 2, 'brake'],
      ['class', 1, 'brake'],
    ]);
    expect((await read('parts.cost', 1)).slice(0, 2)).toEqual([
      ['offers.price', [0, 3], '2 rows'],
      ['offers.fits', [0, 3], '2 rows'],
    ]);
    // No offer fits a tyre.
    expect((await read('parts.cost', 2))[0]).toEqual(['offers.price', [], 'no row']);
    // Pads are the second of three parts, met with two legs: rows 2 and 3 of the pairing.
    expect((await read('parts.worst', 1))[0]).toEqual(['met.share', [2, 3], '2 rows']);
  });

  test('a running total reads the rows so far, the row before is one, a sum is of all', async () => {
    expect(await read('parts.so_far', 1)).toEqual([['rate', [0, 1], '2 rows']]);
    expect(await read('parts.last', 2)).toEqual([['rate', 1, '0.304']]);
    expect(await read('all', 0)).toEqual([
      ['offers.price', null, 'whole column'],
      ['spare', null, '2.25 EUR'],
    ]);
  });

  test('a key that is itself worked out in the formula leaves the whole column', async () => {
    expect((await read('parts.odd', 0))[0]).toEqual(['offers.price', null, 'whole column']);
  });

  test('an entered figure stands in full, a worked one with the decimals of its card', async () => {
    const live = await opened();
    expect(live.explain('parts.rate', 0).figure).toBe('1,234.5');
    // 20 + 90 + 22 + 24.5 + 2.25
    expect(live.explain('all', 0).figure).toBe('158.75 EUR');
    live.dispose();
  });
});
