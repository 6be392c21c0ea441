import { contactsSettledBefore, eraseContact, forgetMailWords } from '../../store/index.js'
import { helplineSettings } from '../people/helpline-settings.js'
import type { Room } from '../room.js'
import { writeDown } from '../tickets/happening.js'

const DAY_MS = 24 * 60 * 60 * 1000

/**
 * Erases the contact details of tickets settled longer ago than the helpline keeps them: the days that administrators
 * decided, or else the region's own. Returns how many. Done again, it finds nothing more to do.
 */
export async function eraseDueContacts(room: Pick<Room, 'db' | 'now' | 'knowledge'>): Promise<number> {
  const { eraseContactAfterDays } = await helplineSettings(room.db)
  const days = eraseContactAfterDays ?? room.knowledge().guide.region.targets.eraseContactAfterDays
  const now = room.now()
  const due = await contactsSettledBefore(room.db, new Date(now.getTime() - days * DAY_MS).toISOString())
  let erased = 0
  for (const ticketId of due) {
    await room.db.transaction().execute(async (db) => {
      await forgetMailWords(db, ticketId)
      if (await eraseContact(db, ticketId)) await writeDown(db, ticketId, now.toISOString(), null, { kind: 'contact erased' })
    })
    erased++
  }
  return erased
}
