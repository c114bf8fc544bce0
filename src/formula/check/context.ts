import type { RowFault } from '../evaluate/arithmetic.ts';
import { type Env, RunFault, type Vector } from '../evaluate/vector.ts';
import { type Fault, type FaultKind, FormulaFault } from '../fault.ts';
import { isFaulty, type Meaning, type Scope } from '../scope.ts';
import type { Span } from '../term.ts';
import type { Unit } from '../unit.ts';
import type { Typed } from './typed.ts';

/** What one check gathers on its way: the figures read, the units met, and how to speak of faults. */
export class Context {
  readonly scope: Scope;
  readonly formula: string;
  /** Nodes read, in the order in which they are handed to the run. */
  readonly reads: string[] = [];
  /** Units of the figures read, for choosing a tidy unit of the result. */
  readonly unitsMet: Unit[] = [];
  /** Keys of groups within the formula's own table: a row needs the other rows of its groups. */
  readonly groupKeys: Typed[] = [];
  private readonly places = new Map<string, number>();
  private needsAll = false;

  constructor(scope: Scope, formula: string) {
    this.scope = scope;
    this.formula = formula;
  }

  /** Place of a node among the inputs, noted as read. */
  inputOf(node: string): number {
    const held = this.places.get(node);
    if (held !== undefined) return held;
    const place = this.reads.length;
    this.reads.push(node);
    this.places.set(node, place);
    return place;
  }

  /** Whether a row may need any other row of the formula's own table. */
  get needsAllRows(): boolean {
    return this.needsAll;
  }

  /** Notes that a row needs the other rows of its group; without a key, all rows are one group. */
  needsGroup(by: Typed | undefined): void {
    if (by === undefined) this.needsAll = true;
    else this.groupKeys.push(by);
  }

  /** Notes that terms are taken with all their rows. */
  needsWhole(terms: readonly Typed[]): void {
    if (terms.some(({ table }) => table !== null && table === this.scope.here)) this.needsAll = true;
  }

  /** The text of a term, with the closing brackets that its span leaves out. */
  text(span: Span): string {
    let { to } = span;
    const count = (sign: string): number => this.formula.slice(span.from, to).split(sign).length;
    while (count('(') > count(')') && to < this.formula.length)
      to = this.formula.indexOf(')', to) + 1 || this.formula.length;
    return this.formula.slice(span.from, to);
  }

  fault(
    kind: FaultKind,
    message: string,
    mend: string | undefined,
    span: Span,
    fix?: Fault['fix'],
  ): FormulaFault {
    return new FormulaFault({ kind, message, mend, fix, place: { from: span.from, to: span.to } });
  }

  /** A known meaning, or the fault that this formula waits for another. */
  typeOf(meaning: Meaning): Exclude<Meaning['known'], { faulty: true }> {
    const { known } = meaning;
    if (!isFaulty(known)) return known;
    throw new FormulaFault({
      kind: 'waits',
      message: `Waits for ${known.root}.`,
      mend: `Mend ${known.root} first.`,
      root: known.root,
      place: {},
    });
  }

  /** Makes faults of single rows, or stops the run where there is one figure only. */
  rowFaults(table: string | null, span: Span): RowFault {
    return (row, message, mend) => {
      const fault: Fault = {
        kind: 'domain',
        message: sentence(message),
        mend,
        place: table === null ? { from: span.from, to: span.to } : { row, from: span.from, to: span.to },
      };
      if (table === null) throw new RunFault(fault);
      return fault;
    };
  }
}

export const sentence = (text: string): string => {
  const first = text.charAt(0).toUpperCase() + text.slice(1);
  return first.endsWith('.') ? first : `${first}.`;
};

/** The table that two terms share, or the fault that they follow different rows. */
export function sharedTable(context: Context, terms: readonly Typed[], span: Span): string | null {
  let table: string | null = null;
  for (const term of terms) {
    if (term.table === null || term.table === table) continue;
    if (table === null) table = term.table;
    else throw mixedTables(context, table, term.table, span);
  }
  return table;
}

function mixedTables(context: Context, a: string, b: string, span: Span): FormulaFault {
  const here = context.scope.here;
  const other = a === here ? b : a;
  const whole = here === null ? `${a} and ${b}` : `${other}`;
  return context.fault(
    'whole-column',
    here === null
      ? `Columns of ${whole} have different rows and cannot be worked row by row together.`
      : `This uses a whole column of ${whole} where one row of ${here} is meant.`,
    `Take one figure of it: sum(${other}.column) for all rows, total(${other}.column, ${other}.key, key) for the rows that match, or pick(${other}.column, ${other}.key, key) for the one that matches.`,
    span,
  );
}

/** A figure that never changes, made once. */
export function constantVector(kind: 'number' | 'yes_no' | 'date', value: number): (env: Env) => Vector {
  const vector: Vector = { kind, values: Float64Array.of(value), faults: null };
  return () => vector;
}

export function constantText(value: string | null): (env: Env) => Vector {
  const vector: Vector = { kind: 'text', values: [value], faults: null };
  return () => vector;
}
