import type { Column, ColumnType, Rows } from '../../formula/column.ts';
import { gather } from '../../formula/evaluate/look-up.ts';
import { asWaiting, waitsFor } from '../../formula/evaluate/vector.ts';
import { type Fault, FormulaFault, isFault } from '../../formula/fault.ts';
import { columnNode, rowsNode } from '../../formula/scope.ts';
import { PLAIN, type Unit } from '../../formula/unit.ts';
import { parseUnit } from '../../formula/unit-text.ts';
import type { EnteredColumn, TableCell, ValueCell } from '../document.ts';
import { isEntered, rowCount } from '../lookup.ts';
import { enteredColumn, kindOfColumn } from './entered-column.ts';
import type { NodeSpec, NodeValue } from './node-spec.ts';
import { pairRows } from './rows-node.ts';
import type { Structure } from './structure.ts';
import { internType } from './types.ts';
import { valueFigure } from './value-figure.ts';

/** A parent's column on the rows of a pairing. */
export function gatherThrough(
  column: Column | Fault,
  rows: Rows | Fault,
  source: string,
  side: 'left' | 'right',
): Column | Fault {
  if (isFault(column)) return waitsFor(column.root ?? source);
  if (isFault(rows)) return waitsFor(rows.root ?? rows.place.node ?? source);
  const from = rows[side] as Int32Array;
  const waiting = asWaiting(source, column.faults);
  const faults =
    waiting === null
      ? null
      : new Map(
          [...from].flatMap((at, row) => (waiting.has(at) ? [[row, waiting.get(at) as Fault] as const] : [])),
        );
  const gathered = gather(column, from, faults);
  // Shared from here on by every reader, so no longer anyone's own to write over.
  return gathered.kind === 'text'
    ? gathered
    : { kind: gathered.kind, values: gathered.values, faults: gathered.faults };
}

function unitOrFault(text: string | undefined, node: string): Unit | Fault {
  try {
    return text === undefined ? PLAIN : parseUnit(text);
  } catch (error) {
    if (error instanceof FormulaFault) return { ...error.fault, place: { node } };
    throw error;
  }
}

export function faultSpec(node: string, fault: Fault): NodeSpec {
  const own: Fault = { ...fault, place: { ...fault.place, node } };
  return {
    node,
    reads: [],
    known: { faulty: true, root: fault.root ?? node },
    stamp: JSON.stringify(own),
    compute: (): NodeValue => own,
  };
}

export function circleFault(circle: readonly string[], node: string): Fault {
  const steps = circle.map((from, i) => `${from} needs ${circle[(i + 1) % circle.length]}`);
  return {
    kind: 'circle',
    message: `These figures need one another: ${steps.join(', ')}.`,
    mend: 'Let one of them be entered, or work it out from something else.',
    place: { node },
  };
}

export function valueSpec(cell: ValueCell): NodeSpec {
  const { content, name } = cell;
  const unit = content.type === 'number' ? unitOrFault(content.unit, name) : null;
  if (isFault(unit)) return faultSpec(name, unit);
  const known: ColumnType =
    content.type === 'choice' ? internType('text', null, content.options) : internType(content.type, unit);
  return {
    node: name,
    reads: [],
    known,
    stamp: content,
    compute: () => {
      const figure = valueFigure(cell);
      return isFault(figure) ? { ...figure, place: { node: name } } : figure;
    },
  };
}

function enteredSpec(node: string, column: EnteredColumn): NodeSpec {
  const unit = column.kind === 'number' ? unitOrFault(column.unit, node) : null;
  if (isFault(unit)) return faultSpec(node, unit);
  const known = internType(
    kindOfColumn(column.kind),
    unit,
    column.kind === 'choice' ? column.options : undefined,
  );
  return {
    node,
    reads: [],
    known,
    stamp: column.entries,
    compute: () => placed(enteredColumn(column), node),
  };
}

/** Row faults of entries know their column. */
function placed(column: Column, node: string): Column {
  if (column.faults === null) return column;
  return {
    ...column,
    faults: new Map(
      [...column.faults].map(([row, fault]) => [row, { ...fault, place: { ...fault.place, node } }]),
    ),
  };
}

export function pairingRows(name: string, left: string, right: string, structure: Structure): NodeSpec {
  const absent = [left, right].find((parent) => !structure.tables.has(parent) || parent === name);
  if (absent !== undefined) {
    const fault: Fault = {
      kind: 'unknown-name',
      message: `${name} pairs ${left} with ${right}; there is no table ${absent} for it.`,
      mend: 'Choose a table of this notebook.',
      place: { node: name },
    };
    return { node: rowsNode(name), reads: [], stamp: fault.message, compute: () => fault };
  }
  return {
    node: rowsNode(name),
    reads: [rowsNode(left), rowsNode(right)],
    stamp: `${left} ${right}`,
    compute: ([a, b]) => {
      if (isFault(a)) return waitsFor(a.root ?? left);
      if (isFault(b)) return waitsFor(b.root ?? right);
      const rows = pairRows(name, (a as Rows).length, (b as Rows).length);
      return isFault(rows) ? { ...rows, place: { node: name } } : rows;
    },
  };
}

/**
 * Nodes of what is entered in a table: its rows and its entered columns.
 * @param before the table as it was: columns that are the same need no new node
 */
export function tableSpecs(cell: TableCell, before: TableCell | null = null): NodeSpec[] {
  const length = rowCount(cell);
  const kept = new Set<unknown>(before?.columns);
  return [
    { node: rowsNode(cell.name), reads: [], stamp: length, compute: () => ({ length }) },
    ...cell.columns
      .filter((column) => !kept.has(column))
      .filter(isEntered)
      .map((column) => enteredSpec(columnNode(cell.name, column.name), column)),
  ];
}
