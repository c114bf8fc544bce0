import { type OpenAppOptions, type OpenedApp, withApp } from './open-app.ts';
import type { AppServer } from './server.ts';

const KEPT: ReadonlySet<unknown> = new Set(['route', 'wear', 'suppliers', 'rates_of_exchange', 'prices']);

interface Written {
  readonly cells: readonly {
    readonly name?: string;
    readonly columns?: readonly { readonly kind: string }[];
  }[];
}

/**
 * Opens the app on the tables of the worked example that files go into, with what was written into them by hand
 * and nothing that is worked out: the page is there in a moment.
 */
export async function withTablesOnly(
  options: OpenAppOptions & { readonly server: AppServer },
  use: (app: OpenedApp) => Promise<void>,
): Promise<void> {
  await withApp({ ...options, example: tablesOnly }, use);
}

function tablesOnly(text: string): string {
  const notebook = JSON.parse(text) as Written;
  const cells = notebook.cells
    .filter(({ name }) => KEPT.has(name))
    .map((cell) => ({ ...cell, columns: cell.columns?.filter(({ kind }) => kind !== 'worked') }));
  return JSON.stringify({ ...notebook, cells });
}
