import type { NotebookDocument, TableCell } from '../../src/notebook/document.ts';

/** A small sound notebook with every kind of cell; made anew for each test. */
export function sampleNotebook(): NotebookDocument {
  const wear: TableCell = {
    id: 'wear',
    kind: 'table',
    name: 'wear',
    title: 'Wear',
    caution_column: 'critical',
    columns: [
      { id: 'wear-part', name: 'part', kind: 'text', entries: ['Front brake pads', 'Chain', 'Fork seals'] },
      { id: 'wear-now', name: 'now', kind: 'number', unit: 'mm', decimals: 1, entries: [3.1, 12, null] },
      { id: 'wear-rate', name: 'rate', kind: 'number', unit: '1/(1000 km)', entries: [0.21, 'n/a', 1] },
      { id: 'wear-critical', name: 'critical', kind: 'yes_no', entries: [true, true, false] },
      { id: 'wear-fitted', name: 'fitted', kind: 'date', entries: ['2026-01-05', null, '2025-11-30'] },
      {
        id: 'wear-worn',
        name: 'worn',
        kind: 'worked',
        unit: 'mm',
        formula: 'now * rate * budget / total_km',
      },
    ],
  };
  return {
    format: 'sparewell-notebook',
    version: 1,
    id: 'plateau',
    title: 'Plateau loop',
    gist: 'Three weeks, 6,000 km',
    money: 'EUR',
    cells: [
      { id: 'note', kind: 'note', title: 'What this is', text: 'Readings and *calls*.', caution: true },
      {
        id: 'budget',
        kind: 'value',
        name: 'budget',
        title: 'Budget',
        content: { type: 'number', unit: 'EUR', value: 480, low: 0, high: 2000, control: 'slider' },
      },
      {
        id: 'season',
        kind: 'value',
        name: 'season',
        title: 'Season',
        content: { type: 'choice', options: ['dry', 'wet'], value: 'dry' },
      },
      wear,
      {
        id: 'route',
        kind: 'table',
        name: 'route',
        title: 'Route',
        columns: [
          { id: 'route-leg', name: 'leg', kind: 'text', entries: ['Port Ansel', 'Salt Gate'] },
          { id: 'route-km', name: 'km', kind: 'number', unit: 'km', entries: [240, 1310] },
        ],
      },
      {
        id: 'total',
        kind: 'formula',
        name: 'total_km',
        title: 'Length',
        formula: 'sum(route.km)',
        unit: 'km',
      },
      {
        id: 'ride',
        kind: 'pairing',
        name: 'ride',
        title: 'Ride',
        left: 'wear',
        right: 'route',
        columns: [
          { id: 'ride-reach', name: 'reach', kind: 'worked', formula: 'running(km, part)' },
          { id: 'ride-cost', name: 'cost', kind: 'worked', formula: 'reach * wear.rate + budget' },
        ],
      },
      {
        id: 'tally',
        kind: 'tally',
        title: 'Tally',
        figures: [{ label: 'Length', figure: 'total_km', limit: 'budget' }],
      },
      {
        id: 'decision',
        kind: 'calls',
        name: 'decision',
        title: 'Calls',
        pairing: 'ride',
        part: 'part',
        call: 'leg',
        cost: 'cost',
        allowed: 'cost',
        reason: 'leg',
        critical: 'critical',
        pins: { 'Fork seals': 'replace' },
      },
    ],
  };
}

/** The sample as parsed JSON, with one place put wrong; undefined takes the field out. */
export function spoiled(path: readonly (string | number)[], value: unknown): unknown {
  const root: unknown = JSON.parse(JSON.stringify(sampleNotebook()));
  let held = root as Record<string | number, unknown>;
  for (const key of path.slice(0, -1)) held = held[key] as Record<string | number, unknown>;
  const last = path.at(-1)!;
  if (value === undefined) delete held[last];
  // Not by assignment: __proto__ must become a field of its own, as JSON.parse makes it.
  else Object.defineProperty(held, last, { value, enumerable: true, configurable: true, writable: true });
  return root;
}
