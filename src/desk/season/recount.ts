import type { Guide } from '../../guide/index.js'
import { caseIdsAfter } from '../../store/index.js'
import type { Room } from '../room.js'
import { countCase } from './count-case.js'

/** Cases counted in one transaction. */
const AT_ONCE = 100

/**
 * Counts every case anew with the guide of today: for a store from before the season was counted, or after the guide
 * has changed much. Raises no notice, since nothing in it is news. Done again it changes nothing. Returns how many
 * cases were looked at.
 */
export async function recountSeason(room: Pick<Room, 'db' | 'mail' | 'now'> & { knowledge(): { readonly guide: Guide } }): Promise<number> {
  let looked = 0
  let last = 0
  for (;;) {
    const ids = await caseIdsAfter(room.db, last, AT_ONCE)
    if (ids.length === 0) return looked
    await room.db.transaction().execute(async (db) => {
      for (const id of ids) await countCase(room, db, id, false)
    })
    looked += ids.length
    last = ids.at(-1) ?? last
  }
}
