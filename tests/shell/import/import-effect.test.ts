import { describe, expect, test } from 'vitest';
import type { Cell, NotebookDocument } from '../../../src/notebook/document.ts';
import type { Edit } from '../../../src/notebook/edit.ts';
import { EditError } from '../../../src/notebook/edit-error.ts';
import { addRows } from '../../../src/notebook/edits.ts';
import { importEffect } from '../../../src/shell/import/import-effect.ts';
import { entered, formula, notebook, number, table } from '../../notebook/small-notebook.ts';

const tally: Cell = {
  kind: 'tally',
  id: 'tally',
  title: 'In sight',
  figures: [
    { label: 'Cash', figure: 'cash', limit: 'limit', decimals: 0 },
    { label: 'Expected total', figure: 'whole', decimals: 0 },
    { label: 'Parts', figure: 'pieces' },
  ],
};

const trip: NotebookDocument = notebook(
  tally,
  number('limit', 480, 'EUR'),
  table('prices', entered('fits', 'text', ['Chain']), entered('price', 'number', [70], { unit: 'EUR' })),
  formula('cash', 'sum(prices.price)', 'EUR'),
  formula('whole', 'cash - 100 EUR', 'EUR'),
  formula('pieces', 'count(prices.price) * 0', ''),
  table(
    'rates_of_exchange',
    entered('currency', 'text', ['USD']),
    entered('worth', 'number', [0.8], { unit: 'EUR' }),
  ),
);

const oneMore = (document: NotebookDocument): Edit =>
  addRows(document, 'prices', 1, [{ fits: 'Tyre', price: 40 }]);

describe('what an import would do', () => {
  test('is the difference to each figure of the tally; the one without a limit stands for the whole', async () => {
    expect(await importEffect(trip, oneMore(trip))).toEqual({
      main: { label: 'Expected total', words: '+40 EUR' },
      others: [{ label: 'Cash', words: '+40 EUR' }],
      calls: [],
      hasCalls: false,
    });
    expect(trip.cells.find(({ id }) => id === 'prices')).toMatchObject({
      columns: [{ entries: ['Chain'] }, {}],
    });
  });

  test('is told in the money that the notebook shows', async () => {
    const shown = { ...trip, shown_money: 'USD' };
    // 40 EUR at 0.80 EUR to the dollar.
    expect((await importEffect(shown, oneMore(shown))).main?.words).toBe('+50 USD');
  });

  test('says nothing of a notebook without a tally', async () => {
    const bare = { ...trip, cells: trip.cells.filter(({ kind }) => kind !== 'tally') };
    expect(await importEffect(bare, oneMore(bare))).toMatchObject({ main: null, others: [] });
  });

  test('is refused where the table is no longer there', async () => {
    const bare = { ...trip, cells: trip.cells.filter(({ id }) => id === 'tally') };
    await expect(importEffect(bare, oneMore(trip))).rejects.toThrow(EditError);
  });
});
