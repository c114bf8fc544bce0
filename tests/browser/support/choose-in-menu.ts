import type { Locator, Page } from 'playwright-core';

/**
 * Chooses an item of the notebook's menu that opens something. What it needs is fetched after the notebook, so
 * that the hand may be there too early: then it is chosen again.
 */
export async function chooseInMenu(page: Page, item: string, opens: Locator): Promise<void> {
  for (let tries = 0; tries < 8; tries += 1) {
    await page.getByRole('button', { name: 'Notebook', exact: true }).click();
    await page.locator('sw-head-bar .menu').getByRole('button', { name: item, exact: true }).click();
    try {
      await opens.waitFor({ timeout: 5_000 });
      return;
    } catch {
      // Not there yet.
    }
  }
  await opens.waitFor({ timeout: 1_000 });
}
