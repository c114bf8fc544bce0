import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { distFolder } from '../../../src/commands/project.mjs';
import { type OpenAppOptions, type OpenedApp, withApp } from './open-app.ts';
import type { AppServer } from './server.ts';

const EXAMPLE = 'worked-example.sparewell.json';
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
  const notebook = JSON.parse(await readFile(join(distFolder, EXAMPLE), 'utf8')) as Written;
  const cells = notebook.cells
    .filter(({ name }) => KEPT.has(name))
    .map((cell) => ({ ...cell, columns: cell.columns?.filter(({ kind }) => kind !== 'worked') }));
  const body = JSON.stringify({ ...notebook, cells });
  await withApp({ ...options, path: 'about:blank' }, async (app) => {
    await app.context.route(`**/${EXAMPLE}`, (route) =>
      route.fulfill({ status: 200, contentType: 'application/json', body }),
    );
    await app.page.goto(options.server.url);
    await use(app);
  });
}
