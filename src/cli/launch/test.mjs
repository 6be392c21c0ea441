// The one test command: makes the clone ready, then types, lint, sizes of the panel and tests, the arrows among them (tests/arrows.test.ts).
// Stops at the first that fails.
// Arguments go to vitest: npm test -- tests/guide
import { spawnSync } from 'node:child_process'
import { existsSync } from 'node:fs'
import { join } from 'node:path'
import { ensureInstalled, ensureNode, ensureScreensBuilt, ensureServiceBuilt, fail, root, say } from './ensure.mjs'

ensureNode()
ensureInstalled()
await ensureServiceBuilt()
ensureScreensBuilt()

const browser = process.env.FRONDLINE_CHROMIUM ?? '/usr/bin/chromium'
if (!existsSync(browser)) {
  const isRoot = process.getuid?.() === 0
  if (!isRoot || !existsSync('/usr/bin/apt-get')) fail(`The browser tests need Chromium. Install it (Debian: apt-get install chromium) or set FRONDLINE_CHROMIUM to its path; looked at ${browser}.`)
  say('Installing Chromium for the browser tests …')
  spawnSync('apt-get', ['update', '-qq'], { stdio: 'inherit' })
  if (spawnSync('apt-get', ['install', '-y', '-qq', 'chromium'], { stdio: 'inherit' }).status !== 0) fail('Chromium could not be installed.')
}

const chosen = process.argv.slice(2)
const steps = [
  ['types', 'node_modules/typescript/bin/tsc', ['-p', '.']],
  ['lint', 'node_modules/eslint/bin/eslint.js', ['--config', 'src/eslint.config.mjs', '--max-warnings', '0', 'src', 'shared', 'tests']],
  ['sizes', 'node_modules/size-limit/bin.js', []],
  ['tests', 'node_modules/vitest/vitest.mjs', ['run', '--config', 'tests/vitest.config.ts', ...chosen]],
]
for (const [name, script, args] of chosen.length > 0 ? steps.slice(-1) : steps) {
  say(`— ${name}`)
  const { status } = spawnSync(process.execPath, [join(root, script), ...args], { cwd: root, stdio: 'inherit' })
  if (status !== 0) process.exit(status ?? 1)
}
