import fc from 'fast-check';
import { expect, test } from 'vitest';
import { entryEdit } from '../../src/notebook/edits.ts';
import { Program } from '../../src/notebook/graph/program.ts';
import { LiveNotebook } from '../../src/notebook/live-notebook.ts';
import { demo } from '../starter/support.ts';

/** Everything that reads a node, directly or by way of others. */
function dependents(program: Program, node: string): Set<string> {
  const found = new Set([node]);
  for (const at of found) {
    for (const spec of program.specs.values()) if (spec.reads.includes(at)) found.add(spec.node);
  }
  return found;
}

test('an edit of the demo computes its dependents, each once, and nothing else (property)', async () => {
  const live = LiveNotebook.open(demo());
  await live.settled();
  const program = Program.of(live.document);
  const columns = live.document.cells.flatMap((cell) =>
    cell.kind === 'table'
      ? cell.columns
          .filter((column) => column.kind === 'number' && typeof column.entries[0] === 'number')
          .map((column) => ({ cell, column }))
      : [],
  );
  expect(columns.length).toBeGreaterThan(30);
  await fc.assert(
    fc.asyncProperty(
      fc.constantFrom(...columns),
      fc.double({ min: 1.01, max: 1.2, noNaN: true }),
      async ({ cell, column }, factor) => {
        const node = `${cell.name}.${column.name}`;
        const first = (column as { entries: readonly number[] }).entries[0] as number;
        live.apply(entryEdit(live.document, cell.id, column.id, 0, first * factor));
        const { recomputed } = await live.settled();
        expect(new Set(recomputed)).toEqual(dependents(program, node));
        expect(recomputed.length).toBe(new Set(recomputed).size);
        live.undo();
        await live.settled();
      },
    ),
    { numRuns: 40 },
  );
});
