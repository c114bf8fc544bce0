import { execFileSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { run } from './project.mjs';

/** Names under which Chrome or Chromium stands in the PATH. */
const NAMES = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable', 'chrome'];

const MAC_PATHS = [
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
];

const WINDOWS_FOLDERS = ['PROGRAMFILES', 'PROGRAMFILES(X86)', 'LOCALAPPDATA'];
const WINDOWS_PATH = 'Google/Chrome/Application/chrome.exe';

/**
 * Everywhere a browser may be, best first.
 * @param {Record<string, string | undefined>} env
 * @param {string} platform as in `process.platform`
 * @returns {string[]} whole paths; they need not exist
 */
export function browserPlaces(env, platform) {
  const ending = platform === 'win32' ? '.exe' : '';
  const folders = (env.PATH ?? env.Path ?? '').split(delimiter).filter((folder) => folder !== '');
  const inPath = NAMES.flatMap((name) => folders.map((folder) => join(folder, name + ending)));
  if (platform === 'darwin') return [...inPath, ...MAC_PATHS];
  if (platform !== 'win32') return inPath;
  const windows = WINDOWS_FOLDERS.flatMap((name) => (env[name] ? [join(env[name], WINDOWS_PATH)] : []));
  return [...inPath, ...windows];
}

/**
 * Finds an installed Chrome or Chromium.
 * @param {Record<string, string | undefined>} [env]
 * @param {string} [platform]
 * @param {(path: string) => boolean} [exists]
 * @returns {string | null} its whole path; null when there is none
 * @throws when CHROME_PATH is set and nothing is there: a wrong setting must not be passed over in silence
 */
export function findBrowser(env = process.env, platform = process.platform, exists = existsSync) {
  const named = env.CHROME_PATH;
  if (named) {
    if (exists(named)) return named;
    throw new Error(`CHROME_PATH says ${named}, but no file is there: correct it or unset it.`);
  }
  return browserPlaces(env, platform).find((path) => exists(path)) ?? null;
}

/**
 * The same, and installs Chromium where that can be done unasked: on Debian and Ubuntu as root, which is
 * what build machines are.
 * @returns {Promise<string>} whole path of the browser
 * @throws with one sentence that says what to do
 */
export async function ensureBrowser() {
  const found = findBrowser();
  if (found !== null) return found;
  if (canInstall()) {
    console.error('No Chrome or Chromium found; installing Chromium with apt-get.');
    const env = { DEBIAN_FRONTEND: 'noninteractive' };
    const installed =
      (await run('apt-get', ['update'], { env })) &&
      (await run('apt-get', ['install', '-y', 'chromium'], { env }));
    const path = installed ? findBrowser() : null;
    if (path !== null) return path;
  }
  throw new Error(
    'The browser tests need Chrome or Chromium: install one, or set CHROME_PATH to where it is, and run it again.',
  );
}

function canInstall() {
  if (process.platform !== 'linux' || process.getuid?.() !== 0) return false;
  try {
    execFileSync('apt-get', ['--version'], { stdio: 'ignore' });
    return isDebianLike(readFileSync('/etc/os-release', 'utf8'));
  } catch {
    return false; // no apt-get, or no word on what system this is
  }
}

/**
 * Whether /etc/os-release tells of Debian, Ubuntu or a system made from them.
 * @param {string} osRelease text of the file
 */
export function isDebianLike(osRelease) {
  return /^ID(_LIKE)?=.*\b(debian|ubuntu)\b/m.test(osRelease);
}
