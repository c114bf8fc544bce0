import { applyEdit } from './apply-edit.ts';
import { describeEdit, type EditWords } from './describe-edit.ts';
import { differenceEdit } from './difference-edit.ts';
import type { CallsCell, Cell, NotebookDocument, TableCell } from './document.ts';
import type { Edit, Placed } from './edit.ts';
import { forbiddenOf, isEntered, rowCount } from './lookup.ts';
import { same } from './same.ts';

/** What differs between two states of a notebook, in words; those past `most` are only counted. */
export interface Differences {
  readonly listed: readonly EditWords[];
  readonly more: number;
}

/**
 * What was put in, changed or taken out between two states of a notebook: `Rear tyre, now: 4.8 to 4.1 mm`.
 *
 * @example differences(before, after, 100).listed[0] // { what: 'Cash for parts', change: '480 to 520 EUR' }
 */
export function differences(before: NotebookDocument, after: NotebookDocument, most: number): Differences {
  const edit = differenceEdit(before, after, '');
  const edits = edit.kind === 'group' ? edit.edits : [edit];
  const listed: EditWords[] = [];
  let count = 0;
  let document = before;
  const comesBack = new Set(
    edits.flatMap((each) => (each.kind === 'cell' && each.before === null ? each.id : [])),
  );
  const gone = new Map<string, Placed<Cell>>();
  for (const each of edits) {
    // A cell with another name is taken out and put in again: to the reader it is one change.
    if (each.kind === 'cell' && each.after === null && each.before !== null && comesBack.has(each.id)) {
      gone.set(each.id, each.before);
    } else {
      const whole =
        each.kind === 'cell' ? { ...each, before: each.before ?? gone.get(each.id) ?? null } : each;
      for (const finer of finerEdits(whole)) {
        count += 1;
        if (listed.length < most) listed.push(describeEdit(document, finer));
      }
    }
    document = applyEdit(document, each);
  }
  return { listed, more: count - listed.length };
}

/** A replaced cell as edits of what in it differs, where that can be told. */
function finerEdits(edit: Edit): readonly Edit[] {
  if (edit.kind !== 'cell' || edit.before === null || edit.after === null) return [edit];
  const [before, after] = [edit.before.item, edit.after.item];
  const finer = insideCell(before, after);
  if (finer.length === 0) return [edit];
  return finer;
}

function insideCell(before: Cell, after: Cell): readonly Edit[] {
  if (before.kind === 'value' && after.kind === 'value' && !same(before.content, after.content)) {
    return [{ kind: 'value', cell: after.id, before: before.content, after: after.content }];
  }
  if (before.kind === 'formula' && after.kind === 'formula' && before.formula !== after.formula) {
    return [{ kind: 'formula', cell: after.id, before: before.formula, after: after.formula }];
  }
  if (before.kind === 'calls' && after.kind === 'calls')
    return [...pinEdits(before, after), ...forbidEdits(before, after)];
  if (before.kind === 'table' && after.kind === 'table') return tableEdits(before, after);
  return [];
}

function pinEdits(before: CallsCell, after: CallsCell): readonly Edit[] {
  const parts = new Set([...Object.keys(before.pins), ...Object.keys(after.pins)]);
  const pin = (cell: CallsCell, part: string): string | null =>
    Object.hasOwn(cell.pins, part) ? cell.pins[part]! : null;
  return [...parts]
    .filter((part) => pin(before, part) !== pin(after, part))
    .map((part) => ({
      kind: 'pin',
      cell: after.id,
      part,
      before: pin(before, part),
      after: pin(after, part),
    }));
}

function forbidEdits(before: CallsCell, after: CallsCell): readonly Edit[] {
  const parts = new Set([...Object.keys(before.forbidden ?? {}), ...Object.keys(after.forbidden ?? {})]);
  return [...parts].flatMap((part) => {
    const [was, is] = [forbiddenOf(before, part), forbiddenOf(after, part)];
    return [...new Set([...was, ...is])]
      .filter((call) => was.includes(call) !== is.includes(call))
      .map(
        (call): Edit => ({
          kind: 'forbid',
          cell: after.id,
          part,
          call,
          before: was.includes(call),
          after: is.includes(call),
        }),
      );
  });
}

/** Columns that came, went or changed, and rows that came or went. */
function tableEdits(before: TableCell, after: TableCell): readonly Edit[] {
  const edits: Edit[] = [];
  const [rowsBefore, rowsAfter] = [rowCount(before), rowCount(after)];
  const rows = (count: number): Record<string, never>[] => Array.from({ length: count }, () => ({}));
  if (rowsBefore !== rowsAfter) {
    const [out, into] = [Math.max(0, rowsBefore - rowsAfter), Math.max(0, rowsAfter - rowsBefore)];
    edits.push({ kind: 'rows', cell: after.id, at: 0, before: rows(out), after: rows(into) });
  }
  for (const id of new Set([...before.columns, ...after.columns].map((column) => column.id))) {
    const place = (table: TableCell) => {
      const at = table.columns.findIndex((column) => column.id === id);
      return at === -1 ? null : { item: table.columns[at]!, at };
    };
    const [was, is] = [place(before), place(after)];
    if (
      was !== null &&
      is !== null &&
      same(settingsOf(was.item, rowsBefore !== rowsAfter), settingsOf(is.item, rowsBefore !== rowsAfter))
    )
      continue;
    edits.push({ kind: 'column', cell: after.id, id, before: was, after: is });
  }
  return edits;
}

/** A column without its entries where rows came or went: the entries differ for that alone. */
function settingsOf(column: TableCell['columns'][number], rowsDiffer: boolean): unknown {
  return rowsDiffer && isEntered(column) ? { ...column, entries: [] } : column;
}
