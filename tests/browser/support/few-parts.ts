import { type OpenAppOptions, type OpenedApp, openApp } from './open-app.ts';
import type { AppServer } from './server.ts';

/** One of each kind: a chain that may not be left, one that is due, by chance, by age; a tyre too big to pack. */
const KEPT: readonly unknown[] = [
  'Rear tyre',
  'Rear inner tube',
  'Drive chain',
  'Cush-drive rubbers',
  'Spokes, pack of eight',
  'Engine oil and filter',
  'Clutch lever',
  'Ignition coil',
  'Battery',
];

/** More than all of them together take. */
export const FEW_BUDGET = 600;

interface Column {
  readonly name: string;
  readonly kind: string;
  readonly entries?: readonly unknown[];
}

interface Cell {
  readonly kind: string;
  readonly name?: string;
  readonly shape?: string;
  readonly columns?: readonly Column[];
  readonly content?: { readonly value: unknown };
}

/**
 * Opens the worked example with nine of its parts: the same cards, formulas, offers and suppliers, and a plan that
 * is there in a moment. Notes, the prep sheet and pictures are left out but that of spending.
 */
export function openFewParts(options: OpenAppOptions & { readonly server: AppServer }): Promise<OpenedApp> {
  return openApp({ ...options, example: fewParts });
}

/** The text of the worked example with those parts alone, and all its cards. */
export function fewPartsOnAllCards(text: string): string {
  const notebook = JSON.parse(text) as { cells: Cell[] };
  return JSON.stringify({ ...notebook, cells: notebook.cells.map(withFewRows) });
}

/** The same without the cards that are left out. */
export function fewParts(text: string): string {
  const notebook = JSON.parse(text) as { cells: Cell[] };
  return JSON.stringify({ ...notebook, cells: notebook.cells.filter(isKept).map(withFewRows) });
}

const isKept = ({ kind, shape }: Cell): boolean =>
  kind !== 'note' && kind !== 'prep' && (kind !== 'picture' || shape === 'spending');

function withFewRows(cell: Cell): Cell {
  if (cell.name === 'cash_limit') return { ...cell, content: { ...cell.content, value: FEW_BUDGET } };
  const parts = cell.columns?.find((column) => column.name === 'part')?.entries;
  if (cell.kind !== 'table' || parts === undefined) return cell;
  const rows = parts.flatMap((part, row) => (KEPT.includes(part) ? [row] : []));
  const columns = cell.columns?.map((column) =>
    column.entries === undefined
      ? column
      : { ...column, entries: rows.map((row) => column.entries?.[row] ?? null) },
  );
  return { ...cell, columns };
}
