import type { CaseView } from '../../../shared/index.js'
import type { Guide } from '../../guide/index.js'
import {
  caseStanding, contactOf, questionsOf, repliesOf, samplesOf, ticketByCase, ticketById, type TicketWithTaker,
} from '../../store/index.js'
import type { CaseFile } from '../cases/case-file.js'
import { findCase } from '../cases/find-case.js'
import { notesOf } from '../cases/notes.js'
import type { Member } from '../people/member.js'
import { photosOf } from '../photos/show-photo.js'
import type { Room } from '../room.js'
import { spokenGuide } from '../spoken-guide.js'
import { lastAnswered, questionView } from '../tickets/question-view.js'
import { replyFromText, replyIn } from '../tickets/reply.js'
import { ticketStateOf } from '../tickets/ticket-moves.js'
import { caseView } from './case-view.js'
import type { Audience } from './kept-views.js'

/**
 * A case for whoever looks at it: for its asker in the language that they chose, for the people of the helpline in the
 * guide's own. The notes of a call are for the people of the helpline only.
 */
export async function showCase(room: Room, file: CaseFile, who: Member | null): Promise<CaseView> {
  const notes = who === null ? [] : await notesOf(room.db, file.id)
  const photos = await photosOf(room.db, file.id)
  const { guide: own } = room.knowledge()
  const guide = guideFor(own, file, who)
  const ticket = await ticketOf(room, guide, file)
  return room.views.keep(own, caseView(guide, own, file, { notes, photos, ticket }), audienceOf(who))
}

/** The case with this link, as it is now. One look at its revision is enough where it was shown before and has no ticket. */
export async function showCaseAt(room: Room, link: string, who: Member | null): Promise<CaseView> {
  const last = room.views.last(room.knowledge().guide, link, audienceOf(who))
  const standing = last === undefined ? undefined : await caseStanding(room.db, link)
  const holds = standing !== undefined && standing.revision === last?.revision && standing.ticket === null
  return holds ? last : showCase(room, await findCase(room.db, link), who)
}

/**
 * The case as a change has just left it, from what the change knew. The photos and notes are those of the revision before:
 * a change of the evidence alters neither. Where that revision was not shown, they are read.
 */
export async function showChanged(room: Room, file: CaseFile, who: Member | null): Promise<CaseView> {
  const { guide: own } = room.knowledge()
  const before = room.views.last(own, file.link, audienceOf(who))
  if (before?.revision !== file.revision - 1) return showCase(room, file, who)
  const { notes, photos } = before
  return room.views.keep(own, caseView(guideFor(own, file, who), own, file, { notes, photos, ticket: null }), audienceOf(who))
}

function audienceOf(who: Member | null): Audience {
  return who === null ? 'asker' : 'helpline'
}

/** The guide in the language of whoever looks. */
function guideFor(own: Guide, { language }: Pick<CaseFile, 'language'>, who: Member | null): Guide {
  return who === null ? spokenGuide(own, language) : own
}

async function ticketOf(room: Room, guide: Guide, file: CaseFile): Promise<CaseView['ticket']> {
  const { db } = room
  const own = await ticketByCase(db, file.id)
  if (own === undefined) return null
  // The asker of a repeat is shown how the ticket stands that theirs went into.
  const ticket = own.merged_into === null ? own : await ticketById(db, own.merged_into) ?? own
  const state = ticketStateOf(ticket)
  const [standing = null, ...earlier] = await repliesShown(room, guide, ticket)
  const sample = ticket === own ? (await samplesOf(db, own.id)).at(-1) : undefined
  return {
    state, openedAt: own.opened_at, contactGiven: await contactOf(db, own.id) !== undefined,
    reply: standing,
    earlierReplies: earlier.reverse(),
    askedBack: ticket === own && state !== 'settled' ? await openQuestion(room, guide, file, own) : null,
    sample: sample === undefined ? null : { number: sample.number, packed: sample.packed, at: sample.at },
  }
}

/** The answers that the asker sees, the last one first; one that was taken back whole is no longer shown. */
async function repliesShown({ db }: Room, guide: Guide, ticket: TicketWithTaker) {
  if (ticket.reply === null) return []
  return (await repliesOf(db, ticket.id)).map(({ reply }) => replyIn(guide, replyFromText(reply))).reverse()
}

async function openQuestion(room: Room, guide: Guide, file: CaseFile, ticket: TicketWithTaker) {
  const question = (await questionsOf(room.db, ticket.id)).at(-1)
  if (question === undefined) return null
  return questionView(guide, file, question, await lastAnswered(room.db, file.id))
}
