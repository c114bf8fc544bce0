import { type CheckedFormula, checkFormula } from '../../formula/check/check-formula.ts';
import { EXCHANGE_TABLE } from '../../formula/check/measures.ts';
import type { LastRun } from '../../formula/check/run-changed.ts';
import type { Column, Rows } from '../../formula/column.ts';
import { type Fault, FormulaFault, isFault } from '../../formula/fault.ts';
import { parseFormula } from '../../formula/parse.ts';
import { columnNode, type Known, rowsNode } from '../../formula/scope.ts';
import { type Term, walkTerms } from '../../formula/term.ts';
import {
  type CallsCell,
  type NotebookDocument,
  PLAN_ROLES,
  type PlanCell,
  type TableCell,
  type ValueCell,
} from '../document.ts';
import { CALLS_COLUMNS, PLAN_COLUMNS, PLAN_FIGURES } from '../references.ts';
import { callsSpecs } from './calls-node.ts';
import type { NodeSpec } from './node-spec.ts';
import { NotebookScope } from './notebook-scope.ts';
import { orderNodes } from './order.ts';
import { planSpecs } from './plan-node.ts';
import type { Planner } from './planner.ts';
import { sameButData } from './same-but-data.ts';
import { circleFault, faultSpec, gatherThrough, pairingRows, tableSpecs, valueSpec } from './specs.ts';
import { cellNameOf, Structure, structureKey } from './structure.ts';
import { internType } from './types.ts';

/** A formula somewhere in the notebook: of a cell, or of a worked column. */
interface Place {
  readonly node: string;
  readonly here: string | null;
  readonly formula: string;
  readonly unit: string | undefined;
}

interface Kept {
  readonly place: Place;
  readonly key: string;
  readonly deps: readonly (Known | undefined)[];
  readonly checked: CheckedFormula | Fault;
}

/**
 * Turns a document into graph nodes: resolves names, finds circles, checks every formula. Formulas whose text,
 * unit and read types are as they were keep their checked form, so that an edit checks only what it touches.
 */
export class Program {
  readonly specs = new Map<string, NodeSpec>();
  readonly structure: Structure;
  readonly document: NotebookDocument;
  private readonly types = new Map<string, Known>();
  private readonly kept = new Map<string, Kept>();
  /** Cells whose types were not asked for yet. */
  private readonly unread = new Map<string, ValueCell | TableCell>();
  private readonly key: string;
  private readonly planner: Planner | null;

  private constructor(
    document: NotebookDocument,
    structure: Structure,
    key: string,
    planner: Planner | null,
  ) {
    this.planner = planner;
    this.document = document;
    this.structure = structure;
    this.key = key;
  }

  static of(
    document: NotebookDocument,
    before: Program | null = null,
    planner: Planner | null = null,
  ): Program {
    if (before !== null && sameButData(before.document, document)) return before.withData(document);
    const key = `${document.money}\n${structureKey(document.cells)}`;
    const structure = before?.key === key ? before.structure.withCells(document) : new Structure(document);
    const program = new Program(document, structure, key, planner);
    program.checkFormulas(program.enterData(), before);
    program.addThrough();
    return program;
  }

  /**
   * What was entered alone, before any formula is looked at: enough to show it and to write in it. Types are read when
   * they are asked for, as few of them are by the time that the first screen is there.
   */
  static entered(document: NotebookDocument): Program {
    const program = new Program(document, new Structure(document), '', null);
    for (const cell of document.cells)
      if (cell.kind === 'value' || cell.kind === 'table') program.unread.set(cell.name, cell);
    return program;
  }

  /** The same formulas over other figures: names, types and checks all hold, so only the data is taken anew. */
  private withData(document: NotebookDocument): Program {
    const program = this.copy(document, this.structure.withCells(document), this.planner);
    document.cells.forEach((cell, i) => {
      if (cell === this.document.cells[i]) return;
      if (cell.kind === 'value') program.set(valueSpec(cell));
      else if (cell.kind === 'table')
        for (const spec of tableSpecs(cell, this.document.cells[i] as TableCell)) program.set(spec);
      else if (cell.kind === 'calls') program.setCalls(cell);
      else return;
      // A plan asks anew when the pins of its calls change.
      for (const plan of document.cells)
        if (plan.kind === 'plan' && cell.kind === 'calls' && plan.calls === cell.name) program.setPlan(plan);
    });
    return program;
  }

  /** The same notebook, with its plans found by another planner. */
  withPlanner(planner: Planner | null): Program {
    const program = this.copy(this.document, this.structure, planner);
    for (const cell of this.document.cells) if (cell.kind === 'plan') program.setPlan(cell);
    return program;
  }

  private copy(document: NotebookDocument, structure: Structure, planner: Planner | null): Program {
    const program = new Program(document, structure, this.key, planner);
    for (const [node, known] of this.types) program.types.set(node, known);
    for (const [node, kept] of this.kept) program.kept.set(node, kept);
    for (const [node, spec] of this.specs) program.specs.set(node, spec);
    return program;
  }

  scope(here: string | null): NotebookScope {
    return new NotebookScope(this.structure, (node) => this.types.get(node), this.document.money, here);
  }

  typeOf(node: string): Known | undefined {
    const held = this.types.get(node);
    if (held !== undefined) return held;
    const cell = this.unread.get(cellNameOf(node));
    if (cell !== undefined) {
      this.unread.delete(cell.name);
      this.enterCell(cell);
      return this.typeOf(node);
    }
    const through = this.throughOf(node);
    return through === null ? undefined : this.typeOf(through.source);
  }

  /** For a parent's column seen through a pairing: where it comes from. */
  throughOf(node: string): { readonly source: string; readonly side: 'left' | 'right' } | null {
    const parts = node.split('.');
    if (parts.length !== 3) return null;
    const [pairing, , column] = parts as [string, string, string];
    return (
      this.structure
        .columns(pairing)
        .get(column)
        ?.find((placed) => placed.node === node)?.through ?? null
    );
  }

  private set(spec: NodeSpec): void {
    this.specs.set(spec.node, spec);
    if (spec.known !== undefined) this.types.set(spec.node, spec.known);
  }

  private enterCell(cell: ValueCell | TableCell): void {
    if (cell.kind === 'value') this.set(valueSpec(cell));
    else for (const spec of tableSpecs(cell)) this.set(spec);
  }

  /** Nodes of what was entered, and the places of all formulas. */
  private enterData(): Place[] {
    const places: Place[] = [];
    for (const cell of this.document.cells) {
      if (cell.kind === 'value' || cell.kind === 'table') this.enterCell(cell);
      else if (cell.kind === 'pairing')
        this.set(pairingRows(cell.name, cell.left, cell.right, this.structure));
      else if (cell.kind === 'formula')
        places.push({ node: cell.name, here: null, formula: cell.formula, unit: cell.unit });
      if (cell.kind !== 'table' && cell.kind !== 'pairing') continue;
      for (const { name, ...column } of cell.columns) {
        if (column.kind === 'worked')
          places.push({
            node: columnNode(cell.name, name),
            here: cell.name,
            formula: column.formula,
            unit: column.unit,
          });
      }
    }
    return places;
  }

  private setPlan(cell: PlanCell): void {
    const around = {
      structure: this.structure,
      typeOf: (read: string) => this.typeOf(read),
      money: this.document.money,
      planner: this.planner,
    };
    for (const spec of planSpecs(cell, around)) this.set(spec);
  }

  private setCalls(cell: CallsCell): void {
    for (const spec of callsSpecs(cell, this.structure, (read) => this.typeOf(read))) this.set(spec);
  }

  private checkFormulas(places: readonly Place[], before: Program | null): void {
    const byNode = new Map(places.map((place) => [place.node, place]));
    const calls = this.document.cells.filter((cell) => cell.kind === 'calls');
    const reads = new Map<string, readonly string[]>(
      places.map((place) => [place.node, this.staticReads(place)]),
    );
    const makers = new Map<string, () => void>();
    for (const cell of calls) {
      const sources = [cell.part, cell.call, cell.cost, cell.allowed].map((column) =>
        this.sourceOf(`${cell.pairing}.${column}`),
      );
      const planned = cell.plan === undefined ? [] : [columnNode(cell.plan, 'cost')];
      this.promise(CALLS_COLUMNS, cell.name, [...sources, ...planned], reads, makers, () =>
        this.setCalls(cell),
      );
    }
    for (const cell of this.document.cells) {
      if (cell.kind !== 'plan') continue;
      const of = calls.find((held) => held.name === cell.calls);
      const fields =
        of === undefined
          ? []
          : [of.part, of.call, of.allowed, of.reason, of.critical].map((column) => `${of.pairing}.${column}`);
      const sources = [
        ...fields,
        ...PLAN_ROLES.map((role) => cell.reads[role]).filter((read) => read !== ''),
      ].map((read) => this.sourceOf(read));
      this.promise([...PLAN_COLUMNS, ...PLAN_FIGURES], cell.name, sources, reads, makers, () =>
        this.setPlan(cell),
      );
    }
    this.readRatesFirst(reads);
    const { sorted, circles } = orderNodes(reads);
    for (const node of sorted) {
      const place = byNode.get(node);
      const circle = circles.get(node);
      if (place !== undefined) this.checkPlace(place, circle, reads.get(node) ?? [], before);
      else if (circle !== undefined) this.set(faultSpec(node, circleFault(circle, node)));
      else if (!this.specs.has(node)) makers.get(node)?.();
    }
  }

  /** Notes what the outputs of a calls or plan cell read, and how they are made when their turn comes. */
  private promise(
    outputs: readonly string[],
    name: string,
    sources: readonly string[],
    reads: Map<string, readonly string[]>,
    makers: Map<string, () => void>,
    make: () => void,
  ): void {
    for (const output of outputs) {
      reads.set(columnNode(name, output), sources);
      makers.set(columnNode(name, output), make);
    }
  }

  /** A change of currency reads the rates of exchange: where those are worked out, they come first. */
  private readRatesFirst(reads: Map<string, readonly string[]>): void {
    const rates = ['currency', 'worth']
      .map((column) => columnNode(EXCHANGE_TABLE, column))
      .filter((node) => reads.has(node));
    const behind = new Set(rates);
    for (const node of behind) for (const read of reads.get(node) ?? []) behind.add(read);
    if (rates.length > 0)
      for (const [node, own] of reads) if (!behind.has(node)) reads.set(node, [...own, ...rates]);
  }

  private checkPlace(
    place: Place,
    circle: readonly string[] | undefined,
    reads: readonly string[],
    before: Program | null,
  ): void {
    if (circle !== undefined) {
      this.set(faultSpec(place.node, circleFault(circle, place.node)));
      return;
    }
    const deps = reads.map((read) => this.typeOf(read));
    const was = before?.kept.get(place.node);
    const checked =
      was !== undefined && was.key === this.key && samePlace(was.place, place) && sameList(was.deps, deps)
        ? was.checked
        : this.check(place);
    this.kept.set(place.node, { place, key: this.key, deps, checked });
    if (isFault(checked)) this.set(faultSpec(place.node, checked));
    else
      this.set({
        node: place.node,
        reads: checked.reads,
        known: checked.type,
        stamp: checked,
        compute: runner(place.node, checked),
      });
  }

  private check(place: Place): CheckedFormula | Fault {
    const checked = checkFormula(place.formula, this.scope(place.here), { unit: place.unit });
    if (isFault(checked)) return { ...checked, place: { ...checked.place, node: place.node } };
    return { ...checked, type: internType(checked.type.kind, checked.type.unit, checked.type.options) };
  }

  /** Nodes that a formula's names stand for, for order and circles; types are not needed yet. */
  private staticReads(place: Place): string[] {
    const term = parsed(place.formula);
    if (term === null) return [];
    const reads = new Set<string>();
    const member = (table: string, column: string): void => {
      const found = this.structure.member(place.here, table, column);
      if (found !== null) reads.add(found.column.through?.source ?? found.column.node);
    };
    walkTerms(term, (part) => {
      if (part.type === 'member') member(part.table, part.column);
      else if (part.type === 'name') {
        for (const placed of place.here === null
          ? []
          : (this.structure.columns(place.here).get(part.name) ?? [])) {
          reads.add(placed.through?.source ?? placed.node);
        }
        if (this.structure.figures.has(part.name)) reads.add(part.name);
      } else if (part.type === 'call' && part.name === 'days_until') reads.add('today');
    });
    return [...reads].map((node) => this.sourceOf(node));
  }

  /** Through pairings down to the node that has a formula or entries of its own. */
  private sourceOf(node: string): string {
    let at = this.structure.nodeOf(node);
    for (let through = this.throughOf(at); through !== null; through = this.throughOf(at))
      at = through.source;
    return at;
  }

  /** Nodes for parents' columns that some node reads through a pairing. */
  private addThrough(): void {
    const wanted = [...this.specs.values()].flatMap((spec) => spec.reads);
    for (let read = wanted.pop(); read !== undefined; read = wanted.pop()) {
      if (this.specs.has(read)) continue;
      const through = this.throughOf(read);
      if (through === null) continue;
      const pairing = read.slice(0, read.indexOf('.'));
      this.set({
        node: read,
        reads: [through.source, rowsNode(pairing)],
        known: this.typeOf(through.source),
        stamp: `${through.source} ${through.side}`,
        compute: ([column, rows]) =>
          gatherThrough(column as Column | Fault, rows as Rows | Fault, through.source, through.side),
      });
      wanted.push(through.source);
    }
  }
}

function parsed(formula: string): Term | null {
  try {
    return parseFormula(formula);
  } catch (error) {
    if (error instanceof FormulaFault) return null;
    throw error;
  }
}

function runner(node: string, checked: CheckedFormula): NodeSpec['compute'] {
  return (inputs, last) => {
    const result = checked.run(inputs as readonly (Column | Rows | Fault)[], last as LastRun | undefined);
    if (result === last?.result) return result;
    return isFault(result) ? { ...result, place: { ...result.place, node } } : result;
  };
}

function samePlace(a: Place, b: Place): boolean {
  return a.formula === b.formula && a.unit === b.unit && a.here === b.here;
}

function sameList(a: readonly unknown[], b: readonly unknown[]): boolean {
  return a.length === b.length && a.every((item, i) => item === b[i]);
}
