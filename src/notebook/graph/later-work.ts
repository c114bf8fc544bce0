/** Longest that nodes which were put off are worked out at a stretch, ms: half a frame. */
const STRETCH_MS = 8;

/**
 * Nodes that have to wait while what is seen is worked out and painted; after that they are let go in short
 * stretches, so that an edit made meanwhile is not held up by them.
 */
export class LaterWork {
  private readonly waiting = new Map<string, (isStillWanted: boolean) => void>();
  private needed: ReadonlySet<string> | null = null;
  private stretchEndsMs = Number.POSITIVE_INFINITY;

  /** From now on only these nodes are worked out, until the first stretch. */
  putOffAllBut(needed: ReadonlySet<string>): void {
    this.needed = needed;
    for (const [node, resolve] of this.waiting) {
      if (!needed.has(node)) continue;
      this.waiting.delete(node);
      resolve(true);
    }
  }

  /** What is worked out first; null when nothing is put off. */
  get first(): ReadonlySet<string> | null {
    return this.needed;
  }

  get isWaiting(): boolean {
    return this.waiting.size > 0;
  }

  isPutOff(node: string): boolean {
    return this.needed === null ? Date.now() > this.stretchEndsMs : !this.needed.has(node);
  }

  /** Ends with true when the node may be worked out, and with false when it is overtaken by newer figures. */
  turnOf(node: string): Promise<boolean> {
    return new Promise((resolve) => this.waiting.set(node, resolve));
  }

  /** The node is worked out from newer figures, or is gone. */
  overtake(node: string): void {
    const resolve = this.waiting.get(node);
    this.waiting.delete(node);
    resolve?.(false);
  }

  /** Lets go those that wait; what does not fit into the stretch waits again. */
  stretch(): void {
    this.needed = null;
    this.stretchEndsMs = Date.now() + STRETCH_MS;
    const waiting = [...this.waiting.values()];
    this.waiting.clear();
    for (const resolve of waiting) resolve(true);
  }

  /** Nothing is put off any more. */
  end(): void {
    this.needed = null;
    this.stretchEndsMs = Number.POSITIVE_INFINITY;
  }
}
