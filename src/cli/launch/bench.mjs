// npm run bench -- NAME [--json]: makes the clone ready, then runs one bench with tsx.
import { spawnSync } from 'node:child_process'
import { join } from 'node:path'
import { ensureInstalled, ensureNode, root } from './ensure.mjs'

ensureNode()
ensureInstalled()
const { status } = spawnSync(process.execPath, [join(root, 'node_modules/tsx/dist/cli.mjs'), join(root, 'tests/bench/bench.ts'), ...process.argv.slice(2)], { cwd: root, stdio: 'inherit' })
process.exitCode = status ?? 1
