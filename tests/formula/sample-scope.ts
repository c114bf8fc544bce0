import { type CheckedFormula, checkFormula } from '../../src/formula/check/check-formula.ts';
import type { Column, ColumnType, Rows } from '../../src/formula/column.ts';
import { type Fault, isFault } from '../../src/formula/fault.ts';
import { columnNode, type Known, type Meaning, rowsNode, type Scope } from '../../src/formula/scope.ts';
import { parseUnit } from '../../src/formula/unit-text.ts';

export interface SampleFigure {
  readonly type: ColumnType;
  readonly column: Column;
}

export function numbers(unit: string, ...values: readonly (number | null)[]): SampleFigure {
  return {
    type: { kind: 'number', unit: parseUnit(unit) },
    column: {
      kind: 'number',
      values: Float64Array.from(values, (value) => value ?? Number.NaN),
      faults: null,
    },
  };
}

export function words(...values: readonly (string | null)[]): SampleFigure {
  return { type: { kind: 'text', unit: null }, column: { kind: 'text', values, faults: null } };
}

export function choices(options: readonly string[], ...values: readonly string[]): SampleFigure {
  return { type: { kind: 'text', unit: null, options }, column: { kind: 'text', values, faults: null } };
}

export function yesNos(...values: readonly boolean[]): SampleFigure {
  return {
    type: { kind: 'yes_no', unit: null },
    column: { kind: 'yes_no', values: Float64Array.from(values, Number), faults: null },
  };
}

export function dates(...values: readonly string[]): SampleFigure {
  const days = values.map((text) => Date.parse(`${text}T00:00:00Z`) / 86_400_000);
  return {
    type: { kind: 'date', unit: null },
    column: { kind: 'date', values: Float64Array.from(days), faults: null },
  };
}

export interface SampleNotebook {
  readonly here?: string;
  readonly tables?: Readonly<Record<string, Readonly<Record<string, SampleFigure>>>>;
  readonly figures?: Readonly<Record<string, SampleFigure>>;
  readonly faulty?: readonly string[];
}

function own<T>(record: Readonly<Record<string, T>> | undefined, key: string): T | undefined {
  return record !== undefined && Object.hasOwn(record, key) ? record[key] : undefined;
}

/** A scope and its figures, without a notebook. */
export class SampleScope implements Scope {
  readonly money = 'EUR';
  readonly here: string | null;
  private readonly sample: SampleNotebook;

  constructor(sample: SampleNotebook) {
    this.sample = sample;
    this.here = sample.here ?? null;
  }

  private known(node: string, figure: SampleFigure): Known {
    return this.sample.faulty?.includes(node) ? { faulty: true, root: node } : figure.type;
  }

  plain(name: string): readonly Meaning[] {
    const meanings: Meaning[] = [];
    const column = this.here === null ? null : this.member(this.here, name);
    if (column !== null) meanings.push(column);
    const figure = own(this.sample.figures, name);
    if (figure !== undefined)
      meanings.push({ node: name, table: null, known: this.known(name, figure), words: `value ${name}` });
    return meanings;
  }

  member(table: string, column: string): Meaning | null {
    const figure = own(own(this.sample.tables, table), column);
    if (figure === undefined) return null;
    const node = columnNode(table, column);
    return { node, table, known: this.known(node, figure), words: `column ${column} of ${table}` };
  }

  isTable = (name: string): boolean => own(this.sample.tables, name) !== undefined;
  plainNames = (): Iterable<string> => [
    ...(this.here === null ? [] : this.columnNames(this.here)),
    ...Object.keys(this.sample.figures ?? {}),
  ];
  columnNames = (table: string): Iterable<string> => Object.keys(this.sample.tables?.[table] ?? {});
  tableNames = (): Iterable<string> => Object.keys(this.sample.tables ?? {});

  input(node: string): Column | Rows {
    for (const [table, columns] of Object.entries(this.sample.tables ?? {})) {
      if (node === rowsNode(table)) return { length: Object.values(columns)[0]?.column.values.length ?? 0 };
      for (const [column, figure] of Object.entries(columns))
        if (node === columnNode(table, column)) return figure.column;
    }
    const figure = own(this.sample.figures, node);
    if (figure === undefined) throw new Error(`the sample has no ${node}`);
    return figure.column;
  }
}

export interface Worked {
  readonly checked: CheckedFormula;
  readonly column: Column;
}

/** Checks and runs a formula over a sample. */
export function run(formula: string, sample: SampleNotebook = {}, unit?: string): Column | Fault {
  const scope = new SampleScope(sample);
  const checked = checkFormula(formula, scope, { unit });
  return isFault(checked) ? checked : checked.run(checked.reads.map((node) => scope.input(node)));
}

/** Checks and runs a formula over a sample; throws with the fault's sentence if it has one. */
export function work(formula: string, sample: SampleNotebook = {}, unit?: string): Worked {
  const scope = new SampleScope(sample);
  const checked = checkFormula(formula, scope, { unit });
  if (isFault(checked)) throw new Error(`${checked.kind}: ${checked.message}`);
  const column = checked.run(checked.reads.map((node) => scope.input(node)));
  if (isFault(column)) throw new Error(`${column.kind}: ${column.message}`);
  return { checked, column };
}

/** The first figure a formula gives. */
export function figure(formula: string, sample: SampleNotebook = {}, unit?: string): number {
  return work(formula, sample, unit).column.values[0] as number;
}

/** The fault of a formula, at check or at run. */
export function faultOf(formula: string, sample: SampleNotebook = {}, unit?: string): Fault {
  const scope = new SampleScope(sample);
  const checked = checkFormula(formula, scope, { unit });
  if (isFault(checked)) return checked;
  const column = checked.run(checked.reads.map((node) => scope.input(node)));
  if (isFault(column)) return column;
  const row = [...(column.faults?.values() ?? [])][0];
  if (row === undefined) throw new Error(`${formula} has no fault`);
  return row;
}

/** The small notebook that the examples of the function reference read. */
export const SAMPLE: SampleNotebook = {
  tables: {
    sample: {
      part: words('chain', 'tube', 'plug'),
      bag: words('left', 'left', 'right'),
      kg: numbers('kg', 1.7, 0.8, 0.2),
      chance: numbers('', 0.5, 0.8, 0.5),
    },
    legs: { part: words('chain', 'chain'), reach: numbers('km', 1000, 6200) },
  },
  figures: { sample_date: dates('2027-04-20'), today: dates('2027-04-01') },
};
