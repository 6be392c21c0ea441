import { caseById, type Db, ticketById, type TicketWithTaker } from '../../store/index.js'
import { type CaseFile, caseFileFromRow } from '../cases/case-file.js'
import { DeskFault } from '../desk-fault.js'

/** The ticket with this number, or a fault. */
export async function findTicket(db: Db, number: string): Promise<TicketWithTaker> {
  const ticket = await ticketById(db, Number(number))
  if (ticket === undefined) throw new DeskFault('TICKET_NOT_FOUND')
  return ticket
}

/** The case behind a ticket. */
export async function caseOf(db: Db, ticket: Pick<TicketWithTaker, 'id' | 'case_id'>): Promise<CaseFile> {
  const row = await caseById(db, ticket.case_id)
  if (row === undefined) throw new Error(`Ticket ${ticket.id} has no case ${ticket.case_id}.`)
  return caseFileFromRow(row)
}
