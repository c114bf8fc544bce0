import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { projectFolder } from '../../src/commands/project.mjs';

/** What the top folder may hold, besides dotfiles. */
const ALLOWED = [
  'DEVELOPERS.md',
  'LICENSE',
  'README.md',
  'biome.json',
  'cells',
  'datasets',
  'package-lock.json',
  'package.json',
  'src',
  'tests',
  'tsconfig.json',
  'vite.config.ts',
  'vitest.config.ts',
];

/** Made by the tools and not kept: see .gitignore. */
const MADE = ['coverage', 'dist', 'node_modules'];

const PERMISSIVE = [
  'MIT',
  'ISC',
  'Apache-2.0',
  'BSD-2-Clause',
  'BSD-3-Clause',
  '0BSD',
  'Unlicense',
  'CC0-1.0',
  // For fonts alone: it asks nothing of what is made with them.
  'OFL-1.1',
];

interface LockedPackage {
  readonly version?: string;
  readonly license?: string;
  readonly dev?: boolean;
  readonly optional?: boolean;
}

interface Manifest {
  readonly license: string;
  readonly version: string;
  readonly dependencies: Readonly<Record<string, string>>;
  readonly devDependencies: Readonly<Record<string, string>>;
}

const read = (name: string): string => readFileSync(join(projectFolder, name), 'utf8');
const manifest = JSON.parse(read('package.json')) as Manifest;
const lock = JSON.parse(read('package-lock.json')) as { packages: Record<string, LockedPackage> };
const locked = lock.packages;

test('the top folder holds only what belongs there', () => {
  const found = readdirSync(projectFolder).filter((name) => !name.startsWith('.') && !MADE.includes(name));
  expect(found.filter((name) => !ALLOWED.includes(name))).toEqual([]);
});

test('what the tools make is not kept', () => {
  const ignored = read('.gitignore').split('\n');
  for (const name of MADE) expect(ignored).toContain(`${name}/`);
});

/** Whether an SPDX expression can be met by permissive licences alone: one side of OR, both sides of AND. */
function isPermissive(expression: string): boolean {
  const bare = expression.replace(/^\((.*)\)$/, '$1');
  if (bare.includes(' OR ')) return bare.split(' OR ').some(isPermissive);
  if (bare.includes(' AND ')) return bare.split(' AND ').every(isPermissive);
  return PERMISSIVE.includes(bare);
}

describe('licences', () => {
  test('the project is under the MIT licence', () => {
    expect(manifest.license).toBe('MIT');
    expect(read('LICENSE')).toMatch(/^MIT License\n\nCopyright \(c\) \d{4} Sparewell contributors\n/);
  });

  test.each([
    ['MIT', true],
    ['(MIT OR GPL-3.0-only)', true],
    ['MIT AND Apache-2.0', true],
    ['MIT AND GPL-3.0-only', false],
    ['GPL-3.0-only', false],
    ['', false],
  ])('%s is permissive: %s', (expression, answer) => {
    expect(isPermissive(expression)).toBe(answer);
  });

  test('every package that reaches the page has a permissive one', () => {
    const shipped = Object.entries(locked).filter(([path, entry]) => path !== '' && !entry.dev);
    expect(shipped.length).toBeGreaterThanOrEqual(Object.keys(manifest.dependencies).length);
    const doubtful = shipped.filter(([, { license }]) => !isPermissive(license ?? ''));
    expect(doubtful.map(([path, { license }]) => `${path}: ${license}`)).toEqual([]);
  });
});

describe('the lock file', () => {
  test('names no place to download from', () => {
    const placed = Object.entries(locked).filter(([, entry]) => 'resolved' in entry);
    expect(placed.map(([path]) => path)).toEqual([]);
    expect(read('.npmrc')).toContain('omit-lockfile-registry-resolved=true');
    expect(read('.npmrc')).not.toMatch(/registry\s*=\s*http/);
  });

  test('holds exactly the versions that package.json asks for', () => {
    for (const [name, version] of Object.entries({ ...manifest.dependencies, ...manifest.devDependencies })) {
      expect(version).toMatch(/^\d+\.\d+\.\d+$/);
      expect(`${name} ${locked[`node_modules/${name}`]?.version}`).toBe(`${name} ${version}`);
    }
  });

  test('has the checksum of every package', () => {
    const bare = Object.entries(locked).filter(([path, entry]) => path !== '' && !('integrity' in entry));
    expect(bare.map(([path]) => path)).toEqual([]);
  });
});
