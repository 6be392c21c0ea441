import { describe, expect, it } from 'vitest'
import type { TicketMove } from '../../shared/index.js'
import type { Member } from '../../src/desk/index.js'
import { openMoves, whyNot } from '../../src/desk/tickets/ticket-moves.js'

const member = (id: number, role: Member['role']): Member => ({ id, name: `person ${id}`, role })
const HOLDER = member(1, 'specialist')
const COLLEAGUE = member(2, 'specialist')
const ADMINISTRATOR = member(3, 'administrator')
/** A ticket that the holder has, where a state has a holder. */
const ticketIn = (state: string) => {
  const isHeld = state !== 'waiting' && state !== 'merged'
  return { state, taken_by: isHeld ? HOLDER.id : null, taker: isHeld ? HOLDER.name : null, merged_into: state === 'merged' ? 5 : null }
}

/** Written out here once more, so that a slip in the table of the desk is seen: state, then what each may do. */
const HELD_BY_ME: readonly TicketMove[] = ['give back', 'hand on', 'ask back', 'send sample', 'record result', 'settle', 'merge']
const HELD_BY_OTHER: readonly TicketMove[] = ['record result']
const HELD_AS_ADMINISTRATOR: readonly TicketMove[] = ['give back', 'hand on', 'record result', 'merge']
const WAITING: readonly TicketMove[] = ['take', 'hand on', 'ask back', 'send sample', 'record result', 'settle', 'merge']
const SETTLED: readonly TicketMove[] = ['record result', 'amend', 'reopen']
const MERGED: readonly TicketMove[] = ['unmerge']
const EVERY_MOVE: readonly TicketMove[] = [
  'take', 'give back', 'hand on', 'ask back', 'send sample', 'record result', 'settle', 'amend', 'reopen', 'merge', 'unmerge',
]

describe('the moves of a ticket', () => {
  it.each([
    ['waiting', WAITING, WAITING, WAITING],
    ['taken', HELD_BY_ME, HELD_BY_OTHER, HELD_AS_ADMINISTRATOR],
    ['asked back', HELD_BY_ME, HELD_BY_OTHER, HELD_AS_ADMINISTRATOR],
    ['answered by asker', HELD_BY_ME, HELD_BY_OTHER, HELD_AS_ADMINISTRATOR],
    ['sent as a sample', HELD_BY_ME, HELD_BY_OTHER, HELD_AS_ADMINISTRATOR],
    ['settled', SETTLED, SETTLED, SETTLED],
    ['merged', MERGED, MERGED, MERGED],
  ])('of one that is %s are those that its holder, a colleague and an administrator may make', (state, holder, colleague, administrator) => {
    const ticket = ticketIn(state)
    expect(openMoves(ticket, HOLDER)).toEqual(holder)
    expect(openMoves(ticket, COLLEAGUE)).toEqual(colleague)
    expect(openMoves(ticket, ADMINISTRATOR)).toEqual(administrator)
  })

  it('that are not offered are refused with what stands in their way', () => {
    const code = (move: TicketMove, state: string, who: Member) => whyNot(move, ticketIn(state), who)?.code ?? null
    for (const state of ['taken', 'asked back', 'answered by asker', 'sent as a sample']) {
      for (const move of ['take', 'settle', 'ask back', 'send sample', 'give back', 'hand on', 'merge'] as const) expect(code(move, state, COLLEAGUE), `${move} ${state}`).toBe('TICKET_TAKEN')
      for (const move of ['amend', 'reopen', 'unmerge'] as const) expect(code(move, state, HOLDER), `${move} ${state}`).toBe('TICKET_ELSEWHERE')
    }
    for (const move of EVERY_MOVE) {
      expect(code(move, 'settled', HOLDER), `${move} settled`).toBe(SETTLED.includes(move) ? null : 'TICKET_SETTLED')
      expect(code(move, 'merged', HOLDER), `${move} merged`).toBe(MERGED.includes(move) ? null : 'TICKET_MERGED')
      expect(code(move, 'waiting', HOLDER), `${move} waiting`).toBe(WAITING.includes(move) ? null : 'TICKET_ELSEWHERE')
    }
  })
})
