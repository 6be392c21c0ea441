import { CANT_LOOK, type Check } from '../guide/index.js'
import type { CaseState } from './case-state.js'
import { openChecks } from './open-checks.js'

/** How many looks are named. */
const MOST_NAMED = 3

/**
 * At most MOST_NAMED looks that would still tell the problems apart: first those that the asker put off, since they said
 * that they could look later; then the best that takes a day; then whatever tells most. A sample is named apart.
 */
export function unsettledChecks({ guide, evidence, walk: { host }, belief, priors, sightings, passed }: CaseState): Check[] {
  const putOff = new Set<string>(evidence.findings.filter(({ answer }) => answer === CANT_LOOK).map(({ check }) => check))
  // A check that was put off has told nothing, so the belief is the same without it.
  const findings = evidence.findings.filter(({ check }) => !putOff.has(check))
  const open = openChecks(guide, host, belief.restate(priors, sightings), { ...evidence, findings }, passed)
    .map(({ check }) => check).filter(({ effort }) => effort !== 'send a sample')
  const tomorrow = open.find(({ effort }) => effort === 'wait a day')
  const first = open.filter(({ id }) => putOff.has(id))
  const inOrder = new Set([...first, ...(tomorrow === undefined ? [] : [tomorrow]), ...open])
  return [...inOrder].slice(0, MOST_NAMED)
}
