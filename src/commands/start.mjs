// npm start: installs and builds what is missing, then serves the app on this machine.
// Only built-in modules before `install` has run: on a fresh clone nothing else is there. And of those only
// what Node 14 has under the same name: an import that fails would come before the sentence about Node.
import { requireNode } from './node-version.mjs';
import { buildWhenStale, install } from './prepare.mjs';
import { distFolder, giveUp } from './project.mjs';
import { serve } from './serve.mjs';

const USUAL_PORT = 4173;

requireNode();
const port = readPort();
await install();
await buildWhenStale();

// A port that was asked for is kept or refused, because notebooks are kept by the browser per address.
const server = await serve(distFolder, { port: port ?? USUAL_PORT, nextFree: port === null }).catch((error) =>
  giveUp(error.message),
);
if (port === null && server.port !== USUAL_PORT) {
  console.log(
    `Port ${USUAL_PORT} is taken, so this is another address; notebooks kept at the usual one do not show here.`,
  );
}
console.log('Sparewell is ready. Open this address in a browser; Ctrl+C ends it.');
console.log(server.url);

for (const signal of ['SIGINT', 'SIGTERM']) {
  process.once(signal, () => {
    server.close().finally(() => process.exit(0));
  });
}

/** @returns {number | null} the port asked for with --port, null when none was */
function readPort() {
  const asked = process.argv.slice(2).join('=');
  if (asked === '') return null;
  const digits = /^--port=(\d{1,5})$/.exec(asked)?.[1];
  return digits === undefined
    ? giveUp('npm start takes one option, the port: npm start -- --port 5000')
    : Number(digits);
}
