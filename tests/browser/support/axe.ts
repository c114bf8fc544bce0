import axeCore from 'axe-core';
import type { Page } from 'playwright-core';

export interface Violation {
  /** The rule of axe that is broken. */
  readonly rule: string;
  readonly impact: string;
  readonly help: string;
  /** CSS paths of the elements; a step into a shadow root is written ' >>> '. */
  readonly elements: readonly string[];
}

/**
 * Looks for accessibility faults with axe-core's whole WCAG 2.2 A and AA list and its best practices.
 * @param within CSS selector of the part to look at, or a list of selectors, each inside the shadow root of the
 *   one before; the whole page if absent. To look at all of a long page takes many seconds.
 */
export async function axe(page: Page, within?: string | readonly string[]): Promise<readonly Violation[]> {
  // Evaluated by the debugger, not loaded by the page: the page's policy would rightly refuse it.
  if (!(await page.evaluate(() => 'axe' in window))) await page.evaluate(axeCore.source);
  return page.evaluate(async (path) => {
    const context =
      path === undefined ? document : typeof path === 'string' ? path : { fromShadowDom: [...path] };
    const results = await (window as unknown as { axe: typeof axeCore }).axe.run(
      context as axeCore.ElementContext,
      { resultTypes: ['violations'] },
    );
    return results.violations.map((violation) => ({
      rule: violation.id,
      impact: violation.impact ?? 'none',
      help: violation.help,
      elements: violation.nodes.map((node) => node.target.flat().join(' >>> ')),
    }));
  }, within);
}
