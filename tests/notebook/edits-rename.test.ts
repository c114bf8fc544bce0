import { describe, expect, it } from 'vitest';
import { applyEdit } from '../../src/notebook/apply-edit.ts';
import type {
  CallsCell,
  FormulaCell,
  NotebookDocument,
  PairingCell,
  TableCell,
  TallyCell,
} from '../../src/notebook/document.ts';
import { addCell, addColumn, formulaEdit, invert, rename } from '../../src/notebook/edits.ts';
import { columnNamed, findCell } from '../../src/notebook/lookup.ts';
import { sampleNotebook } from './sample.ts';

const doc = sampleNotebook();

function renamed(
  cellId: string,
  columnId: string | undefined,
  name: string,
  document = doc,
): NotebookDocument {
  const edit = rename(document, cellId, columnId, name);
  const after = applyEdit(document, edit);
  expect(applyEdit(after, invert(edit))).toEqual(document);
  return after;
}

function formulaOf(document: NotebookDocument, cellId: string, column?: string): string {
  const cell = findCell(document, cellId)!;
  if (column === undefined) return (cell as FormulaCell).formula;
  const found = columnNamed(cell, column);
  return found?.kind === 'worked' ? found.formula : '';
}

describe('rename', () => {
  it('of a value rewrites formulas, and the tally that shows it', () => {
    const after = renamed('budget', undefined, 'cash');
    expect(formulaOf(after, 'wear', 'worn')).toBe('now * rate * cash / total_km');
    expect(formulaOf(after, 'ride', 'cost')).toBe('reach * wear.rate + cash');
    expect((findCell(after, 'tally') as TallyCell).figures).toEqual([
      { label: 'Length', figure: 'total_km', limit: 'cash' },
    ]);
  });

  it('of a table rewrites members, the pairing and, for a pairing, the calls', () => {
    const wear = renamed('wear', undefined, 'fitted');
    expect(formulaOf(wear, 'ride', 'cost')).toBe('reach * fitted.rate + budget');
    expect(findCell(wear, 'ride')).toMatchObject({
      left: 'fitted',
      right: 'route',
    } satisfies Partial<PairingCell>);
    const ride = renamed('ride', undefined, 'risk');
    expect(findCell(ride, 'decision')).toMatchObject({ pairing: 'risk' } satisfies Partial<CallsCell>);
  });

  it('of a column rewrites its own table, pairings over it, members, calls and the caution column', () => {
    const rate = renamed('wear', 'wear-rate', 'per_1000');
    expect(formulaOf(rate, 'wear', 'worn')).toBe('now * per_1000 * budget / total_km');
    expect(formulaOf(rate, 'ride', 'cost')).toBe('reach * wear.per_1000 + budget');
    const part = renamed('wear', 'wear-part', 'item');
    expect(formulaOf(part, 'ride', 'reach')).toBe('running(km, item)');
    expect(findCell(part, 'decision')).toMatchObject({ part: 'item', call: 'leg' });
    const critical = renamed('wear', 'wear-critical', 'unsafe_if_worn');
    expect(findCell(critical, 'wear')).toMatchObject({
      caution_column: 'unsafe_if_worn',
    } satisfies Partial<TableCell>);
    expect(findCell(critical, 'decision')).toMatchObject({ critical: 'unsafe_if_worn' });
    const cost = renamed('ride', 'ride-cost', 'risk_cost');
    expect(findCell(cost, 'decision')).toMatchObject({ cost: 'risk_cost', allowed: 'risk_cost' });
  });

  it('reads a parent column through the pairing', () => {
    const reading = applyEdit(doc, formulaEdit(doc, 'total', undefined, 'sum(ride.km) + sum(route.km)'));
    expect(formulaOf(renamed('route', 'route-km', 'length', reading), 'total')).toBe(
      'sum(ride.length) + sum(route.length)',
    );
  });

  it('leaves the same word alone where it means something else', () => {
    const more = applyEdit(
      doc,
      addColumn(doc, 'route', { id: 'rb', name: 'budget', kind: 'number', entries: [] }, 2),
    );
    const both = applyEdit(
      more,
      addColumn(more, 'route', { id: 'rx', name: 'x', kind: 'worked', formula: 'budget * 2' }, 3),
    );
    const after = applyEdit(both, rename(both, 'budget', undefined, 'cash'));
    expect(formulaOf(after, 'route', 'x')).toBe('budget * 2');
    // In the pairing, `budget` is the parent's column before it is the value.
    expect(formulaOf(after, 'ride', 'cost')).toBe('reach * wear.rate + budget');
    expect(formulaOf(after, 'wear', 'worn')).toBe('now * rate * cash / total_km');
  });

  it('leaves text, units and functions of the same word alone', () => {
    const cell: FormulaCell = {
      id: 'f',
      kind: 'formula',
      name: 'f',
      title: 'F',
      formula: 'season == "budget" ? 3000 km : sum(route.km)',
    };
    const more = applyEdit(doc, addCell(doc, cell, 9));
    const after = applyEdit(more, rename(more, 'budget', undefined, 'cash'));
    expect(formulaOf(after, 'f')).toBe(cell.formula);
    const km = applyEdit(more, rename(more, 'route', 'route-km', 'length'));
    expect(formulaOf(km, 'f')).toBe('season == "budget" ? 3000 km : sum(route.length)');
  });

  it('goes on when a formula cannot be read', () => {
    const broken = applyEdit(doc, formulaEdit(doc, 'total', undefined, 'sum(route.km) + ('));
    const after = applyEdit(broken, rename(broken, 'budget', undefined, 'cash'));
    expect(formulaOf(after, 'total')).toBe('sum(route.km) + (');
  });

  it('refuses the name of a unit that a formula reads as one', () => {
    const rate = applyEdit(doc, formulaEdit(doc, 'total', undefined, 'sum(route.km) / (500 km/day)'));
    expect(() => rename(rate, 'budget', undefined, 'day')).toThrow(
      "'day' would come to mean another figure; choose another name.",
    );
  });

  it('is one step, and none when the name is the same', () => {
    expect(rename(doc, 'budget', undefined, 'cash').kind).toBe('group');
    expect(rename(doc, 'budget', undefined, 'budget')).toEqual({
      kind: 'group',
      label: 'Rename budget to budget',
      edits: [],
    });
  });

  it.each<[string, string, string | undefined, string, string]>([
    ['a name that is taken', 'budget', undefined, 'wear', "another cell is named 'wear' already"],
    ['a column name that is taken', 'wear', 'wear-now', 'rate', "'wear' has a column 'rate' already"],
    ['a name that is not plain', 'budget', undefined, 'my cash', "'my cash' is not a plain name"],
    ['a hostile name', 'wear', 'wear-now', 'constructor', "'constructor' cannot be used as a name"],
    ['a cell without a name', 'note', undefined, 'words', 'has no name that formulas read'],
    ['a cell that is gone', 'gone', undefined, 'x', 'no longer in the notebook'],
    [
      'a value that a column would hide',
      'budget',
      undefined,
      'rate',
      "in column 'worn' of 'wear', 'rate' would come to mean another figure",
    ],
    [
      'a column that would hide a value',
      'wear',
      'wear-now',
      'budget',
      "in column 'worn' of 'wear', 'budget' would come to mean another figure",
    ],
  ])('refuses %s with a sentence', (_, cell, column, name, sentence) => {
    expect(() => rename(doc, cell, column, name)).toThrow(sentence);
  });
});
