import { describe, expect, test } from 'vitest';
import { asideCsv } from '../../src/import/aside-csv.ts';
import { foldWords } from '../../src/import/fold-words.ts';
import { likelyRole } from '../../src/import/head-words.ts';
import { columnsOf, matchColumns, rememberMatch } from '../../src/import/match-columns.ts';
import { readRows, withRecord } from '../../src/import/read-rows.ts';
import type { Role } from '../../src/import/roles.ts';
import { imported, reading } from './support.ts';

describe('heads in several languages', () => {
  test.each<[string, Role]>([
    ['Part no', 'part_number'],
    ['Artikel-Nr.', 'part_number'],
    ['Référence', 'part_number'],
    ['Codice articolo', 'part_number'],
    ['Bestelnummer', 'part_number'],
    ['Nr katalogowy', 'part_number'],
    ['Артикул', 'part_number'],
    ['Artikelnummer', 'part_number'],
    ['Varenr', 'part_number'],
    ['Tuotenumero', 'part_number'],
    ['商品コード', 'part_number'],
    ['Bezeichnung', 'description'],
    ['Désignation', 'description'],
    ['Descripción', 'description'],
    ['Omschrijving', 'description'],
    ['Nazwa towaru', 'description'],
    ['Наименование', 'description'],
    ['Benämning', 'description'],
    ['VKPreis', 'price'],
    ['Prix unitaire HT', 'price'],
    ['Precio', 'price'],
    ['Prezzo', 'price'],
    ['Prijs', 'price'],
    ['Cena netto', 'price'],
    ['Цена', 'price'],
    ['Hinta', 'price'],
    ['単価', 'price'],
    ['מחיר', 'price'],
    ['Währung', 'currency'],
    ['Devise', 'currency'],
    ['Валюта', 'currency'],
    ['Verpackungseinheit', 'pack_quantity'],
    ['Conditionnement', 'pack_quantity'],
    ['Confezione', 'pack_quantity'],
    ['Rabatt', 'discount'],
    ['Remise', 'discount'],
    ['Lieferzeit (Tage)', 'lead_time'],
    ['Delai de livraison', 'lead_time'],
    ['Leveranstid', 'lead_time'],
    ['Lieferant', 'supplier'],
    ['Fournisseur', 'supplier'],
    ['Passend für', 'fits'],
    ['Применяемость', 'fits'],
    ['Lagerbestand', 'stock'],
    ['Voorraad', 'stock'],
    ['Mengeneinheit', 'unit'],
    ['Preiseinheit', 'price_for'],
    ['MwSt', 'tax'],
  ])('%s: %s', (head, role) => {
    expect(likelyRole(foldWords(head))?.role).toBe(role);
  });

  test.each(['Total', 'Old price', 'Compare at price', 'EKPreis', 'Price date', 'Colour', '__proto__'])(
    '%s is no price',
    (head) => {
      expect(likelyRole(foldWords(head))?.role).not.toBe('price');
    },
  );
});

const list = 'Art. no.;Description;Price;Stock\nHK-1;Chain;84,50 €;3\nHK-2;Disc;64,00 €;1\n';

describe('a match', () => {
  test('says for each column why', () => {
    const match = matchColumns(reading(list));
    expect(match.columns.map(({ role }) => role)).toEqual(['part_number', 'description', 'price', 'stock']);
    expect(match.columns[2]!.reason).toBe(
      "Its head says 'Price', and 100% of its fields are amounts of money.",
    );
  });

  test('is set by hand, and remembered for the same header', () => {
    const first = matchColumns(reading(list), { roles: { 3: 'ignore', 1: 'fits' }, currency: 'EUR' });
    expect(columnsOf(first, 'fits')).toEqual([1]);
    const kept = JSON.parse(JSON.stringify(rememberMatch(first)));
    const next = matchColumns(reading('ART NO;description;PRICE;stock\nHK-9;Tube;9,00 €;4\n'), {}, [kept]);
    expect(next.columns.map(({ role, by }) => `${role} ${by}`)).toEqual([
      'part_number memory',
      'fits memory',
      'price memory',
      'ignore memory',
    ]);
    expect(next.currency).toBe('EUR');
    const other = matchColumns(reading('Art. no.;Description;Price\nHK-9;Tube;9,00 €\n'), {}, [kept]);
    expect(other.columns.every(({ by }) => by === 'proposal')).toBe(true);
  });

  test('asks for the price when no column is like one', () => {
    const { match, aside } = imported('Part no,Colour\nA-1,red\nA-2,blue\n');
    expect(match.questions.map(({ kind }) => kind)).toContain('no-price-column');
    expect(aside.length).toBe(2);
  });

  test('words of a description may stand in two columns', () => {
    const { taken } = imported(
      'Name,Code,Description,Price (EUR)\nChain,A-1,"520, gold",84\nDisc,A-2,"rear, 220",64\n',
    );
    expect(taken.map(({ description }) => description)).toEqual(['Chain 520, gold', 'Disc rear, 220']);
  });
});

describe('rows', () => {
  test('prices by quantity: the one that holds for the pieces wanted', () => {
    const text = 'Part no;Price EUR;From quantity\nS-1;0,95;1\nS-1;0,80;50\nS-1;0,70;100\n';
    const price = (pieces: number) => {
      const { taken, remarked, aside } = imported(text, {}, { pieces });
      expect(aside.map(({ reason }) => reason)).toEqual(['other-quantity', 'other-quantity']);
      return [...taken, ...remarked].map((row) => row.price);
    };
    expect([price(10), price(50), price(99), price(500)]).toEqual([[0.95], [0.8], [0.8], [0.7]]);
    expect(imported(text, {}, { pieces: 0 }).aside.map(({ reason }) => reason)).toEqual(
      new Array(3).fill('quantity-scale'),
    );
  });

  test('the fields that go with a price', () => {
    const { taken } = imported(
      'Part no,Description,Price (EUR),Pack,Discount (%),VAT (%),Lead time (days),Supplier,Fits,Stock\nA-1,Pads,20.50,2,7.5,19,5,Gannet Cycle,Wayfarer 450,12\n',
    );
    expect(taken[0]).toMatchObject({
      packQuantity: 2,
      discountShare: 0.075,
      taxShare: 0.19,
      leadDays: 5,
      supplier: 'Gannet Cycle',
      fits: 'Wayfarer 450',
      stock: 12,
      priceFor: 1,
    });
  });

  test('a row mended in place is taken, and the others stay', () => {
    const read = reading('Part no,Description,Price (EUR)\nA-1,Hub,POA\nA-2,Disc,64.00\n');
    const match = matchColumns(read);
    expect(readRows(read, match).aside.map(({ record }) => record)).toEqual([1]);
    const mended = readRows(withRecord(read, 1, ['A-1', 'Hub', '48.50']), match);
    expect(mended.taken.map(({ price }) => price)).toEqual([48.5, 64]);
    expect(mended.aside).toEqual([]);
    expect(read.records.at(1)).toEqual(['A-1', 'Hub', 'POA']);
  });

  test('rows set aside are saved as CSV that no sheet runs', () => {
    const read = reading('Part no,Description,Price (EUR)\nA-1,=SUM(A1),POA\nA-2,Disc,64.00\n');
    const { aside } = readRows(read, matchColumns(read));
    expect(asideCsv(read, aside)).toBe(
      "line,reason,Part no,Description,Price (EUR)\r\n2,Its price is on request: 'POA'. Ask the supplier and type it.,A-1,'=SUM(A1),POA\r\n",
    );
  });

  test('a price in another currency than the rest is remarked', () => {
    const { remarked } = imported('Part no,Name,Price (EUR)\nA-1,Hub,48.50\nA-2,Disc,64.00 USD\n');
    expect(remarked.map(({ currency, remarks }) => [currency, remarks])).toEqual([
      ['USD', ['Its price is in USD, the others are in EUR.']],
    ]);
  });
});
