import { expect, test } from 'vitest';
import { LiveNotebook } from '../../../src/notebook/live-notebook.ts';
import { columnFigures } from '../../../src/shell/panel/column-figures.ts';
import { entered, notebook, table, worked } from '../../notebook/small-notebook.ts';

test('the figures of a column are listed with as many decimals all down', async () => {
  const live = LiveNotebook.open(
    notebook(
      table(
        'wear',
        entered('part', 'text', ['Chain', 'Rear pads', 'Fork oil']),
        entered('rate', 'number', [0.5, 0.25, 2], { unit: 'mm' }),
        worked('twice', 'rate * 2', 'mm'),
      ),
    ),
  );
  await live.settled();
  const figures = (node: string, rows: readonly number[] | null = null) =>
    columnFigures(live, node, rows).shown.map(({ figure }) => figure);
  expect(figures('wear.rate')).toEqual(['0.50', '0.25', '2.00']);
  expect(figures('wear.twice')).toEqual(['1.0', '0.5', '4.0']);
  // Some rows of it stand as they do among all.
  expect(figures('wear.rate', [2])).toEqual(['2.00']);
  expect(figures('wear.part')).toEqual(['Chain', 'Rear pads', 'Fork oil']);
});
