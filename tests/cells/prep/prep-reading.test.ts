import Papa from 'papaparse';
import { expect, test } from 'vitest';
import { prepCsv, prepMarkdown } from '../../../cells/prep/prep-files.ts';
import { type PrepReading, readPrep } from '../../../cells/prep/prep-reading.ts';
import { orderWords, spareWords, unfinishedWords } from '../../../cells/prep/prep-words.ts';
import type { PrepCell } from '../../../src/notebook/document.ts';
import { pinEdit } from '../../../src/notebook/edits.ts';
import type { LiveNotebook } from '../../../src/notebook/live-notebook.ts';
import { demo, figure, figures, texts, within } from '../../starter/support.ts';

const read = (notebook: LiveNotebook): PrepReading =>
  readPrep(notebook, notebook.document.cells.find((cell): cell is PrepCell => cell.kind === 'prep')!);

/** Sum over all lines of a list. */
const sum = (figuresOfLines: readonly number[]): number => figuresOfLines.reduce((all, one) => all + one, 0);

test('the sums of its lists are the notebook’s totals', async () => {
  await within(demo(), (notebook) => {
    const prep = read(notebook);
    const lines = prep.shopping.orders.flatMap((order) => order.lines);
    expect(lines.length).toBeGreaterThan(10);
    expect(sum(lines.map((line) => line.sum))).toBeCloseTo(figure(notebook, 'parts_spending'), 8);
    expect(prep.shopping.sum).toBeCloseTo(figure(notebook, 'parts_spending'), 8);
    expect(prep.hours).toBeCloseTo(figure(notebook, 'shed_time'), 8);
    expect(sum(prep.bags.map((bag) => bag.mass))).toBeCloseTo(figure(notebook, 'pack_mass'), 8);
    expect(sum(prep.bags.map((bag) => bag.volume))).toBeCloseTo(figure(notebook, 'pack_volume'), 8);
    for (const order of prep.shopping.orders)
      for (const line of order.lines) expect(line.each * line.pieces).toBeCloseTo(line.sum, 8);
  });
});

test('an order goes out so that its slowest line arrives in hand before the cut-off', async () => {
  await within(demo(), (notebook) => {
    const cutOff = figure(notebook, 'cut_off');
    const margin = figure(notebook, 'arrival_margin');
    const [suppliers, numbers] = [texts(notebook, 'prices.supplier'), texts(notebook, 'prices.offer')];
    const leads = figures(notebook, 'prices.lead');
    const { orders } = read(notebook).shopping;
    expect(orders.map((order) => order.orderBy)).toEqual(
      [...orders.map((order) => order.orderBy)].sort((a, b) => a - b),
    );
    for (const order of orders) {
      const own = order.lines.map(
        (line) =>
          leads[
            numbers.findIndex((number, row) => number === line.number && suppliers[row] === order.supplier)
          ]!,
      );
      expect(order.orderBy).toBe(cutOff - margin - Math.max(...own));
      expect(order.orderBy).toBeGreaterThanOrEqual(figure(notebook, 'today'));
    }
  });
});

test('jobs that open the same thing stand together, in the order of their turns', async () => {
  await within(demo(), (notebook) => {
    const prep = read(notebook);
    const opened = prep.jobs.map((group) => group.opens);
    expect(new Set(opened).size).toBe(opened.length);
    const turn = new Map(
      texts(notebook, 'handling.part').map((part, row) => [part, figures(notebook, 'handling.turn')[row]!]),
    );
    const turns = prep.jobs.flatMap((group) => group.jobs.map((job) => turn.get(job.part)!));
    expect(turns).toEqual([...turns].sort((a, b) => a - b));
    expect(prep.jobs.find((group) => group.opens === 'Rear wheel out')!.jobs.length).toBeGreaterThan(1);
  });
});

test('a part is looked for on the road only while the old one is on, and told where to change it', async () => {
  await within(demo(), async (notebook) => {
    const at = (prep: PrepReading, part: string) =>
      prep.checks.flatMap((stop) =>
        stop.checks
          .filter((check) => check.part === part)
          .map((check) => ({ ...check, place: stop.place, km: stop.at })),
      );
    const before = read(notebook);
    const chain = at(before, 'Drive chain');
    expect(chain.map((check) => [check.change, check.limit, check.unit, check.gauge])).toEqual([
      [false, '323.9', 'mm', 'length, 20 pitches'],
    ]);
    // Its chance to be at the limit passes the risk limit on the leg that begins where it is looked at.
    const row = texts(notebook, 'ride.part').findIndex(
      (part, i) => part === 'Drive chain' && texts(notebook, 'ride.start_place')[i] === chain[0]!.place,
    );
    const judged = figures(notebook, 'ride.judged_worn');
    expect(judged[row]).toBeGreaterThan(figure(notebook, 'risk_limit'));
    expect(judged[row - 1]).toBeLessThanOrEqual(figure(notebook, 'risk_limit'));

    const way = before.checks.flatMap((stop) =>
      stop.checks.filter((check) => check.change).map((check) => [check.part, stop.place]),
    );
    expect(way.length).toBeGreaterThan(0);
    for (const [part, place] of way) {
      expect(place).toBe(texts(notebook, 'wear.change_at')[texts(notebook, 'wear.part').indexOf(part!)]);
      expect(at(before, part!).at(-1)?.change).toBe(true);
    }

    notebook.apply(pinEdit(notebook.document, 'decision', 'Drive chain', 'replace'));
    await notebook.settled();
    expect(at(read(notebook), 'Drive chain')).toEqual([]);
    expect(read(notebook).leftOn.map((part) => part.part)).not.toContain('Drive chain');
  });
});

test('the files hold every line, and a text that a sheet would run is kept from running', async () => {
  await within(demo(), (notebook) => {
    const prep = read(notebook);
    const first = prep.bags[0]!;
    const named = { ...prep, bags: [{ ...first, lines: [{ ...first.lines[0]!, part: '=1+1|x' }] }] };
    const { data } = Papa.parse<string[]>(prepCsv(named), { skipEmptyLines: true });
    expect(new Set(data.map((record) => record.length))).toEqual(new Set([6]));
    expect(data.filter((record) => record[0] === 'Pack')[0]![3]).toMatch(/^'=1\+1\|x/);
    const sums = data
      .filter((record) => record[0] === 'Shopping' && record[4] === 'Sum (EUR)')
      .map((record) => Number(record[5]!.replaceAll(',', '')));
    // Each line is rounded to a cent.
    expect(Math.abs(sum(sums) - prep.shopping.sum)).toBeLessThan(0.01 * sums.length);
    const markdown = prepMarkdown(named);
    expect(markdown).toContain('## Shopping');
    expect(markdown).toContain('=1+1\\|x');
    const tables = markdown.split('\n').filter((line) => line.startsWith('| [ ]'));
    expect(tables.length).toBeGreaterThan(40);
  });
});

test('the sheet follows a renamed column', async () => {
  const { renameEdit } = await import('../../../src/notebook/rename-edit.ts');
  await within(demo(), async (notebook) => {
    const before = read(notebook).shopping.sum;
    notebook.apply(renameEdit(notebook.document, 'calls', 'cash', 'outlay'));
    await notebook.settled();
    expect(read(notebook).shopping.sum).toBe(before);
    const cell = notebook.document.cells.find((one): one is PrepCell => one.kind === 'prep')!;
    expect(cell.reads.cash).toBe('calls.outlay');
  });
});

test('an order without a known day says so', () => {
  expect(orderWords({ orderBy: Number.NaN, arrivesInDays: Number.NaN })).toBe('no day to order by is known');
  expect(orderWords({ orderBy: 20938, arrivesInDays: 1 })).toBe(
    'order by Fri 30 April 2027, 1 day to arrive',
  );
});

test('a sheet that is printed before its figures are settled says so', async () => {
  await within(demo(), async (notebook) => {
    const cell = notebook.document.cells.find((one): one is PrepCell => one.kind === 'prep')!;
    const { figures } = readPrep(notebook, cell);
    expect(figures.length).toBeGreaterThan(0);
    expect(unfinishedWords(figures)).toBe('');
    const late = figures.map((one, at) => (at === 1 ? { ...one, state: 'working' as const } : one));
    expect(unfinishedWords(late)).toMatch(/still being worked out .* Print it again/);
  });
});

test.each([
  ['Clutch cable, new', 1, false, 1],
  ['Clutch cable, the old one', 1, true, 1],
  ['Clutch cable, 3 new, for 2 bikes', 3, false, 2],
  ['Clutch cable, 2 old ones, for 2 bikes', 2, true, 2],
])('a spare on the list: %s', (said, pieces, old, bikes) => {
  expect(spareWords({ part: 'Clutch cable', pieces, old, bikes })).toBe(said);
});
