import type { CallList } from '../../../shared/index.js'
import { caseByLink, type CaseRow, closeCall as closeRow, openCallsOf, ticketByCase } from '../../store/index.js'
import { DeskFault } from '../desk-fault.js'
import type { Member } from '../people/member.js'
import type { Room } from '../room.js'
import { plantWords } from '../views/plant-words.js'
import { caseFileFromRow } from './case-file.js'
import { readCaseFile } from './read-case-file.js'

/** This person's open calls, newest first. */
export async function listCalls(room: Room, who: Member): Promise<CallList> {
  const rows = await openCallsOf(room.db, who.id)
  return { calls: await Promise.all(rows.map((row) => callRow(room, row))) }
}

/** Takes a call off this person's desk; the case itself goes on. Somebody else's call is not found. */
export async function closeCall(room: Room, link: string, who: Member): Promise<CallList> {
  const row = await caseByLink(room.db, link)
  if (row === undefined || row.call_of !== who.id) throw new DeskFault('CALL_NOT_FOUND')
  await closeRow(room.db, row.id, room.now().toISOString())
  return listCalls(room, who)
}

async function callRow(room: Room, row: CaseRow): Promise<CallList['calls'][number]> {
  const { guide } = room.knowledge()
  const file = caseFileFromRow(row)
  const reading = readCaseFile(guide, file)
  return {
    link: file.link, words: file.words[0] ?? '', openedAt: file.openedAt, stepKind: reading.step.kind,
    hostName: plantWords(guide, file, reading),
    handedOver: await ticketByCase(room.db, file.id) !== undefined,
  }
}
