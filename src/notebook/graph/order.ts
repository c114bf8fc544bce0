/**
 * Order in which nodes can be worked out, and the circles that cannot. Tarjan's strongly connected
 * components (1972), written without recursion so that a long chain of formulas does not end the stack.
 */
export interface Order {
  /** Every node, those read before those that read. */
  readonly sorted: readonly string[];
  /** Nodes that need themselves: for each, the whole circle in reading order. */
  readonly circles: ReadonlyMap<string, readonly string[]>;
}

interface Visit {
  readonly node: string;
  readonly reads: readonly string[];
  next: number;
}

export function orderNodes(readsOf: ReadonlyMap<string, readonly string[]>): Order {
  const place = new Map<string, number>();
  const low = new Map<string, number>();
  const stack: string[] = [];
  const onStack = new Set<string>();
  const sorted: string[] = [];
  const circles = new Map<string, readonly string[]>();

  const enter = (node: string): Visit => {
    place.set(node, place.size);
    low.set(node, place.get(node) as number);
    stack.push(node);
    onStack.add(node);
    return { node, reads: (readsOf.get(node) ?? []).filter((read) => readsOf.has(read)), next: 0 };
  };
  const leave = (node: string): void => {
    if (low.get(node) !== place.get(node)) return;
    const component: string[] = [];
    let top: string;
    do {
      top = stack.pop() as string;
      onStack.delete(top);
      component.push(top);
    } while (top !== node);
    sorted.push(...component);
    if (component.length > 1 || readsOf.get(node)?.includes(node)) {
      const round = circleOf(component, readsOf);
      for (const member of component) circles.set(member, round);
    }
  };

  for (const root of readsOf.keys()) {
    if (place.has(root)) continue;
    const visits = [enter(root)];
    while (visits.length > 0) {
      const visit = visits[visits.length - 1] as Visit;
      const read = visit.reads[visit.next++];
      if (read === undefined) {
        visits.pop();
        leave(visit.node);
        const above = visits[visits.length - 1];
        if (above !== undefined) lower(low, above.node, low.get(visit.node) as number);
      } else if (!place.has(read)) visits.push(enter(read));
      else if (onStack.has(read)) lower(low, visit.node, place.get(read) as number);
    }
  }
  return { sorted, circles };
}

function lower(low: Map<string, number>, node: string, to: number): void {
  low.set(node, Math.min(low.get(node) as number, to));
}

/** One way round a component, for the sentence: a reads b, b reads c, c reads a. */
function circleOf(
  component: readonly string[],
  readsOf: ReadonlyMap<string, readonly string[]>,
): readonly string[] {
  const members = new Set(component);
  const path: string[] = [];
  const at = new Map<string, number>();
  let node = component[component.length - 1] as string;
  while (!at.has(node)) {
    at.set(node, path.length);
    path.push(node);
    node = (readsOf.get(node) ?? []).find((read) => members.has(read)) as string;
  }
  return path.slice(at.get(node));
}
