import type { Cell } from '../../src/notebook/document.ts';

/** Which cards a viewer has folded, or opened, against how they stand at first: by notebook, then by cell. */
type Kept = Record<string, Record<string, boolean>>;

const KEY = 'sparewell-folded';

/** Notebooks whose folds are remembered; those looked at longest ago are forgotten first. */
const MOST_NOTEBOOKS = 40;

/**
 * Working tables of the kind the worked example has: what they hold is seldom changed, and what comes out of
 * them stands on other cards. They are folded until somebody opens them.
 */
const FOLDED_NAMES: ReadonlySet<string> = new Set([
  'surfaces',
  'severity',
  'wear_classes',
  'suppliers',
  'rates_of_exchange',
  'kits',
  'choices',
  'reasons',
  'handling',
]);

/**
 * Whether a card stands folded before anybody has touched it. Every pairing does: it is all working; and a
 * tally, whose figures stand in the strip over the page.
 */
export function foldedAtFirst(cell: Cell): boolean {
  return (
    cell.kind === 'pairing' || cell.kind === 'tally' || (cell.kind === 'table' && FOLDED_NAMES.has(cell.name))
  );
}

/** Whether cards of this kind can be folded: a caution stays open, and a formula is one line already. */
export function canFold(cell: Cell): boolean {
  return cell.kind !== 'formula' && !(cell.kind === 'note' && cell.caution === true);
}

/**
 * What a viewer keeps folded on this device. It is no part of the notebook: two who read the same one may
 * have different cards open, and folding is nothing to undo.
 */
export class Folds {
  #kept: Kept | null = null;

  isFolded(notebookId: string, cell: Cell): boolean {
    return canFold(cell) && (this.#read()[notebookId]?.[cell.id] ?? foldedAtFirst(cell));
  }

  set(notebookId: string, cell: Cell, folded: boolean): void {
    const { [notebookId]: own = {}, ...others } = this.#read();
    const kept = { ...others, [notebookId]: { ...own, [cell.id]: folded } };
    const names = Object.keys(kept);
    for (const name of names.slice(0, Math.max(0, names.length - MOST_NOTEBOOKS))) delete kept[name];
    this.#kept = kept;
    try {
      localStorage.setItem(KEY, JSON.stringify(kept));
    } catch {
      // A closed or full storage forgets it at the next visit; the card folds all the same.
    }
  }

  #read(): Kept {
    if (this.#kept === null) this.#kept = readKept();
    return this.#kept;
  }
}

function readKept(): Kept {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(KEY) ?? '{}');
    if (typeof kept !== 'object' || kept === null || Array.isArray(kept)) return {};
    const read: Kept = {};
    for (const [notebook, own] of Object.entries(kept)) {
      if (typeof own !== 'object' || own === null) continue;
      const marks = Object.entries(own).filter(
        (mark): mark is [string, boolean] => typeof mark[1] === 'boolean',
      );
      read[notebook] = Object.fromEntries(marks);
    }
    return read;
  } catch {
    return {};
  }
}

/** The one of this page. */
export const folds = new Folds();
