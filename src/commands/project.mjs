import { spawn } from 'node:child_process';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The project's top folder, without a slash at the end. */
export const projectFolder = fileURLToPath(new URL('../..', import.meta.url)).replace(/[\\/]$/, '');

/** The built app. */
export const distFolder = join(projectFolder, 'dist');

/** Scripts of the tools that the commands run, from the top folder. */
export const TOOL = {
  biome: 'node_modules/@biomejs/biome/bin/biome',
  typescript: 'node_modules/typescript/bin/tsc',
  dependencies: 'node_modules/dependency-cruiser/bin/dependency-cruise.mjs',
  vite: 'node_modules/vite/bin/vite.js',
  vitest: 'node_modules/vitest/vitest.mjs',
};

/**
 * Runs a program in the project's folder and shows what it prints.
 * @param {string} program
 * @param {readonly string[]} args
 * @param {{ env?: Record<string, string>, shell?: boolean, stdout?: 'inherit' | 'stderr' }} [options]
 *   env is added to this process's own; `stdout: 'stderr'` keeps our own output clean
 * @returns {Promise<boolean>} whether it ended with code 0
 */
export function run(program, args, options = {}) {
  return new Promise((resolve, reject) => {
    const child = spawn(program, args, {
      cwd: projectFolder,
      env: { ...process.env, ...options.env },
      shell: options.shell ?? false,
      stdio: ['inherit', options.stdout === 'stderr' ? 2 : 'inherit', 'inherit'],
    });
    child.on('error', reject);
    child.on('close', (code) => resolve(code === 0));
  });
}

/**
 * Runs one of the tools with this same Node.
 * @param {string} script one of TOOL
 * @param {readonly string[]} args
 * @param {Parameters<typeof run>[2]} [options]
 */
export function runTool(script, args, options) {
  return run(process.execPath, [script, ...args], options);
}

/**
 * Runs one of the tools like `runTool`, and gives what it printed instead of showing it.
 * @param {string} script one of TOOL
 * @param {readonly string[]} args
 * @returns {Promise<{ passed: boolean, printed: string }>} `passed` when it ended with code 0
 */
export function hearTool(script, args) {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [script, ...args], {
      cwd: projectFolder,
      stdio: ['ignore', 'pipe', 'pipe'],
    });
    /** @type {Buffer[]} */
    const parts = [];
    for (const stream of [child.stdout, child.stderr]) stream.on('data', (part) => parts.push(part));
    child.on('error', reject);
    child.on('close', (code) => resolve({ passed: code === 0, printed: Buffer.concat(parts).toString() }));
  });
}

/**
 * Ends the process with one sentence.
 * @param {string} sentence
 * @returns {never}
 */
export function giveUp(sentence) {
  console.error(sentence);
  process.exit(1);
}
