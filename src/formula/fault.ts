/** What went wrong, in the words the reader of a notebook needs. */
export type FaultKind =
  | 'grammar' // cannot be read
  | 'not-in-language' // readable, but not part of this language
  | 'unknown-name'
  | 'two-meanings' // one name, two things
  | 'units' // dimensions differ
  | 'kind' // text where a number is meant, and the like
  | 'whole-column' // a column where one row is meant
  | 'arguments' // too few, too many
  | 'circle' // a figure that would need itself
  | 'missing-input' // an empty field that a single figure needs
  | 'unread-entry' // an entry that cannot be read as the column's kind
  | 'domain' // shape of 0, negative reach, root of a negative number
  | 'not-one-match' // pick() found none or several
  | 'size' // formula or rows past the bound
  | 'waits'; // reads a figure that has a fault

/** Where it went wrong. `from` and `to` are character offsets into the formula, `to` exclusive. */
export interface FaultPlace {
  /** Name of the figure: `reach` or `wear.rate`. */
  readonly node?: string;
  /** Row of the table, counted from 0. */
  readonly row?: number;
  readonly from?: number;
  readonly to?: number;
}

export interface Fault {
  readonly kind: FaultKind;
  /** One plain sentence: what is wrong, naming the things concerned. */
  readonly message: string;
  /** One plain sentence: what would mend it, where that is known. */
  readonly mend?: string;
  /** A replacement of the whole formula that would mend it, offered as one button. */
  readonly fix?: { readonly label: string; readonly formula: string };
  readonly place: FaultPlace;
  /** For `waits`: the figure that has the fault itself, at the root of the chain. */
  readonly root?: string;
}

/** Thrown inside the formula language only; every public function catches it and returns the fault. */
export class FormulaFault extends Error {
  readonly fault: Fault;
  constructor(fault: Fault) {
    super(fault.message);
    this.name = 'FormulaFault';
    this.fault = fault;
  }
}

export function isFault(x: unknown): x is Fault {
  return typeof x === 'object' && x !== null && 'message' in x && 'place' in x && 'kind' in x;
}
