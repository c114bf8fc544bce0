import type { Highs, InitOptions } from 'highs';

/**
 * Where the solver's machine code comes from, when not from beside its own script. By its address alone: the
 * package's 1.15.3 declares ways to hand over the code itself, and does not read them.
 */
export type HighsSource = Pick<InitOptions, 'locateFile'>;

let loaded: Promise<Highs> | null = null;

/**
 * HiGHS, loaded when first asked for (3.5 MB of WebAssembly) and then kept. A load that failed is forgotten,
 * so that the next call tries again.
 * @param source used by the first call alone
 */
export function loadHighs(source: HighsSource = {}): Promise<Highs> {
  loaded ??= import('highs')
    .then(({ default: load }) => load(source))
    .catch((error: unknown) => {
      loaded = null;
      throw new Error('The solver could not be loaded: the plan cannot be worked out until it is.', {
        cause: error,
      });
    });
  return loaded;
}
