import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { NotebookDocument, TableColumn } from '../../src/notebook/document.ts';
import type { LiveNotebook } from '../../src/notebook/live-notebook.ts';
import { readNotebookFile, writeNotebookFile } from '../../src/notebook/notebook-file.ts';
import { defaultNotebook } from '../../src/starter/default-notebook.ts';
import { demo, entriesOf, figure, figures, opened, texts, tripFiles } from './support.ts';

const document = demo();

const columnsOf = (doc: NotebookDocument): { table: string; column: TableColumn }[] =>
  doc.cells.flatMap((cell) =>
    cell.kind === 'table' || cell.kind === 'pairing'
      ? cell.columns.map((column) => ({ table: cell.name, column }))
      : [],
  );

const formulas = (doc: NotebookDocument): { where: string; formula: string }[] => [
  ...columnsOf(doc).flatMap(({ table, column }) =>
    column.kind === 'worked' ? [{ where: `${table}.${column.name}`, formula: column.formula }] : [],
  ),
  ...doc.cells.flatMap((cell) =>
    cell.kind === 'formula' ? [{ where: cell.name, formula: cell.formula }] : [],
  ),
];

describe('the default notebook as a document', () => {
  it('is the same every time', () => {
    expect(defaultNotebook(tripFiles())).toEqual(document);
  });

  it('survives being saved and opened', () => {
    const read = readNotebookFile(writeNotebookFile(document));
    expect('document' in read ? read.document : read.refusal).toEqual(document);
  });

  it('is of the size it should be', () => {
    expect(entriesOf(document, 'route', 'leg').length).toBeGreaterThanOrEqual(24);
    expect(entriesOf(document, 'wear', 'part').length).toBeGreaterThanOrEqual(28);
    expect(entriesOf(document, 'prices', 'offer').length).toBeGreaterThanOrEqual(80);
    expect(new Set(entriesOf(document, 'prices', 'supplier')).size).toBe(4);
    expect(new Set(entriesOf(document, 'suppliers', 'currency')).size).toBeGreaterThanOrEqual(2);
    expect(new Set(entriesOf(document, 'severity', 'wear_class')).size).toBeGreaterThanOrEqual(7);
    expect(entriesOf(document, 'choices', 'call')).toEqual([
      'leave',
      'replace',
      'carry 1',
      'carry 2',
      'carry 3',
      'replace and keep old',
      'change on the way',
      'send out',
    ]);
  });

  it('holds no formula too long to read at a glance', () => {
    const long = formulas(document).filter(({ formula }) => formula.length > 160);
    expect(long).toEqual([]);
    expect(formulas(document).length).toBeGreaterThan(200);
  });

  it('gives every column a head of few words and every table a source or only its own sentences', () => {
    const wordy = columnsOf(document).filter(
      ({ column }) => (column.title ?? '').length === 0 || column.title!.length > 26,
    );
    expect(wordy.map(({ table, column }) => `${table}.${column.name}`)).toEqual([]);
    const tables = document.cells.filter((cell) => cell.kind === 'table' || cell.kind === 'pairing');
    expect(tables.filter((cell) => cell.source === undefined).map((cell) => cell.id)).toEqual(['reasons']);
  });

  it('never says that a part is safe, and sends critical ones to manual, rules and mechanic', () => {
    const words = JSON.stringify(document);
    expect(words).not.toMatch(/\bis safe\b|\bare safe\b|\bsafe to ride\b/i);
    const caution = document.cells.filter((cell) => cell.kind === 'note' && cell.caution);
    expect(caution.length).toBe(2);
    for (const cell of caution) {
      const text = cell.kind === 'note' ? cell.text : '';
      expect(text).toMatch(/manual/);
      expect(text).toMatch(/local (roadworthiness )?rules/);
      expect(text).toMatch(/licensed mechanic/);
    }
  });

  it('tells its legs and parts by their number', () => {
    const what = document.cells.find((cell) => cell.id === 'note_what');
    const text = what?.kind === 'note' ? what.text : '';
    expect(text).toContain(`${entriesOf(document, 'route', 'leg').length} legs`);
    expect(text).toContain(`${entriesOf(document, 'wear', 'part').length} fitted parts`);
  });

  it('names the file that is absent or ragged', () => {
    expect(() => defaultNotebook({})).toThrow('The trip file route.csv is not there.');
    const ragged = { ...tripFiles(), 'kits.csv': 'kit,part,pieces\nCable set,Clutch cable\n' };
    expect(() => defaultNotebook(ragged)).toThrow('kits.csv, line 2: 2 fields, the head has 3.');
  });
});

describe('the default notebook at work', () => {
  let notebook: LiveNotebook;
  beforeAll(async () => {
    notebook = await opened(document);
  });
  afterAll(() => notebook.dispose());

  it('opens without a fault', () => {
    expect(notebook.faults()).toEqual([]);
  });

  it('settles every formula and column', () => {
    const unsettled = formulas(document).filter(({ where }) => notebook.read(where).state !== 'settled');
    expect(unsettled).toEqual([]);
  });

  it('has a price for every part, and a call', () => {
    expect(figures(notebook, 'wear.landed_price').every((price) => price > 0)).toBe(true);
    expect(new Set(texts(notebook, 'decision.state'))).toEqual(new Set(['proposed']));
  });

  it('proposes all five kinds of call', () => {
    const calls = texts(notebook, 'decision.call').map((call) => call!.replace(/ \d$/, ''));
    expect(new Set(calls)).toEqual(
      new Set(['leave', 'replace', 'carry', 'replace and keep old', 'change on the way']),
    );
  });

  it('shows the state of things that it means to show', () => {
    const guard = texts(notebook, 'wear.guard');
    expect(guard).toContain('held back');
    expect(guard).toContain('due now');
    expect(guard).not.toContain('no call meets the limit');
    const byBest = figures(notebook, 'decision.best_by').filter((by) => by < 2);
    expect(byBest.length).toBeGreaterThanOrEqual(3);
    const inTime = figures(notebook, 'prices.in_time');
    expect(inTime).toContain(0);
  });

  it('keeps the demo within its limits, near some of them', () => {
    const share = (figureName: string, limit: string): number =>
      figure(notebook, figureName) / figure(notebook, limit);
    const shares = [
      share('parts_spending', 'cash_limit'),
      share('pack_mass', 'pack_mass_limit'),
      share('pack_volume', 'pack_volume_limit'),
      share('shed_time', 'shed_hours_limit'),
    ];
    expect(Math.max(...shares)).toBeLessThanOrEqual(1);
    expect(Math.max(...shares)).toBeGreaterThan(0.9);
    // 260 + 310 + ... + 190, the lengths of route.csv added by hand.
    expect(figure(notebook, 'whole_distance')).toBe(6060);
  });

  it('adds the totals up from the chosen calls', () => {
    const chosen = figures(notebook, 'calls.chosen');
    const sumOf = (column: string): number =>
      figures(notebook, `calls.${column}`).reduce(
        (sum, each, row) => (chosen[row] === 1 ? sum + each : sum),
        0,
      );
    expect(chosen.filter((each) => each === 1)).toHaveLength(entriesOf(document, 'wear', 'part').length);
    // Each call counts what comes off for it in full; together it is done once.
    const shared = figure(notebook, 'shared_time') * figure(notebook, 'hour_value');
    expect(shared).toBeGreaterThan(0);
    expect(figure(notebook, 'calls_cost')).toBeCloseTo(sumOf('expected') - shared, 8);
    expect(figure(notebook, 'expected_total')).toBeCloseTo(
      sumOf('expected') - shared + figure(notebook, 'trip_costs'),
      8,
    );
    expect(figure(notebook, 'calls_cost')).toBeCloseTo(
      figures(notebook, 'decision.cost').reduce((sum, each) => sum + each, -shared),
      8,
    );
    const strand = figures(notebook, 'calls.strand');
    const clear = strand.reduce(
      (product, each, row) => (chosen[row] === 1 ? product * (1 - each) : product),
      1,
    );
    expect(figure(notebook, 'recovery_chance')).toBeCloseTo(1 - clear, 12);
    const critical = figures(notebook, 'calls.critical');
    const gone = figures(notebook, 'calls.gives_up_judged');
    const hold = gone.reduce(
      (p, each, row) => (chosen[row] === 1 && critical[row] === 1 ? p * (1 - each) : p),
      1,
    );
    expect(figure(notebook, 'critical_chance')).toBeCloseTo(1 - hold, 12);
  });
});
