import { expect, test } from 'vitest';
import { lastResult, median, ratio } from '../bench/support.ts';

/** A clock that only work moves on. */
function workClock() {
  let nowMs = 0;
  const turns: string[] = [];
  const work = (name: string, costMs: number) => () => {
    nowMs += costMs;
    turns.push(name);
    return name;
  };
  return { now: () => nowMs, turns, work };
}

test('the ratio is that of the times', async () => {
  const { now, work } = workClock();
  expect(await ratio('loop', work('c', 3), work('b', 2), { now })).toEqual({
    name: 'loop',
    candidateMs: 3,
    baselineMs: 2,
    ratio: 1.5,
  });
});

test('the two take turns and swap who goes first', async () => {
  const { now, work, turns } = workClock();
  await ratio('loop', work('c', 5), work('b', 5), { now, rounds: 3, warmUps: 1 });
  // One run each to find the sample size, one round of warm-up, three that count.
  expect(turns.join('')).toBe('cb' + 'bc' + 'cb' + 'bc' + 'cb');
  expect(lastResult()).toBe('b');
});

test('work that waits is timed to its end, and short work is repeated to fill a sample', async () => {
  const { now, work, turns } = workClock();
  const slow = work('s', 4);
  const result = await ratio('wait', async () => slow(), work('q', 0.5), { now, rounds: 1, warmUps: 0 });
  expect(result).toMatchObject({ candidateMs: 4, baselineMs: 0.5, ratio: 8 });
  // 1 + 2 + 4 runs until a sample lasts 2 ms, then the one that counts.
  expect(turns.filter((turn) => turn === 'q').length).toBe(1 + 2 + 4 + 4);
});

test('a hiccup does not move the median', () => {
  expect(median([1, 2, 900])).toBe(2);
  expect(median([4, 1, 3, 2])).toBe(2.5);
  expect(() => median([])).toThrow('There is no median of no values.');
});
