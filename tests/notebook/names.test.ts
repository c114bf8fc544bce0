import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { freshId } from '../../src/notebook/fresh-id.ts';
import { cellNames, freeName, nameRefusal } from '../../src/notebook/names.ts';
import { sampleNotebook } from './sample.ts';

describe('names', () => {
  it.each(['a', 'front_pads', 'Km2', 'x_', 'a'.repeat(60)])('%s is plain', (name) => {
    expect(nameRefusal(name)).toBe(null);
  });

  it.each([
    ['', 'the name is empty; give it a plain word such as front_pads'],
    [
      'front pads',
      "'front pads' is not a plain name: letters, digits and underscores only, with a letter first",
    ],
    ['2nd', "'2nd' is not a plain name: letters, digits and underscores only, with a letter first"],
    ['a'.repeat(61), 'the name is 61 characters long; at most 60 are allowed'],
    ['prototype', "'prototype' cannot be used as a name; choose another word"],
    ['hasOwnProperty', "'hasOwnProperty' cannot be used as a name; choose another word"],
  ])('%j is refused with its reason', (name, reason) => {
    expect(nameRefusal(name)).toBe(reason);
  });

  it('can be made from any heading', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), fc.array(fc.string()), (heading, taken) => {
        const name = freeName(heading, new Set(taken));
        expect(nameRefusal(name)).toBe(null);
        expect(taken).not.toContain(name);
        expect(freeName(heading, new Set([...taken, name]))).not.toBe(name);
      }),
    );
  });

  it('are listed for the cells that have one', () => {
    const names = ['budget', 'season', 'wear', 'route', 'total_km', 'ride', 'decision'];
    expect(cellNames(sampleNotebook())).toEqual(new Set(names));
  });
});

describe('freshId', () => {
  it('never gives one id twice', () => {
    const ids = Array.from({ length: 1000 }, () => freshId('cell'));
    expect(new Set(ids).size).toBe(1000);
    for (const id of ids) expect(id).toMatch(/^cell-[0-9a-f]{12}$/);
  });
});
