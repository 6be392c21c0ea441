import { describe, expect, it } from 'vitest'
import type { TicketMove, TicketView } from '../../shared/index.js'
import { ticketActions } from '../../src/web/bench/ticket-actions.js'

const everyMove: TicketMove[] = ['take', 'give back', 'hand on', 'ask back', 'send sample', 'record result', 'settle', 'amend', 'reopen', 'merge', 'unmerge']
const openSample: TicketView['samples'][number] = { number: 'LV-1', packed: 'a leaf', at: '2026-11-25T10:00:00Z', by: 'sedge', result: null }
const keys = (moves: TicketMove[], samples: TicketView['samples'] = []) => ticketActions({ moves, samples }).map(action => action.key).join('')

describe('what can be done with a ticket', () => {
  it('offers a waiting ticket to be taken, first of all', () => {
    expect(keys(['take', 'settle', 'hand on'])).toBe('TANHK')
  })

  it('offers nothing that the service would refuse', () => {
    expect(keys([])).toBe('NK')
  })

  it('offers to write a result down only while a sample is out', () => {
    expect(keys(['record result'])).not.toContain('R')
    expect(keys(['record result'], [openSample])).toContain('R')
    expect(keys(['record result'], [{ ...openSample, result: { text: 'A mould.', at: '2026-11-26T10:00:00Z', by: 'sedge' } }])).not.toContain('R')
  })

  it('lets a settled answer be changed by the key that writes one', () => {
    expect(ticketActions({ moves: ['amend', 'reopen'], samples: [] }).map(action => action.words)).toContain('Change the answer')
  })

  it('gives no key twice, whatever may be done', () => {
    const all = [...keys(everyMove, [openSample]), 'L']
    expect(new Set(all).size).toBe(all.length)
  })
})
