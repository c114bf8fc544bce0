import { defineConfig } from 'vitest/config';
import { BaseSequencer, type TestSpecification } from 'vitest/node';

/** Files that take long, the longest first: begun last, one of them would run alone at the end. */
const LONG_FILES = [
  'notebook/explain-call',
  'notebook/plan-cell',
  'fuzz/notebook-files',
  'browser/offline',
  'browser/import',
  'browser/main-job',
  'browser/lost',
  'browser/plan',
  'browser/lost-deaths',
  'browser/shell',
  'browser/look',
].map((name) => `/tests/${name}.test.ts`);

/** What was measured in an earlier run is not there in a fresh copy, where files would go by their size. */
class LongestFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const rank = ({ moduleId }: TestSpecification): number => {
      const at = LONG_FILES.findIndex((name) => moduleId.endsWith(name));
      return at === -1 ? LONG_FILES.length : at;
    };
    return (await super.sort(files)).sort((a, b) => rank(a) - rank(b));
  }
}

/** Two projects: `unit` runs in plain Node; `browser` is plain Node too, but drives a real Chromium. */
export default defineConfig({
  test: {
    sequence: { sequencer: LongestFirst },
    projects: [
      {
        test: {
          name: 'unit',
          environment: 'node',
          include: ['tests/**/*.test.ts'],
          exclude: ['tests/browser/**'],
          // Far above what any test takes, so that a busy machine does not fail one.
          testTimeout: 60_000,
          restoreMocks: true,
          // No test leaves anything behind in its modules, and to load mathjs anew for each file takes minutes.
          pool: 'threads',
          isolate: false,
          // Left to itself it takes one core fewer than there are, which is one of two.
          maxWorkers: 2,
        },
      },
      {
        test: {
          name: 'browser',
          environment: 'node',
          include: ['tests/browser/**/*.test.ts'],
          // The files of a worker share its modules, and with them one browser: to load and to start these for each
          // file took seconds of it.
          isolate: false,
          // Two at a time: a test waits for its page most of the time, and a page for its planner.
          maxWorkers: 2,
          testTimeout: 90_000,
          hookTimeout: 90_000,
          // Two pages on a small machine now and then make each other wait too long: tried once more, and told.
          retry: 1,
          // The page settles in its own time: `expect.poll` waits for what it will show.
          expect: { poll: { timeout: 20_000, interval: 50 } },
        },
      },
    ],
  },
});
