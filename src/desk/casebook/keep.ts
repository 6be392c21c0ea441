import type { KeptCases, KeptSuggestions, SettleTicket } from '../../../shared/index.js'
import { TreeSuggestion } from '../../../shared/index.js'
import {
  appendCasebookCase, appendSuggestion, casebookCases, type Db, dropKeptFromTicket, type TicketWithTaker, treeSuggestions,
} from '../../store/index.js'
import type { Member } from '../people/member.js'
import type { Room } from '../room.js'
import { caseOf } from '../tickets/find-ticket.js'
import { writeDown } from '../tickets/happening.js'
import { type CasebookEntry, casebookEntry, casebookYaml, whyNoCasebook } from './draft.js'
import { cleanWords, suggestionsOf } from './review.js'

/** Most suggestions listed. */
const MOST_SUGGESTIONS = 200

/** Keeps what a specialist wished to keep when settling: the case for the casebook, suggestions for the tree's author. */
export async function keepFromSettling(
  room: Room, db: Db, ticket: TicketWithTaker, { outcome, casebook, suggest = [] }: SettleTicket, who: Member,
): Promise<void> {
  const { guide } = room.knowledge()
  const at = room.now().toISOString()
  const file = await caseOf(db, ticket)
  const of = { ticket_id: ticket.id, at, person_id: who.id }
  if (casebook !== undefined && whyNoCasebook(outcome) === null) {
    const entry = casebookEntry(guide, ticket.id, file, outcome, casebook.words)
    await appendCasebookCase(db, { ...of, words: casebook.words, content: JSON.stringify(entry) })
    await writeDown(db, ticket.id, at, who.id, { kind: 'kept for the casebook' })
  }
  if (suggest.length === 0) return
  const { words } = casebook ?? await cleanWords(room, db, ticket, file)
  const wanted = suggestionsOf(room, file, outcome, words).filter(({ kind }) => suggest.includes(kind))
  for (const suggestion of wanted) await appendSuggestion(db, { ...of, kind: suggestion.kind, content: JSON.stringify(suggestion) })
  if (wanted.length > 0) await writeDown(db, ticket.id, at, who.id, { kind: 'suggested', kinds: wanted.map(({ kind }) => kind) })
}

/**
 * Drops what was kept from an answer that does not stand any more: it would teach the guide what the specialist took
 * back. The history says that it was kept, and that it was dropped. Nothing happens when nothing was kept.
 */
export async function dropKept(db: Db, ticketId: number, at: string, personId: number | null): Promise<void> {
  if (await dropKeptFromTicket(db, ticketId)) await writeDown(db, ticketId, at, personId, { kind: 'dropped what was kept' })
}

/** The cases kept for the casebook, and all of them as one file for trees/casebook. */
export async function keptCases({ db }: Pick<Room, 'db'>): Promise<KeptCases> {
  // Of each ticket the last: stores from before answers that were changed dropped theirs may hold several.
  const last = new Map((await casebookCases(db)).map((row) => [row.ticket_id, row]))
  const kept = [...last.values()].map((row) => ({ row, entry: JSON.parse(row.content) as CasebookEntry }))
  return {
    cases: kept.map(({ row, entry }) => ({
      ticket: String(row.ticket_id), by: row.by, at: row.at, words: row.words, yaml: casebookYaml([entry]),
    })),
    yaml: kept.length === 0 ? '' : casebookYaml(kept.map(({ entry }) => entry)),
  }
}

/** The suggestions kept for whoever writes the trees, the newest first. */
export async function keptSuggestions({ db }: Pick<Room, 'db'>): Promise<KeptSuggestions> {
  const rows = await treeSuggestions(db, MOST_SUGGESTIONS)
  return {
    suggestions: rows.map(({ content, ticket_id: ticketId, by, at }) => (
      { ...TreeSuggestion.parse(JSON.parse(content)), ticket: String(ticketId), by, at })),
  }
}
