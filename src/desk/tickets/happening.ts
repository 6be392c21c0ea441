import { z } from 'zod'
import type { TicketEvent } from '../../../shared/index.js'
import { appendTicketChange, type Db, type TicketChangeRow } from '../../store/index.js'

const line = <Kind extends string, Shape extends z.ZodRawShape>(kind: Kind, shape: Shape) => z.object({ kind: z.literal(kind), ...shape })
const other = { other: z.number() }
const answer = { revision: z.number(), guide: z.string(), outcome: z.string().optional() }

/**
 * One line of a ticket's history as it is kept. Never free text and never a contact: the history is for ever, and what
 * people write may have to be erased.
 */
export const TicketHappening = z.discriminatedUnion('kind', [
  line('opened', { why: z.string().nullable() }),
  line('urgent', { why: z.string() }),
  line('taken', {}),
  line('given back', {}),
  line('handed on', { to: z.string() }),
  line('asked back', { checks: z.array(z.string()), photos: z.boolean() }),
  line('answered', { with: z.enum(['check', 'words', 'photo']) }),
  line('sample sent', { number: z.string() }),
  line('result', { number: z.string() }),
  // With the revision and the guide that the specialist had before them.
  line('settled', answer),
  line('amended', answer),
  line('reopened', {}),
  line('merged', other),
  line('took in', other),
  line('unmerged', other),
  line('let go', other),
  line('related', other),
  line('unrelated', other),
  line('noted', {}),
  line('kept for the casebook', {}),
  line('suggested', { kinds: z.array(z.string()) }),
  line('dropped what was kept', {}),
  line('contact erased', {}),
  line('erased', {}),
])
export type TicketHappening = z.infer<typeof TicketHappening>

/** Adds a line to a ticket's history; `personId` is null for the asker, and for what happens on a schedule. */
export async function writeDown(db: Db, ticketId: number, at: string, personId: number | null, happening: TicketHappening): Promise<void> {
  await appendTicketChange(db, { ticket_id: ticketId, at, person_id: personId, what: JSON.stringify(happening) })
}

/** A kept line of history in words. */
export function historyLine({ at, person, what }: TicketChangeRow): TicketEvent {
  const happening = TicketHappening.parse(JSON.parse(what))
  return { at, by: person, kind: happening.kind, what: happeningWords(happening) }
}

function happeningWords(happening: TicketHappening): string {
  switch (happening.kind) {
    case 'opened': return happening.why === null ? 'Handed over' : `Handed over as urgent. ${happening.why}`
    case 'urgent': return `Became urgent. ${happening.why}`
    case 'taken': return 'Taken'
    case 'given back': return 'Given back'
    case 'handed on': return `Handed on to ${happening.to}`
    case 'asked back': return `Asked back${askedWords(happening.checks.length, happening.photos)}`
    case 'answered': return happening.with === 'check' ? 'The asker answered a check' : happening.with === 'words' ? 'The asker wrote more' : 'The asker sent a photo'
    case 'sample sent': return `Sample ${happening.number} sent to a laboratory`
    case 'result': return `Result of sample ${happening.number} recorded`
    case 'settled': return 'Settled'
    case 'amended': return 'The answer was changed'
    case 'reopened': return 'The answer was taken back, and the ticket opened again'
    case 'merged': return `Merged into ticket ${happening.other}`
    case 'took in': return `Ticket ${happening.other} was merged into this one`
    case 'unmerged': return `No longer merged into ticket ${happening.other}`
    case 'let go': return `Ticket ${happening.other} is no longer merged into this one`
    case 'related': return `Linked with ticket ${happening.other}`
    case 'unrelated': return `No longer linked with ticket ${happening.other}`
    case 'noted': return 'Note for colleagues'
    case 'kept for the casebook': return 'Kept for the casebook'
    case 'suggested': return `Suggestion for the tree: ${happening.kinds.join(' and ')}`
    case 'dropped what was kept': return 'What was kept for the casebook and the tree was dropped with the answer'
    case 'contact erased': return 'Contact details erased'
    case 'erased': return 'Everything the asker wrote was erased'
  }
}

function askedWords(checks: number, photos: boolean): string {
  const asked = [
    ...(checks === 0 ? [] : [checks === 1 ? 'one check' : `${checks} checks`]), ...(photos ? ['photos'] : []),
  ]
  return asked.length === 0 ? '' : `: ${asked.join(' and ')}`
}
