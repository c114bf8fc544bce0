import { readFileSync } from 'node:fs';
import Papa from 'papaparse';
import { expect, test } from 'vitest';
import type { PlanInstance } from '../../src/plan/plan-instance.ts';
import { isSolved } from '../../src/plan/plan-result.ts';
import { solvePlan } from '../../src/plan/solver/solve-plan.ts';
import { figure, within } from '../trade/read-check-values.ts';
import { call, instanceOf, offer, pack, part, supplier } from './small-instance.ts';

/** check-values.csv beside this file: rows of other solvers (GLPK and trying everything), with their source. */
const rows = Papa.parse<Record<string, string>>(
  readFileSync(new URL('./check-values.csv', import.meta.url), 'utf8').trimEnd(),
  { header: true },
).data;

/** Reads the row's own words: "A leave(190,0,0,0) replace(20,1.5,0,1)", "o4(s2,41,B+C)", "budget=200". */
function instanceFrom(text: string): PlanInstance {
  const [given = '', ...limits] = text.split(/;(?=budget|hours|kg)/);
  const limit = (name: string): number =>
    figure(limits.find((one) => one.startsWith(`${name}=`))?.split('=')[1]);
  const names = /parts ([\w,]+)/.exec(given)?.[1]?.split(',') ?? [];
  const callsText = /need\): (.*?); offers/.exec(given)?.[1] ?? '';
  const calls = callsText.split('; ').flatMap((line) => {
    const of = line.slice(0, 1);
    return [...line.matchAll(/(\w+)\(([^)]+)\)/g)].map(([, name = '', figures = '']) => {
      const [cost, shed_hours, mass_kg, need] = figures.split(',').map((one) => figure(one)) as [
        number,
        number,
        number,
        number,
      ];
      return call(of, name, cost, { shed_hours, mass_kg, need });
    });
  });
  const offers = [...given.matchAll(/(o\d)\((s\d),(\d+),([^)]+)\)/g)].map(
    ([, id = '', from = '', price, what = '']) =>
      offer(
        id,
        from,
        figure(price),
        what.split('+').map((one): [string, number] => (one.startsWith('2x') ? [one.slice(2), 2] : [one, 1])),
      ),
  );
  const freight = /freight s1 (\d+) free from (\d+), s2 (\d+) never free/.exec(given);
  return instanceOf({
    parts: names.map((name) => part(name)),
    calls,
    offers,
    suppliers: [
      supplier('s1', figure(freight?.[1]), figure(freight?.[2])),
      supplier('s2', figure(freight?.[3])),
    ],
    limits: {
      cash: limit('budget'),
      shed_hours: limit('hours'),
      trip_risk: null,
      packs: [pack({ mass_kg: limit('kg') })],
    },
  });
}

/** Calls and offers of the best plans, and what they pay: the `note` column. */
const PLANS = [
  { id: 'MIP-01', calls: ['replace', 'replace', 'carry', 'k2'], bought: ['o1', 'o3', 'o5', 'o6'], cash: 131 },
  { id: 'MIP-02', calls: ['replace', 'replace', 'leave', 'k2'], bought: ['o1', 'o3', 'o6'], cash: 107 },
  { id: 'MIP-03', calls: ['leave', 'replace', 'replace', 'k1'], bought: ['o4', 'o7'], cash: 59 },
] as const;

test.each(PLANS)('$id: the plan that GLPK finds', async ({ id, calls, bought, cash }) => {
  const row = rows.find((one) => one.id === id);
  const instance = instanceFrom(row?.inputs ?? '');
  expect([instance.parts.length, instance.calls.length, instance.offers.length]).toEqual([4, 12, 7]);
  const result = await solvePlan(instance);
  if (!isSolved(result)) throw new Error(result.sentence);
  expect(result.status).toBe('optimal');
  const { expected_cost } = result.totals;
  expect(within(expected_cost, figure(row?.expected), row?.tolerance ?? ''), `${expected_cost}`).toBe(true);
  expect(result.plan.chosen.map((chosen) => chosen.call)).toEqual(calls);
  expect(result.plan.bought.map(({ offer: one }) => one)).toEqual(bought);
  expect(result.totals.cash).toBeCloseTo(cash, 9);
});
