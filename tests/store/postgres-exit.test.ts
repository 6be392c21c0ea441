import { spawnSync } from 'node:child_process'
import { expect, it } from 'vitest'

it.each([['process.exitCode = 3', 3], ['process.exit(3)', 3], ['', 0]])(
  'leaves the exit code of a process alone that can start a PostgreSQL server: "%s"', (ending, code) => {
    const { status } = spawnSync(process.execPath, ['--import', 'tsx', '--input-type=module', '-e', `await import('./tests/store/postgres-server.ts'); ${ending}`])
    expect(status).toBe(code)
  })
