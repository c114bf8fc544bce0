import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { cruise, type ICruiseResult, type IFlattenedRuleSet } from 'dependency-cruiser';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { projectFolder } from '../../src/commands/project.mjs';

interface CruiserConfig {
  readonly forbidden: NonNullable<IFlattenedRuleSet['forbidden']>;
  readonly options: Record<string, unknown>;
}

const config = createRequire(import.meta.url)(
  join(projectFolder, '.dependency-cruiser.cjs'),
) as CruiserConfig;

/** Stand-ins: the rules look only at where a package stands and how package.json lists it. */
const DEPENDENCIES = ['@observablehq/runtime', '@stdlib/erfc', 'idb-keyval', 'lit', 'mathjs', 'micromark'];
const MORE_DEPENDENCIES = ['papaparse', 'valibot'];
const DEV_DEPENDENCIES = ['fast-check'];

let folder: string;

beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'sparewell-layers-'));
  const installed = [...DEPENDENCIES, ...MORE_DEPENDENCIES];
  const versions = (names: readonly string[]) => Object.fromEntries(names.map((name) => [name, '1.0.0']));
  await write('package.json', {
    type: 'module',
    dependencies: versions(installed),
    devDependencies: versions(DEV_DEPENDENCIES),
  });
  for (const name of [...installed, ...DEV_DEPENDENCIES, 'unlisted']) {
    await write(`node_modules/${name}/package.json`, { name, version: '1.0.0', main: 'index.js' });
    await write(`node_modules/${name}/index.js`, 'export const thing = 1;');
  }
  // Every layer once, with all that it may import.
  await imports('src/trade/survival.ts', '@stdlib/erfc');
  await imports('src/formula/check.ts', '../trade/survival.ts', 'mathjs', '@stdlib/erfc');
  await imports('src/tables/read.ts', '../formula/check.ts', 'papaparse');
  await imports('src/notebook/live.ts', '../tables/read.ts', '../formula/check.ts', '../trade/survival.ts');
  await imports('src/notebook/graph.ts', '@observablehq/runtime', 'valibot', './live.ts');
  await imports('src/notebook/storage/keep.ts', '../live.ts', 'idb-keyval');
  await imports(
    'src/starter/demo.ts',
    '../notebook/live.ts',
    '../tables/read.ts',
    '../../datasets/legs.csv?raw',
  );
  await write('datasets/legs.csv', 'leg,km\n');
  await imports('cells/note/note.ts', '../../src/notebook/live.ts', '../shared/base.ts', 'lit', 'micromark');
  await imports('cells/shared/base.ts', 'lit');
  await imports(
    'src/shell/main.ts',
    '../notebook/storage/keep.ts',
    '../starter/demo.ts',
    '../notebook/graph.ts',
  );
  await imports('src/shell/page.ts', '../../cells/note/note.ts', 'lit', './main.ts');
  await imports('src/commands/start.mjs', 'node:fs', './serve.mjs');
  await imports('src/commands/serve.mjs', 'node:fs/promises');
});

afterEach(async () => {
  await rm(folder, { recursive: true });
});

async function write(path: string, content: string | object): Promise<void> {
  const whole = join(folder, path);
  await mkdir(dirname(whole), { recursive: true });
  await writeFile(whole, typeof content === 'string' ? content : JSON.stringify(content));
}

/** Writes a file that imports these and nothing else. */
async function imports(path: string, ...names: readonly string[]): Promise<void> {
  const lines = names.map((name, index) => `import * as n${index} from '${name}';`);
  const used = names.map((_, index) => `n${index}`).join(', ');
  await write(path, `${lines.join('\n')}\nexport const all = [${used}];\n`);
}

/** Cruises the folder by the project's own rules: each violation as 'rule: file'. */
async function violations(): Promise<readonly string[]> {
  const { tsConfig: _, ...options } = config.options;
  const reply = await cruise(['src', 'cells'], {
    ...options,
    baseDir: folder,
    validate: true,
    ruleSet: { forbidden: config.forbidden },
  });
  const { summary } = reply.output as ICruiseResult;
  return summary.violations.map(({ rule, from }) => `${rule.name}: ${from}`);
}

test('a tree in which every layer imports all that it may is in order', async () => {
  expect(await violations()).toEqual([]);
});

test.each([
  ['trade-stands-alone', 'src/trade/bad.ts', '../formula/check.ts'],
  ['trade-stands-alone', 'src/trade/bad.ts', 'mathjs'],
  ['trade-stands-alone', 'src/trade/bad.ts', 'lit'],
  ['formula-reads-trade', 'src/formula/bad.ts', '../tables/read.ts'],
  ['formula-reads-trade', 'src/formula/bad.ts', '@observablehq/runtime'],
  ['tables-read-formula', 'src/tables/bad.ts', '../notebook/live.ts'],
  ['tables-read-formula', 'src/tables/bad.ts', 'mathjs'],
  ['notebook-is-headless', 'src/notebook/bad.ts', 'lit'],
  ['notebook-is-headless', 'src/notebook/bad.ts', '../../cells/note/note.ts'],
  ['notebook-is-headless', 'src/notebook/bad.ts', './storage/keep.ts'],
  ['notebook-is-headless', 'src/notebook/bad.ts', 'idb-keyval'],
  ['storage-keeps-notebooks', 'src/notebook/storage/bad.ts', '../../shell/page.ts'],
  ['starter-is-a-notebook', 'src/starter/bad.ts', '../../cells/note/note.ts'],
  ['starter-is-a-notebook', 'src/starter/bad.ts', 'papaparse'],
  ['cells-sit-on-the-notebook', 'cells/note/bad.ts', '../../src/shell/page.ts'],
  ['cells-sit-on-the-notebook', 'cells/note/bad.ts', '../../src/notebook/storage/keep.ts'],
  ['cells-sit-on-the-notebook', 'cells/note/bad.ts', 'mathjs'],
  ['shell-is-on-top', 'src/shell/bad.ts', '../commands/serve.mjs'],
  ['shell-is-on-top', 'src/shell/bad.ts', 'idb-keyval'],
  ['commands-are-apart', 'src/commands/bad.mjs', '../trade/survival.ts'],
  ['commands-are-apart', 'src/commands/bad.mjs', 'lit'],
  ['only-commands-use-node', 'src/formula/bad.ts', 'node:fs'],
  ['no-tests-in-the-app', 'cells/note/bad.ts', '../../tests/helper.ts'],
  ['no-development-packages', 'src/tables/bad.ts', 'fast-check'],
  ['no-development-packages', 'cells/note/bad.ts', 'unlisted'],
  ['all-found', 'src/trade/bad.ts', './gone.ts'],
])('%s: %s may not import %s', async (rule, path, imported) => {
  await imports('tests/helper.ts', '../src/trade/survival.ts');
  await imports(path, imported);
  expect(await violations()).toContain(`${rule}: ${path}`);
});

test('types count as imports', async () => {
  await write(
    'src/trade/bad.ts',
    "import type { all } from '../formula/check.ts';\nexport type All = typeof all;\n",
  );
  expect(await violations()).toContain('trade-stands-alone: src/trade/bad.ts');
});

test('no-circle: two files that need each other are named', async () => {
  await imports('src/trade/one.ts', './two.ts');
  await imports('src/trade/two.ts', './one.ts');
  expect(await violations()).toEqual(expect.arrayContaining(['no-circle: src/trade/one.ts']));
});

test('no-orphan: a file that nothing imports and that imports nothing is named', async () => {
  await write('src/trade/alone.ts', 'export const alone = 1;');
  expect(await violations()).toEqual(['no-orphan: src/trade/alone.ts']);
});
