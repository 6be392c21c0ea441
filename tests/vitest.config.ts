import { defineConfig } from 'vitest/config'

const everyTest = ['tests/**/*.test.ts', 'tests/**/*.test.tsx']
const root = new URL('..', import.meta.url).pathname

// Everything runs with SQLite; what touches the store runs a second time, with PostgreSQL (--project SQLite for one only).
export default defineConfig({
  root,
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
  test: {
    // The guide is large by now: reading it takes a busy machine its time.
    testTimeout: 60_000,
    // A browser story first builds the screens, which a busy machine takes its time over.
    hookTimeout: 240_000,
    pool: 'forks',
    globalSetup: ['tests/guide-setup.ts'],
    maxWorkers: 2,
    projects: [
      { extends: true, root, test: { name: 'SQLite', include: everyTest, exclude: ['tests/store/postgres*.test.ts'] } },
      {
        extends: true,
        root,
        test: {
          name: 'PostgreSQL',
          include: ['tests/store/**/*.test.ts', 'tests/desk/**/*.test.ts', 'tests/http/**/*.test.ts', 'tests/load/**/*.test.ts'],
          exclude: ['tests/store/sqlite*.test.ts'],
          globalSetup: ['tests/guide-setup.ts', 'tests/store/postgres-setup.ts'],
        },
      },
    ],
  },
})
