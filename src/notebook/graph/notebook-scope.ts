import type { Known, Meaning, Scope } from '../../formula/scope.ts';
import type { PlacedColumn, Structure } from './structure.ts';

type Types = (node: string) => Known | undefined;

/** What the names in one formula of the notebook mean. */
export class NotebookScope implements Scope {
  readonly here: string | null;
  readonly money: string;
  private readonly structure: Structure;
  private readonly types: Types;

  constructor(structure: Structure, types: Types, money: string, here: string | null) {
    this.structure = structure;
    this.types = types;
    this.money = money;
    this.here = here;
  }

  plain(name: string): readonly Meaning[] {
    const meanings: Meaning[] = [];
    if (this.here !== null) {
      for (const placed of this.structure.columns(this.here).get(name) ?? []) {
        const meaning = this.meaning(placed, this.here);
        if (meaning !== null) meanings.push(meaning);
      }
    }
    const cell = this.structure.figures.get(name);
    const known = cell === undefined ? undefined : this.types(name);
    if (cell !== undefined && known !== undefined)
      meanings.push({ node: name, table: null, known, words: `${cell.kind} ${name}` });
    return meanings;
  }

  member(table: string, column: string): Meaning | null {
    const found = this.structure.member(this.here, table, column);
    return found === null ? null : this.meaning(found.column, found.table);
  }

  private meaning(placed: PlacedColumn, table: string): Meaning | null {
    const known =
      this.types(placed.node) ??
      (placed.through === undefined ? undefined : this.types(placed.through.source));
    const follows = placed.single ? null : table;
    return known === undefined ? null : { node: placed.node, table: follows, known, words: placed.words };
  }

  isTable(name: string): boolean {
    return this.structure.tables.has(name);
  }

  *plainNames(): Iterable<string> {
    if (this.here !== null) yield* this.structure.columns(this.here).keys();
    yield* this.structure.figures.keys();
    for (const table of this.structure.tables.keys())
      for (const column of this.structure.columns(table).keys()) yield `${table}.${column}`;
  }

  columnNames(table: string): Iterable<string> {
    return this.structure.columns(table).keys();
  }

  tableNames(): Iterable<string> {
    return this.structure.tables.keys();
  }
}
