import { delimiter, join } from 'node:path';
import { expect, test } from 'vitest';
import { browserPlaces, findBrowser, isDebianLike } from '../../src/commands/find-browser.mjs';

const only = (path: string) => (asked: string) => asked === path;
const PATH = ['/one/bin', '/two/bin'].join(delimiter);

test('CHROME_PATH comes before everything else', () => {
  expect(findBrowser({ CHROME_PATH: '/mine', PATH }, 'linux', () => true)).toBe('/mine');
});

test('a CHROME_PATH with nothing there is an error, not a reason to take another browser', () => {
  const elsewhere = join('/one/bin', 'chromium');
  expect(() => findBrowser({ CHROME_PATH: '/mine', PATH }, 'linux', only(elsewhere))).toThrow(
    'CHROME_PATH says /mine, but no file is there: correct it or unset it.',
  );
});

test.each(['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable', 'chrome'])(
  '%s is found in the PATH',
  (name) => {
    const place = join('/two/bin', name);
    expect(findBrowser({ PATH }, 'linux', only(place))).toBe(place);
  },
);

test('a better name in a later folder comes before a worse one in an earlier folder', () => {
  const found = findBrowser({ PATH }, 'linux', (path) =>
    [join('/one/bin', 'chrome'), join('/two/bin', 'chromium')].includes(path),
  );
  expect(found).toBe(join('/two/bin', 'chromium'));
});

test('macOS and Windows have their usual places', () => {
  const mac = '/Applications/Chromium.app/Contents/MacOS/Chromium';
  expect(findBrowser({ PATH }, 'darwin', only(mac))).toBe(mac);
  const windows = join('C:/Programs', 'Google/Chrome/Application/chrome.exe');
  expect(findBrowser({ PATH, PROGRAMFILES: 'C:/Programs' }, 'win32', only(windows))).toBe(windows);
  expect(browserPlaces({ Path: '/one/bin' }, 'win32')).toContain(join('/one/bin', 'chrome.exe'));
});

test('no browser anywhere is null, also without any PATH', () => {
  expect(findBrowser({ PATH }, 'linux', () => false)).toBeNull();
  expect(browserPlaces({}, 'linux')).toEqual([]);
});

test.each([
  ['PRETTY_NAME="Debian"\nID=debian\n', true],
  ['NAME="Other"\nID=other\nID_LIKE="ubuntu debian"\n', true],
  ['ID=fedora\n', false],
  ['ID=other\nHOME_URL="http://debian.invalid"\n', false],
])('%j is made from Debian: %s', (osRelease, answer) => {
  expect(isDebianLike(osRelease)).toBe(answer);
});
