import type {
  Cell,
  EnteredColumn,
  Entry,
  NotebookDocument,
  WorkedColumn,
} from '../../src/notebook/document.ts';

/** Short makers of cells, so that a test shows the notebook it is about and little else. */
export function notebook(...cells: readonly Cell[]): NotebookDocument {
  return {
    format: 'sparewell-notebook',
    version: 1,
    id: 'small',
    title: 'Small trip',
    gist: '',
    money: 'EUR',
    cells,
  };
}

export function number(
  name: string,
  value: number | string | null,
  unit = '',
  bounds: { low?: number; high?: number } = {},
): Cell {
  return {
    kind: 'value',
    id: name,
    name,
    title: name,
    content: { type: 'number', unit, value, control: 'field', ...bounds },
  };
}

export function formula(name: string, text: string, unit?: string): Cell {
  return { kind: 'formula', id: name, name, title: name, formula: text, unit };
}

export function entered(
  name: string,
  kind: EnteredColumn['kind'],
  entries: readonly Entry[],
  more: Partial<EnteredColumn> = {},
): EnteredColumn {
  return { id: name, name, kind, entries, ...more };
}

export function worked(name: string, text: string, unit?: string): WorkedColumn {
  return { id: name, name, kind: 'worked', formula: text, unit };
}

export function table(name: string, ...columns: readonly (EnteredColumn | WorkedColumn)[]): Cell {
  return { kind: 'table', id: name, name, title: name, columns };
}

export function pairing(
  name: string,
  left: string,
  right: string,
  ...columns: readonly WorkedColumn[]
): Cell {
  return { kind: 'pairing', id: name, name, title: name, left, right, columns };
}

/** Two legs, two parts and what rides on them: the smallest notebook with every kind of link. */
export function smallTrip(): NotebookDocument {
  return notebook(
    number('day_value', 90, 'EUR/day'),
    table(
      'route',
      entered('leg', 'text', ['to Bitter Wells', 'to Lake Orun']),
      entered('km', 'number', [640, 910], { unit: 'km' }),
      entered('harshness', 'number', [1, 1.5]),
      worked('hard_km', 'km * harshness', 'km'),
    ),
    table(
      'wear',
      entered('part', 'text', ['chain', 'rear pads']),
      entered('now', 'number', [319, 2.9]),
      entered('rate', 'number', [0.3, 0.23], { unit: '1/(1000 km)' }),
    ),
    pairing(
      'ride',
      'wear',
      'route',
      worked('reach', 'running(hard_km, part)', 'km'),
      worked('worn', 'rate * reach'),
    ),
    formula('trip_km', 'sum(route.km)', 'km'),
    formula('most_worn', 'most(ride.worn)'),
    formula('waiting_cost', 'trip_km / (500 km/day) * day_value', 'EUR'),
  );
}
