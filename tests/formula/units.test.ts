import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import Papa from 'papaparse';
import { describe, expect, test } from 'vitest';
import { FormulaFault } from '../../src/formula/fault.ts';
import { parseUnit, tryUnit } from '../../src/formula/unit-text.ts';
import { faultOf, figure, numbers, words } from './sample-scope.ts';

interface Check {
  readonly id: string;
  readonly inputs: string;
  readonly expected: string;
  readonly tolerance: string;
  readonly source: string;
}

const text = readFileSync(new URL('./check-values.csv', import.meta.url), 'utf8');
const CHECKS = Papa.parse<Check>(text, { header: true, skipEmptyLines: true }).data;

/** Check rows are written for people; a few names are written as the language writes them. */
function asFormula(check: Check): string {
  if (check.id.startsWith('CHN')) return chainFormula(check);
  return check.inputs
    .replace('lbf ft', 'lbf * (1 ft)')
    .replace('lbf in', 'lbf * (1 in)')
    .replace('kgf m ', 'kgf * (1 m) ')
    .replace('US fl oz', 'floz')
    .replace('kgf/cm2', 'kgf/cm^2')
    .replace('1 mm/(1000 km)', '1 mm / (1000 km) / (1/km) / (1 km)');
}

/** The first digit of a chain's number counts its pitch in eighths of an inch (3.175 mm): source in the row. */
function chainFormula(check: Check): string {
  const numbered = /^chain=(\d)/.exec(check.inputs);
  if (numbered !== null) return `${numbered[1]} * (3.175 mm) to mm`;
  const held = Object.fromEntries(check.inputs.split(';').map((pair) => pair.split('=') as [string, string]));
  return `${held.links ?? held.pitches} * (${held.pitch} mm) to mm`;
}

function within(found: number, check: Check): boolean {
  const expected = Number(check.expected);
  const [how, size] = check.tolerance.split(':') as [string, string?];
  // A double holds about 16 figures: exact is to its last place.
  if (how === 'exact') return Math.abs(found - expected) <= 4e-16 * expected;
  return Math.abs(found - expected) <= (how === 'rel' ? Number(size) * Math.abs(expected) : Number(size));
}

describe('conversions agree with published factors (source beside each in check-values.csv)', () => {
  for (const check of CHECKS) {
    test(`${check.id}: ${check.inputs} is ${check.expected}`, () => {
      expect(check.source.length).toBeGreaterThan(5);
      const found =
        check.id === 'UNIT-16'
          ? figure('rate', { figures: { rate: numbers('mm/(1000 km)', 1) } }, 'in/(1000 mi)')
          : figure(asFormula(check));
      expect(within(found, check)).toBe(true);
      expect(within(found * 1.01, check)).toBe(false);
    });
  }

  test('every row of the file is tried', () => {
    expect(CHECKS).toHaveLength(24);
  });
});

describe('units', () => {
  test('a space binds closer than the slash, so L/100 km is litres per 100 km', () => {
    expect(parseUnit('L/100 km').factor).toBe(1e-3 / 1e5);
    expect(parseUnit('mm/(1000 km)')).toMatchObject({
      dimensions: [0, 0, 0, 0, 0, 0, 0, 0, 0, 0],
      factor: 1e-9,
    });
  });

  test('what is no unit is refused by name', () => {
    for (const bad of [
      'kmm',
      '3',
      'km/',
      '(km',
      'km)',
      'km^9',
      '__proto__',
      'constructor',
      'x'.repeat(80),
      'km;alert',
    ]) {
      const held = bad === '3' ? null : tryUnit(bad);
      expect(held).toBeNull();
    }
    expect(() => parseUnit('klm')).toThrow(FormulaFault);
    expect(() => parseUnit('klm')).toThrow(/klm is no unit; km is near/);
  });

  test('there and back is the same figure (property)', () => {
    const pairs = [
      ['km', 'mi'],
      ['mm', 'in'],
      ['kg', 'lb'],
      ['L', 'galUK'],
      ['degF', 'degC'],
      ['mpgUS', 'L/100 km'],
    ] as const;
    fc.assert(
      fc.property(
        fc.constantFrom(...pairs),
        fc.double({ min: 0.001, max: 1e6, noNaN: true }),
        ([from, to], value) => {
          const there = figure(
            'x',
            { figures: { x: numbers(from, value) } },
            from === 'mpgUS' ? undefined : to,
          );
          if (from === 'mpgUS') {
            const turned = figure(`x to ${to}`, { figures: { x: numbers(from, value) } });
            expect(figure('y to mpgUS', { figures: { y: numbers(to, turned) } })).toBeCloseTo(value, 6);
          } else
            expect(
              Math.abs(figure('y', { figures: { y: numbers(to, there) } }, from) - value),
            ).toBeLessThanOrEqual(1e-9 * Math.max(1, value));
        },
      ),
    );
  });

  test('currencies are one dimension and convert through the rates of exchange', () => {
    const rates = { currency: words('USD', 'AUD'), worth: numbers('EUR', 0.92, 0.6) };
    const sample = {
      tables: { rates_of_exchange: rates },
      figures: { price: numbers('USD', 50), other: numbers('AUD', 100) },
    };
    expect(figure('price + 4 EUR', sample, 'EUR')).toBeCloseTo(50, 12);
    expect(figure('price', sample, 'AUD')).toBeCloseTo((50 * 0.92) / 0.6, 12);
    expect(figure('price > other ? 1 : 0', sample)).toBe(0);
    expect(figure('price / (1 kg)', sample, 'EUR/g')).toBeCloseTo(0.046, 12);
    expect(faultOf('price + 4 EUR', { figures: { price: numbers('USD', 50) } }, 'EUR').message).toMatch(
      /cannot be turned into EUR: the notebook has no table rates_of_exchange/,
    );
    expect(faultOf('1 NOK', { tables: { rates_of_exchange: rates } }, 'EUR').message).toBe(
      'rates_of_exchange does not say what one NOK is worth.',
    );
  });
});
