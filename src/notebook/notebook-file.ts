import { BOUNDS } from './bounds.ts';
import type { NotebookDocument } from './document.ts';
import { type Opened, openDocument } from './schema.ts';

/** A notebook file: JSON text in UTF-8, laid out to be read and compared line by line. */
export const NOTEBOOK_FILE_ENDING = '.sparewell.json';

const LINE_FEED = 10;
const TOO_LARGE = 'This file is too large to be a notebook.';

/**
 * Reads the text of a notebook file.
 *
 * @returns the document, or one sentence that says what is wrong and where
 */
export function readNotebookFile(text: string): Opened {
  if (text.length > BOUNDS.fileCharacters) return { refusal: TOO_LARGE };
  const bare = text.charCodeAt(0) === 0xfeff ? text.slice(1) : text;
  if (bare.trim() === '') return { refusal: 'This file is empty; choose a notebook file.' };
  let json: unknown;
  try {
    json = JSON.parse(bare);
  } catch (error) {
    return { refusal: `This is not a whole notebook file: ${placeOfBreak(bare, error)}.` };
  }
  return openDocument(json);
}

/**
 * Reads the bytes of a notebook file. Bytes that are no UTF-8 refuse it: read past, they would leave another
 * letter in the place of what was written.
 */
export function readNotebookBytes(bytes: Uint8Array): Opened {
  // No character takes more than four bytes.
  if (bytes.length > 4 * BOUNDS.fileCharacters) return { refusal: TOO_LARGE };
  try {
    return readNotebookFile(new TextDecoder('utf-8', { fatal: true }).decode(bytes));
  } catch {
    return {
      refusal: `This file is damaged or was saved in other letters than UTF-8: ${placeOfLetter(bytes)}. Take another copy of it.`,
    };
  }
}

/** The first line that cannot be read. */
function placeOfLetter(bytes: Uint8Array): string {
  const decoder = new TextDecoder('utf-8', { fatal: true });
  let line = 1;
  let from = 0;
  for (let at = bytes.indexOf(LINE_FEED); at >= 0; at = bytes.indexOf(LINE_FEED, from)) {
    try {
      decoder.decode(bytes.subarray(from, at + 1));
    } catch {
      break;
    }
    line += 1;
    from = at + 1;
  }
  return `line ${line} cannot be read`;
}

/** Browsers word this differently, and not all give the place. */
function placeOfBreak(text: string, error: unknown): string {
  const said = error instanceof Error ? error.message : '';
  const found = /position (\d+)/.exec(said);
  if (found !== null)
    return `it cannot be read past line ${text.slice(0, Number(found[1])).split('\n').length}`;
  return /end of/i.test(said) ? 'it ends before it is complete' : 'its text is not in the form of one (JSON)';
}

/** Fields in the order in which the file lists them; what is not here follows by name. */
const FIELD_ORDER = [
  ...[
    'format',
    'version',
    'id',
    'kind',
    'type',
    'name',
    'title',
    'gist',
    'money',
    'measures',
    'shown_money',
    'source',
    'form',
    'left',
    'right',
  ],
  ...[
    'pairing',
    'part',
    'call',
    'cost',
    'allowed',
    'reason',
    'critical',
    'label',
    'figure',
    'limit',
    'formula',
    'unit',
    'unit_column',
  ],
  ...[
    'control',
    'value',
    'low',
    'high',
    'step',
    'decimals',
    'percent',
    'draw',
    'folded',
    'caution',
    'caution_column',
  ],
  ...['options', 'text', 'content', 'entries', 'columns', 'figures', 'pins', 'forbidden', 'cells'],
];
const RANK = new Map(FIELD_ORDER.map((field, rank) => [field, rank]));
const LINE_WIDTH = 110;

/**
 * The text of a notebook file. The same notebook always gives the same text, whatever order its fields were
 * made in: short lists and groups stand on one line, long lists are filled line by line.
 */
export function writeNotebookFile(document: NotebookDocument): string {
  return `${written(document, '')}\n`;
}

function written(value: unknown, indent: string): string {
  if (typeof value !== 'object' || value === null) return JSON.stringify(value);
  const inner = `${indent}  `;
  if (Array.isArray(value)) {
    if (value.length === 0) return '[]';
    if (value.every((item) => typeof item !== 'object' || item === null)) return filledList(value, indent);
    const items = value.map((item) => `${inner}${written(item, inner)}`);
    return `[\n${items.join(',\n')}\n${indent}]`;
  }
  const fields = orderedFields(value as Record<string, unknown>);
  if (fields.length === 0) return '{}';
  const parts = fields.map(([field, held]) => `${JSON.stringify(field)}: ${written(held, inner)}`);
  const line = `{ ${parts.join(', ')} }`;
  if (indent.length + line.length <= LINE_WIDTH && !line.includes('\n')) return line;
  return `{\n${parts.map((part) => `${inner}${part}`).join(',\n')}\n${indent}}`;
}

function orderedFields(value: Record<string, unknown>): [string, unknown][] {
  const rank = (field: string): number => RANK.get(field) ?? FIELD_ORDER.length;
  return Object.entries(value)
    .filter(([, held]) => held !== undefined)
    .sort(([a], [b]) => rank(a) - rank(b) || (a < b ? -1 : 1));
}

function filledList(items: readonly unknown[], indent: string): string {
  const inner = `${indent}  `;
  const lines: string[] = [];
  let line = '';
  for (const item of items) {
    const word = JSON.stringify(item);
    if (line !== '' && inner.length + line.length + word.length + 3 > LINE_WIDTH) {
      lines.push(`${line},`);
      line = word;
    } else {
      line = line === '' ? word : `${line}, ${word}`;
    }
  }
  if (lines.length === 0 && indent.length + line.length + 2 <= LINE_WIDTH) return `[${line}]`;
  return `[\n${[...lines, line].map((each) => inner + each).join('\n')}\n${indent}]`;
}
