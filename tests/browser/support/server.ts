import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { distFolder } from '../../../src/commands/project.mjs';
import { serve } from '../../../src/commands/serve.mjs';
import { readServed } from '../../../src/commands/served-file.mjs';
import { EXAMPLE } from './without-plan.ts';

/** A running server. Two browsers opened on the same one share an address, and so what the page has saved. */
export interface AppServer {
  readonly url: string;
  /** Answers with another worked example from now on, or with the folder's own (null). */
  giveExample(text: string | null): void;
  close(): Promise<void>;
}

let ofBuiltApp: Promise<AppServer> | null = null;

/**
 * Serves another folder at a free port, or the built app: that at one address for all tests of a worker, so that
 * a page that is used again has its scripts at hand. It ends with the worker.
 * @throws when the app has not been built
 */
export function serveApp(folder?: string): Promise<AppServer> {
  if (folder !== undefined) return start(folder);
  ofBuiltApp ??= start(distFolder).then((server) => ({ ...server, close: async () => undefined }));
  return ofBuiltApp;
}

async function start(folder: string): Promise<AppServer> {
  if (!existsSync(join(folder, 'index.html'))) {
    throw new Error(`There is no index.html in ${folder}: run \`npm run build\` first.`);
  }
  let example: string | null = null;
  const read: typeof readServed = async (from, address, takesGzip) => {
    if (example === null || address !== `/${EXAMPLE}`) return readServed(from, address, takesGzip);
    const headers = { 'Content-Type': 'application/json', 'Cache-Control': 'no-store', ETag: '"given"' };
    return { headers, body: Buffer.from(example) };
  };
  const { url, close } = await serve(folder, { read });
  const giveExample = (text: string | null): void => {
    example = text;
  };
  return { url, close, giveExample };
}
