import { describe, expect, it } from 'vitest'
import type { TicketMove } from '../../shared/index.js'
import type { Member } from '../../src/desk/index.js'
import { openMoves, ticketMoves, whyNot } from '../../src/desk/tickets/ticket-moves.js'

describe('the moves of a ticket', () => {
  const member = (id: number, role: Member['role']): Member => ({ id, name: `person ${id}`, role })

  it('are offered exactly where they are allowed', () => {
    for (const state of ['waiting', 'taken', 'asked back', 'answered by asker', 'sent as a sample', 'settled', 'merged']) {
      const ticket = { state, taken_by: state === 'waiting' || state === 'merged' ? null : 1, taker: 'person 1', merged_into: 5 }
      for (const who of [member(1, 'specialist'), member(2, 'specialist'), member(3, 'administrator')]) {
        const offered = openMoves(ticket, who)
        for (const move of Object.keys(ticketMoves) as TicketMove[]) expect(whyNot(move, ticket, who) === null).toBe(offered.includes(move))
      }
    }
  })

  it('leave every ticket a way on, for its holder', () => {
    for (const state of ['waiting', 'taken', 'asked back', 'answered by asker', 'sent as a sample', 'settled', 'merged']) {
      expect(openMoves({ state, taken_by: 1, taker: 'person 1', merged_into: 5 }, member(1, 'specialist')), state).not.toEqual([])
    }
  })
})
