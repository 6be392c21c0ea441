import { HelplineSettings } from '../../../shared/index.js'
import { appendHelplineSetting, type Db, helplineSetting } from '../../store/index.js'
import type { Room } from '../room.js'
import type { Member } from './member.js'

/** What holds as long as no administrator has decided anything. */
const UNDECIDED: HelplineSettings = { codesFor: [], eraseContactAfterDays: null }

/** What administrators have decided for the helpline. */
export async function helplineSettings(db: Db): Promise<HelplineSettings> {
  const kept = await helplineSetting(db)
  return kept === undefined ? UNDECIDED : HelplineSettings.parse(JSON.parse(kept))
}

/** Decides anew; every decision before is kept with who and when. */
export async function decideSettings(room: Pick<Room, 'db' | 'now'>, settings: HelplineSettings, who: Member): Promise<HelplineSettings> {
  await appendHelplineSetting(room.db, { at: room.now().toISOString(), person_id: who.id, content: JSON.stringify(settings) })
  return helplineSettings(room.db)
}
