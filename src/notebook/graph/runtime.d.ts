declare module '@observablehq/runtime' {
  export interface Observer {
    pending?(): void;
    fulfilled?(value: unknown, name?: string): void;
    rejected?(error: unknown, name?: string): void;
  }
  export class Variable {
    define(name: string, inputs: readonly string[], definition: (...inputs: never[]) => unknown): this;
    delete(): this;
  }
  export class Module {
    variable(observer?: Observer): Variable;
  }
  export class Runtime {
    constructor(builtins?: Record<string, unknown>, global?: (name: string) => unknown);
    module(): Module;
    dispose(): void;
    /** Schedules a computation; the package marks it writable so that a host can schedule in its own way. */
    _computeSoon: () => Promise<void>;
    readonly _computeNow: () => Promise<void>;
    readonly _compute: () => Promise<void>;
  }
}
