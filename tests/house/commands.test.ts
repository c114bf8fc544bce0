import { expect, test } from 'vitest';
import { nodeComplaint } from '../../src/commands/node-version.mjs';
import { closingLine, countReport } from '../../src/commands/test-totals.mjs';

test.each(['20.19.0', '20.20.2', '21.0.0', '22.12.1', '100.0.0'])('Node %s will do', (version) => {
  expect(nodeComplaint(version)).toBeNull();
});

test.each(['20.18.3', '18.20.4', '8.17.0', '0.12.18'])('Node %s is named as too old', (version) => {
  expect(nodeComplaint(version)).toBe(
    `Sparewell needs Node 20.19 or newer, and this is Node ${version}: install a newer Node and run the command again.`,
  );
});

const tests = (...statuses: string[]) => statuses.map((status) => ({ status }));

test('a report is counted by its tests', () => {
  const report = {
    testResults: [
      { status: 'passed', assertionResults: tests('passed', 'passed') },
      { status: 'failed', assertionResults: tests('passed', 'failed', 'failed') },
    ],
  };
  expect(countReport(report)).toEqual({ passed: 3, failed: 2 });
});

test('a file that could not be read counts as one failure', () => {
  expect(countReport({ testResults: [{ status: 'failed', assertionResults: [] }] })).toEqual({
    passed: 0,
    failed: 1,
  });
});

test('the closing line adds the runs up', () => {
  expect(
    closingLine([
      { passed: 12, failed: 0 },
      { passed: 3, failed: 1 },
    ]),
  ).toBe('15 passed, 1 failed');
  expect(closingLine([])).toBe('0 passed, 0 failed');
});
