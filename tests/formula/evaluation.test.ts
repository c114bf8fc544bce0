import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Fault, isFault } from '../../src/formula/fault.ts';
import { renameInFormula } from '../../src/formula/rename.ts';
import { columnDecimals, showFigure, showNumber, showUnit } from '../../src/formula/show.ts';
import {
  dates,
  faultOf,
  figure,
  numbers,
  run,
  type SampleNotebook,
  words,
  work,
  yesNos,
} from './sample-scope.ts';

const trip: SampleNotebook = {
  here: 'ride',
  tables: {
    ride: {
      part: words('chain', 'chain', 'pads', 'pads', null),
      km: numbers('km', 640, 910, 640, null, 10),
      cost: numbers('EUR', 10, 20, null, null, 5),
      shop: yesNos(true, false, true, true, false),
    },
    offers: {
      part: words('chain', 'pads', 'pads', 'tube'),
      price: numbers('EUR', 98, 29, 31, null),
      maker: words('a', 'b', 'c', 'a'),
    },
  },
  figures: { budget: numbers('EUR', 480), cut_off: dates('2027-04-20'), today: dates('2027-04-01') },
};

const column = (formula: string, unit?: string): readonly unknown[] => {
  const { values } = work(formula, trip, unit).column;
  return [...values].map((value) => (Number.isNaN(value) ? null : value));
};

describe('missing figures', () => {
  test('arithmetic and comparison pass them on', () => {
    expect(column('km * 2', 'km')).toEqual([1280, 1820, 1280, null, 20]);
    expect(column('km > 700 km')).toEqual([0, 1, 0, null, 0]);
  });

  test('and, or: what is settled without them stays settled', () => {
    expect(column('km > 5 km and shop')).toEqual([1, 0, 1, null, 0]);
    expect(column('km > 5000 km and shop')).toEqual([0, 0, 0, null, 0]);
    expect(column('km > 5000 km or shop')).toEqual([1, 0, 1, 1, 0]);
  });

  test('sum skips them and says how many; all missing gives missing; no rows give 0', () => {
    const { column: sum } = work('sum(ride.cost)', { ...trip, here: undefined });
    expect(sum.values[0]).toBe(35);
    expect(sum.skipped).toBe(2);
    expect(figure('sum(ride.cost)', { tables: { ride: { cost: numbers('EUR', null, null) } } })).toBeNaN();
    expect(figure('sum(ride.cost)', { tables: { ride: { cost: numbers('EUR') } } })).toBe(0);
  });

  test('or_else stands in, is_missing asks, missing writes', () => {
    expect(column('or_else(cost, 1 EUR)')).toEqual([10, 20, 1, 1, 5]);
    expect(column('is_missing(cost)')).toEqual([0, 0, 1, 1, 0]);
    expect(column('km > 700 km ? missing : cost')).toEqual([10, null, null, null, 5]);
    expect(column('shop ? "yes there" : missing')).toEqual([
      'yes there',
      null,
      'yes there',
      'yes there',
      null,
    ]);
  });
});

describe('columns', () => {
  test('total, most_of, least_of, count_of by key', () => {
    expect(column('total(ride.cost, ride.part, part)')).toEqual([30, 30, null, null, null]);
    expect(column('least_of(offers.price, offers.part, part)')).toEqual([98, 98, 29, 29, null]);
    expect(column('most_of(offers.price, offers.part, part)')).toEqual([98, 98, 31, 31, null]);
    expect(column('count_of(offers.price, offers.part, part)')).toEqual([1, 1, 2, 2, null]);
    expect(column('total(offers.price, offers.part, "fork")')).toEqual([0, 0, 0, 0, 0]);
    expect(column('total(offers.price, offers.part, part, offers.maker, "c")')).toEqual([0, 0, 31, 31, null]);
  });

  test('pick finds the one value; the key may be several', () => {
    expect(column('pick(offers.price, offers.part, "pads", offers.maker, "c")')).toEqual([
      31, 31, 31, 31, 31,
    ]);
    const picked = work('pick(offers.price, offers.part, part)', trip).column;
    expect([...(picked.faults?.keys() ?? [])]).toEqual([2, 3]);
    expect(picked.values[0]).toBe(98);
    expect(picked.values[4]).toBeNaN();
  });

  test('running and before start again for each group', () => {
    expect(column('running(km, part)')).toEqual([640, 1550, 640, null, null]);
    expect(column('running(km)')).toEqual([640, 1550, 2190, null, null]);
    expect(column('before(km, part)')).toEqual([null, 640, null, 640, null]);
    expect(column('before(part)')).toEqual([null, 'chain', 'chain', 'pads', 'pads']);
  });

  test('expressions of whole columns of one table can be folded', () => {
    expect(figure('sum(offers.price * 2)', { ...trip, here: undefined })).toBe(316);
    expect(figure('count(ride.shop)', { ...trip, here: undefined })).toBe(3);
    expect(figure('mean(ride.cost) to EUR', { ...trip, here: undefined })).toBeCloseTo(35 / 3, 12);
  });

  test('one figure fills a worked column, also behind a condition that is the same for all rows', () => {
    expect(column('budget')).toEqual([480, 480, 480, 480, 480]);
    expect(column('budget > 400 EUR ? 1 : km / (1 km)')).toEqual([1, 1, 1, 1, 1]);
    expect(figure('sum(budget > 400 EUR ? 2 : ride.km / (1 km))', { ...trip, here: undefined })).toBe(10);
  });
});

describe('faults of single rows', () => {
  const withFault: SampleNotebook = {
    here: 't',
    tables: {
      t: { part: words('a', 'a', 'b'), shape: numbers('', 1, 0, 2), use: yesNos(true, false, true) },
    },
  };

  test('a domain fault stays in its row', () => {
    const { column: left } = work('survival(0, 1, 2, shape)', withFault);
    // exp(-(1/2)^1) and exp(-(1/2)^2): the Weibull survival written out.
    expect(left.values[0]).toBeCloseTo(Math.exp(-0.5), 14);
    expect(left.values[2]).toBeCloseTo(Math.exp(-0.25), 14);
    expect([...(left.faults?.entries() ?? [])].map(([row, fault]) => [row, fault.kind])).toEqual([
      [1, 'domain'],
    ]);
  });

  test('the branch not taken does not count', () => {
    expect(work('shape == 0 ? 1 : survival(0, 1, 2, shape)', withFault).column.faults).toBeNull();
    expect(work('use ? 1 / shape : 7', withFault).column.faults).toBeNull();
  });

  test('a fold over a faulty row waits, and so does its group alone', () => {
    const faulty: SampleNotebook = {
      ...withFault,
      tables: {
        t: {
          ...withFault.tables?.t,
          bad: { type: numbers('').type, column: work('1 / shape', withFault).column },
        },
      },
    };
    const whole = run('sum(t.bad)', { ...faulty, here: undefined });
    expect(isFault(whole) && [whole.kind, whole.root]).toEqual(['waits', 't.bad']);
    const grouped = work('total(t.bad, t.part, part)', faulty).column;
    expect([...(grouped.faults?.keys() ?? [])]).toEqual([0, 1]);
    expect(grouped.values[2]).toBe(0.5);
  });
});

describe('faulty keys', () => {
  const use = {
    type: yesNos(true).type,
    column: {
      kind: 'yes_no',
      values: Float64Array.of(1, Number.NaN, 1, 0),
      faults: new Map<number, Fault>([[1, { kind: 'domain', message: 'x', place: { row: 1 } }]]),
    },
  } as const;
  const sample: SampleNotebook = {
    here: 'asked',
    tables: {
      held: { part: words('a', 'b', 'b', 'c'), use, kg: numbers('kg', 1, 2, 3, 4) },
      asked: { part: words('a', 'b', 'c') },
    },
  };

  test('a faulty key makes only the groups wait that its row could belong to', () => {
    const picked = work('pick(held.kg, held.part, part, held.use, true)', sample).column;
    expect(picked.values[0]).toBe(1);
    expect([...(picked.faults?.entries() ?? [])].map(([row, fault]) => [row, fault.kind])).toEqual([
      [1, 'waits'],
      [2, 'not-one-match'],
    ]);
    const totals = work('total(held.kg, held.part, part, held.use, true)', sample).column;
    expect([...(totals.faults?.keys() ?? [])]).toEqual([1]);
    expect([totals.values[0], totals.values[2]]).toEqual([1, 0]);
  });

  test('a key that only the faulty row could have waits too', () => {
    const only = run('total(held.kg, held.use, false, held.part, "b")', { ...sample, here: undefined });
    expect(isFault(only) && [only.kind, only.root]).toEqual(['waits', 'held.use']);
    expect(figure('total(held.kg, held.use, false, held.part, "a")', { ...sample, here: undefined })).toBe(0);
    // One figure with a fault stops the whole column that reads it, never its first row alone.
    const column = run('total(held.kg, held.use, false, held.part, "b") * 2', sample);
    expect(isFault(column) && column.root).toBe('held.use');
  });
});

describe('units and dates', () => {
  test('the result has the unit that was met, the usual one, or the declared one', () => {
    expect(work('budget / sum(ride.km)', { ...trip, here: undefined }).checked.type.unit?.text).toBe(
      'EUR/km',
    );
    expect(work('(2 km) * (3 km)').checked.type.unit?.text).toBe('km^2');
    expect(figure('0.23 mm / (1000 km) * (2000 km)')).toBeCloseTo(0.46, 12);
    expect(work('12 N * (2 m)', {}, 'lbf ft').column.values[0]).toBeCloseTo(24 / 1.3558179483314, 9);
  });

  test('a wear rate times a distance is a reading in plain numbers', () => {
    expect(figure('rate * (5200 km)', { figures: { rate: numbers('1/(1000 km)', 0.12) } })).toBeCloseTo(
      0.624,
      12,
    );
  });

  test('nought needs no unit', () => {
    expect(figure('budget > 0 ? 1 : 2', trip)).toBe(1);
    expect(figure('max(0, budget - 500 EUR)', trip)).toBe(0);
  });

  test('days between dates, and dates moved by days', () => {
    expect(figure('cut_off - today', trip)).toBe(19);
    expect(figure('days_until(cut_off)', trip)).toBe(19);
    expect(figure('cut_off + 2 day > today ? 1 : 0', trip)).toBe(1);
    expect(faultOf('cut_off + 2 km', trip).kind).toBe('kind');
  });

  test('scaling every unit scales nothing that is told (property)', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 1e4, noNaN: true }),
        fc.double({ min: 0.01, max: 2, noNaN: true }),
        (km, rate) => {
          const metric = figure('limit_chance(a, r, 0.3, x)', {
            figures: { a: numbers('mm', 0.8), r: numbers('mm/(1000 km)', rate), x: numbers('km', km) },
          });
          const imperial = figure('limit_chance(a, r, 0.3, x)', {
            figures: {
              a: numbers('in', 0.8 / 25.4),
              r: numbers('in/(1000 mi)', (rate / 25.4) * 1.609344),
              x: numbers('mi', km / 1.609344),
            },
          });
          expect(Math.abs(metric - imperial)).toBeLessThanOrEqual(1e-10);
        },
      ),
    );
  });
});

describe('renaming in formulas', () => {
  const renames = {
    name: (plain: string) => (plain === 'rate' ? 'wear_rate' : plain),
    member: (table: string, name: string) => [table === 'wear' ? 'fitted' : table, name] as const,
  };

  test('names and members change, blanks, texts, units and functions stay', () => {
    expect(renameInFormula('rate  * wear.rate + total(wear.rate, wear.part, "rate") / (3 km)', renames)).toBe(
      'wear_rate  * fitted.rate + total(fitted.rate, fitted.part, "rate") / (3 km)',
    );
  });

  test('a formula with a fault is renamed too', () => {
    expect(renameInFormula('rate * (wear.rate +', renames)).toBe('wear_rate * (fitted.rate +');
  });
});

describe('showing figures', () => {
  test('grouped, with a true minus, the same decimals when asked', () => {
    expect(showNumber(12345.678, 1)).toBe('12,345.7');
    expect(showNumber(-0.4, 0)).toBe('0');
    expect(showNumber(-12.5, 1)).toBe('−12.5');
    expect(showNumber(0.0004, 2)).toBe('<0.01');
    expect(showNumber(0)).toBe('0');
    expect(showNumber(Number.NaN)).toBe('–');
    expect(showNumber(0.012345)).toBe('0.01235');
  });

  test('units in words', () => {
    expect(showUnit('1/(1000 km)')).toBe('per 1,000 km');
    expect(showUnit('mm/(1000 km)')).toBe('mm per 1,000 km');
    expect(showUnit('EUR/kg')).toBe('EUR/kg');
  });

  test('each kind in its own way', () => {
    const shown = (sample: ReturnType<typeof numbers>): string => showFigure(sample.column, 0, sample.type);
    expect(shown(yesNos(true))).toBe('yes');
    expect(shown(dates('2027-04-20'))).toBe('2027-04-20');
    expect(shown(words(null))).toBe('–');
    expect(columnDecimals(numbers('', 1, 2.5, 3.25).column)).toBe(2);
  });
});
