import { defineConfig } from 'vitest/config'

export default defineConfig({
  root: new URL('..', import.meta.url).pathname,
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
  test: {
    include: ['tests/**/*.test.ts', 'tests/**/*.test.tsx'],
    testTimeout: 20_000,
    hookTimeout: 60_000,
    pool: 'forks',
    maxWorkers: 2,
  },
})
