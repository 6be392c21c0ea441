import { caseById, type Db, ticketById, type TicketWithTaker } from '../../store/index.js'
import { type CaseFile, caseFileFromRow } from '../cases/case-file.js'
import { DeskFault } from '../desk-fault.js'

/** The ticket with this number, or a fault. */
export async function findTicket(db: Db, number: string): Promise<TicketWithTaker> {
  // Twelve digits are more than a row number of every database holds.
  const id = Number(number)
  const ticket = id > MOST_NUMBER ? undefined : await ticketById(db, id)
  if (ticket === undefined) throw new DeskFault('TICKET_NOT_FOUND')
  return ticket
}

/** The case behind a ticket. */
export async function caseOf(db: Db, ticket: Pick<TicketWithTaker, 'id' | 'case_id'>): Promise<CaseFile> {
  const row = await caseById(db, ticket.case_id)
  if (row === undefined) throw new Error(`Ticket ${ticket.id} has no case ${ticket.case_id}.`)
  return caseFileFromRow(row)
}

const MOST_NUMBER = 2_147_483_647
