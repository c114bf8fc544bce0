import type { Page } from 'playwright-core';
import { afterAll, afterEach } from 'vitest';
import { type OpenAppOptions, type OpenedApp, openApp } from './open-app.ts';

interface PageApp {
  readonly session: { readonly notebook: { readonly canUndo: boolean; undo(): void } };
}

/**
 * One page for several tests of a file or a `describe`: it is opened for the first of them, and anew after one that
 * failed. Each test finds the notebook as it was opened, and nothing picked.
 * @returns gives the page, and is called once by each test
 */
export function sharedApp(options: OpenAppOptions): () => Promise<Page> {
  let app: OpenedApp | null = null;
  const shut = async (): Promise<void> => {
    const there = app;
    app = null;
    await there?.close();
  };
  afterEach(async ({ task }) => {
    if (task.result?.state === 'fail') await shut();
    else app?.troubles.check();
  });
  afterAll(shut);
  return async () => {
    if (app === null) app = await openApp(options);
    else await takeBack(app.page);
    return app.page;
  };
}

/** Takes all edits back, shuts the panel, and lets go of the field that is written in. */
async function takeBack(page: Page): Promise<void> {
  await page.evaluate(() => {
    let inside = document.activeElement;
    while (inside?.shadowRoot?.activeElement) inside = inside.shadowRoot.activeElement;
    (inside as HTMLElement | null)?.blur();
    const { notebook } = (document.querySelector('sparewell-app') as unknown as PageApp).session;
    while (notebook.canUndo) notebook.undo();
    scrollTo(0, 0);
  });
  const shutPanel = page.locator('sw-side-panel .x');
  if (await shutPanel.isVisible()) await shutPanel.click();
}
