/** What a hostile text would reach for: names on the globals, prototypes, the network, storage, evaluation. */
const PROTOTYPES = [Object.prototype, Array.prototype, Function.prototype, String.prototype, Map.prototype];

const shape = (): string =>
  [globalThis, ...PROTOTYPES].map((holder) => Reflect.ownKeys(holder).length).join(' ');

/** Watches the globals while strangers' texts are read. */
export class Canary {
  readonly #touched: string[] = [];
  readonly #restore: (() => void)[] = [];
  readonly #shape: string;

  constructor() {
    for (const name of [
      'fetch',
      'XMLHttpRequest',
      'WebSocket',
      'indexedDB',
      'localStorage',
      'canary',
      'eval',
    ])
      this.#trap(name);
    this.#shape = shape();
  }

  #trap(name: string): void {
    const before = Object.getOwnPropertyDescriptor(globalThis, name);
    Object.defineProperty(globalThis, name, {
      configurable: true,
      get: () => {
        this.#touched.push(name);
        return undefined;
      },
      set: () => {
        this.#touched.push(name);
      },
    });
    this.#restore.push(() => {
      if (before) Object.defineProperty(globalThis, name, before);
      else Reflect.deleteProperty(globalThis, name);
    });
  }

  /** What was touched or changed since the beginning; '' for nothing. */
  get song(): string {
    if (this.#touched.length > 0) return `touched ${this.#touched.join(', ')}`;
    if (shape() !== this.#shape) return 'the globals or their prototypes have changed';
    return (Object.prototype as { polluted?: unknown }).polluted === undefined ? '' : 'polluted';
  }

  leave(): void {
    for (const restore of this.#restore) restore();
  }
}
