import type { MailRow, MailView } from '../../../shared/index.js'
import { countWaitingMail, type OutboxRow, retryMail as retryRow, troubledMail } from '../../store/index.js'
import { DeskFault } from '../desk-fault.js'
import type { Room } from '../room.js'
import { MailOrder } from './mail-order.js'

const MOST_ROWS = 200

/** Whether mail is sent, how much waits, and each letter that somebody should look at. */
export async function showMail(room: Room): Promise<MailView> {
  const rows = await troubledMail(room.db, MOST_ROWS)
  return { on: room.mail !== null, waiting: await countWaitingMail(room.db), troubled: rows.map(mailRow) }
}

/** Lets a letter be tried again at once. A repeat changes nothing. */
export async function retryMail(room: Room, mail: string): Promise<MailView> {
  const now = room.now().toISOString()
  const known = await room.db.transaction().execute((db) => retryRow(db, Number(mail), now))
  if (!known) throw new DeskFault('MAIL_NOT_FOUND')
  return showMail(room)
}

function mailRow(row: OutboxRow): MailRow {
  return {
    mail: String(row.id), about: MailOrder.parse(JSON.parse(row.mail_order)).kind,
    ticket: row.ticket_id === null ? null : String(row.ticket_id), stuck: row.state === 'stuck', tries: row.tries,
    madeAt: row.made_at, nextAt: row.state === 'stuck' ? null : row.next_at, why: row.why ?? '',
  }
}
