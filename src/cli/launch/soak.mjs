// npm run soak [-- KILLS [sqlite|postgresql]]: makes the clone ready, then kills the service again and again under load.
import { spawnSync } from 'node:child_process'
import { join } from 'node:path'
import { ensureInstalled, ensureNode, ensureServiceBuilt, root } from './ensure.mjs'

ensureNode()
ensureInstalled()
await ensureServiceBuilt()
const { status } = spawnSync(process.execPath, ['--import', 'tsx', join(root, 'tests/load/run-soak.ts'), ...process.argv.slice(2)], { cwd: root, stdio: 'inherit' })
process.exitCode = status ?? 1
