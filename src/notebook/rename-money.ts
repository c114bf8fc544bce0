import { CURRENCY_CODES } from '../formula/currencies.ts';
import { FormulaFault } from '../formula/fault.ts';
import { tokenise } from '../formula/tokens.ts';
import type { Cell, NotebookDocument, TableColumn } from './document.ts';

/**
 * The notebook written in another money from the start: its code stands wherever the old one stood in units
 * and formulas, and no figure is exchanged. For a notebook whose sums are still to be put in; one that has
 * sums is shown in another money instead (`shown`).
 *
 * @example renameMoney(document, 'AUD').money // 'AUD'
 */
export function renameMoney(document: NotebookDocument, money: string): NotebookDocument {
  if (!CURRENCY_CODES.has(money)) throw new RangeError(`'${money}' is no currency code of ISO 4217.`);
  const from = document.money;
  if (money === from) return document;
  return { ...document, money, cells: document.cells.map((cell) => inCell(cell, from, money)) };
}

function inCell(cell: Cell, from: string, to: string): Cell {
  switch (cell.kind) {
    case 'value':
      return cell.content.type === 'number'
        ? { ...cell, content: { ...cell.content, unit: inText(cell.content.unit, from, to) } }
        : cell;
    case 'formula':
      return { ...cell, formula: inText(cell.formula, from, to), ...unitOf(cell, from, to) };
    case 'table':
      return { ...cell, columns: cell.columns.map((column) => inColumn(column, from, to)) };
    case 'pairing':
      return {
        ...cell,
        columns: cell.columns.map((column) => inColumn(column, from, to) as typeof column),
      };
    default:
      return cell;
  }
}

function inColumn(column: TableColumn, from: string, to: string): TableColumn {
  const unit = unitOf(column, from, to);
  return column.kind === 'worked'
    ? { ...column, formula: inText(column.formula, from, to), ...unit }
    : { ...column, ...unit };
}

function unitOf(item: { readonly unit?: string }, from: string, to: string): { unit?: string } {
  return item.unit === undefined ? {} : { unit: inText(item.unit, from, to) };
}

/** A unit or formula with the one code in the other's place; texts in quotes stay, and so do longer names. */
function inText(text: string, from: string, to: string): string {
  try {
    const places = tokenise(text).filter((token) => token.sort === 'name' && token.text === from);
    return places.reduceRight((now, { from: at, to: end }) => now.slice(0, at) + to + now.slice(end), text);
  } catch (error) {
    if (error instanceof FormulaFault) return text;
    throw error;
  }
}
