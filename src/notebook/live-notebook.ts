import { checkFormula } from '../formula/check/check-formula.ts';
import type { Column, ColumnType } from '../formula/column.ts';
import { waitsFor } from '../formula/evaluate/vector.ts';
import { type Fault, isFault } from '../formula/fault.ts';
import { isFaulty, rowsNode, type Scope } from '../formula/scope.ts';
import { applyEdit } from './apply-edit.ts';
import type { NotebookDocument } from './document.ts';
import { isNamed } from './document.ts';
import type { Edit } from './edit.ts';
import { type Explanation, explainFigure } from './explain.ts';
import { Graph } from './graph/graph.ts';
import type { NodeValue, PlanSolution } from './graph/node-spec.ts';
import { planSolutionNode } from './graph/plan-node.ts';
import type { Planner } from './graph/planner.ts';
import { Program } from './graph/program.ts';
import type { Sight } from './graph/sight.ts';
import { gatherThrough } from './graph/specs.ts';
import { cellNameOf } from './graph/structure.ts';
import { History, type Past } from './history.ts';
import type { NodeState } from './node-state.ts';
import { readsOf } from './reads-of.ts';

export type { Explanation } from './explain.ts';
export type { NodeState } from './node-state.ts';

export interface NotebookChange {
  /** The document was edited. */
  readonly document: boolean;
  readonly edit: Edit | null;
  /** Figures with a new state. */
  readonly nodes: ReadonlySet<string>;
  /** Only the figures that are seen are worked out so far; another change tells of the rest in a moment. */
  readonly isPartial?: boolean;
}

export type Preview = { readonly fault: Fault } | { readonly type: ColumnType; readonly column: Column };

/** Row faults listed for one column; more of the same would only hide the others. */
const MOST_ROW_FAULTS = 50;
const NO_NODES: ReadonlySet<string> = new Set();
const NOTHING: Program['specs'] = new Map();

interface GatheredColumn {
  readonly source: NodeValue;
  readonly rows: NodeValue;
  readonly value: NodeValue;
}

/**
 * A notebook at work, without a screen: the document, its graph, and the edits made to it. The same in the
 * page, in tests and in a worker.
 *
 * Example: `const live = LiveNotebook.open(document); await live.settled(); live.read('reach');`
 */
export class LiveNotebook {
  private held: NotebookDocument;
  private program: Program;
  private readonly graph: Graph;
  private heldPlanner: Planner | null;
  /** Formulas are looked at from the start on; until then every figure is being worked out. */
  private isBegun: boolean;
  private isEnded = false;
  private readonly history = new History();
  private readonly listeners = new Set<(change: NotebookChange) => void>();
  private gathered: { readonly version: number; readonly faults: readonly Fault[] } | null = null;
  /** Parents' columns seen through pairings, as they were last gathered. */
  private readonly through = new Map<string, GatheredColumn>();
  private readonly lastSettled = new Map<string, { column: Column; type: ColumnType }>();

  private constructor(document: NotebookDocument, planner: Planner | null, start: Promise<void> | null) {
    this.held = document;
    this.heldPlanner = planner;
    this.isBegun = start === null;
    this.program = this.programOf(document, null);
    // Before the graph waits for the same: it then works out all nodes at once.
    void start?.then(() => this.begin());
    this.graph = new Graph(
      (nodes, isPartial) => this.tell({ document: false, edit: null, nodes, isPartial }),
      start,
    );
    this.graph.take(this.isBegun ? this.program.specs : NOTHING);
  }

  /**
   * @param planner finds the plans of plan cells; without one each part keeps its own cheapest call
   * @param start no formula is checked and no figure worked out before it resolves; edits are taken meanwhile.
   *   Absent for at once
   */
  static open(
    document: NotebookDocument,
    planner: Planner | null = null,
    start: Promise<void> | null = null,
  ): LiveNotebook {
    return new LiveNotebook(document, planner, start);
  }

  get document(): NotebookDocument {
    return this.held;
  }

  /** Who finds its plans, and answers questions about them; null where nobody does. */
  get planner(): Planner | null {
    return this.heldPlanner;
  }

  /**
   * From now on its plans are found by this planner. Until the first is there, the figures that stood before
   * stay, marked as working.
   */
  usePlanner(planner: Planner | null): void {
    if (planner === this.heldPlanner) return;
    this.heldPlanner = planner;
    if (!this.isBegun) return;
    this.program = this.program.withPlanner(planner);
    this.graph.take(this.program.specs);
  }

  /**
   * From now on the figures that are seen are worked out first, the others when those are painted.
   * @param seen names of figures as formulas have them (`budget`, `wear.rate`)
   */
  useSight({ seen, ...page }: Omit<Sight, 'seen'> & { readonly seen: () => Iterable<string> }): void {
    this.graph.useSight({
      ...page,
      seen: () => [...seen()].map((written) => this.nodeBehind(this.program.structure.nodeOf(written))),
    });
  }

  /** The node itself, or the one whose figures a pairing shows, where no formula reads them through it. */
  private nodeBehind(node: string): string {
    return this.program.specs.has(node) ? node : (this.program.throughOf(node)?.source ?? node);
  }

  /** Ends when what an edit changed is told to the listeners; null when no edit is being worked out. */
  get working(): Promise<void> | null {
    return this.graph.telling;
  }

  get canUndo(): boolean {
    return this.history.canUndo;
  }

  get canRedo(): boolean {
    return this.history.canRedo;
  }

  /**
   * Makes an edit, puts it on the undo stack and computes what hangs on it.
   *
   * Throws EditError, with nothing changed, when the edit does not fit the document.
   */
  apply(edit: Edit): void {
    this.take(applyEdit(this.held, edit), edit);
    this.history.done(edit);
  }

  /** Undoes the last edit and gives back what was applied to do so; null when there is none. */
  undo(): Edit | null {
    const edit = this.history.undo();
    if (edit !== null) this.take(applyEdit(this.held, edit), edit);
    return edit;
  }

  redo(): Edit | null {
    const edit = this.history.redo();
    if (edit !== null) this.take(applyEdit(this.held, edit), edit);
    return edit;
  }

  /** What undo and redo could go through now. */
  get past(): Past {
    return this.history.past;
  }

  /** Undo goes on into what was made in an earlier visit; it must fit the document as it was opened. */
  recall(past: Past): void {
    this.history.recall(past);
    this.tell({ document: false, edit: null, nodes: NO_NODES });
  }

  private take(document: NotebookDocument, edit: Edit | null): void {
    const program = this.programOf(document, this.program);
    this.held = document;
    this.program = program;
    if (this.isBegun) this.graph.take(program.specs);
    this.tell({ document: true, edit, nodes: NO_NODES });
  }

  private programOf(document: NotebookDocument, before: Program | null): Program {
    return this.isBegun ? Program.of(document, before, this.heldPlanner) : Program.entered(document);
  }

  private begin(): void {
    if (this.isEnded) return;
    this.isBegun = true;
    this.program = this.programOf(this.held, null);
    this.graph.take(this.program.specs);
  }

  private tell(change: NotebookChange): void {
    for (const listener of [...this.listeners]) listener(change);
  }

  subscribe(listener: (change: NotebookChange) => void): () => void {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  }

  /** Resolves when every figure is up to date, with the figures computed since the last call or edit. */
  async settled(): Promise<{ readonly recomputed: readonly string[] }> {
    await this.graph.settled();
    return { recomputed: this.graph.takeComputed() };
  }

  /** Type of a figure, or null where its formula has a fault. */
  typeOf(written: string): ColumnType | null {
    const known = this.program.typeOf(this.program.structure.nodeOf(written));
    return known === undefined || isFaulty(known) ? null : known;
  }

  /** The figure of a cell (`budget`) or a column (`wear.rate`, also a parent's through a pairing: `ride.part`). */
  read(written: string): NodeState {
    const node = this.program.structure.nodeOf(written);
    const value = this.valueOf(node);
    if (value === undefined || this.graph.isPending(node))
      return { state: 'working', last: this.lastSettled.get(node) ?? null };
    const type = this.typeOf(node);
    if (isFault(value))
      return value.kind === 'waits' ? { state: 'waiting', fault: value } : { state: 'fault', fault: value };
    if (type === null || !('values' in value)) return { state: 'fault', fault: noSuchFigure(written) };
    const last = this.lastSettled.get(node);
    if (last?.column !== value || last.type !== type) this.lastSettled.set(node, { column: value, type });
    return { state: 'settled', column: value, type };
  }

  /** A node's value; a parent's column that no formula reads through a pairing is gathered on the spot. */
  private valueOf(node: string): NodeValue | undefined {
    const value = this.graph.value(node);
    if (value !== undefined || this.program.specs.has(node) || !this.isBegun) return value;
    const through = this.program.throughOf(node);
    if (through === null) return noSuchFigure(node);
    const source = this.valueOf(through.source);
    const rows = this.graph.value(rowsNode(cellNameOf(node)));
    if (source === undefined || rows === undefined) return undefined;
    // Cards ask again and again for what they show.
    const held = this.through.get(node);
    if (held?.source === source && held.rows === rows) return held.value;
    const gathered = gatherThrough(source as Column | Fault, rows as never, through.source, through.side);
    this.through.set(node, { source, rows, value: gathered });
    return gathered;
  }

  /**
   * Where a plan cell stands: its question and answer. While a new plan is worked out the one before is given,
   * marked as working; null before the first, and where the plan has a fault.
   */
  planOf(name: string): {
    readonly working: boolean;
    readonly solution: PlanSolution | null;
    readonly fault: Fault | null;
  } {
    const node = planSolutionNode(name);
    const value = this.graph.value(node);
    const working = this.graph.isPending(node);
    if (value === undefined || isFault(value)) return { working, solution: null, fault: value ?? null };
    return { working, solution: 'result' in value ? value : null, fault: null };
  }

  /** Has the plan of a plan cell worked out once more, from the same figures: it was stopped, or has failed. */
  planAgain(name: string): void {
    this.graph.again(planSolutionNode(name));
  }

  /** Rows of a table, pairing or calls cell; 0 while they cannot be told. */
  rowsOf(table: string): number {
    const rows = this.graph.value(rowsNode(table));
    return rows !== undefined && !isFault(rows) && 'length' in rows ? rows.length : 0;
  }

  /** Every fault now; figures that only wait for another are left out. */
  faults(): readonly Fault[] {
    // Every card asks for its state: they are gathered once for all of them.
    const { version } = this.graph;
    if (this.gathered?.version !== version)
      this.gathered = {
        version,
        faults: [...this.program.specs.keys()].flatMap((node) => this.faultsAt(node)),
      };
    return this.gathered.faults;
  }

  faultsOf(cellId: string): readonly Fault[] {
    const cell = this.held.cells.find((held) => held.id === cellId);
    if (cell === undefined || !isNamed(cell)) return [];
    return this.faults().filter((fault) => cellNameOf(fault.place.node ?? '') === cell.name);
  }

  private faultsAt(node: string): Fault[] {
    const value = this.graph.value(node);
    if (value === undefined) return [];
    if (isFault(value)) return value.kind === 'waits' ? [] : [value];
    if (!('faults' in value) || value.faults === null || 'calls' in value) return [];
    return [...value.faults.values()]
      .filter((fault) => fault.kind !== 'waits')
      .slice(0, MOST_ROW_FAULTS)
      .map((fault) => ({ ...fault, place: { ...fault.place, node } }));
  }

  /** Ids of the cells this cell reads, and of those that read it. */
  links(cellId: string): { readonly fedBy: readonly string[]; readonly feeds: readonly string[] } {
    const cell = this.held.cells.find((held) => held.id === cellId);
    const own = cell !== undefined && isNamed(cell) ? cell.name : null;
    const idOf = new Map(this.held.cells.filter(isNamed).map((held) => [held.name, held.id]));
    const fedBy = new Set<string>();
    const feeds = new Set<string>();
    for (const spec of this.program.specs.values()) {
      const reader = cellNameOf(spec.node);
      for (const read of spec.reads) {
        const source = cellNameOf(read);
        if (source === reader) continue;
        if (reader === own) fedBy.add(idOf.get(source) ?? '');
        if (source === own) feeds.add(idOf.get(reader) ?? '');
      }
    }
    if (cell?.kind === 'tally') {
      for (const figure of cell.figures)
        for (const name of [figure.figure, figure.limit])
          if (name !== undefined) fedBy.add(idOf.get(cellNameOf(name)) ?? '');
    }
    if (cell?.kind === 'picture' || cell?.kind === 'prep')
      for (const name of readsOf(cell)) fedBy.add(idOf.get(cellNameOf(name)) ?? '');
    const order = (ids: Set<string>): string[] =>
      this.held.cells.map((held) => held.id).filter((id) => ids.has(id));
    return { fedBy: order(fedBy), feeds: order(feeds) };
  }

  /** Checks and works out a formula without keeping it, with the figures as they are now. */
  preview(
    formula: string,
    at: { readonly cell: string; readonly column?: string; readonly unit?: string },
  ): Preview {
    const cell = this.held.cells.find((held) => held.id === at.cell);
    const here = cell?.kind === 'table' || cell?.kind === 'pairing' ? cell.name : null;
    const checked = checkFormula(formula, this.program.scope(here), {
      unit: at.unit === '' ? undefined : at.unit,
    });
    if (isFault(checked)) return { fault: checked };
    const own = this.nodeAt(at);
    const inputs = checked.reads.map(
      (node): NodeValue => (node === own ? needsItself(node) : (this.valueOf(node) ?? waitsFor(node))),
    );
    const circle = inputs.find((input) => isFault(input) && input.kind === 'circle');
    if (circle !== undefined) return { fault: circle as Fault };
    const column = checked.run(inputs as never);
    return isFault(column) ? { fault: column } : { type: checked.type, column };
  }

  /** What the names in a formula of a cell can mean, for completing them as they are written. */
  scopeOf(cellId: string): Scope {
    const cell = this.held.cells.find((held) => held.id === cellId);
    return this.program.scope(cell?.kind === 'table' || cell?.kind === 'pairing' ? cell.name : null);
  }

  private nodeAt(at: { readonly cell: string; readonly column?: string }): string | null {
    const cell = this.held.cells.find((held) => held.id === at.cell);
    if (cell === undefined || !isNamed(cell)) return null;
    if (at.column === undefined) return cell.name;
    const column = 'columns' in cell ? cell.columns.find((held) => held.id === at.column) : undefined;
    return column === undefined ? null : `${cell.name}.${column.name}`;
  }

  /** Where one figure comes from: its formula with this row's figures in place, one level. */
  explain(written: string, row: number): Explanation {
    return explainFigure(this, this.program, written, row);
  }

  dispose(): void {
    this.isEnded = true;
    this.listeners.clear();
    this.graph.dispose();
  }
}

function noSuchFigure(name: string): Fault {
  return {
    kind: 'unknown-name',
    message: `There is no figure called ${name}.`,
    mend: 'Name a cell or column of this notebook.',
    place: { node: name },
  };
}

function needsItself(node: string): Fault {
  return {
    kind: 'circle',
    message: `${node} would need itself.`,
    mend: 'Leave it out of its own formula.',
    place: { node },
  };
}
