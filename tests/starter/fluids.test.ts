import { expect, test } from 'vitest';
import type { LiveNotebook } from '../../src/notebook/live-notebook.ts';
import { demo, figure, figures, texts, within, withValue } from './support.ts';

const yes = (notebook: LiveNotebook, node: string): boolean[] =>
  figures(notebook, node).map((one) => one === 1);

/** Stretches from one filling to the next, by plain counting: the legs of each. */
function stretches(filledAtEnd: readonly boolean[]): number[][] {
  const found: number[][] = [[]];
  filledAtEnd.forEach((filled, leg) => {
    found.at(-1)!.push(leg);
    if (filled && leg < filledAtEnd.length - 1) found.push([]);
  });
  return found;
}

const sum = (numbers: readonly number[]): number => numbers.reduce((all, one) => all + one, 0);

test('each departure from a pump needs the litres of all legs to the next one', async () => {
  await within(demo(), (notebook) => {
    const litres = figures(notebook, 'route.fuel');
    const leaving = figures(notebook, 'stops.fuel_leaving');
    const own = stretches(yes(notebook, 'stops.fuel'));
    expect(own.length).toBeGreaterThan(8);
    for (const legs of own) {
      const need = sum(legs.map((leg) => litres[leg]!));
      expect(Math.abs(leaving[legs[0]!]! - need)).toBeLessThan(1e-9);
      for (const leg of legs.slice(1)) expect(leaving[leg]).toBeNaN();
    }
    // Litres of all stretches are those of the trip.
    expect(Math.abs(sum(leaving.filter((one) => !Number.isNaN(one))) - sum(litres))).toBeLessThan(1e-9);
    const extra = Math.max(
      0,
      ...own.map(
        (legs) =>
          sum(legs.map((leg) => litres[leg]!)) -
          (figure(notebook, 'tank') - figure(notebook, 'tank_reserve')),
      ),
    );
    expect(Math.abs(figure(notebook, 'fuel_to_carry') - extra)).toBeLessThan(1e-9);
    expect(figure(notebook, 'fuel_to_carry')).toBeGreaterThan(0);
    expect(texts(notebook, 'fuel_gap')).toEqual(['none']);
  });
});

test('a stretch that tank and cans do not reach is named by its first leg, on every leg of it', async () => {
  await within(withValue(demo(), 'fuel_cans', 10), (notebook) => {
    const legs = texts(notebook, 'stops.leg');
    const says = texts(notebook, 'stops.says');
    const over = figures(notebook, 'stops.fuel_over');
    const named = legs.filter((_, row) => says[row] === 'out of range');
    expect(named).toEqual(legs.filter((_, row) => over[row]! > 10));
    expect(named.length).toBeGreaterThan(2);
    expect(texts(notebook, 'fuel_gap')).toEqual([named[0]]);
  });
});

test('water lasts from tap to tap with the days in reserve', async () => {
  await within(demo(), (notebook) => {
    const days = figures(notebook, 'stops.days');
    const leaving = figures(notebook, 'stops.water_leaving');
    const a = figure(notebook, 'water_a_day') * figure(notebook, 'riders');
    for (const legs of stretches(yes(notebook, 'stops.water'))) {
      const need = a * (sum(legs.map((leg) => days[leg]!)) + figure(notebook, 'water_reserve'));
      expect(Math.abs(leaving[legs[0]!]! - need)).toBeLessThan(1e-9);
    }
    expect(figure(notebook, 'water_to_carry')).toBe(Math.max(...leaving.filter((one) => !Number.isNaN(one))));
  });
});

test('oil to carry is what one trip in ten burns more than, less what the sump can spare', async () => {
  const oil = async (use: number, sump: number): Promise<[number, number]> => {
    let found: [number, number] = [Number.NaN, Number.NaN];
    await within(withValue(withValue(demo(), 'oil_use', use), 'oil_in_sump', sump), (notebook) => {
      const classes = texts(notebook, 'ride.wear_class');
      const reach = Math.max(
        ...figures(notebook, 'ride.reach').filter((_, row) => classes[row] === 'engine'),
      );
      // 1.28155: the 90% point of the standard normal distribution (NIST/SEMATECH e-Handbook 1.3.6.7.1).
      const burnt = use * Math.exp(1.28155 * figure(notebook, 'oil_spread')) * (reach / 1000);
      found = [figure(notebook, 'oil_to_carry'), Math.max(0, burnt - sump)];
    });
    return found;
  };
  const [carried, expected] = await oil(0.12, 0.5);
  expect(Math.abs(carried - expected)).toBeLessThan(1e-9);
  expect(carried).toBeGreaterThan(0.1);
  const [none] = await oil(0.02, 0.5);
  expect(none).toBe(0);
  const [more] = await oil(0.24, 0.5);
  expect(more).toBeGreaterThan(2 * carried);
});
