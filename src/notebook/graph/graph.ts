import { Runtime, type Variable } from '@observablehq/runtime';
import type { Column } from '../../formula/column.ts';
import { isSameColumn } from '../../formula/evaluate/changed-rows.ts';
import { waitsFor } from '../../formula/evaluate/vector.ts';
import type { Fault } from '../../formula/fault.ts';
import { LaterWork } from './later-work.ts';
import type { LastWorking, NodeSpec, NodeValue } from './node-spec.ts';
import { neededFor, type Sight, slowNodes } from './sight.ts';

/** Turns of the queue in which a chain of nodes is expected to finish; longer ones go on in further rounds. */
const TURNS = 500;
/** Turns that the runtime takes for each node of a chain, and some more. */
const TURNS_PER_NODE = 20;

interface Held {
  readonly variable: Variable;
  spec: NodeSpec;
  /** Of this very definition: what it was worked out from, and what came of it. */
  last: { readonly inputs: readonly NodeValue[]; readonly result: NodeValue | Promise<NodeValue> } | null;
}

/**
 * The running graph: one @observablehq/runtime variable per named cell and per column. Only what an edit
 * redefines, and what hangs on it, is computed again; the runtime drops results that a newer edit superseded.
 */
export class Graph {
  private readonly runtime: Runtime;
  private readonly module: ReturnType<Runtime['module']>;
  private readonly held = new Map<string, Held>();
  private readonly watches = new Map<string, object>();
  private readonly values = new Map<string, NodeValue>();
  private readonly pending = new Set<string>();
  /** Nodes that listeners were told to be waiting for; when they are done that is news, whatever came of it. */
  private readonly toldPending = new Set<string>();
  private changed = new Set<string>();
  private computed: string[] = [];
  private idle: Promise<void> | null = null;
  private redefined = false;
  private untold: { readonly promise: Promise<void>; readonly resolve: () => void } | null = null;
  private heldVersion = 0;
  /** Ends the wait for a node that takes its time. */
  private wake: () => void = () => undefined;
  private readonly onSettled: (changed: ReadonlySet<string>, isPartial: boolean) => void;
  /** Nothing is worked out before this; null once it has come. */
  private start: Promise<void> | null;
  private readonly later = new LaterWork();
  private heldSight: Sight | null = null;
  /** Nodes that nobody waits for; null after a change of what reads what. */
  private slow: ReadonlySet<string> | null = null;

  /**
   * @param onSettled is told the nodes with a new state; partial while only what is seen has been worked out
   * @param start nothing is worked out before it resolves, so that a page can be painted first; absent for at once
   */
  constructor(
    onSettled: (changed: ReadonlySet<string>, isPartial: boolean) => void,
    start: Promise<void> | null = null,
  ) {
    this.onSettled = onSettled;
    this.start = start;
    // Left to itself the runtime looks unknown names up on globalThis; a slip must fail, not find `fetch`.
    this.runtime = new Runtime({}, (name) => {
      throw new ReferenceError(`no figure is called ${name}`);
    });
    // It also waits for an animation frame, which hidden tabs and workers do not get: compute in a microtask,
    // within the task of the edit, so that the same frame paints the result.
    const { runtime } = this;
    this.runtime._computeSoon = () => (this.start ?? Promise.resolve()).then(() => runtime._computeNow());
    this.module = this.runtime.module();
  }

  /**
   * Ends when listeners are told what came of the edits that are being worked out, within the task of the
   * edit; null when nothing is, while only a node that takes its time (a plan) is waited for, and before the start.
   */
  get telling(): Promise<void> | null {
    return this.start === null ? (this.untold?.promise ?? null) : null;
  }

  /** Goes up whenever a node has another value: what was gathered from all of them is old then. */
  get version(): number {
    return this.heldVersion;
  }

  /**
   * From now on what is seen is worked out and told first, and the rest when that is painted, in short
   * stretches; null for all at once, as where there is no page.
   */
  useSight(sight: Sight | null): void {
    this.heldSight = sight;
  }

  /** Makes the graph hold exactly these nodes; those whose stamp and reads are as before stay untouched. */
  take(specs: ReadonlyMap<string, NodeSpec>): void {
    // On the page nobody asks what was computed: of all but the last edit it would be kept for nothing.
    this.computed = [];
    for (const [node, held] of this.held) {
      if (specs.has(node)) continue;
      held.variable.delete();
      this.later.overtake(node);
      this.slow = null;
      this.held.delete(node);
      this.watches.delete(node);
      this.values.delete(node);
      this.pending.delete(node);
      this.toldPending.delete(node);
      this.changed.add(node);
    }
    for (const spec of specs.values()) {
      const held = this.held.get(spec.node);
      if (held === undefined) this.define(spec, this.module.variable(this.observer(spec.node)));
      else if (held.spec.stamp !== spec.stamp || !sameList(held.spec.reads, spec.reads))
        this.define(spec, held.variable);
      else held.spec = spec;
    }
    this.heldVersion += 1;
    this.begin();
  }

  /** Sees to it that what was redefined is worked out and told. */
  private begin(): void {
    this.redefined = true;
    if (this.start === null) this.putOff();
    this.untold ??= withResolver();
    // It may be waiting for a plan only.
    this.wake();
    this.idle ??= this.compute();
  }

  /** What is not seen has to wait for what is. */
  private putOff(): void {
    if (this.heldSight === null) return;
    this.slow ??= slowNodes([...this.held.values()].map(({ spec }) => spec));
    this.later.putOffAllBut(neededFor(this.heldSight.seen(), (node) => this.held.get(node)?.spec, this.slow));
  }

  /** Works a node out once more from what it reads, as nothing of it is known: an answer from outside may be another. */
  again(node: string): void {
    const held = this.held.get(node);
    if (held === undefined) return;
    this.define(held.spec, held.variable);
    this.begin();
  }

  private define(spec: NodeSpec, variable: Variable): void {
    const { node } = spec;
    if (!sameList(this.held.get(node)?.spec.reads ?? [], spec.reads) || spec.isSlow) this.slow = null;
    const held: Held = { variable, spec, last: null };
    this.held.set(node, held);
    variable.define(name(node), spec.reads.map(name), (...inputs: unknown[]) =>
      this.work(held, inputs as NodeValue[]),
    );
  }

  /**
   * A node's figures from what it reads. Those that come out as they were stay the very same object, and what
   * reads them is then not worked out again.
   */
  private work(held: Held, inputs: readonly NodeValue[]): NodeValue | Promise<NodeValue> {
    const { last, spec } = held;
    if (last !== null && sameList(last.inputs, inputs)) return last.result;
    return this.later.isPutOff(spec.node) ? this.workLater(held, inputs) : this.workNow(held, inputs);
  }

  private async workLater(held: Held, inputs: readonly NodeValue[]): Promise<NodeValue> {
    const { node } = held.spec;
    do {
      // What is given back by one that is overtaken, the runtime drops.
      if (!(await this.later.turnOf(node))) return waitsFor(node);
    } while (this.later.isPutOff(node));
    return this.workNow(held, inputs);
  }

  private workNow(held: Held, inputs: readonly NodeValue[]): NodeValue | Promise<NodeValue> {
    const { last, spec } = held;
    this.computed.push(spec.node);
    const before = last === null || last.result instanceof Promise ? undefined : last;
    const worked = spec.compute(inputs, before as LastWorking | undefined);
    const result = worked instanceof Promise ? worked : this.asBefore(spec.node, worked);
    held.last = { inputs, result };
    return result;
  }

  /** The column that a node has already, if the new one has the same figures. */
  private asBefore(node: string, worked: NodeValue): NodeValue {
    const held = this.values.get(node);
    if (held === undefined || held === worked || !isColumn(held) || !isColumn(worked)) return worked;
    return isSameColumn(held, worked) ? held : worked;
  }

  private observer(node: string): {
    pending(): void;
    fulfilled(value: unknown): void;
    rejected(error: unknown): void;
  } {
    // The runtime still tells of a variable that was just taken out, and another may have its name by then.
    const watch = {};
    this.watches.set(node, watch);
    const isWatched = (): boolean => this.watches.get(node) === watch;
    const done = (value: NodeValue): void => {
      if (!isWatched()) return;
      const isNews = this.toldPending.delete(node) || this.values.get(node) !== value;
      this.pending.delete(node);
      if (isNews) {
        this.heldVersion += 1;
        this.values.set(node, value);
        this.changed.add(node);
      }
      this.wake();
    };
    return {
      pending: () => {
        if (!isWatched()) return;
        this.later.overtake(node);
        const held = this.held.get(node);
        if (held?.spec.overtake?.()) held.last = null;
        this.pending.add(node);
      },
      fulfilled: (value) => done(value as NodeValue),
      rejected: (error) => done(unexpected(node, error)),
    };
  }

  private async compute(): Promise<void> {
    if (this.start !== null) {
      await this.start;
      this.start = null;
      this.putOff();
    }
    do {
      this.redefined = false;
      await this.runtime._compute();
      if (this.heldSight !== null) await this.inSightFirst(this.heldSight);
      if (!this.redefined) await this.drained();
    } while (this.redefined);
    this.idle = null;
    this.tell([]);
  }

  /** Tells of what is seen as soon as it is worked out, and works out the rest when that is painted. */
  private async inSightFirst(sight: Sight): Promise<void> {
    const { first } = this.later;
    if (first === null) return;
    const most = TURNS + TURNS_PER_NODE * first.size;
    for (let turn = 0; turn < most && this.isPendingAmong(first) && !this.redefined; turn++)
      await Promise.resolve();
    if (this.redefined) return;
    this.tell([], true);
    await this.unlessEdited(sight.painted());
    while (!this.redefined) {
      this.later.stretch();
      await this.unlessEdited(sight.breath());
      if (!this.later.isWaiting) break;
    }
    if (!this.redefined) this.later.end();
  }

  /** Waits, but not longer than until the next edit: what is seen of that comes first. */
  private unlessEdited(wait: Promise<void>): Promise<void> {
    return new Promise((resolve) => {
      this.wake = () => {
        if (this.redefined) resolve();
      };
      void wait.then(resolve);
    });
  }

  private isPendingAmong(nodes: ReadonlySet<string>): boolean {
    for (const node of this.pending) if (nodes.has(node)) return true;
    return false;
  }

  /**
   * Waits until nothing is pending. Most nodes finish within a few turns of the queue; where one takes its
   * time (a plan), listeners are told of the others meanwhile. Ends early for an edit.
   */
  private async drained(): Promise<void> {
    for (let turn = 0; this.pending.size > 0 && turn < TURNS; turn++) await Promise.resolve();
    while (this.pending.size > 0 && !this.redefined) {
      this.tell(this.pending);
      await new Promise<void>((resolve) => {
        this.wake = resolve;
      });
      for (let turn = 0; this.pending.size > 0 && turn < TURNS; turn++) await Promise.resolve();
    }
  }

  /** @param isPartial only what is seen has been worked out: the rest is told when that is painted */
  private tell(alsoWorking: Iterable<string>, isPartial = false): void {
    const changed = new Set(this.changed);
    for (const node of alsoWorking) {
      changed.add(node);
      this.toldPending.add(node);
    }
    this.changed = new Set();
    // An edit that a listener makes is told of in its own turn.
    const { untold } = this;
    this.untold = null;
    if (!isPartial || changed.size > 0) this.onSettled(changed, isPartial);
    untold?.resolve();
  }

  /** Resolves when nothing is left to compute. */
  async settled(): Promise<void> {
    while (this.idle !== null) await this.idle;
  }

  value(node: string): NodeValue | undefined {
    return this.values.get(node);
  }

  /** Whether a node is being worked out. Who was told so is told when it is done, whatever came of it. */
  isPending(node: string): boolean {
    if (this.pending.has(node)) {
      this.toldPending.add(node);
      return true;
    }
    return this.held.has(node) && !this.values.has(node);
  }

  spec(node: string): NodeSpec | undefined {
    return this.held.get(node)?.spec;
  }

  /** Nodes computed since the last call or edit, in order. */
  takeComputed(): readonly string[] {
    const computed = this.computed;
    this.computed = [];
    return computed;
  }

  dispose(): void {
    this.runtime.dispose();
    this.held.clear();
    this.watches.clear();
    this.values.clear();
    this.pending.clear();
    this.wake();
    this.untold?.resolve();
  }
}

function withResolver(): { promise: Promise<void>; resolve: () => void } {
  let resolve = (): void => undefined;
  const promise = new Promise<void>((done) => {
    resolve = done;
  });
  return { promise, resolve };
}

/** A sign before the name keeps nodes apart from the runtime's own words (invalidation, visibility). */
const name = (node: string): string => `=${node}`;

function sameList(a: readonly unknown[], b: readonly unknown[]): boolean {
  return a.length === b.length && a.every((item, i) => item === b[i]);
}

const isColumn = (value: NodeValue): value is Column => 'values' in value;

function unexpected(node: string, error: unknown): Fault {
  const text = error instanceof Error ? error.message : String(error);
  if (/circular/.test(text)) {
    return {
      kind: 'circle',
      message: `${node} needs itself, by way of the figures it reads.`,
      mend: 'Let one of them be entered.',
      place: { node },
    };
  }
  return {
    kind: 'domain',
    message: `${node} could not be worked out: ${text}.`,
    mend: 'Undo the last edit; if it stays, write the formula another way.',
    place: { node },
  };
}
