// Asks the registry which of our packages have known weaknesses, and prints what it says. Never fails: what is found is
// for a person to weigh, a new finding must not stop work that has nothing to do with it, and many mirrors of the
// registry do not have this service at all.
import { spawnSync } from 'node:child_process'
import { root, say } from './ensure.mjs'

const { stdout } = spawnSync('npm', ['audit', '--omit=dev', '--json'], { cwd: root, encoding: 'utf8', timeout: 60_000 })
const found = read(stdout)?.metadata?.vulnerabilities
if (found === undefined) {
  say('Packages: the registry gave no answer about known weaknesses.')
} else {
  const grave = Object.entries(found).filter(([level, count]) => level !== 'total' && count > 0)
  say(grave.length === 0 ? 'Packages: no known weaknesses.' : `Packages with known weaknesses: ${grave.map(([level, count]) => `${count} ${level}`).join(', ')}. See npm audit --omit=dev.`)
}

function read(text) {
  try {
    return JSON.parse(text)
  } catch {
    return null
  }
}
