import { createHash } from 'node:crypto'
import type { CaseView, OpenCase } from '../../../shared/index.js'
import { appendCaseChange, caseByOpeningKey, type Db, insertCase } from '../../store/index.js'
import { DeskFault } from '../desk-fault.js'
import type { Member } from '../people/member.js'
import type { Room } from '../room.js'
import { plausibleHere } from '../season/plausible-here.js'
import { showCase } from '../views/show-case.js'
import { type CaseFile, caseFileFromRow } from './case-file.js'
import { hearWords } from './hear-words.js'
import { workedCase } from './practice.js'

/** Random bytes in a case's link: 192 bits, 32 characters of base64url. */
const LINK_BYTES = 24

/**
 * Opens a case from the asker's words. Signed in, it is one of the member's calls. The date of asking is the date in
 * UTC: it only says which month it is.
 *
 * An opening that carries a key may be sent again, as after a lost reply: it then brings the case it opened, as that
 * stands now. The key with other words is a slip of its sender, and a fault.
 *
 * What the season makes likelier in the district is taken now and kept with the case (see plausible-here.ts).
 *
 * A practised call is asked on the worked case's own day, so that the time of year weighs as it did then, and without what
 * is reported now; only the people of the helpline practise.
 */
export async function openCase(room: Room, { words, district, key, practice, language = 'en' }: OpenCase, who: Member | null): Promise<CaseView> {
  const knowledge = room.knowledge(language)
  const { guide } = knowledge
  if (district != null && !guide.region.districts.has(district)) {
    throw new DeskFault('UNKNOWN_DISTRICT', { words: { district } })
  }
  if (practice !== undefined && who === null) throw new DeskFault('PRACTICE_NOT_FOUND')
  const worked = practice === undefined ? null : workedCase(guide, practice)
  const keyHash = key === undefined ? null : createHash('sha256').update(key).digest('hex')
  const opening: Opening = { words, district: district ?? null, callOf: who?.id ?? null, practice: practice ?? null }
  const earlier = keyHash === null ? null : await openedWith(room.db, keyHash, opening)
  if (earlier !== null) return showCase(room, earlier, who)

  const { redFlags, matched, findings } = hearWords(knowledge, [words])
  const openedAt = room.now().toISOString()
  const fresh: Omit<CaseFile, 'id'> = {
    link: Buffer.from(room.randomBytes(LINK_BYTES)).toString('base64url'),
    revision: 0, words: [words], matched, openedAt, askedOn: worked?.on ?? openedAt.slice(0, 10), district: opening.district, language,
    evidence: { redFlags: [...redFlags], carriedOn: false, start: null, findings: [...findings] },
    callOf: opening.callOf, practice: opening.practice,
    plausible: worked === null ? await plausibleHere(room, guide, opening.district, openedAt.slice(0, 10)) : [],
  }
  const file = await room.db.transaction().execute(async (db): Promise<CaseFile> => {
    // Both sendings of one opening may be under way at once; the second waits for the first to be kept.
    const first = keyHash === null ? null : await openedWith(db, keyHash, opening)
    if (first !== null) return first
    const id = await insertCase(db, {
      link: fresh.link, revision: 0, evidence: JSON.stringify(fresh.evidence), words: JSON.stringify(fresh.words),
      asked_on: fresh.askedOn, district: fresh.district, matched: JSON.stringify(matched), opened_at: openedAt,
      call_of: fresh.callOf, call_closed_at: null, guide_hash: guide.hash, opening_key_hash: keyHash, practice: fresh.practice, language,
      plausible: fresh.plausible.length === 0 ? null : JSON.stringify(fresh.plausible),
    })
    await appendCaseChange(db, {
      case_id: id, revision: 0, kind: 'opened', content: JSON.stringify({ words, district: fresh.district, language }),
      person_id: who?.id ?? null, at: openedAt,
    })
    return { ...fresh, id }
  }).catch(async (fault: unknown) => {
    // Without a single writer the other sending may have been kept in between: then the key is taken by it.
    const first = keyHash === null ? null : await openedWith(room.db, keyHash, opening)
    if (first === null) throw fault
    return first
  })
  return showCase(room, file, who)
}

interface Opening {
  readonly words: string
  readonly district: string | null
  readonly callOf: number | null
  readonly practice: string | null
}

async function openedWith(db: Db, keyHash: string, { words, district, callOf, practice }: Opening): Promise<CaseFile | null> {
  const row = await caseByOpeningKey(db, keyHash)
  if (row === undefined) return null
  const file = caseFileFromRow(row)
  const isSame = file.words[0] === words && file.district === district && file.callOf === callOf && file.practice === practice
  if (!isSame) throw new DeskFault('KEY_USED')
  return file
}
