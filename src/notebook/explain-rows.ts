import type { Column, ColumnType } from '../formula/column.ts';
import { FUNCTIONS } from '../formula/functions/registry.ts';
import type { Meaning, Scope } from '../formula/scope.ts';
import type { Term } from '../formula/term.ts';
import type { NodeState } from './node-state.ts';

/** Which rows of a column a formula reads for one row: its own, all, or these, counted from 0. */
export type RowsRead = 'own' | 'all' | readonly number[];

/** A name in a formula, and which rows of it are read. */
export interface NameRead {
  readonly term: Extract<Term, { type: 'name' | 'member' }>;
  readonly rows: RowsRead;
}

/** The row looked at, and what its formula can read. */
export interface RowLook {
  readonly scope: Scope;
  readonly row: number;
  read(node: string): NodeState;
}

/**
 * The names in a formula and which rows of each it reads for one row: of a look-up by keys those whose keys
 * match, of a running total the rows of the group up to this one, of a sum the whole column.
 *
 * Where the rows cannot be told from the formula alone (a key that is itself worked out in it), they are 'all'.
 */
export function namesRead(formula: Term, look: RowLook): readonly NameRead[] {
  const found: NameRead[] = [];
  const visit = (term: Term, rows: RowsRead): void => {
    switch (term.type) {
      case 'name':
      case 'member':
        found.push({ term, rows });
        break;
      case 'unary':
      case 'convert':
        visit(term.term, rows);
        break;
      case 'binary':
        visit(term.left, rows);
        visit(term.right, rows);
        break;
      case 'choose':
        for (const part of [term.condition, term.yes, term.no]) visit(part, rows);
        break;
      case 'call': {
        const read = rowsOfParts(term, rows, look);
        for (const [at, part] of term.parts.entries()) visit(part, read[at] ?? rows);
        break;
      }
      default:
        break;
    }
  };
  visit(formula, 'own');
  return found;
}

type Call = Extract<Term, { type: 'call' }>;

/** Functions that take a column down to the row looked at. */
const UP_TO_ROW = ['running', 'before'];
/** Functions of one figure from a whole column. */
const WHOLE = ['sum', 'mean', 'least', 'most', 'product', 'count'];

function rowsOfParts(call: Call, rows: RowsRead, look: RowLook): readonly RowsRead[] {
  const spec = FUNCTIONS.get(call.name);
  if (spec === undefined || rows !== 'own') return [];
  if (WHOLE.includes(call.name)) return call.parts.map(() => 'all');
  if (spec.shape === 'column' && spec.parameters[1]?.name === 'keys') {
    const matched = matchedRows(call, look);
    return call.parts.map((_, at) => (at === 0 || at % 2 === 1 ? matched : 'own'));
  }
  if (spec.shape === 'group' || UP_TO_ROW.includes(call.name)) {
    const group = groupRows(call.parts[1], look);
    const read = UP_TO_ROW.includes(call.name) ? upTo(group, look.row, call.name === 'before') : group;
    return call.parts.map((_, at) => (at === 1 ? 'own' : read));
  }
  return [];
}

interface Figures {
  readonly column: Column;
  readonly type: ColumnType;
  readonly meaning: Meaning;
}

/** The figures of a name; null for anything else, and while it has none. */
function figuresOf(term: Term | undefined, look: RowLook): Figures | null {
  if (term?.type !== 'name' && term?.type !== 'member') return null;
  const { scope } = look;
  const meaning = term.type === 'name' ? scope.plain(term.name)[0] : scope.member(term.table, term.column);
  if (meaning === undefined || meaning === null) return null;
  const state = look.read(meaning.node);
  return state.state === 'settled' ? { column: state.column, type: state.type, meaning } : null;
}

type Key = string | number | null;

const valueAt = (column: Column, row: number): Key => column.values[row] ?? null;

/** What is looked for in a column of keys; undefined where the formula alone does not tell. */
function askedKey(term: Term | undefined, keys: Figures, look: RowLook): Key | undefined {
  if (term?.type === 'text') return term.value;
  if (term?.type === 'truth') return Number(term.value);
  const isPlain = (keys.type.unit?.text ?? '') === '';
  if (term?.type === 'number') return isPlain ? term.value : undefined;
  const asked = figuresOf(term, look);
  if (asked === null || (asked.type.unit?.text ?? '') !== (keys.type.unit?.text ?? '')) return undefined;
  const { table } = asked.meaning;
  if (table !== null && table !== look.scope.here) return undefined;
  return valueAt(asked.column, table === null ? 0 : look.row);
}

function matchedRows(call: Call, look: RowLook): RowsRead {
  let rows: number[] | null = null;
  for (let at = 1; at + 1 < call.parts.length; at += 2) {
    const keys = figuresOf(call.parts[at], look);
    const key = keys === null ? undefined : askedKey(call.parts[at + 1], keys, look);
    if (keys === null || key === undefined) return 'all';
    const fits = (row: number): boolean => key !== null && valueAt(keys.column, row) === key;
    rows = (rows ?? [...keys.column.values.keys()]).filter(fits);
  }
  return rows ?? 'all';
}

/** The rows of this row's group; all without one. */
function groupRows(by: Term | undefined, look: RowLook): RowsRead {
  if (by === undefined) return 'all';
  const groups = figuresOf(by, look);
  if (groups === null || groups.meaning.table !== look.scope.here) return 'all';
  const group = valueAt(groups.column, look.row);
  return [...groups.column.values.keys()].filter((row) => valueAt(groups.column, row) === group);
}

function upTo(group: RowsRead, row: number, onlyBefore: boolean): RowsRead {
  const rows = typeof group === 'string' ? Array.from({ length: row + 1 }, (_, i) => i) : group;
  const above = rows.filter((each) => each <= row);
  return onlyBefore ? above.filter((each) => each < row).slice(-1) : above;
}
