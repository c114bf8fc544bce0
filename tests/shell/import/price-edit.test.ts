import { describe, expect, test } from 'vitest';
import type { PriceRow } from '../../../src/import/price-row.ts';
import { applyEdit } from '../../../src/notebook/apply-edit.ts';
import type { EnteredColumn, NotebookDocument, TableCell } from '../../../src/notebook/document.ts';
import { invert } from '../../../src/notebook/edits.ts';
import { fitsThere, offersThere, partsThere, wantedParts } from '../../../src/shell/import/offers-there.ts';
import { packOf, priceEdit } from '../../../src/shell/import/price-edit.ts';
import { priceTargets } from '../../../src/shell/import/price-target.ts';
import { earlierImport } from '../../../src/shell/import/source-note.ts';

const column = (
  name: string,
  kind: EnteredColumn['kind'],
  entries: EnteredColumn['entries'],
  more: Partial<EnteredColumn> = {},
): EnteredColumn => ({ id: `c_${name}`, name, kind, entries, ...more });

const table = (name: string, columns: EnteredColumn[], source?: string): TableCell => ({
  id: name,
  kind: 'table',
  name,
  title: name,
  columns,
  source,
});

/** A notebook with offers of two invented suppliers, one of them in USD. */
const notebook: NotebookDocument = {
  format: 'sparewell-notebook',
  version: 1,
  id: 'n',
  title: 'Trip',
  gist: '',
  money: 'EUR',
  cells: [
    table('wear', [column('part', 'text', ['Drive chain', 'Clutch cable'])]),
    table('rates', [column('currency', 'text', ['EUR', 'USD']), column('worth', 'number', [1, 0.5])]),
    table('suppliers', [
      column('supplier', 'text', ['Ash Parts', 'Bitter Moto']),
      column('currency', 'text', ['EUR', 'USD']),
    ]),
    table(
      'prices',
      [
        column('supplier', 'choice', ['Bitter Moto', 'Ash Parts', 'Bitter Moto'], {
          options: ['Ash Parts', 'Bitter Moto'],
        }),
        column('offer', 'text', ['BM-1', 'A1', 'BM-2']),
        column('fits', 'text', ['Drive chain', 'Drive chain', 'Clutch cable']),
        column('their_price', 'number', [80, 70, 16]),
        column('pack', 'number', [1, 1, 2]),
        column('lead_days', 'number', [9, 3, 21]),
        column('remark', 'text', ['good', null, 'stiff']),
      ],
      'Invented.',
    ),
  ],
};

const row = (fields: Partial<PriceRow>): PriceRow => ({
  record: 1,
  line: 2,
  partNumber: null,
  description: null,
  price: 1,
  currency: null,
  priceFor: 1,
  unit: null,
  fromQuantity: null,
  packQuantity: null,
  discountShare: null,
  taxShare: null,
  leadDays: null,
  supplier: null,
  fits: null,
  stock: null,
  section: null,
  remarks: [],
  ...fields,
});

const target = priceTargets(notebook)[0]!;
const pricesOf = (document: NotebookDocument): TableCell =>
  document.cells.find((cell): cell is TableCell => cell.id === 'prices')!;
const entries = (document: NotebookDocument, name: string): unknown =>
  (pricesOf(document).columns.find((held) => held.name === name) as EnteredColumn).entries;

describe('the table of offers', () => {
  test('is found by what its columns are called, and what it lacks stays open', () => {
    expect(target.cell.name).toBe('prices');
    expect(target.columns).toMatchObject({
      supplier: 'c_supplier',
      offer: 'c_offer',
      price: 'c_their_price',
      fits: 'c_fits',
      description: null,
      currency: null,
    });
  });

  test('tells the parts, their numbers and what was confirmed for a supplier', () => {
    expect(partsThere(notebook, target)).toEqual(['Drive chain', 'Clutch cable']);
    expect(wantedParts(notebook, target)[0]).toEqual({ name: 'Drive chain', partNumbers: ['BM-1', 'A1'] });
    expect(fitsThere(target, 'Bitter Moto').map(({ part }) => part)).toEqual(['Drive chain', 'Clutch cable']);
    expect(offersThere(target)[1]).toMatchObject({ row: 1, supplier: 'Ash Parts', price: 70 });
  });
});

describe('bringing prices in', () => {
  const edit = priceEdit(notebook, target, {
    fileName: 'march.csv',
    date: '2 March 2026',
    suppliers: ['Bitter Moto'],
    chosen: [
      {
        row: row({ partNumber: 'bm 1', price: 90, currency: 'USD' }),
        part: 'Drive chain',
        supplier: 'Bitter Moto',
      },
      {
        row: row({ partNumber: 'BM-9', price: 20, currency: 'EUR' }),
        part: 'Clutch cable',
        supplier: 'Bitter Moto',
      },
    ],
  });
  const after = applyEdit(notebook, edit);

  test('replaces the rows of the supplier and leaves those of the others', () => {
    expect(entries(after, 'supplier')).toEqual(['Bitter Moto', 'Bitter Moto', 'Ash Parts']);
    expect(entries(after, 'offer')).toEqual(['bm 1', 'BM-9', 'A1']);
  });

  test('turns another money into the supplier’s at the notebook’s rates: 20 EUR are 40 USD at 0.5', () => {
    expect(entries(after, 'their_price')).toEqual([90, 40, 70]);
  });

  test('keeps what the file does not fill for an offer that was there, and only for that', () => {
    expect(entries(after, 'remark')).toEqual(['good', null, null]);
    expect(entries(after, 'lead_days')).toEqual([9, null, 3]);
  });

  test('notes file, date and count with the table', () => {
    const { source = '' } = pricesOf(after);
    expect(source).toBe('Invented.\nBitter Moto: march.csv, 2 March 2026, 2 rows.');
    expect(earlierImport(source, 'Bitter Moto')).toEqual({
      of: 'Bitter Moto',
      fileName: 'march.csv',
      date: '2 March 2026',
      rows: 2,
    });
    expect(earlierImport(source, 'Ash Parts')).toBeNull();
  });

  test('is undone as one edit', () => {
    expect(applyEdit(after, invert(edit))).toEqual(notebook);
  });

  test('adds a new supplier to the choices and to the table of suppliers, with the file’s money', () => {
    const added = applyEdit(
      notebook,
      priceEdit(notebook, target, {
        fileName: 'cold.csv',
        date: '3 March 2026',
        suppliers: ['Cold Kiln Spares'],
        chosen: [
          {
            row: row({ partNumber: 'C', currency: 'USD' }),
            part: 'Drive chain',
            supplier: 'Cold Kiln Spares',
          },
        ],
      }),
    );
    const options = (pricesOf(added).columns[0] as EnteredColumn).options;
    expect(options).toEqual(['Ash Parts', 'Bitter Moto', 'Cold Kiln Spares']);
    const suppliers = added.cells.find((cell) => cell.id === 'suppliers') as TableCell;
    expect(suppliers.columns.map((held) => (held as EnteredColumn).entries[2])).toEqual([
      'Cold Kiln Spares',
      'USD',
    ]);
  });

  test('the terms typed for a new supplier come in with the prices, and one undo takes both away', () => {
    const withTerms: NotebookDocument = {
      ...notebook,
      cells: notebook.cells.map((cell) =>
        cell.id === 'suppliers' && cell.kind === 'table'
          ? { ...cell, columns: [...cell.columns, column('freight', 'number', [5, 9])] }
          : cell,
      ),
    };
    const edit = priceEdit(withTerms, target, {
      fileName: 'cold.csv',
      date: '3 March 2026',
      suppliers: ['Cold Kiln Spares'],
      chosen: [{ row: row({ partNumber: 'C' }), part: 'Drive chain', supplier: 'Cold Kiln Spares' }],
      terms: { c_freight: 7.5 },
    });
    const added = applyEdit(withTerms, edit);
    const freight = (document: NotebookDocument): EnteredColumn['entries'] => {
      const cell = document.cells.find(({ id }) => id === 'suppliers') as TableCell;
      return (cell.columns[2] as EnteredColumn).entries;
    };
    expect(freight(added)).toEqual([5, 9, 7.5]);
    expect(freight(applyEdit(added, invert(edit)))).toEqual([5, 9]);
  });
});

test.each([
  ['one piece', { price: 4, priceFor: 1, packQuantity: null }, { price: 4, pieces: 1 }],
  ['a pack of two', { price: 4, priceFor: 1, packQuantity: 2 }, { price: 4, pieces: 2 }],
  ['a hundred', { price: 40, priceFor: 100, packQuantity: null }, { price: 40, pieces: 100 }],
  [
    'packs of ten, priced for a hundred',
    { price: 40, priceFor: 100, packQuantity: 10 },
    { price: 4, pieces: 10 },
  ],
])('the pack of %s', (_, offer, pack) => {
  expect(packOf(offer)).toEqual(pack);
});
