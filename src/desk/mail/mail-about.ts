import type { Db } from '../../store/index.js'
import type { Room } from '../room.js'
import type { TicketHappening } from '../tickets/happening.js'
import { askerAddress } from './asker-address.js'
import { enqueueMail, type MailOrder } from './mail-order.js'

/**
 * Puts the letters into the outbox that something which happened to a ticket calls for, in the transaction in which it
 * happens. An asker who left no mail address gets none.
 * @param turn tells this happening from the next of its kind on the same ticket
 */
export async function mailAbout(
  room: Pick<Room, 'mail' | 'now' | 'keys'>, db: Db, ticket: number, turn: string, happening: TicketHappening,
): Promise<void> {
  if (room.mail === null) return
  if ((happening.kind === 'opened' && happening.why !== null) || happening.kind === 'urgent') {
    await enqueueMail(room, db, { kind: 'urgent', ticket, turn })
  }
  const toAsker = letterToAsker(ticket, turn, happening)
  if (toAsker !== null && await askerAddress(room, db, ticket) !== null) await enqueueMail(room, db, toAsker)
}

function letterToAsker(ticket: number, turn: string, happening: TicketHappening): MailOrder | null {
  switch (happening.kind) {
    case 'opened': return { kind: 'received', ticket }
    case 'asked back': return { kind: 'asked back', ticket, turn }
    case 'settled': return { kind: 'answered', ticket, turn, changed: false }
    case 'amended': return { kind: 'answered', ticket, turn, changed: true }
    default: return null
  }
}
