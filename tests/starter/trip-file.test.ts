import { describe, expect, it } from 'vitest';
import { entered, folded, from, worked } from '../../src/starter/columns.ts';
import { columnOf, readTripFile, textsOf } from '../../src/starter/trip-file.ts';

const files = { 'a.csv': 'part,mass (kg),remark\nChain,1.7,"sealed, long"\nTube,,\n' };

describe('reading a trip file', () => {
  it('takes the unit from the brackets behind the name', () => {
    expect(readTripFile({ 'a.csv': 'part,mass (kg)\nChain,1.7\n' }, 'a.csv').columns[1]).toEqual({
      name: 'mass',
      unit: 'kg',
      texts: ['1.7'],
    });
    const rate = readTripFile({ 'b.csv': 'rate (1/(1000 km))\n0.4\n' }, 'b.csv').columns[0];
    expect([rate?.name, rate?.unit]).toEqual(['rate', '1/(1000 km)']);
  });

  it('gives the texts of a column, quoted fields whole', () => {
    const file = readTripFile(files, 'a.csv');
    expect(textsOf(file, 'part')).toEqual(['Chain', 'Tube']);
    expect(textsOf(file, 'remark')).toEqual(['sealed, long', '']);
    expect(file.rowCount).toBe(2);
  });

  it('names what is wrong', () => {
    expect(() => readTripFile(files, 'z.csv')).toThrow('The trip file z.csv is not there.');
    expect(() => readTripFile({ 'z.csv': '' }, 'z.csv')).toThrow(
      /^The trip file z\.csv cannot be read\. The file is empty/,
    );
    expect(() => columnOf(readTripFile(files, 'a.csv'), 'volume')).toThrow('a.csv has no column volume.');
  });
});

describe('columns', () => {
  it('leave an empty field empty, whatever the kind', () => {
    expect(entered('mass', 'number', ['1.7', ''], { unit: 'kg' }).entries).toEqual([1.7, null]);
    expect(entered('shop', 'yes_no', ['yes', 'no', '']).entries).toEqual([true, false, null]);
    expect(entered('day', 'date', ['2027-05-01', '']).entries).toEqual(['2027-05-01', null]);
  });

  it('keep the unit of the file and have their name as id', () => {
    const mass = from(readTripFile(files, 'a.csv'), 'mass', 'number', { title: 'Weight' });
    expect(mass).toEqual({
      id: 'mass',
      name: 'mass',
      kind: 'number',
      unit: 'kg',
      title: 'Weight',
      entries: [1.7, null],
    });
    expect(from(readTripFile(files, 'a.csv'), 'part', 'text').unit).toBeUndefined();
  });

  it('fold away without changing anything else', () => {
    const column = worked('twice', '2 * mass', { unit: 'kg' });
    expect(folded([column])).toEqual([{ ...column, folded: true }]);
  });
});
