import { isDeepStrictEqual } from 'node:util';
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

/** Nodes whose figures, faults or counts of entries left out differ between two notebooks at rest. */
function differing(a: LiveNotebook, b: LiveNotebook): string[] {
  return [...Program.of(a.document).specs.keys()].filter((node) => {
    if (node.includes('.#')) return false;
    const [one, other] = [a.read(node), b.read(node)];
    if (one.state !== 'settled' || other.state !== 'settled') return !isDeepStrictEqual(one, other);
    const [was, is] = [one.column, other.column];
    return (
      was.kind !== is.kind ||
      was.values.length !== is.values.length ||
      (was.skipped ?? 0) !== (is.skipped ?? 0) ||
      was.values.some((figure, row) => !Object.is(figure, is.values[row])) ||
      !isDeepStrictEqual(was.faults, is.faults)
    );
  });
}

test('after an edit of the demo every figure is what a notebook opened anew shows, and what is computed hangs on it, each once (property)', async () => {
  const live = LiveNotebook.open(demo());
  await live.settled();
  const program = Program.of(live.document);
  const columns = live.document.cells.flatMap((cell) =>
    cell.kind === 'table'
      ? cell.columns
          .filter(
            (column) => column.kind === 'number' && column.entries.some((entry) => typeof entry === 'number'),
          )
          .map((column) => ({ cell, column }))
      : [],
  );
  expect(columns.length).toBeGreaterThan(30);
  await fc.assert(
    fc.asyncProperty(
      fc.constantFrom(...columns),
      fc.nat(),
      fc.double({ min: 1.01, max: 1.2, noNaN: true }),
      async ({ cell, column }, at, factor) => {
        const { entries } = column as { entries: readonly unknown[] };
        const written = entries.flatMap((entry, row) => (typeof entry === 'number' ? [{ row, entry }] : []));
        const { row, entry } = written[at % written.length] as (typeof written)[number];
        live.apply(entryEdit(live.document, cell.id, column.id, row, entry * factor));
        const { recomputed } = await live.settled();
        expect(recomputed.length).toBe(new Set(recomputed).size);
        const hanging = dependents(program, `${cell.name}.${column.name}`);
        expect(recomputed.filter((node) => !hanging.has(node))).toEqual([]);
        const anew = LiveNotebook.open(live.document);
        await anew.settled();
        expect(differing(live, anew)).toEqual([]);
        anew.dispose();
        live.undo();
        await live.settled();
      },
    ),
    { numRuns: 12 },
  );
});
