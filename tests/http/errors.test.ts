import { describe, expect, it } from 'vitest'
import { ProblemDocument } from '../../shared/index.js'
import { DeskFault } from '../../src/desk/index.js'
import { type ErrorCode, errors } from '../../src/http/errors.js'
import { refusalFor } from '../../src/http/problem-documents.js'
import { RequestFault } from '../../src/http/request-fault.js'

const rows = Object.entries(errors)
/** The statuses of what is wrong with the service itself. */
const OURS: Readonly<Record<string, number>> = { UNEXPECTED: 500, NOT_READY: 503, PHOTOS_OUT_OF_ORDER: 503 }

describe('the error table', () => {
  it.each(rows)('%s has a client\'s or our own status, a title and a whole sentence', (code, { status, title, sentence }) => {
    expect(code).toMatch(/^[A-Z]+(_[A-Z]+)*$/)
    expect(status).toBe(OURS[code] ?? Math.min(499, Math.max(400, status)))
    expect(title).toMatch(/^[A-Z].*[^.]$/)
    expect(sentence).toMatch(/^[A-Z"{].*\.$/)
  })

  it.each(rows)('%s makes a problem document that fits', (code) => {
    const { document } = refusalFor(new RequestFault(code as ErrorCode), 'r-1')
    expect(ProblemDocument.parse(document)).toEqual(document)
    expect(document).toMatchObject({ code, status: errors[code as ErrorCode].status, request: 'r-1' })
    expect(document.type).toBe(`urn:frondline:fault:${code.toLowerCase().replaceAll('_', '-')}`)
  })
})

describe('what a caller is told', () => {
  it('fills in this occurrence\'s words', () => {
    expect(refusalFor(new DeskFault('TICKET_TAKEN', { words: { who: 'sedge' } }), 'r').document.detail)
      .toBe('sedge has this ticket. Nothing was changed.')
  })

  it('does not fill in again what stood in a word', () => {
    const words = { check: '{answer}', answer: 'purple' }
    expect(refusalFor(new DeskFault('UNKNOWN_ANSWER', { words }), 'r').document.detail)
      .toContain('The check "{answer}" does not take the answer "purple".')
  })

  it('says how long to wait, in the sentence and in the header', () => {
    const { document, headers } = refusalFor(new DeskFault('SIGN_IN_PAUSED', { retryAfterSeconds: 30 }), 'r')
    expect(document.detail).toContain('Wait 30 seconds')
    expect(headers).toEqual({ 'retry-after': '30' })
  })

  it.each([
    ['an error of ours', new Error('SELECT * FROM person')], ['a word', 'SELECT'], ['nothing', undefined],
    ['a number', 7], ['an error with a server\'s status', Object.assign(new Error('SELECT'), { status: 503 })],
  ])('tells nothing of %s', (_name, thrown) => {
    const { document } = refusalFor(thrown, 'r')
    expect(document).toMatchObject({ code: 'UNEXPECTED', status: 500 })
    expect(JSON.stringify(document)).not.toContain('SELECT')
  })
})
