import { readdirSync, readFileSync } from 'node:fs';
import type { Cell, Entry, NotebookDocument, TableCell } from '../../src/notebook/document.ts';
import { LiveNotebook } from '../../src/notebook/live-notebook.ts';
import { defaultNotebook } from '../../src/starter/default-notebook.ts';

const folder = new URL('../../datasets/plateau-loop/', import.meta.url);

/** The trip's files as they lie in the folder. */
export function tripFiles(): Record<string, string> {
  const names = readdirSync(folder).filter((name) => name.endsWith('.csv'));
  return Object.fromEntries(names.map((name) => [name, readFileSync(new URL(name, folder), 'utf8')]));
}

export const demo = (): NotebookDocument => defaultNotebook(tripFiles());

export async function opened(document: NotebookDocument): Promise<LiveNotebook> {
  const notebook = LiveNotebook.open(document);
  await notebook.settled();
  return notebook;
}

/** Opens, hands over, and disposes whatever happens. */
export async function within<T>(
  document: NotebookDocument,
  use: (notebook: LiveNotebook) => T | Promise<T>,
): Promise<T> {
  const notebook = await opened(document);
  try {
    return await use(notebook);
  } finally {
    notebook.dispose();
  }
}

/** Figures of a settled node; a fault fails the test with its own sentence. */
export function figures(notebook: LiveNotebook, node: string): number[] {
  const column = columnOf(notebook, node);
  if (column.kind === 'text') throw new Error(`${node} is text.`);
  return [...column.values];
}

export function texts(notebook: LiveNotebook, node: string): (string | null)[] {
  const column = columnOf(notebook, node);
  if (column.kind !== 'text') throw new Error(`${node} is not text.`);
  return [...column.values];
}

function columnOf(notebook: LiveNotebook, node: string) {
  const state = notebook.read(node);
  if (state.state === 'settled') return state.column;
  throw new Error(`${node} is ${state.state}: ${'fault' in state ? state.fault.message : ''}`);
}

export const figure = (notebook: LiveNotebook, node: string): number => figures(notebook, node)[0]!;

/** One figure of every call of one part: call name to figure. */
export function byCall(notebook: LiveNotebook, part: string, column: string): Record<string, number> {
  const [parts, calls] = [texts(notebook, 'calls.part'), texts(notebook, 'calls.call')];
  const values = figures(notebook, `calls.${column}`);
  const rows = parts.flatMap((name, row) => (name === part ? [row] : []));
  return Object.fromEntries(rows.map((row) => [calls[row]!, values[row]!]));
}

/** The figure of one part in a column of wear. */
export function ofPart(notebook: LiveNotebook, part: string, column: string): number {
  return figures(notebook, `wear.${column}`)[texts(notebook, 'wear.part').indexOf(part)]!;
}

export function wordOfPart(notebook: LiveNotebook, part: string, node: string): string | null {
  const [table] = node.split('.');
  return texts(notebook, node)[texts(notebook, `${table}.part`).indexOf(part)]!;
}

function withCell(document: NotebookDocument, id: string, change: (cell: Cell) => Cell): NotebookDocument {
  if (!document.cells.some((cell) => cell.id === id)) throw new Error(`No cell ${id}.`);
  return { ...document, cells: document.cells.map((cell) => (cell.id === id ? change(cell) : cell)) };
}

export function withValue(
  document: NotebookDocument,
  name: string,
  value: number | boolean,
): NotebookDocument {
  return withCell(document, name, (cell) => {
    if (cell.kind !== 'value') throw new Error(`${name} is no value.`);
    return { ...cell, content: { ...cell.content, value } as typeof cell.content };
  });
}

/** The table with one entered column changed row by row. */
export function withColumn(
  document: NotebookDocument,
  table: string,
  column: string,
  change: (entry: Entry, row: number) => Entry,
): NotebookDocument {
  return withCell(document, table, (cell) => {
    const found = tableOf(cell).columns.find((one) => one.name === column);
    if (found === undefined || found.kind === 'worked') throw new Error(`No entered ${table}.${column}.`);
    const changed = { ...found, entries: found.entries.map(change) };
    return { ...tableOf(cell), columns: tableOf(cell).columns.map((one) => (one === found ? changed : one)) };
  });
}

export function withPartFigure(
  document: NotebookDocument,
  part: string,
  column: string,
  entry: Entry,
): NotebookDocument {
  const parts = entriesOf(document, 'wear', 'part');
  const at = parts.indexOf(part);
  if (at < 0) throw new Error(`No part ${part}.`);
  return withColumn(document, 'wear', column, (old, row) => (row === at ? entry : old));
}

function tableOf(cell: Cell): TableCell {
  if (cell.kind !== 'table') throw new Error(`${cell.id} is no table.`);
  return cell;
}

export function entriesOf(document: NotebookDocument, table: string, column: string): readonly Entry[] {
  const cell = tableOf(document.cells.find((one) => one.id === table)!);
  const found = cell.columns.find((one) => one.name === column);
  if (found === undefined || found.kind === 'worked') throw new Error(`No entered ${table}.${column}.`);
  return found.entries;
}

/** Values of the trip by name, for the plain model. */
export function valuesOf(document: NotebookDocument): Record<string, number | boolean> {
  const values: Record<string, number | boolean> = {};
  for (const cell of document.cells) {
    if (cell.kind !== 'value') continue;
    const { value } = cell.content;
    if (typeof value === 'number' || typeof value === 'boolean') values[cell.name] = value;
  }
  return values;
}
