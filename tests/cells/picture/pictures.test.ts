import { expect, test } from 'vitest';
import {
  bandDecimals,
  bandWords,
  pointWords,
  reachesLimit,
  readBand,
} from '../../../cells/picture/band-reading.ts';
import { readBars, rowsByWeight } from '../../../cells/picture/bars-reading.ts';
import { mapWords, readRisk, riskWords, wholePercent } from '../../../cells/picture/risk-reading.ts';
import type { PictureCell } from '../../../src/notebook/document.ts';
import type { LiveNotebook } from '../../../src/notebook/live-notebook.ts';
import { demo, figure, figures, texts, within } from '../../starter/support.ts';

const picture = (notebook: LiveNotebook, id: string): PictureCell =>
  notebook.document.cells.find((cell): cell is PictureCell => cell.kind === 'picture' && cell.id === id)!;

test('a reading along the road is that of its table, with its band on the right sides', async () => {
  await within(demo(), (notebook) => {
    const cell = picture(notebook, 'reading_picture');
    for (const one of ['Drive chain', 'Rear tyre']) {
      const band = readBand(notebook, { ...cell, one });
      const rows = texts(notebook, 'readings.part').flatMap((part, row) => (part === one ? [row] : []));
      expect(band.points.map((point) => point.middle)).toEqual(
        rows.map((row) => figures(notebook, 'readings.middle')[row]),
      );
      expect(band.points.map((point) => point.along)).toEqual(figures(notebook, 'route.km_done'));
      expect(band.points.map((point) => point.place)).toEqual(texts(notebook, 'route.end_place'));
      for (const point of band.points) {
        expect(point.low).toBeLessThanOrEqual(point.middle);
        expect(point.high).toBeGreaterThanOrEqual(point.middle);
      }
      const wear = texts(notebook, 'wear.part').indexOf(one);
      expect(band.limit).toBe(figures(notebook, 'wear.limit')[wear]);
      expect(band.unit).toBe('mm');
      // The last likely reading is what the table of wear expects at the trip's end.
      expect(band.points.at(-1)!.middle).toBeCloseTo(figures(notebook, 'wear.end_reading')[wear]!, 9);
    }
  });
});

test('only parts with a likely reading can be drawn, and the words tell where the limit is reached', async () => {
  await within(demo(), (notebook) => {
    const cell = picture(notebook, 'reading_picture');
    const band = readBand(notebook, { ...cell, one: 'no such part' });
    expect(band.one).toBe('Rear tyre');
    const legs = texts(notebook, 'wear.limit_leg');
    const parts = texts(notebook, 'wear.part');
    for (const one of band.names) {
      const drawn = readBand(notebook, { ...cell, one });
      const at = reachesLimit(drawn);
      const told = legs[parts.indexOf(one)]!;
      if (at === null) expect(told, one).toBe('no');
      else if (told !== 'before the start') expect(told, one).toMatch(new RegExp(` to ${at.place}$`));
    }
    expect(band.names).not.toContain('Rear inner tube');
    expect(bandWords(readBand(notebook, { ...cell, one: 'Drive chain' }))).toMatch(
      /^Drive chain: likely 319\.\d+ mm .*323\.9 mm is not likely to be reached\.$/,
    );
  });
});

test('a place is told in words with as many decimals as its band needs', () => {
  const band = {
    names: ['Chain'],
    one: 'Chain',
    points: [
      { row: 0, place: 'Lake Orun', along: 1990, middle: 320.4321, low: 320.2, high: 320.7 },
      { row: 1, place: 'Port Ansel', along: 6060, middle: 322.4, low: 321.6, high: 323.6 },
    ],
    limit: 323.9,
    unit: 'mm',
    alongUnit: 'km',
  };
  expect(bandDecimals(band)).toBe(2);
  expect(pointWords(band, band.points[0]!)).toBe(
    'Lake Orun, 1,990 km: likely 320.43 mm, eight in ten between 320.20 and 320.70; limit 323.9 mm',
  );
});

test('the map has every part on every leg, most at stake first, with the figures of the table', async () => {
  await within(demo(), (notebook) => {
    const map = readRisk(notebook, picture(notebook, 'risk_map'));
    expect([map.parts.length, map.legs.length]).toEqual([36, 26]);
    expect(map.legs.map((leg) => leg.name)).toEqual(texts(notebook, 'route.leg'));
    const called = readRisk(notebook, picture(notebook, 'risk_map'), 'called');
    const most = map.parts.map(({ name, cost }) =>
      Math.max(cost, called.parts.find((part) => part.name === name)!.cost),
    );
    expect(most).toEqual([...most].sort((a, b) => b - a));
    const [chance, cost, parts, legs] = [
      figures(notebook, 'ride.p'),
      figures(notebook, 'ride.leave_cost'),
      texts(notebook, 'ride.part'),
      texts(notebook, 'ride.leg'),
    ];
    for (const part of map.parts) {
      part.cells.forEach((cell, at) => {
        expect([parts[cell.row], legs[cell.row]]).toEqual([part.name, map.legs[at]!.name]);
        expect(cell.chance).toBe(chance[cell.row]);
        expect(cell.cost).toBe(cost[cell.row]);
        // A darker step never stands for less than a lighter one.
        if (cell.step > 0) expect(cell.cost).toBeGreaterThanOrEqual(map.bounds[cell.step - 1]!);
        if (cell.step < 5) expect(cell.cost).toBeLessThan(map.bounds[cell.step]!);
      });
    }
    const [first] = map.parts;
    const worst = map.parts.reduce((one, part) => (part.cost > one.cost ? part : one));
    expect(mapWords(map)).toMatch(
      new RegExp(`^36 parts on 26 legs\\. Most is at stake with ${worst.name}, `),
    );
    expect(riskWords(map, first!, map.legs[0]!, first!.cells[0]!)).toMatch(
      /help 40 km away: gives up here in/,
    );
  });
});

test('as called, what is at stake with each part is the cost on the road of its call', async () => {
  await within(demo(), (notebook) => {
    const cell = picture(notebook, 'risk_map');
    const map = readRisk(notebook, cell, 'called');
    expect([map.parts.length, map.legs.length]).toEqual([36, 26]);
    const [parts, chosen, road, calls] = [
      texts(notebook, 'calls.part'),
      figures(notebook, 'calls.chosen'),
      figures(notebook, 'calls.on_road'),
      texts(notebook, 'calls.call'),
    ];
    const kinds = new Set<string | null>();
    for (const part of map.parts) {
      const row = parts.findIndex((name, at) => name === part.name && chosen[at] === 1);
      kinds.add(calls[row]!);
      expect(part.cost, `${part.name}: ${calls[row]}`).toBeCloseTo(road[row]!, 6);
    }
    // All ways to add it up are met: left, fitted, fitted with the old one kept, carried, changed on the way.
    expect(kinds.size).toBeGreaterThanOrEqual(5);
    expect(mapWords(map)).toContain('as it is called');
    const left = readRisk(notebook, cell);
    const sum = (one: typeof map): number => one.parts.reduce((all, part) => all + part.cost, 0);
    expect(sum(map)).toBeLessThan(sum(left));
    // The two are compared by eye: the same rows, and the same shade for the same amount.
    expect(map.bounds).toEqual(left.bounds);
    expect(map.parts.map(({ name }) => name)).toEqual(left.parts.map(({ name }) => name));
    // Whichever of the two has most at stake.
    const { chance, cost, chance_called, cost_called } = cell.reads;
    const turned = { chance: chance_called, cost: cost_called, chance_called: chance, cost_called: cost };
    const other = readRisk(notebook, { ...cell, reads: { ...cell.reads, ...turned } as typeof cell.reads });
    expect(other.bounds).toEqual(left.bounds);
    expect(other.parts.map(({ name, cost: own }) => [name, own])).toEqual(
      map.parts.map(({ name, cost: own }) => [name, own]),
    );
  });
});

test.each([
  [0, 0],
  [0.0049, 0],
  [0.005, 1],
  [0.0312, 3],
  [1, 100],
  [Number.NaN, 0],
])('a chance of %d stands in its cell as %d, nought not being written', (chance, percent) => {
  expect(wholePercent(chance)).toBe(percent);
});

test('the bars of what the trip costs are the notebook’s figures, and add up to the expected total', async () => {
  await within(demo(), (notebook) => {
    const bars = readBars(notebook, picture(notebook, 'cost_picture'));
    expect(bars.measures.map((measure) => measure.unit)).toEqual(['EUR']);
    const own = bars.measures[0]!.bars;
    for (const bar of own) expect(bar.value).toBe(figure(notebook, bar.node));
    const sum = own.reduce((all, bar) => all + bar.value, 0);
    expect(Math.abs(sum - figure(notebook, 'expected_total'))).toBeLessThan(1e-6);
  });
});

test('the bars of what each part takes are the calls that stand, and add up to the totals', async () => {
  await within(demo(), (notebook) => {
    const bars = readBars(notebook, picture(notebook, 'share_picture'));
    const total = (node: string): number =>
      bars.measures.find((measure) => measure.node === node)!.bars.reduce((all, bar) => all + bar.value, 0);
    expect(total('calls.cash')).toBeCloseTo(figure(notebook, 'parts_spending'), 6);
    expect(total('calls.pack_kg')).toBeCloseTo(figure(notebook, 'pack_mass'), 8);
    expect(total('calls.pack_L')).toBeCloseTo(figure(notebook, 'pack_volume'), 8);
    // What comes off once for several parts counts with each of them.
    const shared = figures(notebook, 'jobs.saved').reduce((all, hours) => all + hours, 0);
    expect(shared).toBeGreaterThan(0);
    expect(total('calls.hours') - shared).toBeCloseTo(figure(notebook, 'shed_time'), 8);
    const cash = rowsByWeight(bars).map((at) => bars.measures[0]!.bars[at]!.value);
    expect(cash).toEqual([...cash].sort((a, b) => b - a));
  });
});
