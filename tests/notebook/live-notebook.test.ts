import { describe, expect, test } from 'vitest';
import type { ValueContent } from '../../src/notebook/document.ts';
import { entryEdit, formulaEdit, group, removeCell, rename, valueEdit } from '../../src/notebook/edits.ts';
import { LiveNotebook } from '../../src/notebook/live-notebook.ts';
import { entered, formula, notebook, number, pairing, smallTrip, table, worked } from './small-notebook.ts';

async function opened(document = smallTrip()): Promise<LiveNotebook> {
  const live = LiveNotebook.open(document);
  await live.settled();
  return live;
}

function values(live: LiveNotebook, node: string): readonly (number | string | null)[] {
  const state = live.read(node);
  if (state.state !== 'settled')
    throw new Error(`${node} is ${state.state}: ${'fault' in state ? state.fault.message : ''}`);
  return [...state.column.values];
}

const sentence = (live: LiveNotebook, node: string): string => {
  const state = live.read(node);
  return 'fault' in state ? state.fault.message : state.state;
};

describe('a notebook at work', () => {
  test('works out values, columns, pairings and formulas', async () => {
    const live = await opened();
    expect(values(live, 'route.hard_km')).toEqual([640, 1365]);
    expect(values(live, 'ride.reach')).toEqual([640, 2005, 640, 2005]);
    expect(values(live, 'ride.part')).toEqual(['chain', 'chain', 'rear pads', 'rear pads']);
    expect(values(live, 'trip_km')).toEqual([1550]);
    // 0.3 per 1,000 km over 2,005 km.
    expect(values(live, 'most_worn')[0]).toBeCloseTo(0.6015, 12);
    // 1,550 km at 500 km a day, 90 EUR a day.
    expect(values(live, 'waiting_cost')[0]).toBeCloseTo(279, 10);
    expect(live.faults()).toEqual([]);
  });

  test('works nothing out before it is to start, takes edits meanwhile, and then tells all at once', async () => {
    let start = (): void => undefined;
    const started = new Promise<void>((resolve) => {
      start = resolve;
    });
    const live = LiveNotebook.open(smallTrip(), null, started);
    const told: number[] = [];
    live.subscribe((change) => told.push(change.nodes.size));
    const cell = live.document.cells.find((each) => each.id === 'day_value') as { content: ValueContent };
    live.apply(valueEdit(live.document, 'day_value', { ...cell.content, value: 45 } as ValueContent));
    // Far more turns of the queue than the figures take.
    await new Promise((then) => setTimeout(then, 20));
    expect(live.read('route.hard_km').state).toBe('working');
    expect(live.read('waiting_cost').state).toBe('working');
    expect(live.rowsOf('route')).toBe(0);
    expect(live.faults()).toEqual([]);
    // What was entered is known as such; no formula has been looked at.
    expect(live.typeOf('route.km')).not.toBeNull();
    expect(live.typeOf('route.hard_km')).toBeNull();
    expect(live.working).toBeNull();
    expect(told).toEqual([0]);
    start();
    await live.settled();
    expect(live.typeOf('route.hard_km')).not.toBeNull();
    expect(live.links('route').feeds.length).toBeGreaterThan(0);
    expect(values(live, 'route.hard_km')).toEqual([640, 1365]);
    // 1,550 km at 500 km a day, 45 EUR a day.
    expect(values(live, 'waiting_cost')[0]).toBeCloseTo(139.5, 10);
    expect(told.length).toBe(2);
    expect(told[1]).toBeGreaterThan(10);
  });

  test('ended before its start, it begins nothing', async () => {
    let start = (): void => undefined;
    const live = LiveNotebook.open(
      smallTrip(),
      null,
      new Promise<void>((resolve) => {
        start = resolve;
      }),
    );
    live.dispose();
    start();
    await new Promise((then) => setTimeout(then, 5));
    expect(live.typeOf('route.hard_km')).toBeNull();
  });

  test('a table without rows has empty columns, whatever stands beside them in a formula', async () => {
    const live = await opened(
      notebook(
        table(
          'bare',
          entered('km', 'number', [], { unit: 'km' }),
          worked('far', 'km > 500 km ? "far" : "near"'),
          worked('hits', 'poisson_over(1, km / (1000 km))'),
        ),
        table('call', entered('spares', 'number', [0, 1])),
        pairing('both', 'bare', 'call', worked('over', 'poisson_over(spares, km / (1000 km))')),
        formula('all', 'sum(both.over)'),
      ),
    );
    expect(live.faults()).toEqual([]);
    expect(values(live, 'bare.far')).toEqual([]);
    expect(values(live, 'bare.hits')).toEqual([]);
    expect(values(live, 'both.over')).toEqual([]);
    expect(values(live, 'all')).toEqual([0]);
  });

  test('an edit computes what hangs on it and nothing else', async () => {
    const live = await opened();
    live.apply(entryEdit(live.document, 'route', 'harshness', 1, 2));
    const { recomputed } = await live.settled();
    expect([...recomputed].sort()).toEqual([
      'most_worn',
      'ride.reach',
      'ride.route.hard_km',
      'ride.worn',
      'route.hard_km',
      'route.harshness',
    ]);
    expect(values(live, 'ride.reach')).toEqual([640, 2460, 640, 2460]);
  });

  test('renaming a label or moving nothing computes nothing', async () => {
    const live = await opened();
    live.apply(group('nothing', []));
    expect((await live.settled()).recomputed).toEqual([]);
  });

  test('undo and redo bring figures back', async () => {
    const live = await opened();
    live.apply(entryEdit(live.document, 'route', 'km', 0, 1000));
    live.apply(formulaEdit(live.document, 'trip_km', undefined, 'sum(route.km) * 2'));
    await live.settled();
    expect(values(live, 'trip_km')).toEqual([3820]);
    live.undo();
    await live.settled();
    expect(values(live, 'trip_km')).toEqual([1910]);
    live.undo();
    await live.settled();
    expect(values(live, 'trip_km')).toEqual([1550]);
    expect(live.canUndo).toBe(false);
    live.redo();
    live.redo();
    await live.settled();
    expect(values(live, 'trip_km')).toEqual([3820]);
  });

  test('edits in quick succession leave the last figure standing', async () => {
    const live = await opened();
    for (let km = 1; km <= 50; km++) live.apply(entryEdit(live.document, 'route', 'km', 0, km));
    await live.settled();
    expect(values(live, 'trip_km')).toEqual([960]);
  });

  test('taking a cell out and putting it back settles each time', async () => {
    const live = await opened();
    live.apply(removeCell(live.document, 'ride'));
    await live.settled();
    expect(sentence(live, 'most_worn')).toBe('There is no table ride.');
    live.undo();
    await live.settled();
    expect(values(live, 'most_worn')[0]).toBeCloseTo(0.6015, 12);
    live.apply(rename(live.document, 'trip_km', undefined, 'whole_km'));
    await live.settled();
    expect(values(live, 'waiting_cost')[0]).toBeCloseTo(279, 10);
    expect(live.faults()).toEqual([]);
  });

  test('tells listeners of the edit, then of the new figures', async () => {
    const live = await opened();
    const told: string[] = [];
    live.subscribe((change) =>
      told.push(change.document ? `edit ${change.edit?.kind}` : [...change.nodes].sort().join()),
    );
    live.apply(entryEdit(live.document, 'route', 'km', 1, 900));
    await live.settled();
    expect(told[0]).toBe('edit entry');
    expect(told[1]).toContain('trip_km');
    expect(told).toHaveLength(2);
  });

  test('an edit that does not fit changes nothing', async () => {
    const live = await opened();
    const before = live.document;
    expect(() =>
      live.apply({ kind: 'entry', cell: 'route', column: 'km', row: 0, before: 1, after: 2 }),
    ).toThrow(/640|changed|now/);
    expect(live.document).toBe(before);
    expect(live.canUndo).toBe(false);
  });
});

describe('faults stay where they are', () => {
  test('a wrong unit shows in its cell, what reads it waits, the rest works', async () => {
    const live = await opened();
    live.apply(formulaEdit(live.document, 'trip_km', undefined, 'sum(route.km) + day_value'));
    await live.settled();
    expect(sentence(live, 'trip_km')).toBe(
      'These cannot be added: sum(route.km) is in km, day_value is in EUR/day.',
    );
    expect(sentence(live, 'waiting_cost')).toBe('Waits for trip_km.');
    expect(values(live, 'route.hard_km')).toEqual([640, 1365]);
    expect(live.faults().map((fault) => fault.place.node)).toEqual(['trip_km']);
  });

  test('an unknown name offers the nearest', async () => {
    const live = await opened();
    live.apply(formulaEdit(live.document, 'waiting_cost', undefined, 'trip_kn / (500 km/day) * day_value'));
    await live.settled();
    const state = live.read('waiting_cost');
    expect(sentence(live, 'waiting_cost')).toBe('There is no figure, column or unit called trip_kn.');
    expect(state.state === 'fault' && state.fault.fix).toEqual({
      label: 'Use trip_km',
      formula: 'trip_km / (500 km/day) * day_value',
    });
    expect(state.state === 'fault' && [state.fault.place.from, state.fault.place.to]).toEqual([0, 7]);
  });

  test('a circle names every figure round it', async () => {
    const live = await opened(
      notebook(
        formula('a', 'b + 1'),
        formula('b', 'c + 1'),
        formula('c', 'a + 1'),
        formula('d', 'a'),
        number('e', 4),
      ),
    );
    for (const node of ['a', 'b', 'c'])
      expect(sentence(live, node)).toMatch(/^These figures need one another: (. needs ., ){2}. needs .\.$/);
    expect(sentence(live, 'd')).toBe('Waits for a.');
    expect(values(live, 'e')).toEqual([4]);
  });

  test('an entry that is no number is a fault of its row; the other rows work', async () => {
    const live = await opened();
    live.apply(entryEdit(live.document, 'wear', 'rate', 1, '0,23O'));
    await live.settled();
    const faults = live.faults();
    expect(faults.map((fault) => [fault.place.node, fault.place.row, fault.message])).toEqual([
      ['wear.rate', 1, '"0,23O" is not a number.'],
    ]);
    const worn = live.read('ride.worn');
    expect(worn.state === 'settled' && [...(worn.column.faults?.keys() ?? [])]).toEqual([2, 3]);
    expect(values(live, 'ride.worn')[1]).toBeCloseTo(0.6015, 12);
    expect(sentence(live, 'most_worn')).toBe('Waits for wear.rate.');
    expect(values(live, 'trip_km')).toEqual([1550]);
  });

  test('an empty value is asked for by name', async () => {
    const live = await opened();
    const cell = live.document.cells[0] as { content: ValueContent };
    live.apply(valueEdit(live.document, 'day_value', { ...cell.content, value: null } as ValueContent));
    await live.settled();
    expect(sentence(live, 'day_value')).toBe('day_value is empty.');
    expect(sentence(live, 'waiting_cost')).toBe('Waits for day_value.');
  });

  test('a value below its least says so', async () => {
    const live = await opened(notebook(number('riders', 0, '', { low: 1 })));
    expect(sentence(live, 'riders')).toBe('0 is below 1, the least it can be.');
  });

  test('shape 0 is a fault of its row with its mend', async () => {
    const live = await opened(
      notebook(
        table(
          'wear',
          entered('part', 'text', ['fuse', 'bulb']),
          entered('shape', 'number', [1, 0]),
          worked('left', 'survival(0 km, 1000 km, 5000 km, shape)'),
        ),
      ),
    );
    const fault = live.faults()[0];
    expect(fault?.message).toBe('Survival(): shape is 0, it must be above 0.');
    expect(fault?.place).toMatchObject({ node: 'wear.left', row: 1 });
    expect(fault?.mend).toMatch(/shape/i);
    // exp(-1000/5000)
    expect(values(live, 'wear.left')[0]).toBeCloseTo(Math.exp(-0.2), 12);
  });

  test('a pairing past two million rows is refused with its count', async () => {
    const rows = Array.from({ length: 1500 }, (_, i) => i);
    const live = await opened(
      notebook(
        table('a', entered('x', 'number', rows)),
        table('b', entered('y', 'number', rows)),
        pairing('ab', 'a', 'b', worked('z', 'x + y')),
      ),
    );
    expect(sentence(live, 'ab.z')).toBe('Waits for ab.');
    expect(live.faults()[0]?.message).toBe('ab would have 2,250,000 rows; at most 2,000,000 are made.');
  });
});

describe('looking closer', () => {
  test('preview works a formula out without keeping it', async () => {
    const live = await opened();
    const before = live.document;
    const tried = live.preview('sum(route.km) / 2', { cell: 'trip_km', unit: 'mi' });
    expect('column' in tried && tried.column.values[0]).toBeCloseTo(775 / 1.609344, 9);
    const wrong = live.preview('sum(route.km', { cell: 'trip_km' });
    expect('fault' in wrong && wrong.fault.message).toMatch(
      /^This cannot be read: a closing bracket is missing/,
    );
    expect(live.document).toBe(before);
  });

  test('explain shows the figures of the row behind a formula, through a pairing too', async () => {
    const live = await opened();
    const worn = live.explain('ride.worn', 1);
    expect(worn.formula).toBe('rate * reach');
    expect(worn.terms.map((term) => [term.text, term.figure])).toEqual([
      ['rate', '0.3 per 1,000 km'],
      ['reach', '2,005 km'],
    ]);
    const rate = live.explain(worn.terms[0]?.node ?? '', worn.terms[0]?.row ?? 0);
    expect(rate).toMatchObject({ kind: 'entered', node: 'wear.rate', row: 0, figure: '0.3 per 1,000 km' });
  });

  test('links name the cells that feed a cell and those it feeds', async () => {
    const live = await opened();
    expect(live.links('ride')).toEqual({ fedBy: ['route', 'wear'], feeds: ['most_worn'] });
    expect(live.links('trip_km')).toEqual({ fedBy: ['route'], feeds: ['waiting_cost'] });
  });
});
