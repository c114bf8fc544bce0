import type { NotebookDocument } from '../../src/notebook/document.ts';
import type { Edit } from '../../src/notebook/edit.ts';
import { group, removeColumn } from '../../src/notebook/edits.ts';
import type { LiveNotebook } from '../../src/notebook/live-notebook.ts';
import { readBlock } from '../../src/tables/block.ts';
import { readHtmlBlock } from '../../src/tables/html-block.ts';
import { says } from './cell-events.ts';
import { type Block, blockInWords } from './table-block.ts';
import { type CopiedBlock, copyBlock } from './table-copy.ts';
import {
  clearBlock,
  enteredFields,
  fillBlock,
  insertRows,
  moveRows,
  removeTheseRows,
} from './table-fields.ts';
import type { Grid } from './table-model.ts';
import { pasteBlock, pasteInWords } from './table-paste.ts';

/** What can be done with the marked block, or with the figure at hand. */
export type BlockAct =
  | 'copy'
  | 'cut'
  | 'paste'
  | 'clear'
  | 'fill-down'
  | 'fill-across'
  | 'rows-above'
  | 'rows-below'
  | 'rows-up'
  | 'rows-down'
  | 'remove-rows'
  | 'remove-columns';

/** What the hands need of the grid they work in. */
export interface HandsHost extends EventTarget {
  readonly notebook: LiveNotebook;
  readonly grid: Grid | null;
  /** The marked block, or the one figure at hand; null when the keyboard is on a head. */
  readonly target: Block | null;
  /** Rows shown, with or without the button for more. */
  readonly placeCount: number;
  rowAt(place: number): number;
  /** Whether the rows are shown otherwise than they stand. */
  readonly isViewed: boolean;
  markBlock(block: Block): void;
}

const WORKED_OUT = 'these figures are worked out';
const IN_A_VIEW = 'Rows are moved as they stand in the table: take the sorting and the conditions off first';

/** What a copied block is; null when nothing is at hand. */
export function copied(host: HandsHost): CopiedBlock | null {
  const { grid, target } = host;
  if (grid === null || target === null) return null;
  return copyBlock(grid, target, (place) => host.rowAt(place));
}

/** The fields of what another program put on the clipboard: its HTML table where the text has no tabs. */
export function pastedFields(text: string, html: string): string[][] {
  const table = text.includes('\t') || html === '' ? null : readHtmlBlock(html);
  return table ?? readBlock(text);
}

/** Puts a block of text fields where the hands are. */
export function pasteFields(host: HandsHost, fields: readonly (readonly string[])[]): void {
  const { grid, target, notebook } = host;
  if (grid === null || target === null || fields.length === 0) return;
  const into = { block: target, placeCount: host.placeCount, rowAt: (place: number) => host.rowAt(place) };
  const paste = pasteBlock(notebook.document, grid, into, fields);
  if (paste === null) {
    says(host, `Nothing pasted: ${WORKED_OUT}`);
    return;
  }
  if (paste.edit !== null) notebook.apply(paste.edit);
  if (!host.isViewed || paste.added === 0) host.markBlock(paste.block);
  says(host, `Pasted: ${pasteInWords(paste)}`);
}

/** Does something with the marked block. The clipboard is asked for `paste`, which the browser may refuse. */
export async function act(host: HandsHost, what: BlockAct): Promise<void> {
  if (what === 'copy' || what === 'cut') await copyByButton(host, what === 'cut');
  else if (what === 'paste') await pasteByButton(host);
  else edit(host, what);
}

/** Empties what was cut, once it is on the clipboard. */
export function clearCut(host: HandsHost): void {
  edit(host, 'clear', 'Cut');
}

async function copyByButton(host: HandsHost, cuts: boolean): Promise<void> {
  const block = copied(host);
  if (block === null || host.target === null) return;
  try {
    const item = new ClipboardItem({
      'text/plain': new Blob([block.text], { type: 'text/plain' }),
      'text/html': new Blob([block.html], { type: 'text/html' }),
    });
    await navigator.clipboard.write([item]);
  } catch {
    says(host, 'This browser keeps its clipboard shut here: use Control and C, or the browser’s own menu');
    return;
  }
  if (cuts) clearCut(host);
  else says(host, `Copied: ${blockInWords(host.target)}`);
}

async function pasteByButton(host: HandsHost): Promise<void> {
  let text = '';
  let html = '';
  try {
    for (const item of await navigator.clipboard.read()) {
      if (item.types.includes('text/plain')) text = await (await item.getType('text/plain')).text();
      if (item.types.includes('text/html')) html = await (await item.getType('text/html')).text();
    }
  } catch {
    says(host, 'This browser keeps its clipboard shut here: use Control and V, or the browser’s own menu');
    return;
  }
  if (text === '' && html === '') says(host, 'Nothing pasted: the clipboard holds no text');
  else pasteFields(host, pastedFields(text, html));
}

type EditAct = Exclude<BlockAct, 'copy' | 'cut' | 'paste'>;

function edit(host: HandsHost, what: EditAct, word = ''): void {
  const { grid, target, notebook } = host;
  if (grid === null || target === null) return;
  const made = editFor(host, notebook.document, grid, target, what);
  if (typeof made === 'string') {
    says(host, made);
    return;
  }
  if (made === null) {
    says(host, 'Nothing to change there');
    return;
  }
  notebook.apply(made);
  const step = what === 'rows-up' ? -1 : what === 'rows-down' ? 1 : 0;
  if (step !== 0) host.markBlock({ ...target, top: target.top + step, bottom: target.bottom + step });
  if (what === 'rows-below') {
    const height = target.bottom - target.top + 1;
    host.markBlock({ ...target, top: target.top + height, bottom: target.bottom + height });
  }
  says(host, `${word || doneWords(made)}. Undo takes it back.`);
}

const doneWords = (made: Edit): string => (made.kind === 'group' ? made.label : 'Done');

/** The edit of an act, or the sentence why there is none. */
function editFor(
  host: HandsHost,
  document: NotebookDocument,
  grid: Grid,
  target: Block,
  what: EditAct,
): Edit | string | null {
  const rowAt = (place: number): number => host.rowAt(place);
  const rows = Array.from({ length: target.bottom - target.top + 1 }, (_, i) => rowAt(target.top + i));
  switch (what) {
    case 'clear':
      if (enteredFields(grid, target) === 0) return `Nothing emptied: ${WORKED_OUT}`;
      return clearBlock(document, grid, target, rowAt);
    case 'fill-down':
    case 'fill-across':
      if (enteredFields(grid, target) === 0) return `Nothing filled: ${WORKED_OUT}`;
      return fillBlock(document, grid, target, what === 'fill-down' ? 'down' : 'across', rowAt);
    case 'rows-above':
      return insertRows(document, grid, rows[0]!, rows.length);
    case 'rows-below':
      return insertRows(document, grid, rows.at(-1)! + 1, rows.length);
    case 'rows-up':
    case 'rows-down':
      if (host.isViewed) return IN_A_VIEW;
      return moveRows(document, grid, rows[0]!, rows.at(-1)!, what === 'rows-up' ? -1 : 1);
    case 'remove-rows':
      return removeTheseRows(document, grid, rows);
    case 'remove-columns':
      return removeTheseColumns(document, grid, target);
  }
}

function removeTheseColumns(document: NotebookDocument, grid: Grid, target: Block): Edit | null {
  const columns = grid.columns.slice(target.left, target.right + 1).filter((column) => column.own);
  if (columns.length === 0) return null;
  const places = (id: string): number => {
    const cell = document.cells.find((each) => each.id === grid.cellId);
    return cell !== undefined && 'columns' in cell ? cell.columns.findIndex((each) => each.id === id) : -1;
  };
  // From the last to the first, so that each stands where its edit says.
  const falling = [...columns].sort((a, b) => places(b.id) - places(a.id));
  const label = `${grid.title}: ${columns.length} ${columns.length === 1 ? 'column' : 'columns'} removed`;
  return group(
    label,
    falling.map((column) => removeColumn(document, grid.cellId, column.id)),
  );
}
