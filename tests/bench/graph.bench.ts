import { Runtime } from '@observablehq/runtime';
import { Graph } from '../../src/notebook/graph/graph.ts';
import type { NodeSpec, NodeValue } from '../../src/notebook/graph/node-spec.ts';
import { type RatioResult, ratio } from './support.ts';

/** A fan of chains: every edit of the first figure recomputes them all. */
const CHAINS = 20;
const LINKS = 10;

const figure = (value: number): NodeValue =>
  ({ kind: 'number', values: Float64Array.of(value), faults: null }) as NodeValue;

const firstOf = (held: NodeValue): number => (held as { values: Float64Array }).values[0] as number;

function specs(first: number): ReadonlyMap<string, NodeSpec> {
  const made = new Map<string, NodeSpec>();
  const add = (
    node: string,
    reads: readonly string[],
    stamp: unknown,
    of: (inputs: number[]) => number,
  ): void => {
    made.set(node, {
      node,
      reads,
      stamp,
      compute: (inputs: readonly NodeValue[]) => figure(of(inputs.map(firstOf))),
    } as NodeSpec);
  };
  add('first', [], first, () => first);
  for (let chain = 0; chain < CHAINS; chain++)
    for (let link = 0; link < LINKS; link++)
      add(
        `n${chain}_${link}`,
        [link === 0 ? 'first' : `n${chain}_${link - 1}`],
        link,
        ([before = 0]) => before + 1,
      );
  return made;
}

function ours(): () => Promise<unknown> {
  const graph = new Graph(() => undefined);
  let turn = 0;
  return async () => {
    turn++;
    graph.take(specs(turn));
    await graph.settled();
    return graph.value(`n${CHAINS - 1}_${LINKS - 1}`);
  };
}

function bare(): () => Promise<unknown> {
  const runtime = new Runtime();
  // It waits for an animation frame, which Node has none of.
  Object.assign(runtime, {
    _computeSoon: () =>
      Promise.resolve().then(() => (runtime as unknown as { _computeNow(): void })._computeNow()),
  });
  const module = runtime.module();
  const first = module.variable().define('first', [], () => figure(0));
  let arrived: (value: unknown) => void = () => undefined;
  for (let chain = 0; chain < CHAINS; chain++)
    for (let link = 0; link < LINKS; link++) {
      const isLast = chain === CHAINS - 1 && link === LINKS - 1;
      module
        .variable({ fulfilled: (value: unknown) => isLast && arrived(value) })
        .define(`n${chain}_${link}`, [link === 0 ? 'first' : `n${chain}_${link - 1}`], (before: NodeValue) =>
          figure(firstOf(before) + 1),
        );
    }
  let turn = 0;
  return () => {
    turn++;
    const held = turn;
    const next = new Promise((resolve) => {
      arrived = resolve;
    });
    first.define('first', [], () => figure(held));
    return next;
  };
}

/** One edit that recomputes 200 figures, through our graph and through the bare runtime under it. */
export async function bench(): Promise<readonly RatioResult[]> {
  return [await ratio('graph: an edit of 200 linked figures, against the bare runtime', ours(), bare())];
}
