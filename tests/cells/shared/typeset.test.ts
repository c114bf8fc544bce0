import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { nameInType, typeset } from '../../../cells/shared/typeset.ts';
import { flatText } from './flat-text.ts';

const set = (formula: string): string => flatText(typeset(formula)).replace(/\s+/g, ' ').trim();

describe('a formula set in type', () => {
  it('lowers what stands after an underscore', () => {
    expect(nameInType('wear_end').values[0]).toBe('wear');
    expect(flatText(nameInType('left_over_worth'))).toBe('leftover worth');
  });

  it('uses the signs of print', () => {
    expect(set('a * b - c')).toBe('a×b−c');
    expect(set('a <= b and not c')).toBe('a≤bandnotc');
    expect(set('a != "gravel"')).toBe('a≠“gravel”');
  });

  it('sets brackets where the tree needs them, and only there', () => {
    expect(set('(a + b) * c')).toBe('(a+b)×c');
    expect(set('a + (b * c)')).toBe('a+b×c');
    expect(set('a - (b - c)')).toBe('a−(b−c)');
    expect(set('(a - b) - c')).toBe('a−b−c');
    expect(set('(-a) ^ 2')).toBe('(−a)2');
  });

  it('keeps a figure with its unit and a percentage as they were written', () => {
    expect(set('3000 km + reach')).toBe('3000 km+reach');
    expect(set('10% * price')).toBe('10 %×price');
  });

  it('says below a sum what it runs over, and names that table once', () => {
    expect(set('sum(route.km)')).toBe('Σroutekm');
    expect(set('sum(calls.chosen ? calls.cash : 0 EUR)')).toBe('Σcalls where chosencash');
    expect(set('1 - product(calls.chosen ? 1 - calls.strand : 1)')).toBe('1−Πcalls where chosen(1−strand)');
  });

  it('keeps the other branch of a sum that is not nought', () => {
    expect(set('sum(calls.chosen ? calls.cash : 5 EUR)')).toContain('otherwise');
  });

  it('lists the cases of a condition', () => {
    expect(set('a > 1 ? b : c > 2 ? d : 0')).toBe('bifa>1difc>20otherwise');
  });

  it('sets plainly what cannot be read, with the stretch at fault marked', () => {
    expect(set('a + * b')).toBe('a + * b');
    const marked = typeset('a + * b', { mark: { from: 4, to: 5 } });
    expect(marked.strings.join('')).toContain('class="clash"');
    expect(flatText(marked)).toBe('a + * b');
  });

  it('puts figures in the place of names', () => {
    const figures = new Map([
      [0, '2.9'],
      [6, '4'],
    ]);
    const result = typeset('rate * reach_km', { inPlace: (span) => figures.get(span.from) });
    expect(flatText(result).trim()).toBe('2.9×reachkm');
  });

  it('never throws, whatever is typed', () => {
    fc.assert(
      fc.property(fc.string(), (text) => {
        expect(typeof flatText(typeset(text, { mark: { from: 0, to: 2 } }))).toBe('string');
      }),
    );
  });
});
