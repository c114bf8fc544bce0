import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import type { BrowserContext, Page } from 'playwright-core';
import { heapMegabytes, openFile, withProfile } from './built-page.ts';
import { median, type RatioResult } from './support.ts';

/** One frame at 60 a second, ms. */
const FRAME_MS = 1000 / 60;
const EDITS = 200;
const START_UP_LIMIT_MS = 1000;
const SLOW_DOWN = 4;

const result = (name: string, candidateMs: number, baselineMs: number): RatioResult => ({
  name,
  candidateMs,
  baselineMs,
  ratio: candidateMs / baselineMs,
});

interface PageApp {
  readonly session: {
    readonly notebook: {
      readonly document: {
        cells: readonly {
          id: string;
          kind: string;
          name?: string;
          columns?: readonly { id: string; name: string; entries?: readonly unknown[] }[];
        }[];
      };
      apply(edit: object): void;
      subscribe(listener: (change: { document: boolean; isPartial?: boolean }) => void): () => void;
    };
  };
}

/** The worked example with the rows of its large tables ten times over. */
function tenTimes(text: string): string {
  const notebook = JSON.parse(text) as {
    id: string;
    cells: { kind: string; name: string; columns: { name: string; kind: string; entries?: unknown[] }[] }[];
  };
  notebook.id = 'ten_times';
  for (const cell of notebook.cells) {
    if (cell.kind !== 'table' || !['wear', 'prices', 'kits', 'handling'].includes(cell.name)) continue;
    for (const column of cell.columns) {
      const { entries } = column;
      if (!entries) continue;
      column.entries = Array.from({ length: 10 }, (_, copy) =>
        entries.map((entry) =>
          copy > 0 && typeof entry === 'string' && ['part', 'fits'].includes(column.name)
            ? `${entry} ${copy + 1}`
            : entry,
        ),
      ).flat();
    }
  }
  return JSON.stringify(notebook);
}

/** Figures that are edited, each with its table on the screen: by a step such as a hand makes, up and down again. */
const TARGETS = [
  { table: 'route', column: 'distance', step: 1 },
  { table: 'wear', column: 'now', step: 0.1 },
  { table: 'prices', column: 'price', step: 0.5 },
] as const;
/** Rest between all figures being there and the next edit, ms. */
const REST_MS = 50;
const SCROLLED_MS = 1000;

interface EditTimes {
  /** From each edit, made at the beginning of a frame, until that frame is painted with all figures that are seen, ms. */
  readonly paintedMs: readonly number[];
  /** Until the other figures are worked out too, but for the plan, ms. */
  readonly allMs: readonly number[];
}

/** Edits figures one after another, a third of them in each table. */
async function editToPaint(page: Page, edits: number): Promise<EditTimes> {
  const paintedMs: number[] = [];
  const allMs: number[] = [];
  for (const [at, target] of TARGETS.entries()) {
    const count = Math.ceil((edits - at) / TARGETS.length);
    const times = await editIn(page, target, count);
    paintedMs.push(...times.paintedMs);
    allMs.push(...times.allMs);
  }
  return { paintedMs, allMs };
}

function editIn(page: Page, target: (typeof TARGETS)[number], edits: number): Promise<EditTimes> {
  return page.evaluate(
    async ({ table, column: columnName, step, edits: count, restMs, scrolledMs }) => {
      const app = document.querySelector('sparewell-app') as unknown as PageApp & Element;
      const { notebook } = app.session;
      const cellOf = () => notebook.document.cells.find((one) => one.kind === 'table' && one.name === table);
      const cell = cellOf();
      const column = cell?.columns?.find((one) => one.name === columnName);
      const row = column?.entries?.findIndex((entry) => typeof entry === 'number') ?? -1;
      const cardOf = () =>
        [
          ...(app.shadowRoot?.querySelector('sw-road')?.shadowRoot?.querySelectorAll('sw-table-cell') ?? []),
        ].find((one) => (one as unknown as { cellId: string }).cellId === cell?.id);
      // The cards further down come once the notebook is open.
      for (let wait = 0; wait < 100 && !cardOf(); wait++) await new Promise((then) => setTimeout(then, 100));
      const card = cardOf();
      if (!cell || !column || row < 0 || !card) throw new Error(`the notebook has no ${table}.${columnName}`);
      card.scrollIntoView();
      await new Promise((then) => setTimeout(then, scrolledMs));
      const shown = (): string | undefined =>
        card.shadowRoot?.querySelector('sw-table-view')?.shadowRoot?.querySelectorAll('tbody tr')[row]
          ?.textContent ?? undefined;
      const paintedMs: number[] = [];
      const allMs: number[] = [];
      for (let edit = 0; edit < count; edit++) {
        const before = cellOf()?.columns?.find((one) => one.id === column.id)?.entries?.[row] as number;
        const rowBefore = shown();
        await new Promise(requestAnimationFrame);
        const startMs = performance.now();
        const all = new Promise<number>((told) => {
          const stop = notebook.subscribe((change) => {
            if (change.document || change.isPartial) return;
            stop();
            told(performance.now() - startMs);
          });
        });
        notebook.apply({
          kind: 'entry',
          cell: cell.id,
          column: column.id,
          row,
          before,
          after: before + (edit % 2 ? -step : step),
        });
        // A message is delivered once the frame that is being made is painted.
        await new Promise<void>((painted) => {
          const channel = new MessageChannel();
          channel.port1.onmessage = () => painted();
          channel.port2.postMessage(null);
        });
        paintedMs.push(performance.now() - startMs);
        if (shown() === rowBefore)
          throw new Error(`the edit of ${table} is not in the frame that was painted`);
        allMs.push(await all);
        await new Promise((then) => setTimeout(then, restMs));
      }
      return { paintedMs, allMs };
    },
    { ...target, edits, restMs: REST_MS, scrolledMs: SCROLLED_MS },
  );
}

interface StartUp {
  /** A value can be written in. */
  readonly editableMs: number;
  /** The totals stand too. */
  readonly totalsMs: number;
}

/**
 * From the beginning of the load, ms. The page itself tells when it is there: to ask it meanwhile would have the
 * browser's driver put its own scripts into it, a tenth of what is measured.
 */
async function startUp(context: BrowserContext, url: string): Promise<StartUp> {
  const page = await context.newPage();
  const session = await context.newCDPSession(page);
  await session.send('Emulation.setCPUThrottlingRate', { rate: SLOW_DOWN });
  await session.send('Runtime.enable');
  await session.send('Runtime.addBinding', { name: 'tellStartUp' });
  const told = new Promise<StartUp>((resolve, reject) => {
    const late = setTimeout(
      () => reject(new Error('The notebook could not be edited within a minute.')),
      60_000,
    );
    session.on('Runtime.bindingCalled', ({ payload }) => {
      clearTimeout(late);
      resolve(JSON.parse(payload) as StartUp);
    });
  });
  await page.addInitScript(() => {
    const inside = (host: Element | null | undefined, selector: string): Element | null =>
      host?.shadowRoot?.querySelector(selector) ?? null;
    let editableMs = 0;
    const look = (): void => {
      const app = document.querySelector('sparewell-app');
      const field = inside(
        inside(inside(inside(app, 'sw-road'), 'sw-value-cell'), 'sw-figure-field') ??
          inside(inside(app, 'sw-road'), 'sw-value-cell'),
        'input',
      );
      const total = inside(inside(app, 'sw-tally-strip'), '.fig')?.textContent ?? '';
      if (field) editableMs ||= performance.now();
      if (!field || !/\d/.test(total)) {
        requestAnimationFrame(look);
        return;
      }
      const { tellStartUp } = globalThis as unknown as { tellStartUp(payload: string): void };
      tellStartUp(JSON.stringify({ editableMs, totalsMs: performance.now() }));
    };
    requestAnimationFrame(look);
  });
  await page.goto(url);
  const found = await told;
  await page.close();
  return found;
}

async function open(page: Page, text: string): Promise<void> {
  await openFile(page, 'ten.sparewell.json', text);
  for (;;) {
    const id = await page.evaluate(
      () =>
        (
          document.querySelector('sparewell-app') as unknown as {
            session: { notebook: { document: { id: string } } };
          }
        ).session.notebook.document.id,
    );
    if (id.startsWith('ten_times')) return;
    await new Promise((then) => setTimeout(then, 100));
  }
}

/** MB, once the plan of the last edit is there and the cards further down are drawn: they are no growth. */
async function heapAtRest(page: Page): Promise<number> {
  await page.waitForTimeout(10_000);
  return heapMegabytes(page);
}

function startUpResults(visit: string, found: readonly StartUp[]): readonly RatioResult[] {
  const until = (what: string, at: keyof StartUp): RatioResult =>
    result(
      `page: ${visit} ${what} at 4x slow-down, against 1 s`,
      median(found.map((one) => one[at])),
      START_UP_LIMIT_MS,
    );
  return [until('editable', 'editableMs'), until('editable and its totals there', 'totalsMs')];
}

/** Has the browser run code as it stands: what it translates it into grows with what is done, whatever is held. */
const NOT_TRANSLATED = '--js-flags=--no-opt --no-maglev --no-sparkplug';

/** What the notebook itself holds, without the browser's translations of its code. */
async function ownMemory(): Promise<readonly RatioResult[]> {
  return withProfile(
    async (context, url) => {
      const page = await context.newPage();
      await page.goto(url);
      await page.locator('sw-value-cell input').first().waitFor();
      await editToPaint(page, 10);
      const after10 = await heapAtRest(page);
      await editToPaint(page, 990);
      const after1000 = await heapAtRest(page);
      return [
        result(
          'page: memory after 1,000 edits against after 10, translated code not counted, MB',
          after1000,
          after10,
        ),
      ];
    },
    [NOT_TRANSLATED],
  );
}

/** Speed in the browser, on the built app: how long an edit takes to be seen, start-up, and memory. */
export async function bench(): Promise<readonly RatioResult[]> {
  const inPage = await withProfile(async (context, url) => {
    const startUps = [await startUp(context, url)];
    for (let visit = 0; visit < 2; visit++) startUps.push(await startUp(context, url));
    const page = await context.newPage();
    await page.goto(url);
    await page.locator('sw-value-cell input').first().waitFor();
    await editToPaint(page, 10);
    const heapAfter10 = await heapAtRest(page);
    await editToPaint(page, 90);
    const heapAfter100 = await heapAtRest(page);
    const demo = await editToPaint(page, EDITS);
    await editToPaint(page, 1000 - EDITS - 100);
    const heapAfter1000 = await heapAtRest(page);
    await open(page, tenTimes(readFileSync(resolve('dist/worked-example.sparewell.json'), 'utf8')));
    await editToPaint(page, 10);
    const large = await editToPaint(page, EDITS);
    return [
      result('page: edit to paint, demo, median, against one frame', median(demo.paintedMs), FRAME_MS),
      result('page: edit to paint, demo, worst of 200, against 50 ms', Math.max(...demo.paintedMs), 50),
      result('page: edit to all figures, demo, median, against 50 ms', median(demo.allMs), 50),
      result('page: edit to paint, ten times the demo, median, against 50 ms', median(large.paintedMs), 50),
      result(
        'page: edit to paint, ten times the demo, worst of 200, against 50 ms',
        Math.max(...large.paintedMs),
        50,
      ),
      result('page: edit to all figures, ten times the demo, median, against 50 ms', median(large.allMs), 50),
      ...startUpResults('first visit', startUps.slice(0, 1)),
      ...startUpResults('later visit', startUps.slice(1)),
      result('page: memory after 1,000 edits against after 10, MB', heapAfter1000, heapAfter10),
      // By then the browser has translated what an edit runs through, and each column is held beside the one before.
      result('page: memory after 1,000 edits against after 100, MB', heapAfter1000, heapAfter100),
    ];
  });
  return [...inPage, ...(await ownMemory())];
}
