import type { BrowserContext, ConsoleMessage, Page } from 'playwright-core';

/** Everything the pages of one browser complained of, in order, each as one line. */
export class Troubles {
  readonly #lines: string[] = [];
  readonly #expected: readonly RegExp[];

  /** @param expected complaints that the test itself provokes */
  constructor(expected: readonly RegExp[] = []) {
    this.#expected = expected;
  }

  /** Complaints that the test did not expect. */
  get unexpected(): readonly string[] {
    return this.#lines.filter((line) => !this.#expected.some((pattern) => pattern.test(line)));
  }

  add(line: string): void {
    this.#lines.push(line);
  }

  /** @throws when there was any unexpected complaint */
  check(): void {
    if (this.unexpected.length === 0) return;
    throw new Error(`The page complained:\n${this.unexpected.map((line) => `  ${line}`).join('\n')}`);
  }
}

/** Where complaints go. */
type Listener = Pick<Troubles, 'add'>;

/**
 * Listens to every page of a browser, present and to come, and to its workers: console errors (a file that
 * is not found is one), errors nobody caught, what the Content-Security-Policy blocked, and crashes.
 */
export async function watchForTroubles(context: BrowserContext, troubles: Listener): Promise<void> {
  await context.addInitScript(() => {
    addEventListener('securitypolicyviolation', (event) => {
      console.error(
        `CSP: ${event.violatedDirective} blocked ${event.blockedURI || 'inline'} ${event.sample}`,
      );
    });
  });
  context.on('console', (message) => addConsoleError(message, troubles));
  context.on('weberror', (event) =>
    troubles.add(`uncaught: ${event.error().stack ?? event.error().message}`),
  );
  const watchPage = (page: Page): void => {
    page.on('crash', () => troubles.add('the page crashed'));
  };
  context.pages().forEach(watchPage);
  context.on('page', watchPage);
}

function addConsoleError(message: ConsoleMessage, troubles: Listener): void {
  if (message.type() !== 'error' && message.type() !== 'assert') return;
  const { url, lineNumber } = message.location();
  troubles.add(`console: ${message.text()} (${url}:${lineNumber + 1})`);
}
