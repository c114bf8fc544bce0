import type { Cell, EnteredColumn } from '../notebook/document.ts';
import { freshId } from '../notebook/fresh-id.ts';

const column = (
  name: string,
  kind: EnteredColumn['kind'],
  more: Partial<EnteredColumn> = {},
): EnteredColumn => ({
  id: freshId('column'),
  name,
  kind,
  entries: [null, null, null],
  ...more,
});

const SURFACES = ['sealed', 'broken seal', 'gravel', 'corrugated', 'sand', 'rock', 'mud', 'water'];

/** The first cards of an empty notebook: the blanks of the trip, a table of legs, of prices, of wear. */
export function firstCards(way: 'values' | 'legs' | 'prices' | 'wear'): readonly Cell[] {
  switch (way) {
    case 'values':
      return [
        blank('Cash limit', 'cash_limit', 'EUR'),
        blank('Pack weight', 'pack_kg', 'kg'),
        blank('Pack volume', 'pack_litres', 'L'),
        blank('Shed hours', 'shed_hours', 'h'),
        blank('Days to cut-off', 'days_left', 'day'),
        blank('Value of a lost day', 'lost_day', 'EUR/day'),
      ];
    case 'legs':
      return [
        table('Legs', 'legs', 'from, to, how far, over what', [
          column('from', 'text'),
          column('to', 'text'),
          column('km', 'number', { title: 'Length', unit: 'km', decimals: 0 }),
          column('surface', 'choice', { options: SURFACES, draw: 'surface' }),
          column('help_km', 'number', { title: 'To help', unit: 'km', decimals: 0 }),
          column('recovery', 'number', { title: 'Recovery', unit: 'EUR', decimals: 0 }),
        ]),
      ];
    case 'prices':
      return [
        table('Prices', 'prices', 'one row an offer', [
          column('part', 'text'),
          column('supplier', 'text'),
          column('price', 'number', { title: 'Price', unit: 'EUR', decimals: 2 }),
          column('lead_days', 'number', { title: 'Arrives in', unit: 'day', decimals: 0 }),
        ]),
      ];
    case 'wear':
      return [
        table(
          'Wear',
          'wear',
          'one row a part',
          [
            column('part', 'text'),
            column('gauge', 'text', { title: 'Reading of' }),
            column('now', 'number', { title: 'Now' }),
            column('limit', 'number', { title: 'Limit' }),
            column('rate', 'number', { title: 'Rate', unit: '1/(1000 km)' }),
            column('critical', 'yes_no', { title: 'Critical' }),
          ],
          'critical',
        ),
      ];
  }
}

function blank(title: string, name: string, unit: string): Cell {
  return {
    kind: 'value',
    id: freshId('cell'),
    title,
    name,
    form: 'Trip values',
    content: { type: 'number', unit, value: null, control: 'field' },
  };
}

function table(
  title: string,
  name: string,
  gist: string,
  columns: readonly EnteredColumn[],
  caution?: string,
): Cell {
  return {
    kind: 'table',
    id: freshId('cell'),
    title,
    name,
    gist,
    columns,
    ...(caution === undefined ? {} : { caution_column: caution }),
  };
}
