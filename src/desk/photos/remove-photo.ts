import { markPhotoRemoved, photosEverOf, ticketByCase } from '../../store/index.js'
import { applyChange, inRounds } from '../cases/change-case.js'
import { findCase } from '../cases/find-case.js'
import { DeskFault } from '../desk-fault.js'
import type { Member } from '../people/member.js'
import type { Room } from '../room.js'
import { photoRemoved } from './photo-changes.js'

/**
 * Takes a photo away from its case: whoever holds the link may until hand-over, a specialist may always. It is shown to
 * nobody from then on; its pictures go with the next sweep. A repeat changes nothing.
 */
export async function removePhoto(room: Room, link: string, photo: string, who: Member | null): Promise<void> {
  const number = Number(photo)
  await inRounds(() => room.db.transaction().execute(async (db) => {
    const now = await findCase(db, link)
    const row = (await photosEverOf(db, now.id)).find((one) => one.number === number)
    if (row === undefined) throw new DeskFault('PHOTO_NOT_FOUND')
    if (row.removed_at !== null) return 'repeated'
    if (!mayRemoveAlways(who) && await ticketByCase(db, now.id) !== undefined) throw new DeskFault('PHOTO_HANDED_OVER')
    const outcome = await applyChange(room, db, now, who, photoRemoved(number))
    if (outcome !== 'beaten') await markPhotoRemoved(db, now.id, number, room.now().toISOString())
    return outcome
  }))
}

function mayRemoveAlways(who: Member | null): boolean {
  return who !== null && who.role !== 'volunteer'
}
