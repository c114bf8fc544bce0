import type { Cell, NotebookDocument } from '../../../src/notebook/document.ts';
import { writeNotebookFile } from '../../../src/notebook/notebook-file.ts';
import { entered, formula, notebook, number, pairing, table, worked } from '../../notebook/small-notebook.ts';
import { type OpenAppOptions, type OpenedApp, withApp } from './open-app.ts';
import type { AppServer } from './server.ts';

/** Opens the app on a notebook of the test's own in place of the worked example: the page is there in a moment. */
export async function withNotebook(
  options: OpenAppOptions & { readonly server: AppServer },
  document: NotebookDocument,
  use: (app: OpenedApp) => Promise<void>,
): Promise<void> {
  await withApp({ ...options, example: () => writeNotebookFile(document) }, use);
}

/** Places along the way; each leg goes from one to the next. */
const PLACES = [
  ['Port', 'Ash', 'Bitter', 'Cold', 'Quill', 'Cairn', 'Hollow', 'Iron', 'Lake', 'Pale', 'Lantern', 'Mile'],
  ['Salt', 'Thorn', 'Saddle', 'Marrow', 'Windlass', 'Kestrel', 'Drift', 'Copper', 'Ember', 'Tannery'],
  ['Quarry', 'Paddock', 'Jetty', 'Far', 'Port again'],
].flat();
const LENGTHS = [260, 310, 240, 230, 250, 190, 270, 245, 180, 235, 210, 205, 195];

export const LEG_COUNT = PLACES.length - 1;
/** Columns of the legs, counted from 0. */
export const LEG = { name: 0, length: 1, spare: 2, surface: 3, start: 4, shop: 5, twice: 6 } as const;

const legs: Cell = {
  ...(table(
    'route',
    entered(
      'leg',
      'text',
      PLACES.slice(1).map((place, at) => `${PLACES[at]} to ${place}`),
      { title: 'Leg' },
    ),
    entered(
      'distance',
      'number',
      PLACES.slice(1).map((_, at) => LENGTHS[at % LENGTHS.length]! + 2 * Math.floor(at / LENGTHS.length)),
      { unit: 'km', title: 'Length' },
    ),
    entered(
      'spare',
      'number',
      PLACES.slice(1).map(() => null),
      { unit: 'mi', title: 'Round about' },
    ),
    entered(
      'surface',
      'choice',
      PLACES.slice(1).map((_, at) => ['sealed', 'gravel', 'sand'][at % 3]!),
      { options: ['sealed', 'gravel', 'sand'], title: 'Surface' },
    ),
    entered(
      'start',
      'date',
      PLACES.slice(1).map((_, at) => `2026-03-${String(at + 1).padStart(2, '0')}`),
      { title: 'Start' },
    ),
    entered(
      'shop',
      'yes_no',
      PLACES.slice(1).map((_, at) => at % 2 === 0),
      { title: 'Shop' },
    ),
    { ...worked('twice', 'distance * 2', 'km'), title: 'Twice' },
  ) as Extract<Cell, { kind: 'table' }>),
  title: 'Legs',
};

const wear: Cell = {
  ...table(
    'wear',
    entered('part', 'text', ['Drive chain', 'Brake fluid', 'Front tyre', 'Cable']),
    entered('now', 'number', [319.6, 2, 5.6, null], { unit_column: 'gauge' }),
    entered('gauge', 'text', ['mm', '%', 'mm', null], { title: 'In' }),
  ),
  title: 'Wear',
};

/** Values, legs with every kind of column, readings in units of their rows, and a long pairing of the two. */
export function legsNotebook(): NotebookDocument {
  const parts = Array.from({ length: 30 }, (_, at) => `Part ${at + 1}`);
  return {
    ...notebook(
      number('hour_value', 25, 'EUR/h'),
      legs,
      wear,
      { ...table('parts', entered('part', 'text', parts)), title: 'Parts' },
      {
        ...pairing('ride', 'parts', 'route', worked('step', 'distance * 1.5', 'km')),
        title: 'Where parts go',
      },
      { ...formula('way', 'sum(route.distance)', 'km'), title: 'The whole way' },
      { ...formula('work_cost', 'hour_value * 3 h', 'EUR'), title: 'Work in the shed' },
      { kind: 'tally', id: 'tally', title: 'In sight', figures: [{ label: 'The way', figure: 'way' }] },
    ),
    id: 'legs',
    title: 'Legs alone',
  };
}
