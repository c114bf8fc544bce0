import { createHash } from 'node:crypto';
import { readFile, realpath, stat } from 'node:fs/promises';
import { basename, extname, join, sep } from 'node:path';
import { promisify } from 'node:util';
import { gzip } from 'node:zlib';

const gzipped = promisify(gzip);

/** @type {Readonly<Record<string, string>>} */
const CONTENT_TYPES = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.mjs': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.csv': 'text/csv; charset=utf-8',
  '.txt': 'text/plain; charset=utf-8',
  '.md': 'text/markdown; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.map': 'application/json; charset=utf-8',
  '.webmanifest': 'application/manifest+json; charset=utf-8',
  '.svg': 'image/svg+xml; charset=utf-8',
  '.wasm': 'application/wasm',
  '.png': 'image/png',
  '.jpg': 'image/jpeg',
  '.webp': 'image/webp',
  '.ico': 'image/x-icon',
  '.woff2': 'font/woff2',
};

/** Already packed; gzip would only cost time. */
const PACKED = new Set(['.png', '.jpg', '.webp', '.ico', '.woff2']);

/** The build puts a hash of the content into these names, so what stands under one never changes. */
const HASHED_NAME = /-[\w-]{8}\.\w+(\.map)?$/;

/**
 * @typedef {{ headers: Record<string, string> & { ETag: string }, body: Buffer }} ServedFile
 * @typedef {{ status: number, trouble: string }} NotServed a status and one sentence
 */

/**
 * Reads the file that an address asks for.
 * @param {string} folder whole path of the folder that is served; nothing outside it is ever read
 * @param {string} address path of the request, e.g. '/assets/main-3fKq2_aZ.js?x=1'
 * @param {boolean} takesGzip whether the body may be gzipped
 * @returns {Promise<ServedFile | NotServed>}
 */
export async function readServed(folder, address, takesGzip) {
  const asked = readAddress(address);
  if (asked === null) return { status: 400, trouble: 'This address cannot be read.' };
  const nothing = { status: 404, trouble: `There is no file at ${asked}.` };
  if (asked.split('/').some((part) => part.startsWith('.'))) return nothing;
  const path = await insideFolder(folder, asked.endsWith('/') ? `${asked}index.html` : asked);
  if (path === null) return nothing;
  return describe(path, await readFile(path), takesGzip);
}

/**
 * The path of an address, without query and with its escapes undone; null when it is not a path.
 * @param {string} address
 */
function readAddress(address) {
  try {
    const path = decodeURIComponent(address.replace(/[?#].*$/s, ''));
    return path.startsWith('/') && !path.includes('\\') && !path.includes('\0') ? path : null;
  } catch {
    return null; // a broken % escape
  }
}

/**
 * The whole path of a file, links followed; null when there is no such file or it lies outside the folder.
 * @param {string} folder
 * @param {string} path
 */
async function insideFolder(folder, path) {
  try {
    const [top, whole] = await Promise.all([realpath(folder), realpath(join(folder, path))]);
    if (!whole.startsWith(top + sep)) return null;
    return (await stat(whole)).isFile() ? whole : null;
  } catch {
    return null; // missing, or a name the file system refuses
  }
}

/**
 * @param {string} path
 * @param {Buffer} content
 * @param {boolean} takesGzip
 * @returns {Promise<ServedFile>}
 */
async function describe(path, content, takesGzip) {
  const ending = extname(path).toLowerCase();
  const zip = takesGzip && !PACKED.has(ending);
  const hash = createHash('sha256').update(content).digest('base64url').slice(0, 22);
  return {
    headers: {
      'Content-Type': CONTENT_TYPES[ending] ?? 'application/octet-stream',
      'Cache-Control': isHashed(path) ? 'public, max-age=31536000, immutable' : 'no-cache',
      ETag: `"${hash}${zip ? '-gzip' : ''}"`,
      Vary: 'Accept-Encoding',
      ...(zip ? { 'Content-Encoding': 'gzip' } : {}),
    },
    body: zip ? await zippedOnce(hash, content) : content,
  };
}

/** @type {Map<string, Promise<Buffer>>} what was gzipped before, by the hash of its content */
const zipped = new Map();

/**
 * A browser that keeps the app for use offline asks for every file, some of them megabytes: each is gzipped once.
 * @param {string} hash
 * @param {Buffer} content
 */
function zippedOnce(hash, content) {
  const before = zipped.get(hash);
  if (before) return before;
  const body = gzipped(content);
  zipped.set(hash, body);
  body.catch(() => zipped.delete(hash));
  return body;
}

/** @param {string} path */
function isHashed(path) {
  return path.split(sep).at(-2) === 'assets' && HASHED_NAME.test(basename(path));
}
