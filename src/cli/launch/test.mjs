// The one test command: makes the clone ready, then types, lint, sizes of the panel and tests, the arrows among them (tests/arrows.test.ts).
// Stops at the first that fails.
// Arguments go to vitest: npm test -- tests/guide
import { spawn, spawnSync } from 'node:child_process'
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
const looks = [
  ['types', 'node_modules/typescript/bin/tsc', ['-p', '.']],
  ['lint', 'node_modules/eslint/bin/eslint.js', ['--config', 'src/eslint.config.mjs', '--max-warnings', '0', 'src', 'shared', 'tests']],
  ['sizes', 'node_modules/size-limit/bin.js', []],
]
if (chosen.length === 0) {
  // Beside each other, since none of them uses more than one core; what they say is shown in their order.
  for (const look of looks.map(([name, script, args]) => ({ name, ended: ending(script, args) }))) {
    const { status, said } = await look.ended
    say(`— ${look.name}`)
    process.stderr.write(said)
    if (status !== 0) process.exit(status ?? 1)
  }
}
say('— tests')
const { status } = spawnSync(process.execPath, [join(root, 'node_modules/vitest/vitest.mjs'), 'run', '--config', 'tests/vitest.config.ts', ...chosen], { cwd: root, stdio: 'inherit' })
if (status !== 0) process.exit(status ?? 1)

/** Runs one of our tools to its end, and gives what it said. */
function ending(script, args) {
  const child = spawn(process.execPath, [join(root, script), ...args], { cwd: root, stdio: ['ignore', 'pipe', 'pipe'] })
  let said = ''
  for (const stream of [child.stdout, child.stderr]) stream.setEncoding('utf8').on('data', (text) => { said += text })
  return new Promise((resolve) => { child.on('close', (status) => { resolve({ status, said }) }) })
}
