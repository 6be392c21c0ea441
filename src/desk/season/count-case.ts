import { type Reading, readCase } from '../../engine/index.js'
import type { Guide } from '../../guide/index.js'
import { countsAs, isoWeekOf, repeatsAmong, weekParts } from '../../season/index.js'
import {
  announce, askerOfCases, caseById, casesOfTickets, contactOf, type Db, dropSeasonReport, keepSeasonReport, markRepeat, raiseWatchNotice,
  reportsOfAsker, type SeasonReportRow, seasonReportOf, ticketByCase, ticketsWithMark, type TicketWithTaker,
} from '../../store/index.js'
import { type CaseFile, caseFileFromRow } from '../cases/case-file.js'
import { readCaseFile, settingOf, usableEvidence } from '../cases/read-case-file.js'
import { problemNamed } from '../guide-names.js'
import { enqueueMail } from '../mail/mail-order.js'
import type { Room } from '../room.js'
import { replyFromText } from '../tickets/reply.js'

/** As much of the room as counting needs. */
type CountingRoom = Pick<Room, 'mail' | 'now'> & { knowledge(): { readonly guide: Guide } }

/**
 * Brings what the season counts of a case up to date, in the transaction of whatever changed the case or its ticket, and
 * raises a notice when it is the first report of a watch problem. Nothing is written when nothing changed.
 * @param tells false when old cases are counted anew: then nothing is news
 */
export async function countCase(room: CountingRoom, db: Db, caseId: number, tells = true): Promise<void> {
  const row = await caseById(db, caseId)
  if (row === undefined || row.practice !== null) return
  const before = await seasonReportOf(db, caseId)
  const ticket = await ticketByCase(db, caseId)
  const now = await reportOf(room, db, caseFileFromRow(row), ticket, before)
  if (JSON.stringify(now) === JSON.stringify(before)) return
  if (now === undefined) await dropSeasonReport(db, caseId)
  else await keepSeasonReport(db, now)
  for (const side of [before, now]) if (side !== undefined && side.asker !== null) await markRepeatsOf(db, side.asker, side.problem)
  if (tells && now !== undefined) await noticeFirst(room, db, now)
}

async function reportOf(
  { knowledge }: CountingRoom, db: Db, file: CaseFile, ticket: TicketWithTaker | undefined, before: SeasonReportRow | undefined,
): Promise<SeasonReportRow | undefined> {
  const { guide } = knowledge()
  const reading = readCaseFile(guide, file)
  const counts = countsAs({
    isPractice: false, isMerged: ticket?.state === 'merged',
    settledAs: ticket?.state === 'settled' && ticket.reply !== null ? replyFromText(ticket.reply).problem : undefined,
    concluded: concludedIn(guide, file, reading),
  })
  // Settled without a plant, as from words alone: the host is then one that the problem is of.
  const host = reading.host ?? (counts === null ? null : firstHostOf(guide, counts.problem))
  if (counts === null || host === null) return undefined
  // A job that was asked for is no sighting: the season's record tells what plants suffer from.
  if (problemNamed(guide, counts.problem)?.kind === 'garden job') return undefined
  // Once anybody was erased, who asked is not found out anew, and the report counts or repeats as it did.
  const isCut = before !== undefined && before.asker === null
  return {
    case_id: file.id, problem: counts.problem, host, district: file.district, asked_on: file.askedOn, week: isoWeekOf(file.askedOn),
    basis: counts.basis, weight: counts.weight, asker: isCut ? null : await askerOf(db, file.id, ticket),
    is_repeat: before !== undefined && (isCut || before.problem === counts.problem) ? before.is_repeat : 0,
  }
}

/** The conclusion, with its probability on the evidence alone: what the season adds must not feed the season. */
function concludedIn(guide: Guide, file: CaseFile, { step, differential }: Reading): { problem: string; probability: number } | null {
  if (step.kind !== 'conclude') return null
  const plain = file.plausible.length === 0 ? differential
    : readCase(guide, usableEvidence(guide, file.evidence), { ...settingOf(guide, file), plausible: {} }).differential
  return { problem: step.problem, probability: plain.find(({ problem }) => problem === step.problem)?.probability ?? 0 }
}

function firstHostOf(guide: Guide, problemName: string): string | null {
  const problem = problemNamed(guide, problemName)
  return problem === null ? null : guide.hosts.find(({ problems }) => problems.includes(problem.number))?.id ?? null
}

/**
 * A number for whoever asked: the lowest case of all that were left with the same mail address or telephone number. It is
 * no more than a case's number, and is forgotten when the asker is erased.
 */
async function askerOf(db: Db, caseId: number, ticket: TicketWithTaker | undefined): Promise<number> {
  const known = await askerOfCases(db, [caseId])
  const contact = ticket === undefined ? undefined : await contactOf(db, ticket.id)
  const others = contact === undefined ? [] : await casesOfTickets(db, await ticketsWithMark(db, contact))
  return Math.min(caseId, known ?? caseId, await askerOfCases(db, others) ?? caseId)
}

async function markRepeatsOf(db: Db, asker: number, problem: string): Promise<void> {
  const rows = await reportsOfAsker(db, asker, problem)
  const repeats = repeatsAmong(rows.map((row) => ({ caseId: row.case_id, problem, askedOn: row.asked_on, asker })))
  for (const { case_id: id, is_repeat: was } of rows) if ((was === 1) !== repeats.has(id)) await markRepeat(db, id, repeats.has(id))
}

/** The first report of a watch problem in a district in an ISO year is told once, to the bench and by mail. */
async function noticeFirst(room: CountingRoom, db: Db, { case_id: caseId, problem, district, week }: SeasonReportRow): Promise<void> {
  if (problemNamed(room.knowledge().guide, problem)?.watch == null) return
  const { year } = weekParts(week)
  const isNews = await raiseWatchNotice(db, { problem, district: district ?? '', year, caseId, at: room.now().toISOString() })
  if (!isNews) return
  await enqueueMail(room, db, { kind: 'first report', problem, district, turn: `${year} ${caseId}` })
  await announce(db, { ticket: null, what: 'first report', person: null })
}
