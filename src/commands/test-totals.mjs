/**
 * @typedef {{ passed: number, failed: number }} Totals
 * @typedef {{ status: string, assertionResults: readonly { status: string }[] }} FileReport
 */

/**
 * Counts a run from the test runner's JSON report. A file that could not even be read counts as one
 * failure: otherwise it would vanish from the totals.
 * @param {{ testResults: readonly FileReport[] }} report
 * @returns {Totals} two passed tests and one unreadable file are { passed: 2, failed: 1 }
 */
export function countReport(report) {
  let passed = 0;
  let failed = 0;
  for (const file of report.testResults) {
    const failedHere = file.assertionResults.filter((test) => test.status === 'failed').length;
    passed += file.assertionResults.filter((test) => test.status === 'passed').length;
    failed += failedHere === 0 && file.status === 'failed' ? 1 : failedHere;
  }
  return { passed, failed };
}

/**
 * The last line of `npm test`.
 * @param {readonly Totals[]} runs
 * @returns {string} '12 passed, 0 failed'
 */
export function closingLine(runs) {
  const passed = runs.reduce((sum, totals) => sum + totals.passed, 0);
  const failed = runs.reduce((sum, totals) => sum + totals.failed, 0);
  return `${passed} passed, ${failed} failed`;
}
