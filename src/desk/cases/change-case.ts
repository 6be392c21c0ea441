import type { CaseView } from '../../../shared/index.js'
import type { Reading } from '../../engine/index.js'
import {
  advanceCase, announceCase, appendCaseChange, type CaseChangeRow, caseChangesSince, type Db, ticketByCase,
} from '../../store/index.js'
import { DeskFault } from '../desk-fault.js'
import type { Member } from '../people/member.js'
import { isPhotoKind } from '../photos/photo-changes.js'
import type { Room } from '../room.js'
import { countCase } from '../season/count-case.js'
import { followCase, heardFromAsker } from '../tickets/follow-case.js'
import { showCaseAt, showChanged } from '../views/show-case.js'
import type { CaseChange } from './case-change.js'
import type { CaseFile } from './case-file.js'
import { findCase } from './find-case.js'
import { isNewDanger, keepCards } from './keep-cards.js'
import { readCaseFile } from './read-case-file.js'

/** Most changes in one case; a long call makes about sixty. */
const MOST_CHANGES = 400
const MOST_ROUNDS = 20

/** What a change made of its case. */
export interface Applied {
  readonly file: CaseFile
  readonly hasTicket: boolean
}

/**
 * The revision rule, in one transaction. Gives the case as the sender is to see it afterwards.
 *
 * | the sender's revision | then |
 * |---|---|
 * | is the case's | the change is applied and the revision goes up by one |
 * | is older, and the very same change followed it | nothing is changed: a double click, or a lost reply sent again |
 * | is older, and only photos came and went since  | the change is applied: a photo alters nothing that it was made on |
 * | is anything else | STALE_REVISION, with the case as it stands now |
 */
export async function changeCase(
  room: Room, link: string, revision: number, who: Member | null, change: CaseChange,
): Promise<CaseView> {
  const content = JSON.stringify(change.content)
  const outcome = await inRounds(() => room.db.transaction().execute(async (db) => {
    const now = await findCase(db, link)
    if (revision > now.revision) return 'stale'
    const next = await nextChangeAfter(db, now, revision)
    if (next === undefined) return applyChange(room, db, now, who, change)
    return next.kind === change.kind && next.content === content ? 'repeated' : 'stale'
  }))
  if (outcome === 'stale') throw await staleRevision(room, link, who)
  const isKnownWhole = outcome !== 'repeated' && !outcome.hasTicket && change.kind !== 'note'
  return isKnownWhole ? showChanged(room, outcome.file, who) : showCaseAt(room, link, who)
}

/** The first change after a revision, photos aside: they alter nothing that another change was made on. */
export async function nextChangeAfter(db: Db, now: CaseFile, revision: number): Promise<CaseChangeRow | undefined> {
  if (revision === now.revision) return undefined
  return (await caseChangesSince(db, now.id, revision)).find(({ kind }) => !isPhotoKind(kind))
}

/**
 * Tries a transaction anew when another writer was first ('beaten'), on the case as it is by then.
 * Each round lost means that another change was kept, so this many in a row do not come about by chance.
 */
export async function inRounds<Outcome>(round: () => Promise<Outcome | 'beaten'>): Promise<Outcome> {
  for (let turn = 0; turn < MOST_ROUNDS; turn++) {
    const outcome = await round()
    if (outcome !== 'beaten') return outcome
  }
  throw new Error(`A change lost ${MOST_ROUNDS} rounds against other changes of its case.`)
}

/**
 * Applies a change to a case at its present revision, inside the caller's transaction. 'beaten' when another writer was
 * first, which only a database without a single writer can bring about.
 */
export async function applyChange(
  room: Room, db: Db, now: CaseFile, who: Member | null, change: CaseChange,
): Promise<Applied | 'beaten'> {
  // A case that is full can still be handed over, and a card still be acknowledged.
  const always = change.kind === 'hand-over' || change.kind === 'carry-on'
  if (!always && now.revision >= MOST_CHANGES) throw new DeskFault('CASE_FULL')

  const knowledge = room.knowledge(now.language)
  const { evidence: changed, words, matched, language } = change.apply(now, knowledge)
  // Keeping the cards changes neither the cards nor the differential, so one reading serves for both.
  const reading = readCaseFile(knowledge.guide, { ...now, evidence: changed })
  const evidence = keepCards(knowledge.guide, now.evidence, changed, reading.cards)
  const advanced = await advanceCase(db, now.id, now.revision, {
    evidence: JSON.stringify(evidence), language, guide_hash: knowledge.guide.hash,
    // Most changes leave alone what was said and what was heard in it, the longest part of a case.
    ...(words === now.words ? {} : { words: JSON.stringify(words) }),
    ...(matched === now.matched ? {} : { matched: JSON.stringify(matched) }),
  })
  if (!advanced) return 'beaten'
  await appendCaseChange(db, {
    case_id: now.id, revision: now.revision + 1, kind: change.kind, content: JSON.stringify(change.content),
    person_id: who?.id ?? null, at: room.now().toISOString(),
  })
  const file: CaseFile = { ...now, evidence, words, matched, language, revision: now.revision + 1 }
  // Most cases have no ticket, and then nobody needs to be told.
  if (await ticketByCase(db, now.id) === undefined) {
    // Nor is anything counted of a case that is on its way; one that has just left its conclusion counts no more.
    if (concludes(reading) || concludes(readCaseFile(knowledge.guide, now))) await countCase(room, db, now.id)
    return { file, hasTicket: false }
  }
  await followCase(room, db, now.id, knowledge.guide, reading, isNewDanger(knowledge.guide, now.evidence, reading.cards))
  if (change.kind === 'answer') await heardFromAsker(room, db, now.id, who, 'check')
  if (change.kind === 'words') await heardFromAsker(room, db, now.id, who, 'words')
  if (change.kind === 'photo') await heardFromAsker(room, db, now.id, who, 'photo')
  await countCase(room, db, now.id)
  await announceCase(db, now.id, who?.id ?? null)
  return { file, hasTicket: true }
}

function concludes({ step }: Reading): boolean {
  return step.kind === 'conclude'
}

/** The fault for a sender who has not seen the case as it is now. */
export async function staleRevision(room: Room, link: string, who: Member | null): Promise<DeskFault> {
  return new DeskFault('STALE_REVISION', { case: await showCaseAt(room, link, who) })
}
