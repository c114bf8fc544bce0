import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { axe } from './axe.ts';
import { openApp, withApp } from './open-app.ts';
import { type AppServer, serveApp } from './server.ts';

// A page of its own, so that the harness is tested without the app.
const PAGE = `<!doctype html><html lang="en"><head><meta charset="utf-8"><title>Harness</title>
<link rel="icon" href="./icon.svg"><script type="module" src="./main.js"></script></head><body><main><h1>Harness</h1><p id="said"></p></main></body></html>`;

const MAIN = `
const policy = trustedTypes.createPolicy('sparewell', { createScriptURL: (url) => url });
const acts = {
  quiet: () => {},
  error: () => console.error('a complaint'),
  uncaught: () => setTimeout(() => { throw new Error('nobody caught this'); }),
  inline: () => document.head.append(Object.assign(document.createElement('style'), { textContent: 'p{color:red}' })),
  abroad: () => fetch('http://192.0.2.1/').catch(() => {}),
  worker: () => new Worker(policy.createScriptURL('./worker.js')),
  markup: () => { try { document.querySelector('#said').innerHTML = '<b>x</b>'; } catch {} },
  unnamed: () => document.querySelector('main').append(document.createElement('button')),
  inside: () => {
    const boxes = ['good', 'bad'].map((id) => Object.assign(document.createElement('div'), { id }));
    document.querySelector('main').append(...boxes);
    for (const box of boxes) box.attachShadow({ mode: 'open' }).append(document.createElement('section'));
    for (const box of boxes) box.shadowRoot.firstChild.append(Object.assign(document.createElement('p'), { textContent: box.id }));
    boxes[1].shadowRoot.firstChild.append(document.createElement('button'));
  },
  keep: () => localStorage.setItem('kept', 'yes'),
};
acts[location.search.slice(1)]();
document.querySelector('#said').textContent = 'done ' + localStorage.getItem('kept');
`;

// What a worker throws shows in its page; what it catches stays its own.
const WORKER = "throw new Error('the worker gave up');";
const ICON = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 1 1"/>';

let folder: string;
let server: AppServer;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'sparewell-harness-'));
  await writeFile(join(folder, 'index.html'), PAGE);
  await writeFile(join(folder, 'main.js'), MAIN);
  await writeFile(join(folder, 'worker.js'), WORKER);
  await writeFile(join(folder, 'icon.svg'), ICON);
  server = await serveApp(folder);
});

afterAll(async () => {
  await server.close();
  await rm(folder, { recursive: true });
});

test('a page that complains of nothing closes in peace', async () => {
  await withApp({ server, path: '?quiet' }, async ({ page }) => {
    await page.getByText('done').waitFor();
    expect(await page.evaluate(() => [innerWidth, innerHeight])).toEqual([1440, 900]);
    expect(await axe(page)).toEqual([]);
  });
});

test.each([
  ['error', /a complaint/],
  ['uncaught', /nobody caught this/],
  ['inline', /CSP: style-src/],
  ['abroad', /CSP: connect-src blocked http:\/\/192\.0\.2\.1/],
  ['worker', /the worker gave up/],
  ['markup', /CSP: require-trusted-types-for/],
])('a page with the trouble "%s" fails at close', async (act, complaint) => {
  const app = await openApp({ server, path: `?${act}` });
  await expect.poll(() => app.troubles.unexpected.join('\n')).toMatch(complaint);
  await expect(app.close()).rejects.toThrow(complaint);
});

test('an expected complaint is no trouble', async () => {
  await withApp({ server, path: '?error', expected: [/a complaint/] }, async ({ page }) => {
    await page.getByText('done').waitFor();
  });
});

test('axe finds a button without a name', async () => {
  await withApp({ server, path: '?unnamed' }, async ({ page }) => {
    await page.getByText('done').waitFor();
    expect(await axe(page)).toMatchObject([{ rule: 'button-name', elements: ['button'] }]);
    expect(await axe(page, 'h1')).toEqual([]);
  });
});

test('axe looks at what lies in a shadow root, and at nothing else, when it is led there', async () => {
  await withApp({ server, path: '?inside' }, async ({ page }) => {
    await page.getByText('done').waitFor();
    expect(await axe(page, ['#bad', 'section'])).toMatchObject([
      { rule: 'button-name', elements: ['#bad >>> button'] },
    ]);
    expect(await axe(page, ['#good', 'section'])).toEqual([]);
  });
});

test('a killed browser is gone, and its data folder can be opened again at the same address', async () => {
  const userDataFolder = await mkdtemp(join(tmpdir(), 'sparewell-killed-'));
  const first = await openApp({ server, userDataFolder, path: '?keep' });
  await first.page.getByText('done yes').waitFor();
  await first.kill();
  await expect(first.page.title()).rejects.toThrow(/closed/);
  // localStorage itself may be lost in a kill; that the page opens at all is what is shown here.
  await withApp({ server, userDataFolder, path: '?quiet' }, async ({ page }) => {
    await page.getByText('done').waitFor();
  });
  await rm(userDataFolder, { recursive: true, maxRetries: 10 });
});
