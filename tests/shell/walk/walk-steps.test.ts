import { expect, test } from 'vitest';
import { walkSteps } from '../../../src/shell/walk/walk-steps.ts';
import { demo } from '../../starter/support.ts';

test('the walk over the worked example stops at seven places, each card one that is there', () => {
  const document = demo();
  const steps = walkSteps(document);
  expect(steps.map((step) => step.title)).toEqual([
    'The sum in sight',
    'Blue is yours',
    'Your readings',
    'Where it would hurt',
    'One call for each part',
    'On paper',
    'That is all',
  ]);
  const cells = steps.flatMap(({ at }) => (at !== null && typeof at === 'object' ? [at.cell] : []));
  expect(cells).toEqual(['today', 'wear', 'risk_map', 'decision', 'prep']);
  for (const cell of cells) expect(document.cells.some((one) => one.id === cell)).toBe(true);
});

test('a notebook without cards is walked in two stops', () => {
  expect(walkSteps({ ...demo(), cells: [] }).map((step) => step.at)).toEqual(['tally', null]);
});
