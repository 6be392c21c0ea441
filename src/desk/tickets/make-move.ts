import type { TicketMove } from '../../../shared/index.js'
import { advanceTicket, type Db, type TicketAdvance, ticketById, type TicketWithTaker } from '../../store/index.js'
import { mailAbout } from '../mail/mail-about.js'
import type { Member } from '../people/member.js'
import type { Room } from '../room.js'
import { countCase } from '../season/count-case.js'
import { findTicket } from './find-ticket.js'
import { type TicketHappening, writeDown } from './happening.js'
import { keepSought } from './sought.js'
import { ticketMoves, whyNot } from './ticket-moves.js'

/** A move's own part: what it alters besides the state, and the line it leaves in the history. */
export interface Move {
  readonly move: TicketMove
  readonly sets?: TicketAdvance
  readonly happening: TicketHappening
}

/** Others may be first this often before the move is given up; each time the rules are asked anew. */
const MOST_TRIES = 5

/**
 * Makes a move, or throws why it cannot be made. A waiting ticket that its holder alone may move is taken on the way. All
 * in the caller's transaction.
 */
export async function makeMove(
  room: Room, db: Db, ticket: TicketWithTaker, who: Member, { move, sets = {}, happening }: Move,
): Promise<void> {
  let now = ticket
  for (let turn = 0; turn < MOST_TRIES; turn++) {
    const fault = whyNot(move, now, who)
    if (fault !== null) throw fault
    const { by, to } = ticketMoves[move]
    const at = room.now().toISOString()
    const takes = now.state === 'waiting' && by !== 'anyone' && move !== 'merge'
    const state = to ?? (takes ? 'taken' : now.state)
    const advance = { state, ...(takes ? { taken_by: who.id, taken_at: at } : {}), ...sets }
    if (await advanceTicket(db, now.id, now.version, advance)) {
      if (takes) await writeDown(db, now.id, at, who.id, { kind: 'taken' })
      await writeDown(db, now.id, at, who.id, happening)
      await mailAbout(room, db, now.id, String(now.version), happening)
      await keepSought(room, db, now.id)
      await countCase(room, db, now.case_id)
      return
    }
    now = await ticketById(db, now.id) ?? now
  }
  throw new Error(`Ticket ${ticket.id} changes too fast.`)
}

/** Finds a ticket and makes a move with it, in one transaction. */
export function moveTicket(
  room: Room, number: string, who: Member, plan: (db: Db, ticket: TicketWithTaker) => Promise<Move | null>,
): Promise<void> {
  return room.db.transaction().execute(async (db) => {
    const ticket = await findTicket(db, number)
    const move = await plan(db, ticket)
    // Null: it was done already, by a double click or a reply that was lost.
    if (move !== null) await makeMove(room, db, ticket, who, move)
  })
}
