import type { Locator, Page } from 'playwright-core';

/** What stands in an element, in one line. */
export async function words(of: Locator): Promise<string> {
  return ((await of.textContent()) ?? '').replace(/\s+/g, ' ').trim();
}

/** The card of a table or pairing, by its heading. */
export function tableCard(page: Page, heading: string): Locator {
  return page
    .locator('sw-table-cell, sw-pairing-cell')
    .filter({ has: page.getByRole('heading', { name: heading, exact: true }) });
}

/** One figure of a card: row and column counted from 0, as they are shown. */
export function figure(of: Locator, row: number, column: number): Locator {
  return of.locator(`[data-row="${row}"][data-col="${column}"]`);
}

/** What a column of a card shows, from the top. */
export async function columnWords(of: Locator, column: number): Promise<string[]> {
  const texts = await of.locator(`tbody [data-col="${column}"]`).allTextContents();
  return texts.map((text) => text.replace(/\s+/g, ' ').trim());
}

/** Puts something on the clipboard as another program would. */
export async function putOnClipboard(page: Page, text: string, html = ''): Promise<void> {
  await page.context().grantPermissions(['clipboard-read', 'clipboard-write']);
  await page.evaluate(
    async ([plain, rich]) => {
      const parts: Record<string, Blob> = { 'text/plain': new Blob([plain!], { type: 'text/plain' }) };
      if (rich !== '') parts['text/html'] = new Blob([rich!], { type: 'text/html' });
      await navigator.clipboard.write([new ClipboardItem(parts)]);
    },
    [text, html],
  );
}
