import type { Db } from './store.js'

/** A settled ticket with the case it settled. */
export interface SettledCase {
  readonly ticket_id: number
  readonly case_id: number
  readonly asked_on: string
  readonly settled_at: string | null
  readonly district: string | null
  /** JSON: the answer that stands. */
  readonly reply: string | null
  /** JSON. */
  readonly evidence: string
}

/**
 * Settled tickets on one plant whose question was asked on or after a day, the last opened first.
 * @param since ISO date
 * @param district null for every district
 * @param most how many at most
 */
export function settledCasesOn(
  db: Db, { host, since, district, most }: { readonly host: string; readonly since: string; readonly district: string | null; readonly most: number },
): Promise<SettledCase[]> {
  let found = db.selectFrom('ticket')
    .innerJoin('ticket_seek', 'ticket_seek.ticket_id', 'ticket.id').innerJoin('case_file', 'case_file.id', 'ticket.case_id')
    .select(['ticket.id as ticket_id', 'case_file.id as case_id', 'case_file.asked_on', 'ticket.settled_at', 'case_file.district', 'ticket.reply', 'case_file.evidence'])
    .where('ticket.state', '=', 'settled').where('ticket_seek.host', '=', host).where('case_file.asked_on', '>=', since)
  if (district !== null) found = found.where('case_file.district', '=', district)
  return found.orderBy('ticket.id', 'desc').limit(most).execute()
}
