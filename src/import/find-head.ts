import { type CellShape, isFigureShape, shapeOf } from './cell-shape.ts';
import { moneyOf } from './currency-signs.ts';
import { foldWords } from './fold-words.ts';
import type { Frame } from './frame.ts';
import { likelyRole } from './head-words.ts';
import type { PackedRecords } from './packed-records.ts';
import { priceWord } from './price-words.ts';

/** Records from the top in which a header is looked for. */
const DEEPEST = 40;
/** Rows below that are compared with it. */
const COMPARED = 60;
const PLACEHOLDER =
  /^(?:kolumna|column|col|spalte|colonne|columna|colonna|kolom|field|feld|champ|f|unnamed)\s*[:_ ]?\s*\d+$/i;

/** What the rows below a record look like, column by column. */
interface Below {
  /** Columns that hold figures. */
  readonly figures: readonly boolean[];
  /** Columns that are hardly ever blank. */
  readonly filled: readonly boolean[];
  readonly typicalFill: number;
  readonly rows: number;
}

interface Candidate {
  readonly at: number;
  readonly score: number;
  readonly known: number;
  readonly contrast: number;
}

/**
 * Finds the header of a table: the record whose fields are known words of heads, or words above columns of
 * figures. Records above it are a title, an address and the like. A file whose first record already has
 * figures where the others have them has no header.
 *
 * @example findHead(records) // of 'Art.-Nr.;Preis' and 'NG-1104;142,00'
 * // { headAt: 0, headRows: 1, reason: "line 1 of the table has the words 'Art.-Nr.', 'Preis'" }
 */
export function findHead(records: PackedRecords): Frame {
  if (records.length === 0) return { headAt: 0, headRows: 0, reason: 'there are no rows' };
  let best: Candidate | null = null;
  for (let at = 0; at < Math.min(DEEPEST, records.length); at += 1) {
    const found = weigh(records, at);
    if (found !== null && (best === null || found.score > best.score + 0.001)) best = found;
  }
  const first = firstFullRecord(records);
  if (best === null || (best.known === 0 && best.contrast < 1)) {
    if (best === null || best.at !== first || !couldBeHead(records, first)) return headless(records, first);
  }
  return joined(records, best.at);
}

function weigh(records: PackedRecords, at: number): Candidate | null {
  const row = records.at(at);
  const below = lookBelow(records, at + 1);
  const filled = row.filter((cell) => cell.trim() !== '').length;
  if (filled < Math.max(row.length > 1 ? 2 : 1, below.typicalFill * 0.5)) return null;
  if (at > 0 && below.rows === 0) return null;
  let known = 0;
  let contrast = 0;
  let against = 0;
  for (let column = 0; column < row.length; column += 1) {
    const cell = row[column]!.trim();
    const shape = shapeOf(cell);
    if (isFigureShape(shape)) against += below.figures[column] === true ? 3 : 1;
    else if (shape === 'blank') against += below.figures[column] === true ? 0.25 : 0;
    else if (below.figures[column] === true && priceWord(cell) === null) contrast += 1;
    if (cell.length > 80) against += 2;
    if (PLACEHOLDER.test(cell)) against += 2;
    if (shape === 'words' || shape === 'code') known += priceWord(cell) === null ? headWeight(cell) : 0;
  }
  return {
    at,
    score: 2 * known + 2 * contrast - 2 * against - 0.1 * at,
    known,
    contrast: contrast - against,
  };
}

function headWeight(cell: string): number {
  if (cell.length > 60) return 0;
  return moneyOf(cell) !== undefined ? 0.5 : (likelyRole(foldWords(cell))?.score ?? 0);
}

/** A first record of different words, none of them a figure, may be a header even if none is known. */
function couldBeHead(records: PackedRecords, at: number): boolean {
  const cells = records.at(at).map((cell) => cell.trim());
  if (records.length - at < 2 && cells.length > 1)
    return cells.every((cell) => !isFigureShape(shapeOf(cell)));
  const named = cells.filter((cell) => cell !== '');
  return (
    named.every((cell) => !isFigureShape(shapeOf(cell)) && cell.length <= 60) &&
    new Set(named).size === named.length
  );
}

function lookBelow(records: PackedRecords, from: number): Below {
  const sample: CellShape[][] = [];
  const step = Math.max(1, Math.floor((records.length - from) / COMPARED));
  for (let at = from; at < records.length && sample.length < COMPARED; at += step) {
    const shapes = records.at(at).map(shapeOf);
    if (shapes.some((shape) => shape !== 'blank')) sample.push(shapes);
  }
  const width = sample.reduce((most, shapes) => Math.max(most, shapes.length), 0);
  const fills = sample
    .map((shapes) => shapes.filter((shape) => shape !== 'blank').length)
    .sort((a, b) => a - b);
  const figures: boolean[] = [];
  const filled: boolean[] = [];
  for (let column = 0; column < width; column += 1) {
    const shapes = sample.map((row) => row[column] ?? 'blank').filter((shape) => shape !== 'blank');
    const count = shapes.filter(isFigureShape).length;
    figures.push(count > 0 && count >= shapes.length * 0.6 && shapes.length >= sample.length * 0.2);
    filled.push(shapes.length >= sample.length * 0.9);
  }
  return { figures, filled, typicalFill: fills[fills.length >> 1] ?? 0, rows: sample.length };
}

/** The first record that is about as full as the others. */
function firstFullRecord(records: PackedRecords): number {
  const { typicalFill } = lookBelow(records, 0);
  for (let at = 0; at < Math.min(DEEPEST + 1, records.length); at += 1) {
    if (records.filled(at) >= typicalFill * 0.6) return at;
  }
  return 0;
}

function headless(records: PackedRecords, at: number): Frame {
  const figure = records
    .at(at)
    .find((cell) => isFigureShape(shapeOf(cell)))
    ?.trim();
  const why = figure === undefined ? 'its fields repeat' : `'${figure.slice(0, 20)}' is a figure`;
  return {
    headAt: at,
    headRows: 0,
    reason: `the first row is like the others (${why}), so there is no header`,
  };
}

/** A header over two lines, the second or the first of which is the better known. */
function joined(records: PackedRecords, at: number): Frame {
  if (isSecondLine(records, at)) return frame(records, at, 2);
  if (at > 0 && isFirstLine(records, at)) return frame(records, at - 1, 2);
  return frame(records, at, 1);
}

function frame(records: PackedRecords, headAt: number, headRows: 1 | 2): Frame {
  const words = records
    .at(headAt)
    .filter((cell) => cell.trim() !== '')
    .slice(0, 3);
  const shown = words.map((cell) => `'${cell.trim().replace(/\s+/g, ' ').slice(0, 24)}'`).join(', ');
  const above = headAt === 0 ? '' : `, below ${headAt} other ${headAt === 1 ? 'record' : 'records'}`;
  const lines = headRows === 2 ? ' and the line after it' : '';
  return { headAt, headRows, reason: `the record with ${shown}${lines} names the columns${above}` };
}

/** Does the record after a header go on with it? It fills its gaps or says units, and has no figure. */
function isSecondLine(records: PackedRecords, at: number): boolean {
  if (records.length < at + 3) return false;
  const second = records.at(at + 1);
  const cells = second.map((cell) => cell.trim());
  const filled = cells.filter((cell) => cell !== '');
  if (filled.length < 2 || filled.some((cell) => cell.length > 40 || isFigureShape(shapeOf(cell))))
    return false;
  const below = lookBelow(records, at + 2);
  const overFigures = cells.some(
    (cell, column) => cell !== '' && below.figures[column] === true && priceWord(cell) === null,
  );
  const known = filled.filter((cell) => headWeight(cell) > 0 || isBracketed(cell)).length;
  return overFigures && known >= 1 && known >= filled.length * 0.3;
}

function isBracketed(cell: string): boolean {
  return /^[([].*[)\]]$/.test(cell);
}

/** Does the record before a header begin it? Its words stand over several columns, with gaps between. */
function isFirstLine(records: PackedRecords, at: number): boolean {
  const cells = records.at(at - 1).map((cell) => cell.trim());
  const filled = cells.filter((cell) => cell !== '');
  const width = records.at(at).length;
  if (cells.length !== width || filled.length < Math.max(2, width * 0.4)) return false;
  return filled.every(
    (cell) =>
      cell.length <= 40 && !isFigureShape(shapeOf(cell)) && !PLACEHOLDER.test(cell) && !/[:;.]$/.test(cell),
  );
}
