import type { Cell, PairingCell, TableCell, ValueCell } from './document.ts';
import { isNamed } from './document.ts';
import { isEntered } from './lookup.ts';

/** Words for a cell in a sentence: `'wear'`, or its title, or its id. */
export function cellWords(cell: {
  readonly id: string;
  readonly title: string;
  readonly name?: string;
}): string {
  return `'${cell.name ?? (cell.title || cell.id)}'`;
}

/**
 * What a cell of sound shape may still get wrong by itself: columns of unequal length, a name given twice,
 * a low above its high. The sentence names the column; null when all is well.
 */
export function cellRuleBroken(cell: Cell): string | null {
  if (cell.kind === 'table') return doubledColumn(cell) ?? unequalColumns(cell);
  if (cell.kind === 'pairing') return doubledColumn(cell);
  if (cell.kind === 'value') return boundsReversed(cell);
  return null;
}

function doubledColumn(cell: TableCell | PairingCell): string | null {
  const names = new Set<string>();
  const ids = new Set<string>();
  for (const column of cell.columns) {
    if (names.has(column.name)) return `has two columns named '${column.name}'; rename one of them`;
    if (ids.has(column.id)) return `has two columns with the id '${column.id}'`;
    names.add(column.name);
    ids.add(column.id);
  }
  return null;
}

function unequalColumns(table: TableCell): string | null {
  const entered = table.columns.filter(isEntered);
  const first = entered[0];
  if (first === undefined) return null;
  const odd = entered.find((column) => column.entries.length !== first.entries.length);
  if (odd === undefined) return null;
  return `column '${odd.name}' has ${odd.entries.length} rows, but '${first.name}' has ${first.entries.length}; all must have as many`;
}

function boundsReversed(cell: ValueCell): string | null {
  const { content } = cell;
  if (content.type !== 'number' || content.low === undefined || content.high === undefined) return null;
  return content.low <= content.high ? null : `low is ${content.low}, above high, which is ${content.high}`;
}

/** Two cells with one id or one name; the sentence says which, null when there are none. */
export function doubledCell(cells: readonly Cell[]): string | null {
  const ids = new Map<string, number>();
  const names = new Map<string, number>();
  for (let at = 0; at < cells.length; at += 1) {
    const cell = cells[at]!;
    const sameId = ids.get(cell.id);
    if (sameId !== undefined) return `cells ${sameId + 1} and ${at + 1} have the same id '${cell.id}'`;
    ids.set(cell.id, at);
    if (!isNamed(cell)) continue;
    const sameName = names.get(cell.name);
    if (sameName !== undefined) {
      return `cells ${sameName + 1} and ${at + 1} are both named '${cell.name}'; every name may be used once`;
    }
    names.set(cell.name, at);
  }
  return null;
}
