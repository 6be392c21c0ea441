import type { CaseView, OpenCase } from '../../../shared/index.js'
import { appendCaseChange, insertCase } from '../../store/index.js'
import { DeskFault } from '../desk-fault.js'
import type { Member } from '../people/member.js'
import type { Room } from '../room.js'
import { showCase } from '../views/show-case.js'
import { type CaseFile } from './case-file.js'
import { hearWords } from './hear-words.js'

/** Random bytes in a case's link: 192 bits, 32 characters of base64url. */
const LINK_BYTES = 24

/**
 * Opens a case from the asker's words. Signed in, it is one of the member's calls. The date of asking is the date in
 * UTC: it only says which month it is.
 */
export async function openCase(room: Room, { words, district }: OpenCase, who: Member | null): Promise<CaseView> {
  const knowledge = room.knowledge()
  const { guide } = knowledge
  if (district != null && !guide.region.districts.has(district)) {
    throw new DeskFault('UNKNOWN_DISTRICT', { words: { district } })
  }
  const { redFlags, matched, findings } = hearWords(knowledge, [words])
  const openedAt = room.now().toISOString()
  const fresh: Omit<CaseFile, 'id'> = {
    link: Buffer.from(room.randomBytes(LINK_BYTES)).toString('base64url'),
    revision: 0, words: [words], matched, openedAt, askedOn: openedAt.slice(0, 10), district: district ?? null,
    evidence: { redFlags: [...redFlags], carriedOn: false, start: null, findings: [...findings] },
    callOf: who?.id ?? null,
  }
  const id = await room.db.transaction().execute(async (db) => {
    const caseId = await insertCase(db, {
      link: fresh.link, revision: 0, evidence: JSON.stringify(fresh.evidence), words: JSON.stringify(fresh.words),
      asked_on: fresh.askedOn, district: fresh.district, matched: JSON.stringify(matched), opened_at: openedAt,
      call_of: fresh.callOf, call_closed_at: null, guide_hash: guide.hash,
    })
    await appendCaseChange(db, {
      case_id: caseId, revision: 0, kind: 'opened', content: JSON.stringify({ words, district: fresh.district }),
      person_id: who?.id ?? null, at: openedAt,
    })
    return caseId
  })
  return showCase(room, { ...fresh, id }, who)
}
