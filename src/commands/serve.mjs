import { createServer } from 'node:http';
import { readServed } from './served-file.mjs';

/**
 * The page may load only its own files, run no inline script, and talk to nobody. Sent with every response,
 * because a policy in the page's own head does not reach workers.
 */
export const CONTENT_SECURITY_POLICY = [
  "default-src 'none'",
  "script-src 'self' 'wasm-unsafe-eval'",
  "style-src 'self'",
  "img-src 'self' data: blob:",
  "font-src 'self'",
  "connect-src 'self'",
  "worker-src 'self'",
  "manifest-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
  "frame-ancestors 'none'",
  "require-trusted-types-for 'script'",
  'trusted-types lit-html sparewell',
].join('; ');

/** On every response, whatever its status. */
export const HEADERS_ON_ALL = {
  'Content-Security-Policy': CONTENT_SECURITY_POLICY,
  'X-Content-Type-Options': 'nosniff',
  'Referrer-Policy': 'no-referrer',
  'Cross-Origin-Opener-Policy': 'same-origin',
};

/** Ports tried, one after another, when the first is taken. */
const PORTS_TRIED = 20;

/**
 * Serves a folder of built files on this machine alone.
 * @param {string} folder whole path of the folder
 * @param {{ port?: number, nextFree?: boolean, read?: typeof readServed }} [options] port 0 (the default) is any
 *   free one; with `nextFree` the ports after it are tried while it is taken; `read` finds what is answered
 * @returns {Promise<{ url: string, port: number, close: () => Promise<void> }>} rejects with a sentence when
 *   the port is taken, or not a port.
 *   serve('/home/ada/sparewell/dist', { port: 4173 }) answers at http://127.0.0.1:4173/
 */
export async function serve(folder, options = {}) {
  const server = createServer((request, response) => {
    answer(folder, options.read ?? readServed, request, response).catch(() => {
      if (!response.headersSent) sendSentence(response, 500, 'The file could not be read.', request.method);
      else response.destroy();
    });
  });
  const port = await listen(server, options.port ?? 0, options.nextFree ? PORTS_TRIED : 1);
  return { url: `http://127.0.0.1:${port}/`, port, close: () => close(server) };
}

/**
 * @param {string} folder
 * @param {typeof readServed} read
 * @param {import('node:http').IncomingMessage} request
 * @param {import('node:http').ServerResponse} response
 */
async function answer(folder, read, request, response) {
  const method = request.method ?? 'GET';
  if (method !== 'GET' && method !== 'HEAD') {
    response.setHeader('Allow', 'GET, HEAD');
    return sendSentence(response, 405, 'Files here can only be read.', method);
  }
  const gzip = acceptsGzip(request.headers['accept-encoding']);
  const file = await read(folder, request.url ?? '/', gzip);
  if ('trouble' in file) return sendSentence(response, file.status, file.trouble, method);
  const headers = { ...HEADERS_ON_ALL, ...file.headers };
  if (matchesTag(request.headers['if-none-match'], file.headers.ETag)) {
    response.writeHead(304, headers).end();
    return;
  }
  response.writeHead(200, { ...headers, 'Content-Length': file.body.length });
  response.end(method === 'HEAD' ? undefined : file.body);
}

/**
 * @param {import('node:http').ServerResponse} response
 * @param {number} status
 * @param {string} sentence
 * @param {string | undefined} method
 */
function sendSentence(response, status, sentence, method) {
  const body = Buffer.from(`${sentence}\n`);
  response.writeHead(status, {
    ...HEADERS_ON_ALL,
    'Content-Type': 'text/plain; charset=utf-8',
    'Content-Length': body.length,
    'Cache-Control': 'no-store',
  });
  response.end(method === 'HEAD' ? undefined : body);
}

/**
 * Whether a browser takes gzip. `gzip;q=0` is a no.
 * @param {string | undefined} acceptEncoding
 */
export function acceptsGzip(acceptEncoding) {
  for (const coding of (acceptEncoding ?? '').split(',')) {
    const [name = '', ...parameters] = coding.split(';').map((part) => part.trim().toLowerCase());
    if (name === 'gzip') return !parameters.some((part) => /^q=0(\.0*)?$/.test(part));
  }
  return false;
}

/**
 * @param {string | undefined} ifNoneMatch
 * @param {string} tag
 */
function matchesTag(ifNoneMatch, tag) {
  return (ifNoneMatch ?? '').split(',').some((part) => part.trim().replace(/^W\//, '') === tag);
}

/**
 * @param {import('node:http').Server} server
 * @param {number} firstPort
 * @param {number} tries
 * @returns {Promise<number>} the port it got
 */
async function listen(server, firstPort, tries) {
  if (!Number.isInteger(firstPort) || firstPort < 0 || firstPort > 65535) {
    throw new Error('A port is a whole number from 0 to 65535.');
  }
  for (let port = firstPort; port < firstPort + tries && port <= 65535; port += 1) {
    if (await tryPort(server, port)) {
      const address = server.address();
      return typeof address === 'object' && address !== null ? address.port : port;
    }
  }
  const last = firstPort + tries - 1;
  throw new Error(
    tries === 1
      ? `Port ${firstPort} cannot be had (taken, or not allowed): choose another with --port.`
      : `Ports ${firstPort} to ${last} cannot be had (taken, or not allowed): choose another with --port.`,
  );
}

/**
 * @param {import('node:http').Server} server
 * @param {number} port
 * @returns {Promise<boolean>} false when the port is taken or not allowed
 */
function tryPort(server, port) {
  return new Promise((resolve, reject) => {
    /** @param {NodeJS.ErrnoException} error */
    const failed = (error) => {
      if (error.code === 'EADDRINUSE' || error.code === 'EACCES') resolve(false);
      else reject(error);
    };
    server.once('error', failed);
    server.listen(port, '127.0.0.1', () => {
      server.off('error', failed);
      resolve(true);
    });
  });
}

/**
 * @param {import('node:http').Server} server
 * @returns {Promise<void>}
 */
function close(server) {
  return new Promise((resolve, reject) => {
    server.close((error) => (error ? reject(error) : resolve()));
    // A browser keeps its connections open for a while; closing must not wait for that.
    server.closeAllConnections();
  });
}
