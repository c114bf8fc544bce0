import { describe, expect, test } from 'vitest';
import type { Entry } from '../../src/notebook/document.ts';
import { entryEdit, formulaEdit } from '../../src/notebook/edits.ts';
import { LiveNotebook } from '../../src/notebook/live-notebook.ts';
import { demo, texts } from './support.ts';

async function opened(): Promise<LiveNotebook> {
  const live = LiveNotebook.open(demo());
  await live.settled();
  return live;
}

function put(live: LiveNotebook, table: string, column: string, row: number, entry: Entry): void {
  live.apply(entryEdit(live.document, table, columnId(live, table, column), row, entry));
}

function columnId(live: LiveNotebook, table: string, column: string): string {
  const cell = live.document.cells.find((held) => held.kind === 'table' && held.name === table);
  const found = cell?.kind === 'table' ? cell.columns.find((held) => held.name === column) : undefined;
  if (found === undefined) throw new Error(`no column ${table}.${column}`);
  return found.id;
}

const partRow = (live: LiveNotebook, part: string): number => texts(live, 'wear.part').indexOf(part);

/** Calls of all parts but those named; a text for each that waits. */
function otherCalls(live: LiveNotebook, ...parts: readonly string[]): (string | null)[] {
  const state = live.read('decision.call');
  if (state.state !== 'settled') throw new Error(`decision.call is ${state.state}`);
  const names = texts(live, 'decision.part');
  return [...state.column.values].map(String).filter((_, row) => !parts.includes(names[row] ?? ''));
}

describe('a fault in the demo stays in its place', () => {
  test('a reading that is no number: its part waits, the others keep their calls', async () => {
    const live = await opened();
    const before = otherCalls(live, 'Drive chain');
    put(live, 'wear', 'now', partRow(live, 'Drive chain'), '319,6O');
    await live.settled();
    expect(live.faults().map((fault) => [fault.place.node, fault.message])).toEqual([
      ['wear.now', '"319,6O" is not a number.'],
    ]);
    expect(otherCalls(live, 'Drive chain')).toEqual(before);
    const state = live.read('decision.call');
    expect(
      state.state === 'settled' && [...(state.column.faults?.values() ?? [])].map((fault) => fault.root),
    ).toEqual(['wear.now']);
    expect(live.read('expected_total').state).toBe('waiting');
    live.undo();
    await live.settled();
    expect(live.faults()).toEqual([]);
    expect(live.read('expected_total').state).toBe('settled');
  });

  test('shape 0: its own sentence in its row, the others keep their calls', async () => {
    const live = await opened();
    const before = otherCalls(live, 'Fork seals');
    put(live, 'wear', 'shape', partRow(live, 'Fork seals'), 0);
    await live.settled();
    const messages = live.faults().map((fault) => fault.message);
    expect(messages.length).toBeGreaterThan(0);
    for (const message of messages) expect(message).toMatch(/shape is 0, it must be above 0/);
    expect(otherCalls(live, 'Fork seals')).toEqual(before);
  });

  test('no price from anyone: the part asks for one, the others keep their calls', async () => {
    const live = await opened();
    const before = otherCalls(live, 'Front tyre');
    texts(live, 'prices.fits').forEach((part, row) => {
      if (part === 'Front tyre') put(live, 'prices', 'price', row, null);
    });
    await live.settled();
    expect(texts(live, 'decision.state')[partRow(live, 'Front tyre')]).toBe('needs a price');
    expect(otherCalls(live, 'Front tyre')).toEqual(before);
    expect(live.faults()).toEqual([]);
  });

  test('a price that cannot be read waits with its part alone', async () => {
    const live = await opened();
    const row = texts(live, 'prices.fits').indexOf('Battery');
    const before = otherCalls(live, 'Battery');
    put(live, 'prices', 'price', row, 'POA');
    await live.settled();
    expect(live.faults().map((fault) => [fault.place.node, fault.place.row])).toEqual([
      ['prices.price', row],
    ]);
    expect(otherCalls(live, 'Battery')).toEqual(before);
  });

  test('a wrong unit, an unknown name and a circle each have their sentence; data and tables go on', async () => {
    const live = await opened();
    live.apply(formulaEdit(live.document, 'fuel_total', undefined, 'sum(route.fuel_cost) + whole_distance'));
    live.apply(formulaEdit(live.document, 'days_left', undefined, 'days_untill(cut_off)'));
    live.apply(formulaEdit(live.document, 'work_cost', undefined, 'calls_cost * 2'));
    await live.settled();
    const said = new Map(live.faults().map((fault) => [fault.place.node, fault.message]));
    expect(said.get('fuel_total')).toBe(
      'These cannot be added: sum(route.fuel_cost) is in EUR, whole_distance is in km.',
    );
    expect(said.get('days_left')).toBe('There is no function days_untill().');
    expect(said.get('work_cost')).toMatch(/^These figures need one another: .*work_cost needs calls_cost/);
    expect(texts(live, 'decision.state')).not.toContain(null);
    expect(live.read('recovery_chance').state).toBe('settled');
  });
});
