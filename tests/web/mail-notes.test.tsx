import { render } from 'preact-render-to-string'
import { describe, expect, it } from 'vitest'
import type { MailView } from '../../shared/index.js'
import { MailLines } from '../../src/web/bench/mail-notes.js'

const show = (view: MailView) => render(<MailLines view={view} onRetry={() => undefined} />)
const row = {
  mail: '3', about: 'answered', ticket: '17', stuck: true, tries: 1, madeAt: '2026-05-14T12:00:00.000Z', nextAt: null,
  why: 'The mail server refused the letter for good (550 5.1.1).',
} as const

describe('what the bench says about mail', () => {
  it('says nothing while every letter goes out', () => {
    expect(show({ on: true, waiting: 2, troubled: [] })).toBe('')
  })

  it('says that the service sends none, and how askers get their answer then', () => {
    expect(show({ on: false, waiting: 0, troubled: [] })).toContain('This service sends no mail. Askers see your answer when they come back by their private link.')
  })

  it('names each letter by its ticket, with what the server said and a way to try again', () => {
    const page = show({ on: true, waiting: 1, troubled: [row, { ...row, mail: '4', about: 'urgent', ticket: '18', stuck: false, nextAt: '2026-05-14T12:01:00.000Z' }] })
    expect(page).toContain('To the asker of ticket 17, with the answer. The mail server refused the letter for good (550 5.1.1). It is not tried any more.')
    expect(page).toContain('To whoever is on duty: ticket 18 is urgent.')
    expect(page).toContain('It is tried again by itself.')
    expect(page.match(/<button/g)).toHaveLength(2)
  })
})
