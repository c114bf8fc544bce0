import { buildNeeded, installNeeded } from './freshness.mjs';
import { giveUp, projectFolder, run, runTool, TOOL } from './project.mjs';

/**
 * Installs the packages of the lock file when they are missing or older than it.
 * @param {{ stdout?: 'inherit' | 'stderr' }} [options] where the installer's own words go
 */
export async function install(options = {}) {
  if (!installNeeded(projectFolder)) return;
  console.error('Installing packages (npm ci); this is only needed once per version.');
  // Without --include=dev a machine set to production would leave the build tools out.
  const args = ['ci', '--include=dev', '--no-audit', '--no-fund'];
  if (!(await runNpm(args, options))) {
    giveUp('The packages could not be installed: read the lines above, check the network, and run it again.');
  }
}

/**
 * @param {string[]} args
 * @param {{ stdout?: 'inherit' | 'stderr' }} options
 */
function runNpm(args, options) {
  const script = process.env.npm_execpath;
  if (script?.endsWith('npm-cli.js')) return run(process.execPath, [script, ...args], options);
  // On Windows npm is a .cmd file, which only a shell can run.
  return run('npm', args, { ...options, shell: process.platform === 'win32' });
}

/** Builds the app into `dist` when it is missing or older than its sources. */
export async function buildWhenStale() {
  if (!buildNeeded(projectFolder)) return;
  console.error('Building the app.');
  if (!(await runTool(TOOL.vite, ['build', '--logLevel', 'warn']))) {
    giveUp('The app could not be built: the lines above say which file stopped it.');
  }
}
