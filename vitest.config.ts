import { defineConfig } from 'vitest/config';

/** Two projects: `unit` runs in plain Node; `browser` is plain Node too, but drives a real Chromium. */
export default defineConfig({
  test: {
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
