import { showNumber, showUnit } from '../formula/show.ts';
import type {
  Cell,
  EnteredColumn,
  Entry,
  NotebookDocument,
  TableCell,
  TableColumn,
  ValueContent,
} from './document.ts';
import { isNamed } from './document.ts';
import type { Edit, NotebookField } from './edit.ts';
import { cellHead, columnHead, findCell, findColumn, isEntered } from './lookup.ts';
import { same } from './same.ts';

export interface EditWords {
  /** What was edited: `Front brake pads, now`. */
  readonly what: string;
  /** How: `3.1 to 2.9 mm`. */
  readonly change: string;
}

const MEASURE_WORDS: Readonly<Record<string, string>> = {
  metric: 'metric',
  imperial: 'miles and US gallons',
  imperial_uk: 'miles and imperial gallons',
};

const FIELD_WORDS: Readonly<Record<NotebookField, string>> = {
  title: 'Notebook name',
  gist: 'Notebook gist',
  money: 'Currency',
  measures: 'Measures shown',
  shown_money: 'Money shown',
};

type EditOf<K extends Edit['kind']> = Extract<Edit, { kind: K }>;

/**
 * An edit in words, for the tally's last edit and the road log.
 *
 * @param document the notebook before the edit
 * @example describeEdit(doc, pinEdit(doc, 'decision', 'Fork seals', 'leave'))
 * // { what: 'Fork seals', change: 'replace to leave' }
 */
export function describeEdit(document: NotebookDocument, edit: Edit): EditWords {
  switch (edit.kind) {
    case 'entry':
      return describeEntry(document, edit);
    case 'value':
      return describeValue(document, edit);
    case 'formula':
      return { what: targetWords(document, edit.cell, edit.column), change: 'formula changed' };
    case 'cell':
      return describeCell(edit);
    case 'column':
      return describeColumn(document, edit);
    case 'rows':
      return describeRows(document, edit);
    case 'pin':
      return { what: edit.part, change: `${edit.before ?? 'as proposed'} to ${edit.after ?? 'as proposed'}` };
    case 'forbid':
      return { what: edit.part, change: `${edit.call} ${edit.after ? 'forbidden' : 'allowed again'}` };
    case 'notebook': {
      const none = edit.field === 'measures' || edit.field === 'shown_money' ? 'as kept' : 'empty';
      const words = (text: string): string =>
        (edit.field === 'measures' ? MEASURE_WORDS[text] : text) || none;
      return { what: FIELD_WORDS[edit.field], change: `${words(edit.before)} to ${words(edit.after)}` };
    }
    case 'group': {
      const only = edit.edits.length === 1 ? edit.edits[0] : undefined;
      if (edit.label === '' && only !== undefined) return describeEdit(document, only);
      return { what: edit.label || `${edit.edits.length} changes`, change: '' };
    }
  }
}

function targetWords(document: NotebookDocument, cellId: string, columnId?: string): string {
  const cell = findCell(document, cellId);
  if (cell === null) return 'A cell';
  const column = columnId === undefined ? null : findColumn(cell, columnId);
  return column === null ? cellHead(cell) : `${cellHead(cell)}, ${columnHead(column)}`;
}

function describeEntry(document: NotebookDocument, edit: EditOf<'entry'>): EditWords {
  const cell = findCell(document, edit.cell);
  const column = cell === null ? null : findColumn(cell, edit.column);
  if (cell?.kind !== 'table' || column === null) return { what: 'A field', change: spanWords(edit, '') };
  const row = rowLabel(cell, edit.row, column);
  const unit = isEntered(column) && column.kind === 'number' ? (column.unit ?? '') : '';
  return { what: `${row}, ${columnHead(column)}`, change: spanWords(edit, unit) };
}

/** The row's own name: the first text of the row other than the field itself, or its number. */
function rowLabel(table: TableCell, row: number, edited: TableColumn): string {
  const named = table.columns.find(
    (column): column is EnteredColumn =>
      column.kind === 'text' && column.id !== edited.id && typeof column.entries[row] === 'string',
  );
  const label = named?.entries[row];
  return typeof label === 'string' && label.trim() !== '' ? label : `${cellHead(table)}, row ${row + 1}`;
}

function spanWords(edit: { readonly before: Entry; readonly after: Entry }, unit: string): string {
  const words = `${entryWords(edit.before)} to ${entryWords(edit.after)}`;
  return unit === '' || typeof edit.after !== 'number' ? words : `${words} ${showUnit(unit)}`;
}

function entryWords(entry: Entry): string {
  if (entry === null || entry === '') return 'empty';
  if (typeof entry === 'boolean') return entry ? 'yes' : 'no';
  return typeof entry === 'number' ? numberWords(entry) : entry;
}

/** Whole thousands grouped, as on the page; never rounded past what was typed. */
function numberWords(figure: number): string {
  const text = String(figure);
  return text.includes('e') ? text : showNumber(figure, text.split('.')[1]?.length ?? 0);
}

function describeValue(document: NotebookDocument, edit: EditOf<'value'>): EditWords {
  const what = targetWords(document, edit.cell);
  const { before, after } = edit;
  if (before.type !== after.type) return { what, change: 'made another kind of value' };
  if (same(before.value, after.value)) return { what, change: settingsWords(before, after) };
  const unit = after.type === 'number' ? after.unit : '';
  return { what, change: spanWords({ before: before.value, after: after.value }, unit) };
}

function unitWords(unit: string | undefined): string {
  return unit === undefined || unit === '' ? 'none' : showUnit(unit);
}

function settingsWords(before: ValueContent, after: ValueContent): string {
  if (before.type === 'number' && after.type === 'number' && before.unit !== after.unit) {
    return `unit ${unitWords(before.unit)} to ${unitWords(after.unit)}`;
  }
  return before.type === 'choice' ? 'choices changed' : 'settings changed';
}

function describeCell(edit: EditOf<'cell'>): EditWords {
  const before = edit.before;
  const after = edit.after;
  if (before === null) return { what: after === null ? 'A cell' : cellHead(after.item), change: 'added' };
  if (after === null) return { what: cellHead(before.item), change: 'removed' };
  if (same(before.item, after.item)) return { what: cellHead(before.item), change: 'moved' };
  return { what: cellHead(before.item), change: namingWords(before.item, after.item) };
}

function namingWords(before: Cell, after: Cell): string {
  if (isNamed(before) && isNamed(after) && before.name !== after.name) return `renamed to ${after.name}`;
  return before.title === after.title ? 'changed' : `now called ${after.title}`;
}

function describeColumn(document: NotebookDocument, edit: EditOf<'column'>): EditWords {
  const before = edit.before;
  const after = edit.after;
  const item = before?.item ?? after?.item;
  const head = item === undefined ? 'a column' : columnHead(item);
  const what = `${targetWords(document, edit.cell)}, ${head}`;
  if (before === null) return { what, change: 'column added' };
  if (after === null) return { what, change: 'column removed' };
  if (same(before.item, after.item)) return { what, change: 'column moved' };
  if (before.item.name !== after.item.name) return { what, change: `renamed to ${after.item.name}` };
  if ((before.item.unit ?? '') !== (after.item.unit ?? '')) {
    return { what, change: `unit ${unitWords(before.item.unit)} to ${unitWords(after.item.unit)}` };
  }
  return { what, change: 'column changed' };
}

function describeRows(document: NotebookDocument, edit: EditOf<'rows'>): EditWords {
  const what = targetWords(document, edit.cell);
  const out = edit.before.length;
  const into = edit.after.length;
  const rows = (count: number): string => `${numberWords(count)} ${count === 1 ? 'row' : 'rows'}`;
  if (out === 0) return { what, change: `${rows(into)} added` };
  if (into === 0) return { what, change: `${rows(out)} removed` };
  return { what, change: out === into ? `${rows(out)} replaced` : `${rows(out)} replaced by ${rows(into)}` };
}
