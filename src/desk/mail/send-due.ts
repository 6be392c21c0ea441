import { GIVE_UP_MS, type Letter, retryWaitMs, type SendOutcome } from '../../mail/index.js'
import {
  claimMail, forgetMailBefore, giveUpMail, markMailSent, nextMailAt, type OutboxRow, postponeMail,
} from '../../store/index.js'
import type { Room } from '../room.js'
import { composeLetter } from './compose-letter.js'
import { dropSpentInvitations } from './invitation.js'
import { MailOrder } from './mail-order.js'
import type { MailPlace } from './mail-place.js'

/** A claim runs out after so many times what one try may take, so that two processes never try one letter at once. */
const CLAIM_IN_TRIES = 1.5
/** How long it is remembered that a letter was sent: an event that happens again later is a new one. */
const REMEMBER_MS = 90 * 86_400_000

/**
 * Sends every letter that is due, one after the other, until none is or `stopped` says so. A letter counts as sent only
 * when the server has taken it; should the process end between the two, it is sent once more with the same Message-ID.
 * Any number of processes may do this at once. Returns when the next letter is due, or null when none waits.
 */
export async function sendDueMail(room: Room, stopped: () => boolean = () => false): Promise<Date | null> {
  const { mail } = room
  if (mail === null) return null
  while (!stopped()) {
    const row = await claimNext(room, mail)
    if (row === undefined) break
    await sendOne(room, mail, row)
  }
  const next = await nextMailAt(room.db)
  return next === undefined ? null : new Date(next)
}

/** Forgets letters that ended long ago, and drops those that no longer serve anybody. */
export async function forgetOldMail({ db, now }: Pick<Room, 'db' | 'now'>): Promise<void> {
  await db.transaction().execute((trx) => dropSpentInvitations(trx, now().toISOString()))
  await forgetMailBefore(db, new Date(now().getTime() - REMEMBER_MS).toISOString())
}

function claimNext(room: Room, { mailer }: MailPlace): Promise<OutboxRow | undefined> {
  const now = room.now()
  const until = new Date(now.getTime() + CLAIM_IN_TRIES * mailer.longestMs).toISOString()
  const claim = Buffer.from(room.randomBytes(12)).toString('base64url')
  return room.db.transaction().execute((db) => claimMail(db, now.toISOString(), until, claim))
}

async function sendOne(room: Room, mail: MailPlace, row: OutboxRow): Promise<void> {
  const letter = await compose(room, mail, row)
  if (letter === null) return giveUp(room, row, 'dropped', null)
  if (letter === 'unwritable') return giveUp(room, row, 'stuck', 'The letter could not be written; the service\'s log says why.')

  const { region } = room.knowledge().guide
  // Of nothing but the row, so that it is the same at every try and after every restart.
  const madeFrom = `${row.id} ${row.mail_key} ${row.made_at}`
  await record(room, row, await mail.mailer.send(letter, madeFrom, region.helpline))
}

async function compose(room: Room, mail: MailPlace, row: OutboxRow): Promise<Letter | null | 'unwritable'> {
  try {
    return await composeLetter(room, mail, MailOrder.parse(JSON.parse(row.mail_order)), row.sealed)
  } catch (fault) {
    room.report(fault, 'a letter could not be written')
    // One letter that cannot be written must not hold up those behind it.
    return 'unwritable'
  }
}

async function record(room: Room, row: OutboxRow, outcome: SendOutcome): Promise<void> {
  switch (outcome.kind) {
    // Whoever holds the claim by now, it was taken by the server.
    case 'sent': return markMailSent(room.db, row.id, room.now().toISOString())
    case 'never': return giveUp(room, row, 'stuck', outcome.why)
    case 'later': {
      const now = room.now().getTime()
      if (now - Date.parse(row.trying_since) > GIVE_UP_MS) return giveUp(room, row, 'stuck', outcome.why)
      const chance = (room.randomBytes(1)[0] ?? 0) / 255
      const nextAt = new Date(now + retryWaitMs(row.tries, chance)).toISOString()
      return postponeMail(room.db, row.id, row.claim ?? '', nextAt, outcome.why)
    }
  }
}

function giveUp(room: Room, row: OutboxRow, state: 'stuck' | 'dropped', why: string | null): Promise<void> {
  return giveUpMail(room.db, row.id, row.claim ?? '', state, room.now().toISOString(), why)
}
