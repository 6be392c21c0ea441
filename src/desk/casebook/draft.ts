import { stringify } from 'yaml'
import type { Outcome } from '../../../shared/index.js'
import { CANT_LOOK, type Guide, NOT_SURE } from '../../guide/index.js'
import type { Reading } from '../../engine/index.js'
import type { CaseFile } from '../cases/case-file.js'
import { readCaseFile } from '../cases/read-case-file.js'
import { checkNamed, hostNamed, redFlagNamed, takesAnswer } from '../guide-names.js'

/** A case as it stands in a file of trees/casebook. */
export interface CasebookEntry {
  readonly case: string
  readonly words: string
  readonly on: string
  readonly district?: string
  readonly host?: string
  readonly findings?: Readonly<Record<string, string>>
  readonly ends: { readonly problem: string } | { readonly 'hand over': true } | { readonly 'red flag': string }
}

/** Why a settled case makes no casebook case, or null when it makes one. */
export function whyNoCasebook(outcome: Outcome): string | null {
  return outcome.kind === 'not a plant problem' ? 'A question that is not about a plant teaches the guide nothing.' : null
}

/**
 * A settled case for the casebook: the words as given, what was seen, and the truth. What was not sure or could not be
 * looked at is left out. A case with an emergency card ends with the card, whatever the plant had.
 */
export function casebookEntry(guide: Guide, ticketId: number, file: CaseFile, outcome: Outcome, words: string): CasebookEntry {
  const reading = readCaseFile(guide, file)
  const host = reading.host === null ? null : hostNamed(guide, reading.host)
  const findings = file.evidence.findings.filter(({ check: name, answer }) => {
    const check = checkNamed(guide, name)
    return check !== null && takesAnswer(check, answer) && answer !== NOT_SURE && answer !== CANT_LOOK
  })
  const district = file.district !== null && guide.region.districts.has(file.district) ? file.district : null
  return {
    case: `${host?.id ?? 'any'}-ticket-${ticketId}`, words, on: file.askedOn,
    ...(district === null ? {} : { district }), ...(host === null ? {} : { host: host.id }),
    ...(findings.length === 0 ? {} : { findings: Object.fromEntries(findings.map(({ check, answer }) => [check, answer])) }),
    ends: endOf(guide, reading, outcome),
  }
}

/** Casebook cases as a file of trees/casebook. */
export function casebookYaml(cases: readonly CasebookEntry[]): string {
  return stringify({ casebook: 'from-tickets', cases }, { lineWidth: 120 })
}

function endOf(guide: Guide, { cards }: Reading, outcome: Outcome): CasebookEntry['ends'] {
  const emergency = cards.flatMap((name) => redFlagNamed(guide, name) ?? []).find(({ level }) => level === 'emergency')
  if (emergency !== undefined) return { 'red flag': emergency.id }
  return outcome.kind === 'problem' ? { problem: outcome.problem } : { 'hand over': true }
}
