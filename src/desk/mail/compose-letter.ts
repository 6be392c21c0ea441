import type { Guide } from '../../guide/index.js'
import type { Letter, LetterPart } from '../../mail/index.js'
import { caseById, type Db, openInvitation, ticketById, type TicketWithTaker } from '../../store/index.js'
import type { Room } from '../room.js'
import { replyFromText } from '../tickets/reply.js'
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
  const ticket = await ticketById(room.db, order.ticket)
  if (ticket === undefined) return null
  if (order.kind === 'urgent') return urgentLetter(guide, place, ticket)

  const to = await askerAddress(room, room.db, ticket.id)
  const link = await linkOf(room.db, ticket)
  if (to === null || link === null) return null
  const address = `${place.publicUrl}/case#${link}`
  const { helpline } = guide.region
  switch (order.kind) {
    case 'received': return { to, subject: `${helpline}: your question has arrived (ticket ${ticket.id})`, parts: received(guide, ticket, address) }
    case 'asked back': return { to, subject: `${helpline}: one more thing to look at (ticket ${ticket.id})`, parts: askedBack(guide, ticket, address) }
    case 'answered': {
      const parts = answered(guide, ticket, address, order.changed)
      return parts === null ? null : { to, subject: `${helpline}: the answer to your question (ticket ${ticket.id})`, parts }
    }
  }
}

function received(guide: Guide, ticket: TicketWithTaker, address: string): LetterPart[] {
  const { helpline, targets } = guide.region
  const hours = ticket.urgent > 0 ? targets.urgentWithinHours : targets.answerWithinHours
  return [
    words(`Your question has reached a specialist of the ${helpline}. It has the number ${ticket.id}. We aim to answer within ${hours} hours.`),
    { kind: 'link', text: 'Here you can read it, add photos and see the answer. Whoever has this link can do the same, so keep it to yourself:', address },
    ...dangerWords(guide),
    words('If you did not ask us anything, somebody gave us your address by mistake, and you need do nothing.'),
  ]
}

function askedBack(guide: Guide, ticket: TicketWithTaker, address: string): LetterPart[] {
  return [
    words(`To answer your question, ticket ${ticket.id}, the specialist needs to know a little more.`),
    { kind: 'link', text: 'Please look at what is asked here. "Not sure" is a good answer too:', address },
    ...dangerWords(guide),
  ]
}

function answered(guide: Guide, ticket: TicketWithTaker, address: string, changed: boolean): LetterPart[] | null {
  if (ticket.reply === null) return null
  const { text, problemName } = replyFromText(ticket.reply)
  return [
    words(`The specialist has ${changed ? 'changed the answer to' : 'answered'} your question, ticket ${ticket.id}.${problemName === null ? '' : ` It is about: ${problemName}.`}`),
    { kind: 'quoted', text },
    { kind: 'link', text: 'The whole sheet with everything you found:', address },
    words('Before you spray anything: the label is the law, and local rules come first. Nothing here says that a plant can be eaten. Leave work on large trees to a qualified person.'),
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
function dangerWords({ region }: Guide): LetterPart[] {
  const calls = ['emergency', 'poison line'].flatMap((name) => region.numbers.get(name) ?? [])
  if (calls.length === 0) return []
  return [words(`Do not wait for a letter when somebody may be poisoned or in danger. Call at once: ${calls.map(({ name, number }) => `${name} ${number}`).join(', ')}.`)]
}

function words(text: string): LetterPart {
  return { kind: 'words', text }
}

async function linkOf(db: Db, ticket: TicketWithTaker): Promise<string | null> {
  return (await caseById(db, ticket.case_id))?.link ?? null
}
