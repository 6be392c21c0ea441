import { describe, expect, it } from 'vitest'
import { waitingWords } from '../../src/desk/tickets/waiting.js'

describe('how long a ticket has waited', () => {
  const opened = '2026-05-14T12:00:00.000Z'
  const after = (minutes: number) => waitingWords(opened, new Date(Date.parse(opened) + minutes * 60_000), 48)

  it.each([
    [0, 'Waiting 0 minutes'], [1, 'Waiting 1 minute'], [59, 'Waiting 59 minutes'], [60, 'Waiting 1 hour'],
    [185, 'Waiting 3 hours'], [47 * 60, 'Waiting 47 hours'], [48 * 60, 'Waiting 2 days'],
    [72 * 60, 'Waiting 3 days, longer than the 48 hours aimed at'],
  ])('after %d minutes says "%s"', (minutes, words) => {
    expect(after(minutes)).toBe(words)
  })

  it('does not count backwards when two clocks differ', () => {
    expect(after(-5)).toBe('Waiting 0 minutes')
  })
})
