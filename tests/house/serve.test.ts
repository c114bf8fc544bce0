import { mkdir, mkdtemp, rm, symlink, writeFile } from 'node:fs/promises';
import { type IncomingHttpHeaders, request } from 'node:http';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gunzipSync } from 'node:zlib';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { acceptsGzip, serve } from '../../src/commands/serve.mjs';

const FILES: Readonly<Record<string, string>> = {
  'index.html': '<!doctype html><title>Page</title>',
  'manifest.webmanifest': '{}',
  'prices.csv': 'part,price\n',
  'solver.wasm': '\0asm',
  'picture.png': 'not really',
  'odd.xyz': 'odd',
  '.secret': 'secret',
  'assets/main-3fKq2_aZ.js': 'export {};',
  'assets/main-3fKq2_aZ.js.map': '{}',
  'assets/look-AbCd1234.css': 'p{}',
  'assets/plain.js': 'export {};',
};

interface Answer {
  readonly status: number;
  readonly headers: IncomingHttpHeaders;
  readonly body: Buffer;
}

let folder: string;
let server: Awaited<ReturnType<typeof serve>>;

/** Sends the path as it stands: fetch() would tidy `/../` away before it reaches the server. */
function ask(path: string, method = 'GET', headers: Record<string, string> = {}): Promise<Answer> {
  return new Promise((resolve, reject) => {
    const sent = request({ host: '127.0.0.1', port: server.port, path, method, headers }, (response) => {
      const parts: Buffer[] = [];
      response.on('data', (part: Buffer) => parts.push(part));
      response.on('end', () =>
        resolve({ status: response.statusCode ?? 0, headers: response.headers, body: Buffer.concat(parts) }),
      );
    });
    sent.on('error', reject);
    sent.end();
  });
}

beforeAll(async () => {
  const outer = await mkdtemp(join(tmpdir(), 'sparewell-serve-'));
  folder = join(outer, 'dist');
  await mkdir(join(folder, 'assets'), { recursive: true });
  await writeFile(join(outer, 'outside.txt'), 'outside');
  // A neighbour whose name begins like the folder's own.
  await mkdir(join(outer, 'dist-private'));
  await writeFile(join(outer, 'dist-private', 'index.html'), 'outside');
  await symlink(join(outer, 'outside.txt'), join(folder, 'link.txt'));
  for (const [name, content] of Object.entries(FILES)) await writeFile(join(folder, name), content);
  server = await serve(folder);
});

afterAll(async () => {
  await server.close();
  await rm(join(folder, '..'), { recursive: true });
});

describe('types', () => {
  test.each([
    ['/', 'text/html; charset=utf-8'],
    ['/index.html?fresh=1', 'text/html; charset=utf-8'],
    ['/assets/main-3fKq2_aZ.js', 'text/javascript; charset=utf-8'],
    ['/assets/main-3fKq2_aZ.js.map', 'application/json; charset=utf-8'],
    ['/assets/look-AbCd1234.css', 'text/css; charset=utf-8'],
    ['/prices.csv', 'text/csv; charset=utf-8'],
    ['/manifest.webmanifest', 'application/manifest+json; charset=utf-8'],
    ['/solver.wasm', 'application/wasm'],
    ['/picture.png', 'image/png'],
    ['/odd.xyz', 'application/octet-stream'],
  ])('%s is %s', async (path, type) => {
    const { status, headers } = await ask(path);
    expect(status).toBe(200);
    expect(headers['content-type']).toBe(type);
  });
});

describe('headers on every response', () => {
  test.each([
    ['GET', '/', 200],
    ['HEAD', '/', 200],
    ['GET', '/assets/main-3fKq2_aZ.js', 200],
    ['GET', '/nothing', 404],
    ['GET', '/%zz', 400],
    ['POST', '/', 405],
  ])('%s %s (%i)', async (method, path, status) => {
    const answer = await ask(path, method);
    expect(answer.status).toBe(status);
    expect(answer.headers['content-security-policy']).toBe(
      "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; style-src 'self'; img-src 'self' data: blob:; " +
        "font-src 'self'; connect-src 'self'; worker-src 'self'; manifest-src 'self'; base-uri 'none'; " +
        "form-action 'none'; frame-ancestors 'none'; require-trusted-types-for 'script'; " +
        'trusted-types lit-html sparewell',
    );
    expect(answer.headers['x-content-type-options']).toBe('nosniff');
    expect(answer.headers['referrer-policy']).toBe('no-referrer');
    expect(answer.headers['cross-origin-opener-policy']).toBe('same-origin');
  });

  test('an unchanged file too (304)', async () => {
    const { headers } = await ask('/');
    const again = await ask('/', 'GET', { 'If-None-Match': `"other", W/${headers.etag}` });
    expect(again.status).toBe(304);
    expect(again.body.length).toBe(0);
    expect(again.headers['content-security-policy']).toMatch(/^default-src 'none'/);
    expect(again.headers['cache-control']).toBe('no-cache');
  });
});

describe('what may be kept', () => {
  test.each([
    ['/', 'no-cache'],
    ['/manifest.webmanifest', 'no-cache'],
    ['/assets/plain.js', 'no-cache'],
    ['/assets/main-3fKq2_aZ.js', 'public, max-age=31536000, immutable'],
    ['/assets/look-AbCd1234.css', 'public, max-age=31536000, immutable'],
    ['/nothing', 'no-store'],
  ])('%s: %s', async (path, cacheControl) => {
    expect((await ask(path)).headers['cache-control']).toBe(cacheControl);
  });

  test('a changed file has another tag', async () => {
    const before = await ask('/prices.csv');
    await writeFile(join(folder, 'prices.csv'), 'part,cost\n');
    const after = await ask('/prices.csv', 'GET', { 'If-None-Match': String(before.headers.etag) });
    expect(after.status).toBe(200);
    expect(after.body.toString()).toBe('part,cost\n');
  });
});

describe('nothing outside the folder', () => {
  test.each([
    '/../outside.txt',
    '/assets/../../outside.txt',
    '/%2e%2e/outside.txt',
    '/..%2foutside.txt',
    '/../dist-private/',
    '/link.txt',
    '/.secret',
    '/assets',
    '/assets/',
  ])('%s is not found', async (path) => {
    const { status, body } = await ask(path);
    expect(status).toBe(404);
    expect(body.toString()).toMatch(/^There is no file at \/.*\.\n$/);
  });

  test.each(['/..\\outside.txt', '/%00', '/%zz'])('%s cannot be read', async (path) => {
    const { status, body } = await ask(path);
    expect(status).toBe(400);
    expect(body.toString()).toBe('This address cannot be read.\n');
  });
});

describe('bodies', () => {
  test('HEAD has the headers of GET and no body', async () => {
    const get = await ask('/');
    const head = await ask('/', 'HEAD');
    expect(head.body.length).toBe(0);
    expect(head.headers['content-length']).toBe(String(get.body.length));
    expect(head.headers.etag).toBe(get.headers.etag);
  });

  test('text is gzipped for a browser that takes it, under a tag of its own', async () => {
    const plain = await ask('/');
    const zipped = await ask('/', 'GET', { 'Accept-Encoding': 'br, gzip' });
    expect(plain.headers['content-encoding']).toBeUndefined();
    expect(zipped.headers['content-encoding']).toBe('gzip');
    expect(gunzipSync(zipped.body).toString()).toBe(FILES['index.html']);
    expect(zipped.headers.etag).not.toBe(plain.headers.etag);
    expect(zipped.headers.vary).toBe('Accept-Encoding');
  });

  test('a picture is not gzipped', async () => {
    const { headers } = await ask('/picture.png', 'GET', { 'Accept-Encoding': 'gzip' });
    expect(headers['content-encoding']).toBeUndefined();
  });

  test.each([
    ['gzip', true],
    ['deflate, GZIP;q=0.5', true],
    ['gzip;q=0', false],
    ['gzip; q=0.000', false],
    ['br', false],
    ['', false],
    [undefined, false],
  ])('Accept-Encoding %j takes gzip: %s', (header, takes) => {
    expect(acceptsGzip(header)).toBe(takes);
  });

  test('writing is refused with the methods that work', async () => {
    const { headers, body } = await ask('/', 'DELETE');
    expect(headers.allow).toBe('GET, HEAD');
    expect(body.toString()).toBe('Files here can only be read.\n');
  });
});

describe('ports', () => {
  test('a taken port is refused by name, or the next free one is used', async () => {
    const other = createServer();
    await new Promise<void>((resolve) => other.listen(0, '127.0.0.1', resolve));
    const address = other.address();
    const takenPort = typeof address === 'object' && address !== null ? address.port : 0;
    await expect(serve(folder, { port: takenPort })).rejects.toThrow(`Port ${takenPort} cannot be had`);
    const next = await serve(folder, { port: takenPort, nextFree: true });
    expect(next.port).toBeGreaterThan(takenPort);
    expect(next.url).toBe(`http://127.0.0.1:${next.port}/`);
    await next.close();
    await new Promise((resolve) => other.close(resolve));
  });

  test.each([-1, 65536, 1.5, Number.NaN])('%s is not a port', async (port) => {
    await expect(serve(folder, { port })).rejects.toThrow('A port is a whole number from 0 to 65535.');
  });
});
