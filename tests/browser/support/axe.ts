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
 * @param within CSS selector of the part to look at; the whole page if absent
 */
export async function axe(page: Page, within?: string): Promise<readonly Violation[]> {
  // Evaluated by the debugger, not loaded by the page: the page's policy would rightly refuse it.
  await page.evaluate(axeCore.source);
  return page.evaluate(async (selector) => {
    const results = await (window as unknown as { axe: typeof axeCore }).axe.run(selector ?? document, {
      resultTypes: ['violations'],
    });
    return results.violations.map((violation) => ({
      rule: violation.id,
      impact: violation.impact ?? 'none',
      help: violation.help,
      elements: violation.nodes.map((node) => node.target.flat().join(' >>> ')),
    }));
  }, within);
}
