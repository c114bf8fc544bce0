import { expect, test } from 'vitest';
import type { Cell, ValueContent } from '../../src/notebook/document.ts';
import type { Edit } from '../../src/notebook/edit.ts';
import { EditError } from '../../src/notebook/edit-error.ts';
import * as make from '../../src/notebook/edits.ts';
import { LiveNotebook } from '../../src/notebook/live-notebook.ts';
import { readNotebookFile, writeNotebookFile } from '../../src/notebook/notebook-file.ts';
import { formula, number, pairing, smallTrip, table, worked } from '../notebook/small-notebook.ts';
import { FUZZ_TIMEOUT_MS, fuzz } from './fuzz-run.ts';
import { type Chance, HOSTILE, mutate } from './random.ts';

const FORMULAS = [
  'sum(route.km)',
  'km * harshness',
  'running(hard_km, part)',
  'most(ride.worn)',
  'trip_km / 2',
  'now - rate * 3 km',
  'day_value * 2 day',
  'count(ride)',
];
const NAMES = ['route', 'wear', 'ride', 'km', 'fresh', 'trip_km', 'now', ...HOSTILE.slice(0, 8)];

const text = (chance: Chance): string =>
  chance.once(3) ? mutate(chance, chance.of(FORMULAS), ['km', '+', 'ride.']) : chance.of(FORMULAS);

const entry = (chance: Chance): number | string | null =>
  chance.of([null, 0, 1, -5, 1e6, 0.5, 'words', ...HOSTILE.slice(0, 5)]);

function freshCell(chance: Chance): Cell {
  const name = chance.of(NAMES);
  return chance.of([
    () => number(name, 3, 'km'),
    () => formula(name, text(chance)),
    () => pairing(name, 'wear', 'route', worked('x', text(chance))),
    () => table(name, worked('x', text(chance))),
  ])();
}

/** Some edit of this notebook; it need not be a good one. */
function someEdit(chance: Chance, live: LiveNotebook): Edit {
  const { document } = live;
  const cell = document.cells.length > 0 ? chance.of(document.cells) : undefined;
  const id = cell?.id ?? 'none';
  const columns = cell && 'columns' in cell ? cell.columns : [];
  const column = columns.length > 0 ? chance.of(columns).id : 'none';
  const content: ValueContent = { type: 'number', unit: 'km', value: chance.below(9), control: 'field' };
  return chance.of<() => Edit>([
    () => make.entryEdit(document, id, column, chance.below(3), entry(chance)),
    () => make.valueEdit(document, id, content),
    () => make.formulaEdit(document, id, undefined, text(chance)),
    () => make.formulaEdit(document, id, column, text(chance)),
    () => make.addCell(document, freshCell(chance), chance.below(document.cells.length + 2)),
    () => make.removeCell(document, id),
    () => make.moveCell(document, id, chance.below(document.cells.length + 1)),
    () => make.addColumn(document, id, worked(chance.of(NAMES), text(chance)), chance.below(3)),
    () => make.removeColumn(document, id, column),
    () => make.moveColumn(document, id, column, chance.below(4)),
    () => make.addRows(document, id, chance.below(3), [{}, {}]),
    () => make.removeRows(document, id, chance.below(3), 1 + chance.below(2)),
    () => make.notebookEdit(document, 'title', chance.of(HOSTILE)),
    () => make.rename(document, id, undefined, chance.of(NAMES)),
    () => make.rename(document, id, column, chance.of(NAMES)),
  ])();
}

/** Every figure that is settled, as text. */
function figures(live: LiveNotebook): string {
  const nodes = live.document.cells.flatMap((cell) =>
    !('name' in cell) || cell.name === undefined
      ? []
      : 'columns' in cell
        ? cell.columns.map((column) => `${cell.name}.${column.name}`)
        : [cell.name],
  );
  return nodes
    .map((node) => {
      const state = live.read(node);
      return `${node}: ${state.state} ${state.state === 'settled' ? [...state.column.values].join(' ') : ''}`;
    })
    .join('\n');
}

async function oneSequence(chance: Chance): Promise<boolean> {
  const live = LiveNotebook.open(smallTrip());
  let applied = 0;
  try {
    const before = writeNotebookFile(live.document);
    for (let left = 12; left > 0; left--) {
      const held = live.document;
      try {
        if (applied > 0 && chance.once(6)) {
          if (live.undo()) applied--;
        } else {
          live.apply(someEdit(chance, live));
          applied++;
        }
      } catch (error) {
        if (!(error instanceof EditError)) throw error;
        if (live.document !== held) throw new Error('an edit that was refused has changed the notebook');
      }
    }
    await live.settled();
    const file = writeNotebookFile(live.document);
    const opened = readNotebookFile(file);
    if ('refusal' in opened) throw new Error(`edited into what cannot be opened: ${opened.refusal}`);
    const afresh = LiveNotebook.open(opened.document);
    await afresh.settled();
    const [kept, fresh] = [figures(live), figures(afresh)];
    afresh.dispose();
    if (kept !== fresh) throw new Error(`edited and opened afresh differ:\n${kept}\n--\n${fresh}`);
    while (live.canUndo) live.undo();
    if (writeNotebookFile(live.document) !== before) throw new Error('undone to the beginning, it differs');
  } finally {
    live.dispose();
  }
  return applied > 0;
}

test('random edits: all can be undone, saved and opened, and give the figures of a fresh start', {
  timeout: FUZZ_TIMEOUT_MS,
}, async () => {
  const report = await fuzz('Edit sequences of 12', { test: 400, whole: 20_000 }, oneSequence);
  expect(report.taken).toBeGreaterThan(report.cases / 2);
});

test('a cell removed and put back within one turn is worked out again', async () => {
  const live = LiveNotebook.open(smallTrip());
  await live.settled();
  live.apply(make.removeCell(live.document, 'day_value'));
  live.undo();
  await live.settled();
  expect(live.read('day_value')).toMatchObject({
    state: 'settled',
    column: { values: Float64Array.of(90) },
  });
  expect(live.read('waiting_cost')).toMatchObject({ state: 'settled' });
  live.dispose();
});
