import { describe, expect, it } from 'vitest';
import { unitShape } from '../../../cells/shared/unit-words.ts';
import { formRun } from '../../../cells/value/form-run.ts';
import { outsideLimits } from '../../../cells/value/value-limits.ts';
import type { Cell, ValueCell } from '../../../src/notebook/document.ts';

const value = (id: string, form?: string): ValueCell => ({
  kind: 'value',
  id,
  title: id,
  name: id,
  ...(form === undefined ? {} : { form }),
  content: { type: 'number', unit: 'EUR', value: 1, control: 'field' },
});
const note: Cell = { kind: 'note', id: 'n', title: 'n', text: '' };

describe('values on one card', () => {
  const cells = [value('a', 'Limits'), value('b', 'Limits'), note, value('c', 'Limits'), value('d')];

  it('are those that follow one another under one form', () => {
    expect(formRun(cells, 'a').map((cell) => cell.id)).toEqual(['a', 'b']);
    expect(formRun(cells, 'b').map((cell) => cell.id)).toEqual(['a', 'b']);
    expect(formRun(cells, 'c').map((cell) => cell.id)).toEqual(['c']);
  });

  it('stand alone without a form, and are none for another kind of cell', () => {
    expect(formRun(cells, 'd').map((cell) => cell.id)).toEqual(['d']);
    expect(formRun(cells, 'n')).toEqual([]);
    expect(formRun(cells, 'gone')).toEqual([]);
  });
});

describe('the lowest and highest of a value', () => {
  const content = { type: 'number', unit: 'EUR', value: 5, low: 0, high: 10, control: 'field' } as const;

  it('refuse what lies outside, with what would fit', () => {
    expect(outsideLimits(content, -3)).toEqual({
      reason: '−3 EUR is below 0 EUR, the lowest this value takes.',
      mend: 'Write 0 to 10 EUR.',
    });
    expect(outsideLimits(content, 11)?.reason).toBe('11 EUR is above 10 EUR, the highest this value takes.');
  });

  it('let their own ends, an empty field and what is no number stand', () => {
    expect(outsideLimits(content, 0)).toBeNull();
    expect(outsideLimits(content, 10)).toBeNull();
    expect(outsideLimits(content, null)).toBeNull();
    expect(outsideLimits({ type: 'yes_no', value: null }, true)).toBeNull();
  });
});

describe('the units of a formula in its own shape', () => {
  const units: Record<string, string> = { reach: 'km', harsh: '', rate: 'EUR/h', hours: 'h' };
  const shape = (formula: string): string | null =>
    unitShape(formula, (span) => units[formula.slice(span.from, span.to)]);

  it('are written with the signs of the formula', () => {
    expect(shape('reach * harsh')).toBe('km × plain number');
    expect(shape('(hours + hours) * rate')).toBe('(h + h) × EUR/h');
    expect(shape('3 km + reach')).toBe('km + km');
  });

  it('are left out where the formula is long, unknown or no sum and product', () => {
    expect(shape('reach + reach + reach + reach + reach')).toBeNull();
    expect(shape('unknown * harsh')).toBeNull();
    expect(shape('reach > 3 km')).toBeNull();
    expect(shape('3')).toBeNull();
  });
});
