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
          testTimeout: 20_000,
          restoreMocks: true,
          // No test leaves anything behind in its modules, and to load mathjs anew for each file takes minutes.
          pool: 'threads',
          isolate: false,
        },
      },
      {
        test: {
          name: 'browser',
          environment: 'node',
          include: ['tests/browser/**/*.test.ts'],
          setupFiles: ['tests/browser/support/end-browser.ts'],
          // One Chromium at a time: two of them on a small machine make each other time out.
          fileParallelism: false,
          maxWorkers: 1,
          testTimeout: 60_000,
          hookTimeout: 60_000,
          retry: 0,
          // The page settles in its own time: `expect.poll` waits for what it will show.
          expect: { poll: { timeout: 10_000, interval: 50 } },
        },
      },
    ],
  },
});
