import { defineConfig } from 'vitest/config'

/** What a process shares with those after it (environment, spies on globals, programs called) is theirs alone here. */
const APART = ['test/history/**/*.test.ts', 'test/scripts/**/*.test.ts', 'test/plots/render.test.ts']

export default defineConfig({
  test: {
    testTimeout: 20_000,
    hookTimeout: 30_000,
    // Else a machine of two cores leaves one of them idle.
    maxWorkers: '100%',
    projects: [
      {
        extends: true,
        test: {
          name: 'core',
          include: ['test/**/*.test.ts'],
          exclude: ['test/browser/**', ...APART],
          // Pure modules keep nothing from file to file: loading them once a worker halves the time of the suite.
          isolate: false,
        },
      },
      { extends: true, test: { name: 'apart', include: APART } },
    ],
  },
})
