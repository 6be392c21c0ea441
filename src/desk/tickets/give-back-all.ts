import { advanceTicket, type Db, type PersonRow, searchTickets } from '../../store/index.js'
import { writeDown } from './happening.js'
import { ticketMoves } from './ticket-moves.js'

/** Far more than one person ever holds. */
const MOST_HELD = 100_000

/** Lets every ticket that a person has wait again, because they leave. */
export async function giveBackAllOf(db: Db, { name }: Pick<PersonRow, 'name'>, at: string, byId: number | null): Promise<void> {
  const held = await searchTickets(db, { states: ticketMoves['give back'].from, words: [], taker: name, byNeed: true, most: MOST_HELD })
  for (const ticket of held) {
    await advanceTicket(db, ticket.id, ticket.version, { state: 'waiting', taken_by: null, taken_at: null })
    await writeDown(db, ticket.id, at, byId, { kind: 'given back' })
  }
}
