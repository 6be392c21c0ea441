import { z } from 'zod'
import { type Db, insertMail } from '../../store/index.js'
import type { Room } from '../room.js'

/** A letter to be sent, by what it is about. It is written out only when it is sent. */
export const MailOrder = z.discriminatedUnion('kind', [
  /** To the asker: the ticket is with a specialist, with the private link. */
  z.object({ kind: z.literal('received'), ticket: z.number() }),
  /** To the asker: the specialist asks back. `turn` tells one asking back from the next. */
  z.object({ kind: z.literal('asked back'), ticket: z.number(), turn: z.string() }),
  /** To the asker: the answer. `turn` tells an answer from its amendment. */
  z.object({ kind: z.literal('answered'), ticket: z.number(), turn: z.string(), changed: z.boolean() }),
  /** To whoever is on duty: a ticket is urgent. `turn` tells it from the same ticket's becoming more so. */
  z.object({ kind: z.literal('urgent'), ticket: z.number(), turn: z.string() }),
  /** To whoever is on duty: the first report of a watch problem in a district this year. `turn` is the year and the case. */
  z.object({ kind: z.literal('first report'), problem: z.string(), district: z.string().nullable(), turn: z.string() }),
  /** To a new member of the helpline. Address and link are sealed. `turn` tells one invitation from the next. */
  z.object({ kind: z.literal('invitation'), turn: z.string() }),
])
export type MailOrder = z.infer<typeof MailOrder>

/**
 * Puts a letter into the outbox, in the transaction of the change that causes it: both are kept or neither. The same
 * order again makes no second letter. Nothing happens where the service sends no mail.
 * @param sealed for an invitation: what `openInvitationLetter` opens again
 */
export async function enqueueMail(
  room: Pick<Room, 'mail' | 'now'>, db: Db, order: MailOrder, sealed: string | null = null,
): Promise<void> {
  if (room.mail === null) return
  const at = room.now().toISOString()
  const ticket = 'ticket' in order ? order.ticket : null
  await insertMail(db, {
    mail_key: [order.kind, ticket ?? about(order), 'turn' in order ? order.turn : ''].join(':'), mail_order: JSON.stringify(order),
    ticket_id: ticket, sealed, state: 'waiting', tries: 0, made_at: at, trying_since: at, next_at: at, claim: null,
    ended_at: null, why: null,
  })
}

/** What a letter that is about no ticket is about. */
function about(order: MailOrder): string {
  return order.kind === 'first report' ? `${order.problem}/${order.district ?? ''}` : ''
}
