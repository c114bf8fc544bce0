import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import ts from 'typescript';
import { afterAll, expect, test } from 'vitest';
import { projectFolder } from '../../src/commands/project.mjs';

const folder = mkdtempSync(join(tmpdir(), 'sparewell-types-'));

afterAll(() => rmSync(folder, { recursive: true }));

/** What the compiler says of a file under the settings of the layers that know no page. */
function complaints(code: string): readonly string[] {
  const settings = join(projectFolder, 'src/tsconfig.headless.json');
  const { config } = ts.readConfigFile(settings, ts.sys.readFile);
  const parsed = ts.parseJsonConfigFileContent(config, ts.sys, join(projectFolder, 'src'));
  expect(parsed.fileNames.some((name) => name.endsWith('src/notebook/document.ts'))).toBe(true);
  const path = join(folder, 'layer.ts');
  writeFileSync(path, code);
  const typeRoots = [join(projectFolder, 'node_modules/@types')];
  const program = ts.createProgram([path], { ...parsed.options, typeRoots });
  return ts
    .getPreEmitDiagnostics(program)
    .map(({ messageText }) => ts.flattenDiagnosticMessageText(messageText, ' '));
}

test('what a page alone has is unknown in the headless layers, what Node and workers share is known', () => {
  const found = complaints(`
    export const page = [document, window, localStorage, HTMLElement, requestAnimationFrame, indexedDB];
    export const shared = [performance.now(), structuredClone(1), new AbortController(), queueMicrotask];
  `);
  expect(found.map((sentence) => /'(\w+)'/.exec(sentence)?.[1])).toEqual([
    'document',
    'window',
    'localStorage',
    'HTMLElement',
    'requestAnimationFrame',
    'indexedDB',
  ]);
}, 30_000);
