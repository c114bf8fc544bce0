import { expect, test } from 'vitest';
import { atStake, byStake, firstParts, kindsOf } from '../../../cells/calls/calls-order.ts';
import { partWith, readingOf, withCosts } from './parts-and-calls.ts';

const THREE = [
  { part: 'Chain', costs: [309, 114, 128, 150, 118, 200] },
  { part: 'Fork seals', costs: [21, 60, 70, 80, 65, 90] },
  { part: 'Rear tyre', costs: [914, 144, 160, 200, 170, 180] },
];

test('at stake is the dearer of leaving and replacing over the best call', async () => {
  // By hand: the chain left costs 309, the best call 114; the seals are best left at 21, replacing costs 60.
  expect(atStake(await partWith(THREE[0]!))).toBe(195);
  expect(atStake(await partWith(THREE[1]!))).toBe(39);
  expect(atStake(await partWith({ part: 'Levers', costs: [44, null] }))).toBe(0);
});

test('parts with most at stake stand first', async () => {
  const { parts } = await readingOf(withCosts(THREE));
  expect(byStake(parts).map((part) => part.part)).toEqual(['Rear tyre', 'Chain', 'Fork seals']);
  expect(parts.map((part) => part.part)).toEqual(['Chain', 'Fork seals', 'Rear tyre']);
});

test('a part set by hand is among the first whatever is at stake', async () => {
  const { parts } = await readingOf(withCosts(THREE, { 'Fork seals': 'replace' }));
  expect(firstParts(byStake(parts), 2).map((part) => part.part)).toEqual(['Rear tyre', 'Fork seals']);
  expect(firstParts(byStake(parts), 3)).toHaveLength(3);
});

test('kinds stand in the order of the keys 1 to 5', async () => {
  const { parts } = await readingOf(withCosts(THREE));
  expect(kindsOf(parts)).toEqual(['leave', 'replace', 'carry', 'keep', 'way']);
});
