import { type TicketMove, TicketState } from '../../../shared/index.js'
import type { TicketWithTaker } from '../../store/index.js'
import { DeskFault } from '../desk-fault.js'
import type { Member } from '../people/member.js'

/** What one move needs and leads to. */
interface Rule {
  readonly from: readonly TicketState[]
  /** Who may: whoever holds the ticket (nobody does while it waits), or anyone at the bench. */
  readonly by: 'holder' | 'holder or administrator' | 'anyone'
  /** The state afterwards; null where it stays as it is. */
  readonly to: TicketState | null
}

const HELD = ['taken', 'asked back', 'answered by asker', 'sent as a sample'] as const satisfies readonly TicketState[]
const UNSETTLED = ['waiting', ...HELD] as const satisfies readonly TicketState[]

/**
 * The whole life of a ticket. Where a move is open from 'waiting' and is the holder's, whoever makes it takes the ticket
 * with it. The asker's own answer is no move of the bench: it turns 'asked back' into 'answered by asker'.
 */
export const ticketMoves: Readonly<Record<TicketMove, Rule>> = {
  take: { from: ['waiting'], by: 'anyone', to: 'taken' },
  'give back': { from: HELD, by: 'holder or administrator', to: 'waiting' },
  'hand on': { from: UNSETTLED, by: 'holder or administrator', to: null },
  'ask back': { from: UNSETTLED, by: 'holder', to: 'asked back' },
  'send sample': { from: UNSETTLED, by: 'holder', to: 'sent as a sample' },
  'record result': { from: [...UNSETTLED, 'settled'], by: 'anyone', to: null },
  settle: { from: UNSETTLED, by: 'holder', to: 'settled' },
  amend: { from: ['settled'], by: 'anyone', to: null },
  reopen: { from: ['settled'], by: 'anyone', to: 'taken' },
  merge: { from: UNSETTLED, by: 'holder or administrator', to: 'merged' },
  unmerge: { from: ['merged'], by: 'anyone', to: 'waiting' },
}

type Standing = Pick<TicketWithTaker, 'state' | 'taken_by' | 'taker' | 'merged_into'>

/** Where a ticket stands. */
export function ticketStateOf(ticket: Pick<Standing, 'state'>): TicketState {
  return TicketState.parse(ticket.state)
}

/** Whether a ticket waits for the helpline, and not for the asker, a laboratory or nobody. */
export function waitsForUs(state: TicketState): boolean {
  return state === 'waiting' || state === 'taken' || state === 'answered by asker'
}

/** Why a person may not make a move now, as the fault to throw, or null when they may. */
export function whyNot(move: TicketMove, ticket: Standing, who: Member): DeskFault | null {
  const rule = ticketMoves[move]
  const state = ticketStateOf(ticket)
  if (!rule.from.includes(state)) return wrongState(move, ticket, who, state)
  const isFree = ticket.taken_by === null || state === 'waiting'
  if (rule.by === 'anyone' || isFree || ticket.taken_by === who.id) return null
  if (rule.by === 'holder or administrator' && who.role === 'administrator') return null
  return takenBy(ticket)
}

/** Every move that a person may make now. */
export function openMoves(ticket: Standing, who: Member): TicketMove[] {
  return (Object.keys(ticketMoves) as TicketMove[]).filter((move) => whyNot(move, ticket, who) === null)
}

function wrongState(move: TicketMove, ticket: Standing, who: Member, state: TicketState): DeskFault {
  if (state === 'settled') return new DeskFault('TICKET_SETTLED')
  if (state === 'merged') return new DeskFault('TICKET_MERGED', { words: { into: String(ticket.merged_into) } })
  if (ticket.taken_by !== null && ticket.taken_by !== who.id && move === 'take') return takenBy(ticket)
  const holder = ticket.taker === null || state === 'waiting' ? '' : `, with ${ticket.taker}`
  return new DeskFault('TICKET_ELSEWHERE', { words: { state, holder, move: moveWords[move] } })
}

function takenBy(ticket: Standing): DeskFault {
  return new DeskFault('TICKET_TAKEN', { words: { who: ticket.taker ?? 'someone else' } })
}

/** Each move as it stands in 'so … now'. */
const moveWords: Readonly<Record<TicketMove, string>> = {
  take: 'it cannot be taken', 'give back': 'it cannot be given back', 'hand on': 'it cannot be handed on',
  'ask back': 'nothing can be asked back', 'send sample': 'no sample can be sent', 'record result': 'no result can be recorded',
  settle: 'it cannot be settled', amend: 'there is no answer to amend', reopen: 'it cannot be opened again',
  merge: 'it cannot be merged', unmerge: 'there is nothing to take apart',
}
