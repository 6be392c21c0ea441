// Asks the registry which of our packages have known weaknesses. Fails on a grave one (high or critical), unless it stands
// in accepted-weaknesses.json with the reason why it does not reach us and the day until which that is believed:
//   { "advisory": "GHSA-xxxx-xxxx-xxxx", "why": "we never call the part that has it", "until": "2027-03-31" }
// A registry that gives no answer fails nothing: many mirrors do not have this service.
import { spawnSync } from 'node:child_process'
import { readFileSync } from 'node:fs'
import { readAuditReport } from './audit-report.mjs'
import { fail, root, say } from './ensure.mjs'

const accepted = JSON.parse(readFileSync(new URL('accepted-weaknesses.json', import.meta.url), 'utf8'))
const { stdout } = spawnSync('npm', ['audit', '--omit=dev', '--json'], { cwd: root, encoding: 'utf8', timeout: 60_000 })
const report = readAuditReport(stdout, accepted, new Date().toISOString().slice(0, 10))
if (report === null) {
  say('Packages: the registry gave no answer about known weaknesses, so nothing is known of them today.')
} else {
  for (const line of [...report.accepted, ...report.lesser]) say(`Packages: ${line}`)
  if (report.grave.length > 0) {
    fail(`Packages with grave weaknesses:\n${report.grave.map((line) => `  ${line}`).join('\n')}\nUpdate them (npm audit fix), or say in src/cli/launch/accepted-weaknesses.json why they do not reach us.`)
  }
  say(report.accepted.length + report.lesser.length === 0 ? 'Packages: no known weaknesses.' : 'Packages: no grave weaknesses but those accepted.')
}
