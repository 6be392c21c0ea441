import type { HandOver } from '../../../shared/index.js'
import { type Db, insertTicket, ticketByCase } from '../../store/index.js'
import { DeskFault } from '../desk-fault.js'
import { mailAbout } from '../mail/mail-about.js'
import type { Member } from '../people/member.js'
import type { Room } from '../room.js'
import { keepSealed } from '../privacy/contacts.js'
import { countCase } from '../season/count-case.js'
import { writeDown } from '../tickets/happening.js'
import { keepSought } from '../tickets/sought.js'
import { urgencyOf } from '../tickets/urgency.js'
import type { CaseChange } from './case-change.js'
import { applyChange, inRounds, nextChangeAfter, staleRevision } from './change-case.js'
import type { CaseFile } from './case-file.js'
import { findCase } from './find-case.js'
import { readCaseFile } from './read-case-file.js'

/**
 * Hands a case over to the specialist: opens its one ticket. Allowed at every step. A case that has its ticket already
 * is left as it is, whatever is sent. A practised call opens none.
 */
export async function handOver(room: Room, link: string, body: HandOver, who: Member | null): Promise<void> {
  const outcome = await inRounds(() => room.db.transaction().execute(async (db) => {
    const now = await findCase(db, link)
    if (now.practice !== null) throw new DeskFault('ONLY_PRACTICE')
    if (await ticketByCase(db, now.id) !== undefined) return 'repeated'
    if (body.revision > now.revision || await nextChangeAfter(db, now, body.revision) !== undefined) return 'stale'
    const outcome = await applyChange(room, db, now, who, handOverChange)
    if (outcome !== 'beaten') await openTicket(room, db, now, body, who)
    return outcome
  }))
  if (outcome === 'stale') throw await staleRevision(room, link, who)
}

// The note and the contact are kept with the ticket, not in the history: the history can never be erased.
const handOverChange: CaseChange = { kind: 'hand-over', content: {}, apply: (now) => now }

async function openTicket(room: Room, db: Db, now: CaseFile, body: HandOver, who: Member | null): Promise<void> {
  const { guide } = room.knowledge()
  const urgency = urgencyOf(guide, readCaseFile(guide, now))
  const at = room.now().toISOString()
  const ticket = await insertTicket(db, {
    case_id: now.id, state: 'waiting', urgent: urgency?.level ?? 0, why: urgency?.why ?? '', opened_at: at,
    taken_by: null, taken_at: null, settled_at: null, reply: null, note: orNull(body.note), merged_into: null, waits_since: at,
  })
  const opened = { kind: 'opened', why: urgency?.why ?? null } as const
  await writeDown(db, ticket, at, who?.id ?? null, opened)
  await keepSealed(room.keys, db, ticket, body.contact)
  await mailAbout(room, db, ticket, String(urgency?.level ?? 0), opened)
  await keepSought(room, db, ticket)
  // By the contact it is known whether this asker has told of it before.
  await countCase(room, db, now.id)
}

function orNull(text: string | undefined): string | null {
  return text === undefined || text === '' ? null : text
}
