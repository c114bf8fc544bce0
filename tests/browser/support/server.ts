import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { distFolder } from '../../../src/commands/project.mjs';
import { serve } from '../../../src/commands/serve.mjs';

/** A running server. Two browsers opened on the same one share an address, and so what the page has saved. */
export interface AppServer {
  readonly url: string;
  close(): Promise<void>;
}

/**
 * Serves the built app, or another folder, at a free port.
 * @throws when the app has not been built
 */
export async function serveApp(folder: string = distFolder): Promise<AppServer> {
  if (!existsSync(join(folder, 'index.html'))) {
    throw new Error(`There is no index.html in ${folder}: run \`npm run build\` first.`);
  }
  return serve(folder);
}
