import { expect, test } from 'vitest';
import { LiveNotebook } from '../../src/notebook/live-notebook.ts';
import { TrialNotebook } from '../../src/notebook/trial/trial-notebook.ts';
import { demo, withColumn, within, withPartFigure, withValue } from '../starter/support.ts';

/** Cost without cash of every call of the part, in a notebook that was really edited. */
async function costsIn(document: ReturnType<typeof demo>, part: string): Promise<Record<string, number>> {
  return within(document, (live) => {
    const { solution } = live.planOf('plan');
    const own = solution?.instance.calls.filter((call) => call.part === part) ?? [];
    return Object.fromEntries(own.map((call) => [call.name, call.cost_without_cash]));
  });
}

async function tried(part: string, figure: 'price' | 'stranding' | 'rate', share: number) {
  const trial = TrialNotebook.open(demo(), 'plan');
  const [point] = (await trial?.tryFigure({ plan: 'plan', part, figure, shares: [share] })) ?? [];
  trial?.dispose();
  return point;
}

const costsOf = (point: Awaited<ReturnType<typeof tried>>): Record<string, number> =>
  Object.fromEntries(point?.calls.map((call) => [call.name, call.cost]) ?? []);

function expectSame(found: Record<string, number>, wanted: Record<string, number>): void {
  expect(Object.keys(found)).toEqual(Object.keys(wanted));
  for (const [call, cost] of Object.entries(wanted)) expect(found[call], call).toBeCloseTo(cost, 8);
}

test('at share 1 every figure stands as it does in the notebook', async () => {
  const now = await costsIn(demo(), 'Drive chain');
  for (const figure of ['price', 'stranding', 'rate'] as const)
    expectSame(costsOf(await tried('Drive chain', figure, 1)), now);
});

test('a price on trial is what the notebook gives when the offers of that part really cost so much', async () => {
  const document = demo();
  const fits = document.cells.find((cell) => cell.id === 'prices');
  const column = fits?.kind === 'table' ? fits.columns.find((one) => one.name === 'fits') : undefined;
  const parts = column !== undefined && column.kind !== 'worked' ? column.entries : [];
  const dearer = withColumn(document, 'prices', 'price', (price, row) =>
    parts[row] === 'Drive chain' && typeof price === 'number' ? price * 1.5 : price,
  );
  const wanted = await costsIn(dearer, 'Drive chain');
  expectSame(costsOf(await tried('Drive chain', 'price', 1.5)), wanted);
  expect(wanted.leave).not.toBeCloseTo((await costsIn(document, 'Drive chain')).leave as number, 1);
});

test('a wear rate on trial is what the notebook gives at that rate, calls barred by it included', async () => {
  const document = demo();
  // The likely rate is left open in the demo: the middle of low and high is sqrt(0.22 * 0.42) = 0.30397.
  const now = Math.sqrt(0.22 * 0.42);
  const faster = withPartFigure(document, 'Drive chain', 'rate_likely', now * 1.3);
  expectSame(costsOf(await tried('Drive chain', 'rate', 1.3)), await costsIn(faster, 'Drive chain'));
  const slow = await tried('Drive chain', 'rate', 0.2);
  const fast = await tried('Drive chain', 'rate', 3);
  const isBarred = (point: typeof slow) => point?.calls.find((call) => call.name === 'leave')?.barred;
  expect([isBarred(slow), isBarred(fast)]).toEqual([false, true]);
});

test('a stranding on trial scales recovery and waiting and nothing else', async () => {
  let document = demo();
  for (const [name, value] of Object.entries({ recovery_call_out: 90, recovery_per_km: 1.2, day_value: 45 }))
    document = withValue(document, name, value * 2);
  expectSame(costsOf(await tried('Fuel pump', 'stranding', 2)), await costsIn(document, 'Fuel pump'));
});

test('a plan that is not there has no trials, and trials leave the notebook as it was', async () => {
  const document = demo();
  expect(TrialNotebook.open(document, 'nothing')).toBeNull();
  const before = JSON.stringify(document);
  await tried('Battery', 'price', 4);
  expect(JSON.stringify(document)).toBe(before);
  const live = LiveNotebook.open(document);
  await live.settled();
  expect(live.faults()).toEqual([]);
  live.dispose();
});
