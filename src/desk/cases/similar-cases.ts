import type { SimilarCase, SimilarCases } from '../../../shared/index.js'
import { CANT_LOOK, type Guide, NOT_SURE } from '../../guide/index.js'
import { type SettledCase, settledCasesOn } from '../../store/index.js'
import { checkNamed, hostNamed } from '../guide-names.js'
import type { Member } from '../people/member.js'
import type { Room } from '../room.js'
import { replyFromText } from '../tickets/reply.js'
import { KeptEvidence, type KeptFinding } from './case-file.js'
import { findCase } from './find-case.js'
import { readCaseFile } from './read-case-file.js'

/** Half a year back is this season: what was settled in autumn says little about spring. Our judgement. */
const SEASON_DAYS = 183
/** Most settled cases that are compared, the last opened ones. */
const MOST_COMPARED = 200
/** More than these are a list to read, not a hint. */
const MOST_SHOWN = 5

/**
 * Settled cases of this season on the same plant and, where the case tells one, in the same district, the most alike first:
 * by answers in common less answers that differ, then the last settled. Volunteers see no ticket numbers.
 */
export async function similarCases(room: Room, link: string, who: Member): Promise<SimilarCases> {
  const { guide } = room.knowledge()
  const file = await findCase(room.db, link)
  const host = readCaseFile(guide, file).host
  const since = daysBefore(file.askedOn, SEASON_DAYS)
  const none = { hostName: null, district: file.district, since, cases: [], more: 0 }
  if (host === null) return none
  const rows = await settledCasesOn(room.db, { host, since, district: file.district, most: MOST_COMPARED })
  const cases = rows.flatMap((row) => (row.case_id === file.id ? [] : likeness(guide, file.evidence.findings, row) ?? []))
  cases.sort((a, b) => (b.same.length - b.different) - (a.same.length - a.different) || b.settledAt.localeCompare(a.settledAt))
  const seesTickets = who.role !== 'volunteer'
  return {
    ...none, hostName: hostNamed(guide, host)?.name ?? null, more: Math.max(0, cases.length - MOST_SHOWN),
    cases: cases.slice(0, MOST_SHOWN).map((one) => (seesTickets ? one : { ...one, ticket: null })),
  }
}

/** How a settled case compares, or null when its answer has been taken back meanwhile. */
function likeness(guide: Guide, findings: readonly KeptFinding[], row: SettledCase): SimilarCase | null {
  if (row.reply === null || row.settled_at === null) return null
  const { problemName, outcome } = replyFromText(row.reply)
  const other = new Map(KeptEvidence.parse(JSON.parse(row.evidence)).findings.filter(isSeen).map(({ check, answer }) => [check, answer]))
  const both = findings.filter((finding) => isSeen(finding) && other.has(finding.check))
  const same = both.filter(({ check, answer }) => other.get(check) === answer)
  return {
    ticket: String(row.ticket_id), askedOn: row.asked_on, settledAt: row.settled_at, district: row.district, problemName, outcome,
    same: same.flatMap(({ check, answer }) => {
      const ask = checkNamed(guide, check)?.ask
      return ask === undefined ? [] : [{ ask, answer }]
    }),
    different: both.length - same.length,
  }
}

function isSeen({ answer }: KeptFinding): boolean {
  return answer !== NOT_SURE && answer !== CANT_LOOK
}

function daysBefore(day: string, days: number): string {
  return new Date(Date.parse(day) - days * 24 * 3_600_000).toISOString().slice(0, 10)
}
