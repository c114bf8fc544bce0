import type { BrowserContext, Page } from 'playwright-core';
import { type Troubles, watchForTroubles } from './troubles.ts';

/** A page that its test has done with, on a blank sheet. */
interface KeptPage {
  readonly page: Page;
  /** The test that has it now hears what it complains of. */
  hear(troubles: Troubles): void;
  leave(): Promise<void>;
}

/** The longest kept first, by the settings of their profiles. */
const kept = new Map<string, KeptPage>();
const MOST_KEPT = 3;

/** What lasts on a page or in its profile beyond the next document: who uses it is given one of its own after that. */
const LASTING = {
  page: ['addInitScript', 'exposeFunction', 'emulateMedia', 'setViewportSize', 'on', 'route'],
  context: ['addInitScript', 'newCDPSession', 'newPage', 'on', 'route'],
} as const;

/**
 * The page of an earlier test whose profile has the same settings, with all taken away that was kept in it: its
 * browser need not start a process, nor read the scripts of the app once more.
 * @param url where the app will be opened
 */
export async function pageLike(like: string, url: string, troubles: Troubles): Promise<KeptPage | null> {
  const there = kept.get(like);
  if (there === undefined) return null;
  kept.delete(like);
  try {
    await emptyProfile(there.page, url);
  } catch {
    await there.page.context().close();
    return null;
  }
  there.hear(troubles);
  return there;
}

/** A page that is kept when it is left, unless something has been done to it that lasts. */
export async function keepPage(context: BrowserContext, like: string, first: Troubles): Promise<KeptPage> {
  let listening = first;
  await watchForTroubles(context, { add: (line) => listening.add(line) });
  const page = await context.newPage();
  let lasts = false;
  const mark = (): void => {
    lasts = true;
  };
  markCalls(page, LASTING.page, mark);
  markCalls(context, LASTING.context, mark);
  const own: KeptPage = {
    page,
    hear: (troubles) => {
      listening = troubles;
    },
    leave: async () => {
      const isPlain = !lasts && !kept.has(like) && !page.isClosed() && context.pages().length === 1;
      if (!isPlain || !(await leftBlank(page))) return context.close();
      kept.set(like, own);
      if (kept.size > MOST_KEPT) await dropOldest();
    },
  };
  return own;
}

/** False for a page that is busy without end. */
const leftBlank = (page: Page): Promise<boolean> =>
  page.goto('about:blank', { timeout: 10_000 }).then(
    () => true,
    () => false,
  );

function markCalls<Of extends object>(of: Of, names: readonly (keyof Of)[], mark: () => void): void {
  for (const name of names) {
    const act = of[name] as (...values: unknown[]) => unknown;
    const marked = (...values: unknown[]): unknown => {
      mark();
      return act.apply(of, values);
    };
    Object.assign(of, { [name]: marked });
  }
}

async function dropOldest(): Promise<void> {
  const [like, oldest] = kept.entries().next().value ?? [];
  if (like === undefined) return;
  kept.delete(like);
  await oldest?.page.context().close();
}

/** Takes away all that pages of an address keep, from a document there that keeps nothing. */
async function emptyProfile(page: Page, url: string): Promise<void> {
  await page.goto(new URL('icon-192.png', url).href);
  await page.context().clearPermissions();
  await page.mouse.move(0, 0);
  await page.evaluate(async () => {
    localStorage.clear();
    sessionStorage.clear();
    const removed = (await indexedDB.databases()).map(
      ({ name }) =>
        new Promise<void>((resolve, reject) => {
          const request = indexedDB.deleteDatabase(name ?? '');
          request.onsuccess = () => resolve();
          request.onerror = () => reject(request.error);
          request.onblocked = () => reject(new Error('Something still keeps the notebooks open.'));
        }),
    );
    await Promise.all(removed);
    const files = await navigator.storage.getDirectory();
    for await (const name of (files as unknown as { keys(): AsyncIterable<string> }).keys())
      await files.removeEntry(name, { recursive: true });
  });
}
