import type { Locator, Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { axe } from './support/axe.ts';
import { withApp } from './support/open-app.ts';
import { sharedApp } from './support/shared-app.ts';

/** The worked example without its plan, one page for the tests that leave it as it was. */
const example = sharedApp({ plan: false });

/** What stands in an element, in one line. */
async function words(of: Locator): Promise<string> {
  return ((await of.textContent()) ?? '').replace(/\s+/g, ' ').trim();
}

const calls = (page: Page): Locator => page.locator('sw-calls-cell');

/** The row of a part. */
function rowOf(page: Page, part: string): Locator {
  return calls(page)
    .getByRole('row')
    .filter({ has: page.getByRole('rowheader', { name: part }) });
}

test('1 to 5 set a call by hand, which is said, and 0 goes back to the proposed one', async () => {
  const page = await example();
  const battery = rowOf(page, 'Battery');
  const proposed = await words(battery.locator('.call'));
  await battery.getByRole('rowheader').click();
  await page.keyboard.press('1');
  await battery.getByText('by hand').waitFor();
  expect(await words(battery.locator('.call'))).toBe('Leave');
  expect(await words(battery.locator('.bycell'))).toMatch(/^\+\d+$/);
  await expect.poll(() => words(calls(page).locator('header'))).toMatch(/1 by hand/);

  await page.keyboard.press('0');
  await expect.poll(() => words(battery.locator('.call'))).toBe(proposed);
  expect(await battery.getByText('by hand').count()).toBe(0);
});

test('x forbids the call under the cursor and allows it again; the panel does the same', async () => {
  const page = await example();
  const battery = rowOf(page, 'Battery');
  const proposed = await words(battery.locator('.call'));
  await battery.getByRole('rowheader').click();
  await page.keyboard.press('x');
  await battery.getByText('forbidden').waitFor();
  await expect.poll(() => words(battery.locator('.call'))).not.toBe(proposed);
  await expect.poll(() => words(calls(page).locator('header'))).toMatch(/1 forbidden/);

  const choices = page.locator('sw-call-choices');
  const ruledOut = choices.getByRole('button', { name: `Forbid ${proposed}`, pressed: true });
  await ruledOut.waitFor();
  expect(await axe(page, ['sparewell-app', 'sw-side-panel'])).toEqual([]);
  await ruledOut.click();
  await expect.poll(() => words(battery.locator('.call'))).toBe(proposed);
  expect(await battery.getByText('forbidden').count()).toBe(0);
});

test('a call that is not allowed is refused with its reason', async () => {
  const page = await example();
  const tube = rowOf(page, 'Rear inner tube');
  const proposed = await words(tube.locator('.call'));
  await tube.getByRole('rowheader').click();
  await page.keyboard.press('5');
  const refusal = calls(page).getByRole('alert');
  expect(await words(refusal)).toMatch(/^Rear inner tube, change on the way: It goes by chance/);
  expect(await words(tube.locator('.call'))).toBe(proposed);
  await refusal.getByRole('button', { name: 'Close' }).click();
  await refusal.waitFor({ state: 'detached' });
});

test('the panel lists the calls of a part, and choosing one sets it by hand', async () => {
  const page = await example();
  const battery = rowOf(page, 'Battery');
  await battery.getByRole('rowheader').click();
  const choices = page.locator('sw-call-choices');
  await expect.poll(() => choices.getByRole('radio', { checked: true }).count()).toBe(1);
  await choices.getByRole('radio', { name: 'Leave' }).check();
  await battery.getByText('by hand').waitFor();
  await choices.getByRole('button', { name: 'Back to the proposed call' }).click();
  await battery.getByText('by hand').waitFor({ state: 'detached' });
  expect(await axe(page, ['sparewell-app', 'sw-road', 'sw-calls-cell'])).toEqual([]);
});

test('on a phone each part is two lines: its name and cost, its call and by how much it is best', async () => {
  const viewport = { width: 390, height: 844 };
  await withApp({ plan: false, viewport, touch: true }, async ({ page }) => {
    const battery = rowOf(page, 'Battery');
    await battery.waitFor();
    const [name, cost, call] = await Promise.all(
      ['th', 'td.chosen', 'td.callcell'].map((part) => battery.locator(part).boundingBox()),
    );
    expect(Math.abs(name!.y - cost!.y)).toBeLessThan(8);
    expect(call!.y).toBeGreaterThan(name!.y + 15);
    expect(cost!.x + cost!.width).toBeLessThanOrEqual(390);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(390);
  });
});
