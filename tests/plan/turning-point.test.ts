import { expect, test } from 'vitest';
import { type Look, type TurnSearch, turningPoint } from '../../src/plan/turning-point.ts';

/** Costs of the best plan with the call and without it, each the least of some straight lines. */
type Line = readonly [start: number, slope: number];

const at = ([start, slope]: Line, figure: number): number => start + slope * figure;
const best = (lines: readonly Line[], figure: number): Line =>
  lines.reduce((least, line) => (at(line, figure) < at(least, figure) ? line : least));

function searchOver(
  withCall: readonly Line[],
  without: readonly Line[],
  now: number,
): [TurnSearch, Look, () => number] {
  let looks = 0;
  const lookNow = (figure: number): Look => {
    const chosen = best(withCall, figure);
    const other = best(without, figure);
    return {
      withCall: at(chosen, figure),
      without: at(other, figure),
      withCallAt: (value) => at(chosen, value),
      withoutAt: (value) => at(other, value),
    };
  };
  const search: TurnSearch = {
    now,
    least: 0,
    most: 1000,
    straight: true,
    step: 0.005,
    look: async (figure) => {
      looks += 1;
      return lookNow(figure);
    },
  };
  return [search, lookNow(now), () => looks];
}

test('two straight lines are solved for exactly, in one look and one behind it', async () => {
  const [search, first, looks] = searchOver([[10, 1]], [[40, 0]], 25); // 10 + 30 = 40
  expect(await turningPoint(search, first)).toEqual({ at: 30, side: 'above', because: 'cost' });
  expect(looks()).toBe(2);
});

test('below: a call that loses as the figure falls turns under it', async () => {
  const [search, first] = searchOver([[40, 0]], [[10, 1]], 50);
  expect(await turningPoint(search, first)).toEqual({ at: 30, side: 'below', because: 'cost' });
});

test('when another plan takes over on the way, its own line is followed', async () => {
  // With the call 2x, from 20 on 20 + x; without it 60: they meet at 40, not at 30.
  const [search, first] = searchOver(
    [
      [0, 2],
      [20, 1],
    ],
    [[60, 0]],
    10,
  );
  const turn = await turningPoint(search, first);
  expect(turn?.at).toBeCloseTo(40, 9);
});

test('when a third call takes over before the runner-up does, the turn is there', async () => {
  // With the call x; without it 60, or from below 4x - 60 falling under: 80 - x from 20 on. Meets x = 40.
  const [search, first] = searchOver(
    [[0, 1]],
    [
      [60, 0],
      [80, -1],
    ],
    10,
  );
  expect((await turningPoint(search, first))?.at).toBeCloseTo(40, 9);
});

test('parallel lines never turn, nor do lines that meet out of reach', async () => {
  for (const without of [
    [40, 1],
    [5000, 0],
  ] as const) {
    const [search, first] = searchOver([[10, 1]], [without], 25);
    expect(await turningPoint(search, first)).toBeNull();
  }
});

test('where the two only touch, nothing turns', async () => {
  // With the call x up to 40 and 80 - x from there: never above the 40 without it.
  const [search, first] = searchOver(
    [
      [0, 1],
      [80, -1],
    ],
    [[40, 0]],
    10,
  );
  expect(await turningPoint(search, first)).toBeNull();
});

test('where the call stops meeting the limits first, the turn is there and says so', async () => {
  const [search, first] = searchOver([[10, 1]], [[400, 0]], 25);
  const stopped: TurnSearch = {
    ...search,
    look: async (figure) => {
      const look = await search.look(figure);
      return figure <= 77 ? look : { ...look, withCall: Number.POSITIVE_INFINITY };
    },
  };
  const turn = await turningPoint(stopped, first);
  expect(turn).toMatchObject({ side: 'above', because: 'limit' });
  expect(Math.abs(turn!.at - 77)).toBeLessThanOrEqual(0.005);
});

test('a curve is halved down to where both cost the same', async () => {
  const [search, first] = searchOver([[0, 1]], [[0, 1]], 1);
  const curve = (rate: number): Look => ({
    withCall: rate ** 3,
    without: 10,
    withCallAt: (value) => value ** 3,
    withoutAt: () => 10,
  });
  const curved = { ...search, straight: false, look: async (rate: number) => curve(rate) };
  const turn = await turningPoint(curved, { ...first, ...curve(1) });
  expect(turn?.at).toBeCloseTo(10 ** (1 / 3), 6);
});
