import { type ChecksToCome, checksToCome, type Evidence, type Finding, readCase, type Reading, type Setting } from '../../engine/index.js'
import type { Guide } from '../../guide/index.js'
import { checkNamed, hostNamed, nodeNamed, redFlagNamed, takesAnswer } from '../guide-names.js'
import type { CaseFile, KeptEvidence } from './case-file.js'
import { keepReadings } from './kept-readings.js'

const readings = keepReadings<Reading>()
const countsToCome = keepReadings<ChecksToCome | null>()

/** As much of a case as its reading depends on. */
export type Readable = Pick<CaseFile, 'evidence' | 'askedOn' | 'district' | 'plausible'>

/** What the engine makes of a case with the guide of today. */
export function readCaseFile(guide: Guide, file: Readable): Reading {
  const [evidence, setting] = [usableEvidence(guide, file.evidence), settingOf(guide, file)]
  return readings(guide, JSON.stringify([evidence, setting]), () => readCase(guide, evidence, setting))
}

/** How many checks a case has still to come with the guide of today; null where nothing is asked. */
export function checksToComeOf(guide: Guide, file: Readable): ChecksToCome | null {
  const [evidence, setting] = [usableEvidence(guide, file.evidence), settingOf(guide, file)]
  return countsToCome(guide, JSON.stringify([evidence, setting]), () => checksToCome(guide, evidence, setting))
}

/** When and where a case was asked, with what the season said then. */
export function settingOf(guide: Guide, { askedOn, district, plausible }: Omit<Readable, 'evidence'>): Setting {
  return {
    on: askedOn, district: district !== null && guide.region.districts.has(district) ? district : null,
    ...(plausible.length === 0 ? {} : { plausible: Object.fromEntries(plausible.map(({ problem, factor }) => [problem, factor])) }),
  }
}

/**
 * The evidence that the guide of today understands. A finding, plant or node that it no longer has is left out here
 * and stays in the case's history; a case never breaks because the guide moved on.
 */
export function usableEvidence(guide: Guide, kept: KeptEvidence): Evidence {
  return {
    redFlags: kept.redFlags.flatMap((name) => redFlagNamed(guide, name)?.id ?? []),
    carriedOn: kept.carriedOn,
    start: usableStart(guide, kept.start),
    findings: kept.findings.flatMap(({ check: name, answer, from, again }): Finding[] => {
      const check = checkNamed(guide, name)
      return check !== null && takesAnswer(check, answer) ? [{ check: check.id, answer, from, ...(again === true ? { again } : {}) }] : []
    }),
  }
}

function usableStart(guide: Guide, start: KeptEvidence['start']): Evidence['start'] {
  const host = start === null ? null : hostNamed(guide, start.host)
  if (start === null || host === null) return null
  const node = start.node === null ? null : nodeNamed(host, start.node)
  return { host: host.id, node: node?.name ?? null }
}
