/** A mixed-integer programme as bare arrays: least cost * x, rows between bounds. It knows no plan. */
export interface Programme {
  readonly cost: readonly number[];
  readonly lower: readonly number[];
  readonly upper: readonly number[];
  /** Whether the column must be a whole number. */
  readonly whole: readonly boolean[];
  readonly rows: readonly ProgrammeRow[];
}

export interface ProgrammeRow {
  readonly lower: number;
  readonly upper: number;
  /** Each column at most once. */
  readonly terms: readonly (readonly [column: number, factor: number])[];
}

/** What a solver made of a programme. */
export interface ProgrammeAnswer {
  readonly status: 'optimal' | 'infeasible' | 'stopped';
  /** The best columns found; null where none were. */
  readonly columns: readonly number[] | null;
  readonly cost: number;
  /** No columns cost less than this; -Infinity where nothing is known. */
  readonly bound: number;
}

export interface SolveOptions {
  /** Seconds after which the best so far is given. */
  readonly timeLimitS: number;
  /** Columns to start from, which may turn out not to fit. */
  readonly start?: readonly number[];
}

/** A solver of programmes. Kept apart from the plan, so that the plan knows no solver. */
export type SolveProgramme = (programme: Programme, options: SolveOptions) => Promise<ProgrammeAnswer>;

/** Puts a programme together; columns are numbered from 0 as they come, so no name can clash with another. */
export class ProgrammeBuilder {
  readonly #cost: number[] = [];
  readonly #lower: number[] = [];
  readonly #upper: number[] = [];
  readonly #whole: boolean[] = [];
  readonly #rows: ProgrammeRow[] = [];

  /** A column that is 0 or 1. */
  yesNo(cost = 0): number {
    return this.#column(cost, 0, 1, true);
  }

  wholeUpTo(most: number, cost = 0): number {
    return this.#column(cost, 0, most, true);
  }

  amount(most = Number.POSITIVE_INFINITY, cost = 0): number {
    return this.#column(cost, 0, most, false);
  }

  fix(column: number, value: number): void {
    this.#lower[column] = value;
    this.#upper[column] = value;
  }

  /** A row of sum(factor * column) between the bounds; terms of the same column are added up. */
  row(lower: number, upper: number, terms: Iterable<readonly [column: number, factor: number]>): void {
    const factors = new Map<number, number>();
    for (const [column, factor] of terms) factors.set(column, (factors.get(column) ?? 0) + factor);
    this.#rows.push({ lower, upper, terms: [...factors].filter(([, factor]) => factor !== 0) });
  }

  atMost(upper: number, terms: Iterable<readonly [number, number]>): void {
    this.row(Number.NEGATIVE_INFINITY, upper, terms);
  }

  atLeast(lower: number, terms: Iterable<readonly [number, number]>): void {
    this.row(lower, Number.POSITIVE_INFINITY, terms);
  }

  equal(value: number, terms: Iterable<readonly [number, number]>): void {
    this.row(value, value, terms);
  }

  programme(): Programme {
    return {
      cost: this.#cost,
      lower: this.#lower,
      upper: this.#upper,
      whole: this.#whole,
      rows: this.#rows,
    };
  }

  #column(cost: number, lower: number, upper: number, whole: boolean): number {
    this.#cost.push(cost);
    this.#lower.push(lower);
    this.#upper.push(upper);
    this.#whole.push(whole);
    return this.#cost.length - 1;
  }
}
