import type { TicketList, TicketSearch } from '../../../shared/index.js'
import { TicketState } from '../../../shared/index.js'
import { searchTickets } from '../../store/index.js'
import type { Room } from '../room.js'
import { ticketRow } from './ticket-views.js'

/** Most rows of one list. */
const MOST_ROWS = 200

/** The search as the desk takes it; what is left out fits everything. */
export type Sought = Partial<TicketSearch> & Pick<TicketSearch, 'state'>

/**
 * The tickets that fit, in order of need: red flags first, then what must be reported or is dangerous, then by how long
 * they have waited for the helpline; those that are settled or merged behind the open ones. Settled and merged ones
 * alone: the last settled first.
 */
export async function listTickets(room: Room, search: Sought): Promise<TicketList> {
  const states = statesOf(search.state)
  const tickets = await searchTickets(room.db, {
    states, words: (search.words ?? '').toLowerCase().split(/\s+/).filter((word) => word !== ''),
    host: search.host, problem: search.problem, district: search.district, taker: search.with,
    from: search.from, before: search.until === undefined ? undefined : dayAfter(search.until),
    byNeed: states.some((state) => state !== 'settled' && state !== 'merged'), most: MOST_ROWS,
  })
  return { tickets: await Promise.all(tickets.map((ticket) => ticketRow(room, ticket))) }
}

function statesOf(state: TicketSearch['state']): readonly TicketState[] {
  switch (state) {
    case 'any': return TicketState.options
    case 'open': return TicketState.options.filter((one) => one !== 'settled' && one !== 'merged')
    default: return [state]
  }
}

/** Days are days in UTC, as a case's date is. */
function dayAfter(day: string): string {
  return new Date(Date.parse(day) + 24 * 3_600_000).toISOString().slice(0, 10)
}
