import { defineConfig } from 'vitest/config'

const everyTest = ['tests/**/*.test.ts', 'tests/**/*.test.tsx']
// These replace a module, so each of them needs modules of its own.
const aloneTests = ['tests/photos/decoder-missing.test.ts', 'tests/http/photos-out-of-order.test.ts']
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
    // A worker keeps the modules it has loaded for its next file: loading them anew for each took longer than the tests. So no
    // test may leave anything behind in a module, in the environment or in the working directory.
    isolate: false,
    globalSetup: ['tests/guide-setup.ts'],
    maxWorkers: 2,
    projects: [
      { extends: true, root, test: { name: 'SQLite', include: everyTest, exclude: ['tests/store/postgres*.test.ts', ...aloneTests] } },
      { extends: true, root, test: { name: 'alone', include: aloneTests, isolate: true } },
      {
        extends: true,
        root,
        test: {
          name: 'PostgreSQL',
          include: ['tests/store/**/*.test.ts', 'tests/desk/**/*.test.ts', 'tests/http/**/*.test.ts', 'tests/load/**/*.test.ts'],
          exclude: ['tests/store/sqlite*.test.ts', ...aloneTests],
          globalSetup: ['tests/guide-setup.ts', 'tests/store/postgres-setup.ts'],
        },
      },
    ],
  },
})
