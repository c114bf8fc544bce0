import type { Page } from 'playwright-core';
import { expect } from 'vitest';

/** Drops a file on the page, as a hand would. */
export async function dropFile(page: Page, name: string, content: string | readonly number[]): Promise<void> {
  // What takes files is fetched after the notebook; a file dragged over the page is welcome once it is there.
  await expect
    .poll(() =>
      page.evaluate(() => {
        const dataTransfer = new DataTransfer();
        dataTransfer.items.add(new File([], 'dragged'));
        const event = { dataTransfer, bubbles: true, composed: true, cancelable: true };
        return document.body.dispatchEvent(new DragEvent('dragover', event)) ? 'not welcome' : 'welcome';
      }),
    )
    .toBe('welcome');
  await page.evaluate(
    ({ name, content }) => {
      const dataTransfer = new DataTransfer();
      dataTransfer.items.add(
        new File([typeof content === 'string' ? content : Uint8Array.from(content)], name),
      );
      const event = { dataTransfer, bubbles: true, composed: true, cancelable: true };
      document.body.dispatchEvent(new DragEvent('drop', event));
    },
    { name, content },
  );
}
