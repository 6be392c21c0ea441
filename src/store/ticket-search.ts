import { sql } from 'kysely'
import type { Db } from './store.js'
import type { TicketSeekTable } from './tables.js'
import { type TicketWithTaker, withTaker } from './tickets.js'

/** What a ticket must fit; what is left out fits everything. */
interface TicketQuery {
  readonly states: readonly string[]
  /** Each must occur in what the ticket is found by; in small letters. */
  readonly words: readonly string[]
  readonly host?: string | undefined
  readonly problem?: string | undefined
  readonly district?: string | undefined
  readonly taker?: string | undefined
  /** ISO times: opened at or after, and before. */
  readonly from?: string | undefined
  readonly before?: string | undefined
  /**
   * By need: those that are open first, of them the most urgent, then the longest wait. Otherwise the last settled or
   * opened first.
   */
  readonly byNeed: boolean
  readonly most: number
}

/** The tickets that fit. */
export function searchTickets(db: Db, query: TicketQuery): Promise<TicketWithTaker[]> {
  let found = withTaker(db).leftJoin('ticket_seek', 'ticket_seek.ticket_id', 'ticket.id')
    .where('ticket.state', 'in', query.states)
  for (const word of query.words) {
    // A bare number is a ticket's number too.
    found = /^[0-9]{1,12}$/.test(word)
      ? found.where((eb) => eb.or([eb('ticket.id', '=', Number(word)), holds(word)]))
      : found.where(holds(word))
  }
  if (query.host !== undefined) found = found.where('ticket_seek.host', '=', query.host)
  if (query.problem !== undefined) found = found.where('ticket_seek.problem', '=', query.problem)
  if (query.district !== undefined) found = found.where('ticket_seek.district', '=', query.district)
  if (query.taker !== undefined) found = found.where('person.name', '=', query.taker)
  if (query.from !== undefined) found = found.where('ticket.opened_at', '>=', query.from)
  if (query.before !== undefined) found = found.where('ticket.opened_at', '<', query.before)
  const ordered = query.byNeed
    ? found.orderBy(sql`case when ticket.state in ('settled', 'merged') then 1 else 0 end`)
      .orderBy('ticket.urgent', 'desc').orderBy('ticket.waits_since').orderBy('ticket.id')
    : found.orderBy(sql`coalesce(ticket.settled_at, ticket.opened_at)`, 'desc').orderBy('ticket.id', 'desc')
  return ordered.limit(query.most).execute()
}

/** Writes down what a ticket is found by. */
export async function keepTicketSeek(db: Db, row: TicketSeekTable): Promise<void> {
  const { ticket_id: _, ...seek } = row
  await db.insertInto('ticket_seek').values(row)
    .onConflict((conflict) => conflict.column('ticket_id').doUpdateSet(seek)).execute()
}

function holds(word: string) {
  const pattern = `%${word.replaceAll(/[\\%_]/g, (sign) => `\\${sign}`)}%`
  return sql<boolean>`ticket_seek.text like ${pattern} escape '\\'`
}
