import { columnsOf, type Match } from './match-columns.ts';
import type { TableMatch } from './match-table.ts';
import type { MendPlaces, MendRole } from './mends.ts';

const ROLE_NAMES: Readonly<Record<MendRole, string>> = { price: 'price', description: 'name' };

/** Where a price list has what is typed for a row: its price or its description. */
export function priceMendPlaces(match: Match): MendPlaces {
  return {
    columnOf: (role) => columnsOf(match, role as MendRole)[0],
    nameOf: (role) => ROLE_NAMES[role as MendRole],
  };
}

/** Where the file has what is typed for a column of a table. */
export function tableMendPlaces({ columns, wanted }: TableMatch): MendPlaces {
  return {
    columnOf: (name) => columns.find((one) => one.name === name)?.column ?? undefined,
    nameOf: (name) => (wanted.find((one) => one.name === name)?.title ?? name).toLowerCase(),
  };
}
