import { describe, expect, it } from 'vitest';
import type { Entry, NotebookDocument } from '../../src/notebook/document.ts';
import {
  byCall,
  demo,
  entriesOf,
  figure,
  figures,
  ofPart,
  texts,
  withColumn,
  within,
  withPartFigure,
  withValue,
} from './support.ts';

const document = demo();
const parts = entriesOf(document, 'wear', 'part') as readonly string[];

/** Chances of every leg and of lasting to the end, part by part. */
async function sumsToOne(doc: NotebookDocument): Promise<void> {
  await within(doc, (notebook) => {
    expect(notebook.faults()).toEqual([]);
    const names = texts(notebook, 'ride.part');
    const [p, still] = [figures(notebook, 'ride.p'), figures(notebook, 'ride.still_fit')];
    for (const part of parts) {
      const rows = names.flatMap((name, row) => (name === part ? [row] : []));
      const gone = rows.reduce((sum, row) => sum + p[row]!, 0);
      expect(Math.abs(gone + still[rows.at(-1)!]! - 1), part).toBeLessThan(1e-12);
      expect(Math.min(...rows.map((row) => p[row]!)), part).toBeGreaterThanOrEqual(-1e-15);
    }
  });
}

/** Every figure in euros, also behind a rate, times a factor; other money follows by its worth. */
function inOtherMoney(doc: NotebookDocument, factor: number): NotebookDocument {
  const money = (unit: string | undefined): boolean => unit !== undefined && /^EUR/.test(unit);
  const cells = doc.cells.map((cell) => {
    if (cell.kind === 'value' && cell.content.type === 'number' && money(cell.content.unit)) {
      return { ...cell, content: { ...cell.content, value: Number(cell.content.value) * factor, high: 1e9 } };
    }
    if (cell.kind !== 'table') return cell;
    const columns = cell.columns.map((column) =>
      column.kind === 'number' && money(column.unit)
        ? { ...column, entries: column.entries.map((entry) => Number(entry) * factor) }
        : column,
    );
    return { ...cell, columns };
  });
  return { ...doc, cells };
}

/** Leg `at` cut in two: `share` of it first, the same in all else; its end keeps the place and the shop. */
function withLegSplit(doc: NotebookDocument, at: number, share: number): NotebookDocument {
  const cells = doc.cells.map((cell) => {
    if (cell.kind !== 'table' || cell.name !== 'route') return cell;
    const columns = cell.columns.map((column) => {
      if (column.kind === 'worked') return column;
      const old = column.entries[at] ?? null;
      const pair: Entry[] =
        column.name === 'distance'
          ? [Number(old) * share, Number(old) * (1 - share)]
          : column.name === 'shop'
            ? [false, old]
            : column.name === 'leg'
              ? [`${old}, first part`, old]
              : [old, old];
      return { ...column, entries: column.entries.toSpliced(at, 1, ...pair) };
    });
    return { ...cell, columns };
  });
  return { ...doc, cells };
}

const relative = (actual: number, wanted: number): number =>
  Math.abs(actual - wanted) / Math.max(1, Math.abs(wanted));

describe('chances over the legs', () => {
  it('and the chance of lasting to the end sum to 1 for every part', async () => {
    await sumsToOne(document);
  });

  it('sum to 1 for parts past their limit, wearing down and wearing up', async () => {
    const down = withPartFigure(document, 'Front brake pads', 'now', 0.6);
    await sumsToOne(withPartFigure(down, 'Drive chain', 'now', 326));
  });

  it('put a part that is past its limit on the first leg, and bar leaving and carrying it', async () => {
    // The chain wears up, its reading error taken away, so that nothing is left to doubt.
    const past = withPartFigure(
      withPartFigure(document, 'Drive chain', 'now', 326),
      'Drive chain',
      'reading_error',
      0,
    );
    await within(past, (notebook) => {
      expect(ofPart(notebook, 'Drive chain', 'due_now')).toBe(1);
      const first = texts(notebook, 'ride.part').indexOf('Drive chain');
      expect(figures(notebook, 'ride.p')[first]).toBe(1);
      expect(byCall(notebook, 'Drive chain', 'allowed')).toEqual({
        leave: 0,
        replace: 1,
        'carry 1': 0,
        'carry 2': 0,
        'carry 3': 0,
        'replace and keep old': 0,
        'change on the way': 0,
        'send out': 0,
      });
    });
  });
});

describe('reach', () => {
  it('adds up when a leg is split', async () => {
    const whole = await within(document, (notebook) => figures(notebook, 'wear.reach_end'));
    for (const [leg, share] of [
      [0, 0.3],
      [9, 0.5],
      [25, 0.85],
    ] as const) {
      await within(withLegSplit(document, leg, share), (notebook) => {
        expect(notebook.faults()).toEqual([]);
        expect(notebook.rowsOf('route')).toBe(27);
        figures(notebook, 'wear.reach_end').forEach((reach, row) => {
          expect(relative(reach, whole[row]!), parts[row]).toBeLessThan(1e-13);
        });
      });
    }
  });

  it('leaves the chance of giving up at the end as it was when a leg is split', async () => {
    const whole = await within(document, (notebook) => figures(notebook, 'wear.gives_up'));
    await within(withLegSplit(document, 12, 0.4), (notebook) => {
      figures(notebook, 'wear.gives_up').forEach((chance, row) => {
        expect(Math.abs(chance - whole[row]!), parts[row]).toBeLessThan(1e-12);
      });
    });
  });
});

describe('money', () => {
  it('scales every cost with the currency and changes no call', async () => {
    const factor = 7.5;
    const plain = await within(document, (notebook) => ({
      costs: figures(notebook, 'calls.expected'),
      calls: texts(notebook, 'decision.call'),
      total: figure(notebook, 'expected_total'),
    }));
    await within(inOtherMoney(document, factor), (notebook) => {
      figures(notebook, 'calls.expected').forEach((cost, row) => {
        const wanted = plain.costs[row]!;
        if (Number.isNaN(wanted)) expect(cost).toBeNaN();
        else expect(relative(cost, factor * wanted)).toBeLessThan(1e-9);
      });
      expect(texts(notebook, 'decision.call')).toEqual(plain.calls);
      expect(relative(figure(notebook, 'expected_total'), factor * plain.total)).toBeLessThan(1e-9);
    });
  });

  it('follows the rate of exchange for what is priced in other money', async () => {
    const dearer = withColumn(document, 'rates_of_exchange', 'worth', (worth, row) =>
      row === 1 ? Number(worth) * 2 : worth,
    );
    const before = await within(document, (notebook) => figures(notebook, 'prices.net_each'));
    await within(dearer, (notebook) => {
      const suppliers = texts(notebook, 'prices.supplier');
      figures(notebook, 'prices.net_each').forEach((each, row) => {
        const times = suppliers[row] === 'Dray & Daughter' ? 2 : 1;
        expect(relative(each, times * before[row]!)).toBeLessThan(1e-12);
      });
    });
  });
});

describe('what must hold whatever the figures (section 13 of the model)', () => {
  it('a trip of length 0 with a spare on hand: carrying it costs what leaving costs', async () => {
    const stay = withColumn(document, 'route', 'distance', () => 0);
    await within(stay, (notebook) => {
      expect(notebook.faults()).toEqual([]);
      for (const part of [
        'Rear inner tube',
        'Rear brake pads',
        'Spark plug',
        'Bulbs and fuses',
        'Air filter',
      ]) {
        const cost = byCall(notebook, part, 'expected');
        expect(Math.abs(cost['carry 1']! - cost.leave!), part).toBeLessThan(1e-9);
      }
    });
  });

  it('with nothing lost on the road and full worth kept, the calls of a random part differ by freight alone', async () => {
    const free = ['hour_value', 'day_value', 'recovery_call_out', 'recovery_per_km', 'road_markup'].reduce(
      (doc, name) => withValue(doc, name, 0),
      document,
    );
    const kept = withValue(withValue(free, 'shelf_share', 1), 'old_share', 1);
    const ports = withColumn(kept, 'suppliers', 'freight', () => 0);
    for (const [doc, freightCounts] of [
      [kept, true],
      [ports, false],
    ] as const) {
      await within(doc, (notebook) => {
        const cost = byCall(notebook, 'Gear pedal', 'expected');
        const freight =
          ofPart(notebook, 'Gear pedal', 'landed_price') - ofPart(notebook, 'Gear pedal', 'home_price');
        expect(freight > 0).toBe(freightCounts);
        expect(Math.abs(cost.replace! - cost.leave!)).toBeLessThanOrEqual(freight + 1e-9);
        expect(Math.abs(cost['carry 1']! - cost.leave!)).toBeLessThanOrEqual(freight * 1.2 + 1e-9);
      });
    }
  });

  it('a worse reading or age never lowers what leaving costs, where every leg is as far from help', async () => {
    // From leg to leg the cost differs: a worse part may give up where it is cheap. So all legs alike here.
    const near = withColumn(document, 'route', 'help_distance', () => 200);
    const alike = withColumn(near, 'route', 'wait_days', () => 3);
    const worse: readonly [string, string, readonly number[]][] = [
      ['Rear brake pads', 'now', [3.9, 3.2, 2.5, 1.8, 1.2]],
      ['Engine oil and filter', 'now', [0, 900, 2500, 5000]],
      ['Clutch cable', 'age', [0, 9000, 27000, 50000]],
      ['Fork seals', 'age', [0, 8000, 16000, 40000]],
    ];
    for (const [part, column, steps] of worse) {
      for (const figureOf of ['on_road', 'expected']) {
        const costs: number[] = [];
        for (const step of steps) {
          const doc = withPartFigure(alike, part, column, step);
          costs.push(await within(doc, (notebook) => byCall(notebook, part, figureOf).leave!));
        }
        const rises = costs.slice(1).map((cost, at) => cost - costs[at]!);
        expect(Math.min(...rises), `${part}, ${figureOf}`).toBeGreaterThan(0.5);
      }
    }
  });

  it('freight is free from exactly the threshold on, not a cent below', async () => {
    const rateAt = (order: number) =>
      within(
        withColumn(document, 'suppliers', 'usual_order', (old, row) => (row === 0 ? order : old)),
        (notebook) => figures(notebook, 'suppliers.freight_rate')[0]!,
      );
    expect(await rateAt(150)).toBe(0);
    expect(await rateAt(149.99)).toBeCloseTo(9.5 / 149.99, 12);
  });
});
