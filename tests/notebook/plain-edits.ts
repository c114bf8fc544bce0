import type {
  Cell,
  Entry,
  NotebookDocument,
  TableColumn,
  ValueContent,
} from '../../src/notebook/document.ts';
import type { Edit } from '../../src/notebook/edit.ts';
import * as make from '../../src/notebook/edits.ts';
import {
  type Piece,
  type Plain,
  type PlainCell,
  type PlainColumn,
  type Pointer,
  renamePlain,
  textOf,
} from './plain-notebook.ts';

/** Whole numbers that decide what an edit is about; each is taken modulo what there is to choose from. */
export interface Dice {
  readonly kind: number;
  readonly a: number;
  readonly b: number;
  readonly c: number;
}

/** One edit, made for the notebook and done to the plain one. */
export interface TwinEdit {
  readonly edit: (document: NotebookDocument) => Edit;
  readonly change: (plain: Plain) => void;
}

type Maker = (plain: Plain, dice: Dice, fresh: string) => TwinEdit | null;

const of = <T>(choices: readonly T[], at: number): T | undefined => choices[at % choices.length];
const isEntered = (column: PlainColumn): boolean => column.entries !== undefined;
const cellIn = (plain: Plain, id: string): PlainCell => plain.cells.find((cell) => cell.id === id)!;
const columnIn = (plain: Plain, cell: string, id: string): PlainColumn =>
  cellIn(plain, cell).columns!.find((column) => column.id === id)!;
const rowsOf = (cell: PlainCell): number => cell.columns?.find(isEntered)?.entries?.length ?? 0;

function moveTo<T>(list: T[], from: number, to: number): void {
  list.splice(to, 0, ...list.splice(from, 1));
}

const tables = (plain: Plain): PlainCell[] =>
  plain.cells.filter(({ kind, columns }) => kind === 'table' && columns!.some(isEntered));

const withColumns = (plain: Plain): PlainCell[] =>
  plain.cells.filter(({ columns }) => columns !== undefined && columns.length > 0);

/** An entry that such a column may hold; a word in a column of figures is kept and shows its fault. */
const entryFor = (kind: string, at: number): Entry =>
  of(
    kind === 'number' ? [null, 0, 12.5, -3, 1e6, 'about 4'] : [null, '', 'chain', 'to Bitter Wells', 'é'],
    at,
  )!;

/** A name that no notebook has. */
export const NEVER_THERE = 'nowhere_at_all';

/** A formula of what the notebook has now; in a table or pairing it may read columns by their names alone. */
function someFormula(plain: Plain, dice: Dice, own: PlainCell | null): Piece[] {
  const named = plain.cells.filter(({ kind }) => kind === 'value' || kind === 'formula');
  const cell = of(named, dice.a);
  const table = of(withColumns(plain), dice.b);
  const column = table === undefined ? undefined : of(table.columns!, dice.c);
  const plainCell: Piece[] = cell === undefined ? ['1'] : [{ cell: cell.id, name: cell.name! }];
  const member: Piece[] =
    table === undefined || column === undefined
      ? ['2']
      : ['count(', { cell: table.id, column: column.id, table: table.name!, name: column.name }, ')'];
  const read = own === null ? null : (of(readable(plain, own), dice.b) ?? null);
  return of<Piece[]>(
    [
      [...plainCell, ' * 2'],
      [...member, ' + ', ...plainCell],
      read === null ? ['3'] : [{ ...read }, '  *  ', ...plainCell],
      ['sum( ', ...member],
      [`${NEVER_THERE} + `, ...member],
    ],
    dice.c,
  )!;
}

/** Columns that a formula of a table or pairing may read by their names alone. */
function readable(plain: Plain, own: PlainCell): Pointer[] {
  const parents = [own.left, own.right].flatMap((pieces) => (pieces?.[0] as Pointer | undefined)?.cell ?? []);
  return [own.id, ...parents].flatMap((id) =>
    (plain.cells.find((cell) => cell.id === id)?.columns ?? []).map((column) => ({
      cell: id,
      column: column.id,
      name: column.name,
    })),
  );
}

const entry: Maker = (plain, { a, b, c }) => {
  const cell = of(tables(plain), a);
  const column = cell && of(cell.columns!.filter(isEntered), b);
  if (cell === undefined || column === undefined || rowsOf(cell) === 0) return null;
  const row = c % rowsOf(cell);
  const after = entryFor(column.kind, a + b + c);
  return {
    edit: (document) => make.entryEdit(document, cell.id, column.id, row, after),
    change: (held) => {
      columnIn(held, cell.id, column.id).entries![row] = after;
    },
  };
};

const value: Maker = (plain, { a, b }) => {
  const cell = of(
    plain.cells.filter(({ kind }) => kind === 'value'),
    a,
  );
  if (cell === undefined) return null;
  const after = of<ValueContent>(
    [
      { type: 'number', unit: 'EUR/day', value: b, control: 'field' },
      { type: 'number', unit: 'km', value: 'far', control: 'slider', low: 0, high: 900 },
      { type: 'yes_no', value: true },
      { type: 'date', value: '2027-04-01' },
      { type: 'choice', options: ['one', 'other'], value: null },
    ],
    b,
  )!;
  return {
    edit: (document) => make.valueEdit(document, cell.id, after),
    change: (held) => {
      cellIn(held, cell.id).content = after;
    },
  };
};

const formula: Maker = (plain, dice) => {
  const cell = of(
    plain.cells.filter(({ kind }) => kind === 'formula'),
    dice.a,
  );
  if (cell === undefined) return null;
  const after = someFormula(plain, dice, null);
  return {
    edit: (document) => make.formulaEdit(document, cell.id, undefined, textOf(after)),
    change: (held) => {
      cellIn(held, cell.id).formula = structuredClone(after);
    },
  };
};

const columnFormula: Maker = (plain, dice) => {
  const cell = of(withColumns(plain), dice.a);
  const column =
    cell &&
    of(
      cell.columns!.filter((each) => each.formula !== undefined),
      dice.b,
    );
  if (cell === undefined || column === undefined) return null;
  const after = someFormula(plain, dice, cell);
  return {
    edit: (document) => make.formulaEdit(document, cell.id, column.id, textOf(after)),
    change: (held) => {
      columnIn(held, cell.id, column.id).formula = structuredClone(after);
    },
  };
};

const WRITTEN = new Set(['formula', 'left', 'right', 'unit_column']);

/** The cell or column as a document has it. */
function written<T>(plain: PlainCell | PlainColumn): T {
  return JSON.parse(
    JSON.stringify(plain, (key, held) => (WRITTEN.has(key) ? textOf(held as Piece[]) : held)),
  ) as T;
}

const addCell: Maker = (plain, dice, fresh) => {
  const shared = { id: fresh, title: `Cell ${fresh}`, name: fresh };
  const cell = of<PlainCell>(
    [
      { ...shared, kind: 'value', content: { type: 'number', unit: 'km', value: dice.b, control: 'field' } },
      { ...shared, kind: 'formula', formula: someFormula(plain, dice, null) },
      { id: fresh, title: 'Another note', kind: 'note', text: 'Ask about the seals.' },
      {
        ...shared,
        kind: 'table',
        columns: [
          { id: 'what', name: `${fresh}_what`, kind: 'text', entries: ['a', 'b'] },
          { id: 'much', name: `${fresh}_much`, kind: 'number', unit: 'mm', entries: [1, null] },
        ],
      },
    ],
    dice.c,
  )!;
  const at = dice.a % (plain.cells.length + 1);
  return {
    edit: (document) => make.addCell(document, written<Cell>(cell), at),
    change: (held) => {
      held.cells.splice(at, 0, structuredClone(cell));
    },
  };
};

const removeCell: Maker = (plain, { a }) => {
  const cell = of(plain.cells, a);
  // A notebook that is soon empty shows little: three cells always stay.
  if (cell === undefined || plain.cells.length <= 3) return null;
  return {
    edit: (document) => make.removeCell(document, cell.id),
    change: (held) => {
      held.cells = held.cells.filter(({ id }) => id !== cell.id);
    },
  };
};

const moveCell: Maker = (plain, { a, b }) => {
  const from = a % plain.cells.length;
  const to = b % plain.cells.length;
  return {
    edit: (document) => make.moveCell(document, plain.cells[from]!.id, to),
    change: (held) => moveTo(held.cells, from, to),
  };
};

const addColumn: Maker = (plain, dice, fresh) => {
  const cell = of(withColumns(plain), dice.a);
  if (cell === undefined) return null;
  const works = cell.kind === 'pairing' || dice.b % 2 === 0;
  const shared = { id: fresh, name: fresh, title: `Head ${fresh}` };
  const column: PlainColumn = works
    ? { ...shared, kind: 'worked', formula: someFormula(plain, dice, cell) }
    : { ...shared, kind: 'number', unit: 'km', entries: Array.from({ length: rowsOf(cell) }, () => null) };
  const at = dice.c % (cell.columns!.length + 1);
  return {
    edit: (document) => make.addColumn(document, cell.id, written<TableColumn>(column), at),
    change: (held) => {
      cellIn(held, cell.id).columns!.splice(at, 0, structuredClone(column));
    },
  };
};

const removeColumn: Maker = (plain, { a, b }) => {
  const cell = of(withColumns(plain), a);
  const column = cell && of(cell.columns!, b);
  if (cell === undefined || column === undefined) return null;
  return {
    edit: (document) => make.removeColumn(document, cell.id, column.id),
    change: (held) => {
      const table = cellIn(held, cell.id);
      table.columns = table.columns!.filter(({ id }) => id !== column.id);
    },
  };
};

const moveColumn: Maker = (plain, { a, b, c }) => {
  const cell = of(withColumns(plain), a);
  if (cell === undefined) return null;
  const from = b % cell.columns!.length;
  const to = c % cell.columns!.length;
  return {
    edit: (document) => make.moveColumn(document, cell.id, cell.columns![from]!.id, to),
    change: (held) => moveTo(cellIn(held, cell.id).columns!, from, to),
  };
};

/** Another head and unit for a column, its figures left as they are. */
const changeColumn: Maker = (plain, { a, b, c }, fresh) => {
  const cell = of(withColumns(plain), a);
  const column = cell && of(cell.columns!, b);
  if (cell === undefined || column === undefined) return null;
  const unit = of(['mm', 'kg', '1/(1000 km)'], c)!;
  const after = { ...column, title: fresh, unit };
  return {
    edit: (document) => make.replaceColumn(document, cell.id, column.id, written<TableColumn>(after)),
    change: (held) => {
      Object.assign(columnIn(held, cell.id, column.id), { title: fresh, unit });
    },
  };
};

/** The readings of a column in the units that another column gives for each row, or in one unit again. */
const unitsByRow: Maker = (plain, { a, b, c }) => {
  const cell = of(tables(plain), a);
  if (cell === undefined) return null;
  const kept = (kind: string): PlainColumn[] => cell.columns!.filter((each) => each.kind === kind);
  const [column, by] = [of(kept('number'), b), of(kept('text'), c)];
  if (column === undefined || by === undefined) return null;
  const { unit_column: _, ...one } = column;
  const pointer: Pointer = { cell: cell.id, column: by.id, name: by.name };
  const after = c % 3 === 0 ? one : { ...one, unit_column: [pointer] };
  return {
    edit: (document) => make.replaceColumn(document, cell.id, column.id, written<TableColumn>(after)),
    change: (held) => {
      const changed = columnIn(held, cell.id, column.id);
      delete changed.unit_column;
      if (c % 3 !== 0) changed.unit_column = [{ ...pointer }];
    },
  };
};

/** Another heading for a card, and other words for a note. */
const changeCell: Maker = (plain, { a }, fresh) => {
  const cell = of(plain.cells, a);
  if (cell === undefined) return null;
  const changed = cell.kind === 'note' ? { title: fresh, text: `Words of ${fresh}` } : { title: fresh };
  return {
    edit: (document) => make.replaceCell(document, cell.id, written<Cell>({ ...cell, ...changed })),
    change: (held) => {
      Object.assign(cellIn(held, cell.id), changed);
    },
  };
};

/** Rows put in, taken out, or written over by a block that is longer than what it is put on. */
const changeRows: Maker = (plain, { a, b, c }) => {
  const cell = of(tables(plain), a);
  if (cell === undefined) return null;
  const rows = rowsOf(cell);
  const at = b % (rows + 1);
  const out = Math.min(c % 3, rows - at);
  const into = rows > 12 ? 0 : (b + c) % 3;
  const columns = cell.columns!.filter(isEntered);
  const fresh = Array.from({ length: into }, (_, i) =>
    Object.fromEntries(columns.slice(i % 2).map(({ id, kind }) => [id, entryFor(kind, a + c + i)])),
  );
  return {
    edit: (document) => make.replaceRows(document, cell.id, at, out, fresh),
    change: (held) => {
      for (const column of cellIn(held, cell.id).columns!)
        column.entries?.splice(at, out, ...fresh.map((row) => row[column.id] ?? null));
    },
  };
};

/** A figure, a head and the title in one step. */
const several: Maker = (plain, dice, fresh) => {
  const first = entry(plain, dice, fresh);
  if (first === null) return null;
  return {
    edit: (document) =>
      make.group('Several at once', [
        first.edit(document),
        make.notebookEdit(document, 'title', `Title ${fresh}`),
      ]),
    change: (held) => {
      first.change(held);
      held.title = `Title ${fresh}`;
    },
  };
};

const shownMoney: Maker = (_, { a }) => {
  const after = of(['', 'USD', 'GBP'], a)!;
  return {
    edit: (document) => make.notebookEdit(document, 'shown_money', after),
    change: (held) => {
      if (after === '') delete held.shown_money;
      else held.shown_money = after;
    },
  };
};

const notebookField: Maker = (_, { a }, fresh) => {
  const after = of(['', 'metric', 'imperial'], a)!;
  return a % 2 === 0
    ? {
        edit: (document) => make.notebookEdit(document, 'gist', fresh),
        change: (held) => {
          held.gist = fresh;
        },
      }
    : {
        edit: (document) => make.notebookEdit(document, 'measures', after),
        change: (held) => {
          if (after === '') delete held.measures;
          else held.measures = after;
        },
      };
};

const pin: Maker = (plain, { a, b }) => {
  const cell = plain.cells.find(({ kind }) => kind === 'calls');
  if (cell === undefined) return null;
  const part = of(['chain', 'rear pads'], a)!;
  const call = of([null, 'leave', 'replace'], b)!;
  return {
    edit: (document) => make.pinEdit(document, cell.id, part, call),
    change: (held) => {
      const { pins } = cellIn(held, cell.id);
      if (call === null) delete pins![part];
      else pins![part] = call;
    },
  };
};

const forbid: Maker = (plain, { a, b, c }) => {
  const cell = plain.cells.find(({ kind }) => kind === 'calls');
  if (cell === undefined) return null;
  const part = of(['chain', 'rear pads'], a)!;
  const call = of(['leave', 'replace'], b)!;
  const after = c % 3 !== 0;
  return {
    edit: (document) => make.forbidEdit(document, cell.id, part, call, after),
    change: (held) => {
      const calls = cellIn(held, cell.id);
      const all = new Map(Object.entries(calls.forbidden ?? {}));
      const others = (all.get(part) ?? []).filter((each) => each !== call);
      all.set(part, after ? [...others, call].sort() : others);
      if (all.get(part)!.length === 0) all.delete(part);
      if (all.size === 0) delete calls.forbidden;
      else calls.forbidden = Object.fromEntries(all);
      // A call that was set by hand cannot be ruled out and stay set.
      if (after && calls.pins![part] === call) delete calls.pins![part];
    },
  };
};

const rename: Maker = (plain, { a, b, c }, fresh) => {
  const named = plain.cells.filter(({ name }) => name !== undefined);
  const cell = of(c % 2 === 0 ? named : withColumns(plain), a);
  if (cell === undefined) return null;
  const column = c % 2 === 0 ? undefined : of(cell.columns!, b)?.id;
  return {
    edit: (document) => make.rename(document, cell.id, column, fresh),
    change: (held) => renamePlain(held, cell.id, column, fresh),
  };
};

const MAKERS: readonly Maker[] = [
  entry,
  entry,
  entry,
  value,
  formula,
  columnFormula,
  addCell,
  addCell,
  removeCell,
  moveCell,
  addColumn,
  removeColumn,
  moveColumn,
  changeColumn,
  unitsByRow,
  changeCell,
  changeRows,
  several,
  notebookField,
  shownMoney,
  pin,
  forbid,
  rename,
  rename,
];

/** The edit that these dice mean in this notebook; `fresh` is a word used nowhere yet. */
export function twinEdit(plain: Plain, dice: Dice, fresh: string): TwinEdit {
  const made = of(MAKERS, dice.kind)!(plain, dice, fresh);
  return (
    made ?? {
      edit: (document) => make.notebookEdit(document, 'title', fresh),
      change: (held) => {
        held.title = fresh;
      },
    }
  );
}

/** Edits that must be refused, each for another reason. */
export function refusedEdit(document: NotebookDocument, dice: Dice): Edit {
  const first = document.cells[dice.a % document.cells.length]!;
  return of<() => Edit>(
    [
      () => make.removeCell(document, 'no such cell'),
      () => make.addCell(document, first, 0),
      () => make.rename(document, first.id, undefined, 'not a plain name'),
      () => make.entryEdit(document, first.id, 'no such column', 0, 1),
      () => ({ kind: 'notebook', field: 'title', before: 'not what it was', after: 'x' }),
      () => ({ kind: 'notebook', field: 'money', before: document.money, after: 'no money' }),
    ],
    dice.b,
  )!();
}
