import type { Guide } from '../../guide/index.js'
import type { TicketWithTaker } from '../../store/index.js'
import { ticketStateOf, waitsForUs } from './ticket-moves.js'
import { spanWords, waitingWords } from './waiting.js'

const HOUR = 3_600_000

/** How a ticket stands against the time that the region aims at. */
export interface Standing {
  readonly waitsSince: string
  readonly dueAt: string | null
  readonly late: boolean
  /** Why it stands where it stands in the list. */
  readonly why: string
}

/** How a ticket stands now. */
export function standingOf({ region }: Guide, ticket: TicketWithTaker, now: Date): Standing {
  const state = ticketStateOf(ticket)
  const { answerWithinHours, urgentWithinHours } = region.targets
  const aim = ticket.urgent > 0 ? urgentWithinHours : answerWithinHours
  const due = waitsForUs(state) ? Date.parse(ticket.waits_since) + aim * HOUR : null
  return {
    waitsSince: ticket.waits_since, dueAt: due === null ? null : new Date(due).toISOString(),
    late: due !== null && now.getTime() > due, why: whyHere(ticket, now, answerWithinHours),
  }
}

function whyHere(ticket: TicketWithTaker, now: Date, aimHours: number): string {
  const state = ticketStateOf(ticket)
  if (state === 'settled') return `Settled on ${(ticket.settled_at ?? '').slice(0, 10)}`
  if (state === 'merged') return `Merged into ticket ${ticket.merged_into ?? '?'}`
  if (ticket.urgent > 0) return ticket.why
  switch (state) {
    case 'asked back': return 'Waiting for the asker'
    case 'sent as a sample': return 'Waiting for the laboratory'
    case 'answered by asker': return `The asker answered ${spanWords(ticket.waits_since, now)} ago`
    default: return waitingWords(ticket.waits_since, now, aimHours)
  }
}
