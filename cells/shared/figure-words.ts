import type { Column, ColumnType } from '../../src/formula/column.ts';
import { showFigure, showUnit } from '../../src/formula/show.ts';

/** Most figures of a column that are listed in words. */
const MOST_LISTED = 4;

/**
 * A figure with its unit, in words: `7,887 km`, `no figure` when it is missing.
 *
 * @example figureWords(column, 0, type) // '0.46 per 1,000 km'
 */
export function figureWords(column: Column, row: number, type: ColumnType, decimals?: number): string {
  const figure = showFigure(column, row, type, decimals);
  const unit = unitWords(type);
  return figure === '–' ? 'no figure' : unit ? `${figure} ${unit}` : figure;
}

/** The unit of a figure in words, '' for a plain number or for text. */
export function unitWords(type: ColumnType): string {
  return type.unit?.text ? showUnit(type.unit.text) : '';
}

/** The first figures of a column: `640, 910, 780, 1,020 … km, 24 rows`. */
export function firstFigures(column: Column, type: ColumnType, decimals?: number): string {
  const rows = column.values.length;
  if (rows === 1) return figureWords(column, 0, type, decimals);
  const shown: string[] = [];
  for (let row = 0; row < Math.min(rows, MOST_LISTED); row++)
    shown.push(showFigure(column, row, type, decimals));
  const unit = unitWords(type);
  return `${shown.join('; ')}${rows > MOST_LISTED ? '; …' : ''}${unit ? ` ${unit}` : ''}, ${rows} rows`;
}
