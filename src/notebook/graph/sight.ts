import type { NodeSpec } from './node-spec.ts';

/** What a page tells of itself, so that what is seen is worked out first. */
export interface Sight {
  /** Nodes of the figures that can be seen now. */
  seen(): Iterable<string>;
  /** Ends when the frame under way is on the screen. */
  painted(): Promise<void>;
  /** Ends when the page has seen to what came in meanwhile. */
  breath(): Promise<void>;
}

/** Nodes that hang on one that takes its time (a plan): nothing can be said of them within the frame of an edit. */
export function slowNodes(specs: Iterable<NodeSpec>): ReadonlySet<string> {
  const readers = new Map<string, string[]>();
  const slow = new Set<string>();
  for (const { node, reads, isSlow } of specs) {
    if (isSlow) slow.add(node);
    for (const read of reads) {
      const of = readers.get(read);
      if (of === undefined) readers.set(read, [node]);
      else of.push(node);
    }
  }
  for (const node of slow) for (const reader of readers.get(node) ?? []) slow.add(reader);
  return slow;
}

/** The nodes that are seen, and all that they are worked out from; of the slow ones nothing. */
export function neededFor(
  seen: Iterable<string>,
  specOf: (node: string) => NodeSpec | undefined,
  slow: ReadonlySet<string>,
): ReadonlySet<string> {
  const needed = new Set<string>();
  for (const node of seen) if (!slow.has(node)) needed.add(node);
  // What a node that is not slow reads is not slow either.
  for (const node of needed) for (const read of specOf(node)?.reads ?? []) needed.add(read);
  return needed;
}
