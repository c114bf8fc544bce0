import { readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';

/** npm writes this file last, so its time is the time of the last whole install. */
const INSTALL_STAMP = 'node_modules/.package-lock.json';
const BUILD_STAMP = 'dist/index.html';

/** Everything that the built app is made of. */
const BUILD_SOURCES = ['src', 'cells', 'datasets', 'package-lock.json', 'tsconfig.json', 'vite.config.ts'];

/** The commands are not part of the app. */
const NOT_BUILT = join('src', 'commands');

/**
 * When a file, or the newest thing in a folder, was last changed. The folder's own time counts too: it
 * moves when a file is taken away.
 * @param {string} folder top folder
 * @param {string} path file or folder inside it
 * @returns {number} milliseconds since 1970; -Infinity when there is no such file
 */
export function newestMs(folder, path) {
  if (path === NOT_BUILT) return Number.NEGATIVE_INFINITY;
  const whole = join(folder, path);
  const stats = statSync(whole, { throwIfNoEntry: false });
  if (stats === undefined) return Number.NEGATIVE_INFINITY;
  if (!stats.isDirectory()) return stats.mtimeMs;
  return readdirSync(whole).reduce(
    (newest, name) => Math.max(newest, newestMs(folder, join(path, name))),
    stats.mtimeMs,
  );
}

/**
 * Whether the packages must be installed: they are missing, or older than the lock file.
 * @param {string} folder top folder
 */
export function installNeeded(folder) {
  return newestMs(folder, INSTALL_STAMP) < newestMs(folder, 'package-lock.json');
}

/**
 * Whether the app must be built: it is missing, or older than anything it is made of.
 * @param {string} folder top folder
 */
export function buildNeeded(folder) {
  const newestSourceMs = Math.max(...BUILD_SOURCES.map((path) => newestMs(folder, path)));
  return newestMs(folder, BUILD_STAMP) < newestSourceMs;
}
