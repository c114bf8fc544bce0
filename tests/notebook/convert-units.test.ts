import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { applyEdit } from '../../src/notebook/apply-edit.ts';
import { convertMeasures, otherMeasure } from '../../src/notebook/convert-units.ts';
import type { EnteredColumn, NotebookDocument, TableCell } from '../../src/notebook/document.ts';
import { addCell, describe as describeLine, invert } from '../../src/notebook/edits.ts';
import { findCell } from '../../src/notebook/lookup.ts';
import { sampleNotebook } from './sample.ts';

const doc = sampleNotebook();

function column(document: NotebookDocument, id: string): EnteredColumn {
  for (const cell of document.cells) {
    if (cell.kind !== 'table') continue;
    const found = (cell as TableCell).columns.find((each) => each.id === id);
    if (found !== undefined && found.kind !== 'worked') return found;
  }
  throw new Error(`no column ${id}`);
}

describe('otherMeasure', () => {
  it.each([
    ['km', 'mi', 0],
    ['km/h', 'mi/h', 0],
    ['1/(1000 km)', '1/(1000 mi)', 0],
    ['mm/(1000 km)', 'mm/(1000 mi)', 0],
    ['L/(100 km)', 'galUS/(100 mi)', 0],
    ['L/100 km', 'galUS/100 mi', 0],
    ['EUR/km', 'EUR/mi', 0],
    ['EUR/kg', 'EUR/lb', 0],
    ['kg', 'lb', 0],
    ['L', 'galUS', 1],
    ['mm', 'inch', 2],
  ])('%s becomes %s, and back', (metric, imperial, extraDecimals) => {
    expect(otherMeasure(metric, 'imperial')).toEqual({ unit: imperial, extraDecimals });
    expect(otherMeasure(imperial, 'metric')).toEqual({
      unit: metric,
      extraDecimals: extraDecimals === 0 ? 0 : -extraDecimals,
    });
  });

  it.each(['', 'EUR', 'h', 'day', 'mmHg', 'LkmX', 'degC', 'EUR/h', 'mm^2'])('%s stays', (unit) => {
    expect(otherMeasure(unit, 'imperial')).toBe(null);
  });
});

describe('convertMeasures', () => {
  const imperial = applyEdit(doc, convertMeasures(doc, 'imperial'));

  it('converts entered columns and leaves what could not be read as it was typed', () => {
    // 1 mi = 1.609344 km and 1 in = 25.4 mm, exact (NIST SP 811, appendix B.8).
    expect(column(imperial, 'route-km')).toMatchObject({ unit: 'mi' });
    expect(column(imperial, 'route-km').entries.map(Number)).toEqual(
      [240 / 1.609344, 1310 / 1.609344].map((miles) => Number(miles.toPrecision(15))),
    );
    expect(column(imperial, 'wear-now')).toMatchObject({
      unit: 'inch',
      decimals: 3,
      entries: [3.1 / 25.4, 12 / 25.4, null].map((inch) =>
        inch === null ? null : Number(inch.toPrecision(15)),
      ),
    });
    expect(column(imperial, 'wear-rate')).toMatchObject({
      unit: '1/(1000 mi)',
      entries: [0.21 * 1.609344, 'n/a', 1.609344],
    });
    expect(column(imperial, 'wear-part')).toBe(column(doc, 'wear-part'));
  });

  it('shows worked columns and formulas in the other unit and leaves their formulas alone', () => {
    expect(findCell(imperial, 'total')).toEqual({ ...findCell(doc, 'total'), unit: 'mi' });
    expect((findCell(imperial, 'wear') as TableCell).columns.at(-1)).toMatchObject({
      unit: 'inch',
      formula: 'now * rate * budget / total_km',
    });
  });

  it('converts a value with its bounds', () => {
    const more = applyEdit(
      doc,
      addCell(
        doc,
        {
          id: 'p',
          kind: 'value',
          name: 'pack',
          title: 'Pack',
          content: {
            type: 'number',
            unit: 'kg',
            value: 10,
            low: 0,
            high: 20,
            step: 0.5,
            decimals: 1,
            control: 'slider',
          },
        },
        0,
      ),
    );
    const after = applyEdit(more, convertMeasures(more, 'imperial'));
    // 1 lb = 0.45359237 kg, exact (NIST SP 811, appendix B.8).
    const lb = (kg: number): number => Number((kg / 0.45359237).toPrecision(15));
    expect(findCell(after, 'p')).toMatchObject({
      content: { unit: 'lb', value: lb(10), low: 0, high: lb(20), step: lb(0.5), decimals: 1 },
    });
  });

  it('is one step that undoes to the very figures', () => {
    const edit = convertMeasures(doc, 'imperial');
    expect(describeLine(doc, edit)).toBe('Change to miles, inches, pounds and gallons');
    expect(applyEdit(imperial, invert(edit))).toEqual(doc);
  });

  it('comes back to the figures that people write', () => {
    const figure = fc.integer({ min: 0, max: 10_000_000 }).map((thousandths) => thousandths / 1000);
    fc.assert(
      fc.property(
        fc.array(figure, { minLength: 2, maxLength: 2 }),
        fc.constantFrom('km', 'kg', 'L', 'mm', '1/(1000 km)', 'L/(100 km)'),
        (entries, unit) => {
          const small: NotebookDocument = {
            ...doc,
            cells: [
              {
                id: 't',
                kind: 'table',
                name: 't',
                title: 'T',
                columns: [{ id: 'c', name: 'c', kind: 'number', unit, entries }],
              },
            ],
          };
          const there = applyEdit(small, convertMeasures(small, 'imperial'));
          expect(there).not.toEqual(small);
          const back = column(applyEdit(there, convertMeasures(there, 'metric')), 'c');
          expect(back.unit).toBe(unit);
          // Typed figures have at most seven digits here; fifteen are kept on the way.
          expect(back.entries.map((entry) => Number(Number(entry).toPrecision(13)))).toEqual(entries);
        },
      ),
    );
  });

  it('has nothing to do the second time', () => {
    expect(convertMeasures(imperial, 'imperial')).toHaveProperty('edits', []);
  });
});
