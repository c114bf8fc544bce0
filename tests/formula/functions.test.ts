import { describe, expect, test } from 'vitest';
import { FUNCTIONS } from '../../src/formula/functions/registry.ts';
import { SAMPLE, work } from './sample-scope.ts';

describe('every function of the reference', () => {
  for (const held of FUNCTIONS.values()) {
    test(`${held.name}: its example gives what it says`, () => {
      const { column } = work(held.example.formula, SAMPLE);
      const first = column.values[0];
      const { value } = held.example;
      if (typeof value === 'number') {
        const relative = ('relative' in held.example ? held.example.relative : undefined) ?? 1e-9;
        expect(Math.abs((first as number) - value)).toBeLessThanOrEqual(relative * Math.abs(value));
        // The tolerance can fail: a result 1% off is told apart.
        expect(Math.abs((first as number) * 1.01 - value)).toBeGreaterThan(
          value === 0 ? -1 : relative * Math.abs(value),
        );
      } else expect(column.kind === 'yes_no' ? first === 1 : first).toBe(value);
    });

    test(`${held.name}: says what it is, where it is defined and where it comes from`, () => {
      for (const text of [held.about, held.domain, held.source]) expect(text.length).toBeGreaterThan(5);
      for (const parameter of held.parameters) expect(parameter.about.length).toBeGreaterThan(3);
    });
  }
});
