import * as v from 'valibot';
import { BOUNDS, countWords } from './bounds.ts';
import { cellSchema, columnSchema, documentFields, valueContentSchema } from './cell-schema.ts';
import {
  type Cell,
  FORMAT,
  type NotebookDocument,
  type TableColumn,
  type ValueContent,
  VERSION,
} from './document.ts';
import { cellRuleBroken, cellWords, doubledCell } from './document-rules.ts';
import type { NotebookField } from './edit.ts';
import { refusalOf } from './refusal.ts';

export type Opened = { readonly document: NotebookDocument } | { readonly refusal: string };

const documentSchema = v.strictObject({
  format: v.literal(FORMAT),
  version: v.literal(VERSION),
  ...documentFields,
  cells: v.pipe(
    v.array(cellSchema, 'must be a list of cells'),
    v.maxLength(BOUNDS.cells, `has more than ${countWords(BOUNDS.cells)} cells`),
  ),
});

/** First thing wrong is enough: a hostile file must not make a list of a million complaints. */
const FIRST_ONLY = { abortEarly: true } as const;

/**
 * Checks a parsed notebook file and builds the document from what was checked, so that nothing from outside,
 * no extra key and no prototype, comes along.
 *
 * @param json what JSON.parse gave
 * @returns the document, or one sentence that says what is wrong and where
 * @example openDocument({ format: 'shopping' })
 * // { refusal: "This is not a Sparewell notebook: its 'format' is 'shopping', not 'sparewell-notebook'." }
 */
export function openDocument(json: unknown): Opened {
  const foreign = foreignRefusal(json);
  if (foreign !== null) return { refusal: foreign };
  if (isDeeperThan(json, BOUNDS.depth)) {
    return {
      refusal: `This notebook cannot be opened: its parts lie more than ${BOUNDS.depth} deep in one another.`,
    };
  }
  const checked = v.safeParse(documentSchema, json, FIRST_ONLY);
  if (!checked.success) return { refusal: `This notebook cannot be opened: ${refusalOf(checked.issues)}.` };
  const document: NotebookDocument = checked.output;
  const broken = ruleBroken(document.cells);
  if (broken !== null) return { refusal: `This notebook cannot be opened: ${broken}.` };
  return { document };
}

function foreignRefusal(json: unknown): string | null {
  if (typeof json !== 'object' || json === null || Array.isArray(json)) {
    return 'This is not a Sparewell notebook: the file does not hold a notebook.';
  }
  const format = Object.hasOwn(json, 'format') ? (json as { format: unknown }).format : undefined;
  if (format !== FORMAT) {
    const found =
      typeof format === 'string'
        ? `its 'format' is '${format.slice(0, 60)}', not '${FORMAT}'`
        : "it has no 'format'";
    return `This is not a Sparewell notebook: ${found}.`;
  }
  const version = Object.hasOwn(json, 'version') ? (json as { version: unknown }).version : undefined;
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 1) {
    return "This notebook cannot be opened: its 'version' is missing or is not a whole number from 1 up.";
  }
  if (version > VERSION) {
    return (
      `This notebook was saved by a newer Sparewell (file version ${version}; this one reads up to ${VERSION}). ` +
      'Load the newest Sparewell, then open it again.'
    );
  }
  return null;
}

function isDeeperThan(value: unknown, levels: number): boolean {
  if (typeof value !== 'object' || value === null) return false;
  if (levels === 0) return true;
  if (Array.isArray(value)) return value.some((item) => isDeeperThan(item, levels - 1));
  return Object.values(value).some((item) => isDeeperThan(item, levels - 1));
}

function ruleBroken(cells: readonly Cell[]): string | null {
  for (let at = 0; at < cells.length; at += 1) {
    const broken = cellRuleBroken(cells[at]!);
    if (broken !== null) return `cell ${at + 1} ${cellWords(cells[at]!)}: ${broken}`;
  }
  return doubledCell(cells);
}

/** Why a cell cannot stand in a notebook, as one clause; null when it can. */
export function cellRefusal(cell: Cell): string | null {
  const checked = v.safeParse(cellSchema, cell, FIRST_ONLY);
  return checked.success ? cellRuleBroken(cell) : refusalOf(checked.issues);
}

/** Why a column cannot stand in a table, as one clause; null when it can. */
export function columnRefusal(column: TableColumn): string | null {
  const checked = v.safeParse(columnSchema, column, FIRST_ONLY);
  return checked.success ? null : refusalOf(checked.issues);
}

/** Why a value cell cannot hold this content, as one clause; null when it can. */
export function contentRefusal(content: ValueContent): string | null {
  const checked = v.safeParse(valueContentSchema, content, FIRST_ONLY);
  return checked.success ? null : refusalOf(checked.issues);
}

/** Why a text of the notebook as a whole cannot be this text; null when it can. */
export function fieldRefusal(field: NotebookField, text: string): string | null {
  if (text === '' && (field === 'measures' || field === 'shown_money')) return null;
  const checked = v.safeParse(documentFields[field], text, FIRST_ONLY);
  return checked.success ? null : `${field} ${refusalOf(checked.issues)}`;
}
