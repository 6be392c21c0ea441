import type { CasebookDraft, Outcome, ReviewTicket, SettleReview } from '../../../shared/index.js'
import { contactOf, type Db, type TicketWithTaker } from '../../store/index.js'
import type { CaseFile } from '../cases/case-file.js'
import { DeskFault } from '../desk-fault.js'
import { problemNamed } from '../guide-names.js'
import { openContact } from '../privacy/contacts.js'
import type { Room } from '../room.js'
import { caseOf, findTicket } from '../tickets/find-ticket.js'
import { casebookEntry, casebookYaml, whyNoCasebook } from './draft.js'
import { scrubWords } from './scrub.js'
import { treeSuggestionsFor } from './suggest.js'

/** What settling a ticket like this would leave for the casebook and the tree's author. Nothing is kept. */
export async function reviewTicket(room: Room, number: string, { outcome }: ReviewTicket): Promise<SettleReview> {
  const { guide } = room.knowledge()
  if (outcome.kind === 'problem' && problemNamed(guide, outcome.problem) === null) {
    throw new DeskFault('UNKNOWN_PROBLEM', { words: { problem: outcome.problem } })
  }
  const ticket = await findTicket(room.db, number)
  const file = await caseOf(room.db, ticket)
  const { words, removed } = await cleanWords(room, room.db, ticket, file)
  const why = whyNoCasebook(outcome)
  const casebook: CasebookDraft | null = why !== null ? null : {
    words, removed: [...removed], yaml: casebookYaml([casebookEntry(guide, ticket.id, file, outcome, words)]),
  }
  return { casebook, whyNoCasebook: why, suggestions: suggestionsOf(room, file, outcome, words) }
}

/** The suggestions that a settled case makes. */
export function suggestionsOf(room: Room, file: CaseFile, outcome: Outcome, words: string) {
  return outcome.kind === 'problem' ? treeSuggestionsFor(room.knowledge().guide, file, outcome.problem, words) : []
}

/** The asker's words without what tells who they are. The contact is only compared with; nobody reads it. */
export async function cleanWords(room: Room, db: Db, ticket: TicketWithTaker, file: CaseFile) {
  const row = await contactOf(db, ticket.id)
  const plants = new Set(room.knowledge().guide.hosts.flatMap(({ name, called }) => [name, ...called]).map((name) => name.toLowerCase()))
  return scrubWords(file.words.join('\n'), row === undefined ? {} : openContact(room.keys, row), plants)
}
