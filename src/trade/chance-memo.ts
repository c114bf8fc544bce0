import { type ChanceTable, chanceTable } from './chance-table.ts';
import { HASH_START, hashFigure } from './hash-figures.ts';
import type { PartFigures } from './part-figures.ts';

/** The figures that chances depend on; the full allowance is not among them. */
const FIGURES = [
  'allowance',
  'rate',
  'middleLife',
  'spread',
  'readingError',
  'age',
  'life',
  'shape',
] as const;

interface Remembered {
  readonly reachKm: Float64Array;
  readonly part: PartFigures;
  readonly table: ChanceTable;
}

function hashOf(reachKm: Float64Array, part: PartFigures): number {
  let hash = HASH_START;
  for (let leg = 0; leg < reachKm.length; leg += 1) hash = hashFigure(hash, reachKm[leg]!);
  for (const figure of FIGURES) hash = hashFigure(hash, part[figure]);
  return hash;
}

/** Object.is: missing equals missing, bit for bit as the hash has it. */
function isOf(known: Remembered, reachKm: Float64Array, part: PartFigures): boolean {
  if (known.reachKm.length !== reachKm.length) return false;
  for (const figure of FIGURES) if (!Object.is(known.part[figure], part[figure])) return false;
  for (let leg = 0; leg < reachKm.length; leg += 1) {
    if (!Object.is(known.reachKm[leg], reachKm[leg])) return false;
  }
  return true;
}

/**
 * Chance tables kept by what they were computed from, since many formulas ask for the same one: found by a
 * hash, verified figure by figure, the longest unused dropped first. A computation that throws leaves no
 * trace.
 */
export class ChanceMemo {
  private readonly known = new Map<number, Remembered>();
  private readonly mostEntries: number;
  private entries = 0;

  /** @param mostEntries bound on the chances kept, all tables together. */
  constructor(mostEntries: number) {
    this.mostEntries = mostEntries;
  }

  /** How many tables are kept now. */
  get size(): number {
    return this.known.size;
  }

  /** As chanceTable(reachKm, part), which see; the table is shared and must not be written to. */
  tableOf(reachKm: Float64Array, part: PartFigures): ChanceTable {
    const hash = hashOf(reachKm, part);
    const found = this.known.get(hash);
    if (found) {
      this.known.delete(hash);
      if (isOf(found, reachKm, part)) {
        this.known.set(hash, found);
        return found.table;
      }
      this.entries -= 2 * found.table.worn.length;
    }
    const table = chanceTable(reachKm, part);
    this.known.set(hash, { reachKm: reachKm.slice(), part: { ...part }, table });
    this.entries += 2 * table.worn.length;
    this.dropOldest(hash);
    return table;
  }

  private dropOldest(newest: number): void {
    for (const [hash, { table }] of this.known) {
      if (this.entries <= this.mostEntries && this.known.size <= this.mostEntries) return;
      if (hash === newest) return;
      this.known.delete(hash);
      this.entries -= 2 * table.worn.length;
    }
  }
}

/**
 * Some 2 MB: 360 tables of 25 legs, a little more than twice what the worked example asks for, so that an edit of a
 * leg and its undo find their own again.
 */
const shared = new ChanceMemo(240_000);

/** The chance table of a part, from the notebook-wide memo; see chanceTable. */
export function rememberedChances(reachKm: Float64Array, part: PartFigures): ChanceTable {
  return shared.tableOf(reachKm, part);
}
