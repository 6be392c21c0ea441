import type { Reading } from '../../engine/index.js'
import type { Guide } from '../../guide/index.js'
import {
  advanceTicket, type Db, markQuestionAnswered, questionsOf, raiseTicket, ticketByCase, ticketById, type TicketWithTaker,
} from '../../store/index.js'
import { dropKept } from '../casebook/keep.js'
import { mailAbout } from '../mail/mail-about.js'
import type { Member } from '../people/member.js'
import type { Room } from '../room.js'
import { countCase } from '../season/count-case.js'
import { writeDown } from './happening.js'
import { keepSought } from './sought.js'
import { type Urgency, urgencyOf } from './urgency.js'

/** What an asker may answer a specialist with. */
export type AnsweredWith = 'check' | 'words' | 'photo'

/**
 * Lets a case's ticket follow what has happened in the case: it becomes more urgent when what has been learnt says so
 * (never less), and is found by the new words. A settled one waits again when a danger is new. Of a repeat that was
 * merged into another ticket, it is that other one that becomes urgent and waits again: nobody reads the repeat any more.
 * @param isNewDanger whether a card has appeared that must be seen before anything goes on
 */
export async function followCase(
  room: Room, db: Db, caseId: number, guide: Guide, reading: Reading, isNewDanger: boolean,
): Promise<void> {
  const ticket = await ticketByCase(db, caseId)
  if (ticket === undefined) return
  const urgency = urgencyOf(guide, reading)
  const whole = ticket.merged_into === null ? undefined : await ticketById(db, ticket.merged_into)
  if (urgency !== null) {
    if (whole === undefined) await raise(room, db, ticket, urgency, isNewDanger, ticket.state === 'settled')
    else {
      // Should they be taken apart again, the repeat is as urgent as it is by now.
      await raiseTicket(db, ticket.id, urgency.level, urgency.why)
      // However urgent the other one is: nobody who has it looks into this case.
      await raise(room, db, whole, { ...urgency, why: `${urgency.why} (in ticket ${ticket.id}, merged into this one)` }, isNewDanger, true)
    }
  }
  await keepSought(room, db, ticket.id, reading)
}

/**
 * Raises a ticket's urgency, and lets it wait again when it was settled and the danger is new.
 * @param everyDanger whether each new danger is told, and not only one that makes the ticket more urgent than it was
 */
async function raise(
  room: Room, db: Db, ticket: TicketWithTaker, urgency: Urgency, isNewDanger: boolean, everyDanger: boolean,
): Promise<void> {
  const at = room.now().toISOString()
  if (ticket.state === 'settled' && !(isNewDanger && await openAgain(room, db, ticket, at))) return
  const toldAnyway = everyDanger && isNewDanger
  if (ticket.urgent >= urgency.level && !toldAnyway) return
  await raiseTicket(db, ticket.id, urgency.level, urgency.why)
  const urgent = { kind: 'urgent', why: urgency.why } as const
  await writeDown(db, ticket.id, at, null, urgent)
  await mailAbout(room, db, ticket.id, toldAnyway ? at : String(urgency.level), urgent)
}

/**
 * A danger told of after the answer is read by nobody unless the ticket waits again: for everybody, since whoever
 * settled it may be away. Nothing is lost when it fails: then somebody has moved the ticket at this very moment.
 */
async function openAgain(room: Room, db: Db, ticket: TicketWithTaker, at: string): Promise<boolean> {
  const waiting = { state: 'waiting', taken_by: null, taken_at: null, settled_at: null, reply: null, waits_since: at } as const
  if (!await advanceTicket(db, ticket.id, ticket.version, waiting)) return false
  await writeDown(db, ticket.id, at, null, { kind: 'reopened' })
  await dropKept(db, ticket.id, at, null)
  await countCase(room, db, ticket.case_id)
  return true
}

/**
 * The asker, or whoever speaks for them, has answered something. If their ticket was asked back, it is 'answered by
 * asker' from now on. What the specialist who has the ticket fills in is no answer of the asker's.
 */
export async function heardFromAsker(
  room: Room, db: Db, caseId: number, who: Member | null, answeredWith: AnsweredWith,
): Promise<void> {
  const ticket = await ticketByCase(db, caseId)
  if (ticket === undefined || (who !== null && who.id === ticket.taken_by)) return
  const question = (await questionsOf(db, ticket.id)).at(-1)
  const open = ticket.state !== 'settled' && ticket.state !== 'merged'
  if (question === undefined || !open) return
  const at = room.now().toISOString()
  await markQuestionAnswered(db, question.id, at)
  await writeDown(db, ticket.id, at, who?.id ?? null, { kind: 'answered', with: answeredWith })
  if (ticket.state !== 'asked back') return
  // Nothing is lost when it fails: then a specialist has moved the ticket at this very moment, and that stands.
  await advanceTicket(db, ticket.id, ticket.version, { state: 'answered by asker', waits_since: at })
}
