import type { Guide, Host } from '../guide/index.js'
import type { Evidence } from './evidence.js'

/** One answered check, as numbers: the check's place in its host's list, and the answer's place in the check's. */
export interface Sighting {
  readonly check: number
  readonly answer: number
}

/** The findings that can be weighed for this host: known checks with one of their own answers. *not sure* weighs nothing. */
export function sightingsOf(guide: Guide, host: Host, evidence: Evidence): Sighting[] {
  const sightings: Sighting[] = []
  for (const finding of evidence.findings) {
    const number = guide.checkNumbers.get(finding.check)
    if (number === undefined) continue
    const check = host.checks.indexOf(number)
    const answer = guide.checks[number]?.answers.findIndex(({ label }) => label === finding.answer) ?? -1
    if (check >= 0 && answer >= 0) sightings.push({ check, answer })
  }
  // A fixed order makes the sum of logs the same to the last bit, whatever order the answers came in.
  return sightings.sort((a, b) => a.check - b.check)
}
