import { defineConfig } from 'vitest/config'

/** What waits by the clock, or takes times by it, runs when nothing else of ours does. */
const ALONE = ['test/browser/form*.test.ts']

export default defineConfig({
  test: {
    root: new URL('../..', import.meta.url).pathname,
    globalSetup: ['test/browser/build.ts'],
    // Each night one test visits all pages.
    testTimeout: process.env.EVERY_PAGE === '1' ? 1_800_000 : 300_000,
    hookTimeout: 120_000,
    // A browser on a busy machine answers late, and no test is about that second.
    expect: { poll: { timeout: 10_000 } },
    // One browser a worker, kept from file to file; each file has contexts of its own.
    isolate: false,
    projects: [
      {
        extends: true,
        test: {
          name: 'pages',
          include: ['test/browser/**/*.test.ts'],
          exclude: ALONE,
          maxWorkers: 2,
          sequence: { groupOrder: 0 },
        },
      },
      {
        extends: true,
        test: { name: 'forms', include: ALONE, maxWorkers: 1, sequence: { groupOrder: 1 } },
      },
    ],
  },
})
