import { Language } from '../../../shared/index.js'
import type { Guide } from '../../guide/index.js'
import type { Letter, LetterPart } from '../../mail/index.js'
import { caseById, openInvitation, ticketById, type TicketWithTaker } from '../../store/index.js'
import { problemNamed } from '../guide-names.js'
import type { Room } from '../room.js'
import { spokenGuide } from '../spoken-guide.js'
import { replyFromText, replyIn } from '../tickets/reply.js'
import { wordingOf } from '../wording/index.js'
import { askerAddress } from './asker-address.js'
import { type InvitationLetter, openInvitationLetter } from './invitation.js'
import type { MailOrder } from './mail-order.js'
import type { MailPlace } from './mail-place.js'

/**
 * Writes a letter out as things stand when it is sent. Null when it is not to be sent any more: its ticket or its
 * address is gone, its invitation can be used no longer, or nobody is on duty.
 */
export async function composeLetter(
  room: Room, place: Pick<MailPlace, 'publicUrl'>, order: MailOrder, sealed: string | null,
): Promise<Letter | null> {
  const { guide } = room.knowledge()
  if (order.kind === 'invitation') {
    const isOpen = await openInvitation(room.db, order.turn, room.now().toISOString()) !== undefined
    return sealed === null || !isOpen ? null : invitationLetter(guide, place, openInvitationLetter(room, order.turn, sealed))
  }
  if (order.kind === 'first report') return firstReportLetter(guide, place, order)
  const ticket = await ticketById(room.db, order.ticket)
  if (ticket === undefined) return null
  if (order.kind === 'urgent') return urgentLetter(guide, place, ticket)

  const to = await askerAddress(room, room.db, ticket.id)
  const asker = await caseById(room.db, ticket.case_id)
  if (to === null || asker === undefined) return null
  const spoken = spokenGuide(guide, Language.catch('en').parse(asker.language))
  const { letter: wording } = wordingOf(spoken)
  const address = `${place.publicUrl}/case#${asker.link}`
  const head = (subject: string) => ({ to, language: spoken.language, subject: `${spoken.region.helpline}: ${subject}` })
  switch (order.kind) {
    case 'received': return { ...head(wording.received.subject(ticket.id)), parts: received(spoken, ticket, address) }
    case 'asked back': return { ...head(wording.askedBack.subject(ticket.id)), parts: askedBack(spoken, ticket, address) }
    case 'answered': {
      const parts = answered(spoken, ticket, address, order.changed)
      return parts === null ? null : { ...head(wording.answered.subject(ticket.id)), parts }
    }
  }
}

function received(guide: Guide, ticket: TicketWithTaker, address: string): LetterPart[] {
  const { helpline, targets } = guide.region
  const { received: wording } = wordingOf(guide).letter
  const hours = ticket.urgent > 0 ? targets.urgentWithinHours : targets.answerWithinHours
  return [
    words(wording.arrived(helpline, ticket.id, hours)), { kind: 'link', text: wording.link, address },
    ...dangerWords(guide), words(wording.mistake),
  ]
}

function askedBack(guide: Guide, ticket: TicketWithTaker, address: string): LetterPart[] {
  const { askedBack: wording } = wordingOf(guide).letter
  return [words(wording.needs(ticket.id)), { kind: 'link', text: wording.link, address }, ...dangerWords(guide)]
}

function answered(guide: Guide, ticket: TicketWithTaker, address: string, changed: boolean): LetterPart[] | null {
  if (ticket.reply === null) return null
  const { answered: wording } = wordingOf(guide).letter
  const { text, problemName } = replyIn(guide, replyFromText(ticket.reply))
  const about = problemName === null ? '' : ` ${wording.about(problemName)}`
  return [
    words(`${changed ? wording.changed(ticket.id) : wording.answered(ticket.id)}${about}`),
    { kind: 'quoted', text },
    { kind: 'link', text: wording.link, address },
    words(wording.cautions),
    ...dangerWords(guide),
  ]
}

function urgentLetter({ region }: Guide, { publicUrl }: Pick<MailPlace, 'publicUrl'>, ticket: TicketWithTaker): Letter | null {
  if (region.onDutyMail === null || ticket.state === 'settled') return null
  return {
    to: region.onDutyMail, subject: `Urgent: ticket ${ticket.id}`,
    parts: [
      words(`Ticket ${ticket.id} is urgent. ${ticket.why}. It came in at ${ticket.opened_at.slice(0, 16).replace('T', ' ')} UTC and should be answered within ${region.targets.urgentWithinHours} hours.`),
      { kind: 'link', text: 'The bench:', address: `${publicUrl}/bench` },
    ],
  }
}

function firstReportLetter(
  guide: Guide, { publicUrl }: Pick<MailPlace, 'publicUrl'>, { problem, district, turn }: Extract<MailOrder, { kind: 'first report' }>,
): Letter | null {
  const { region } = guide
  if (region.onDutyMail === null) return null
  const name = problemNamed(guide, problem)?.name ?? problem
  const where = district === null ? 'by an asker who named no district' : `in ${region.districts.get(district) ?? district}`
  return {
    to: region.onDutyMail, subject: `First report of the year: ${name}`,
    parts: [
      words(`${name} was reported ${where}, for the first time in ${turn.slice(0, 4)}. It must be reported, so please look at the case soon and say how far it has come.`),
      { kind: 'link', text: 'The bench:', address: `${publicUrl}/bench` },
    ],
  }
}

function invitationLetter({ region }: Guide, { publicUrl }: Pick<MailPlace, 'publicUrl'>, { to, path, role }: InvitationLetter): Letter {
  return {
    to, subject: `${region.helpline}: your invitation`,
    parts: [
      words(`You are invited to the ${region.helpline} as ${role}.`),
      { kind: 'link', text: 'Follow this link once to choose your password. Give it to nobody:', address: publicUrl + path },
    ],
  }
}

/** Whom to call instead of waiting for a letter; as many as the region has. */
function dangerWords(guide: Guide): LetterPart[] {
  const calls = ['emergency', 'poison line'].flatMap((name) => guide.region.numbers.get(name) ?? [])
  if (calls.length === 0) return []
  return [words(wordingOf(guide).letter.danger(calls.map(({ name, number }) => `${name} ${number}`).join(', ')))]
}

function words(text: string): LetterPart {
  return { kind: 'words', text }
}
