import { describe, expect, it } from 'vitest'
import { adviceLetterAddress } from '../../src/web/sheet/advice-letter.js'

const card = {
  name: 'Rose black spot', bottomLine: 'It seldom kills a rose.', escalate: null, cautions: ['Wear gloves.'],
  doNow: ['Pick off the worst leaves & bin them.', 'Water at the base.'],
}
const link = 'https://help.example/case#k'.padEnd(55, 'k')
const letter = (part: Partial<Parameters<typeof adviceLetterAddress>[0]['card']> = {}) => new URL(adviceLetterAddress({ card: { ...card, ...part }, helpline: 'Larkmoor Plant Helpline', link }))
const bodyOf = (address: URL): string => decodeURIComponent(/body=([^&]*)/.exec(address.search)?.[1] ?? '')

describe('the advice as a letter', () => {
  it('is opened in the helpline’s own mail program, to nobody yet and with nothing of the caller in its subject', () => {
    const address = letter()
    expect(address.protocol).toBe('mailto:')
    expect(address.pathname).toBe('')
    expect(decodeURIComponent(/subject=([^&]*)/.exec(address.search)?.[1] ?? '')).toBe('Your plant question to Larkmoor Plant Helpline')
  })

  it('says the bottom line first, then cautions, what to do, and where the rest stands', () => {
    // Lines end in CR LF, as RFC 6068 has it.
    expect(bodyOf(letter()).split('\r\n\r\n')).toEqual([
      'Rose black spot', 'It seldom kills a rose.', 'Take care\r\n- Wear gloves.', 'Do now\r\n- Pick off the worst leaves & bin them.\r\n- Water at the base.',
      `The whole sheet, with why we think so: ${link}`, 'Whoever has this link can read the sheet.', 'Larkmoor Plant Helpline',
    ])
  })

  it('says what must be reported', () => {
    expect(bodyOf(letter({ escalate: 'This must be reported.' }))).toContain('This must be reported.')
  })

  it('is cut where mail programs would cut it, and never loses the link or a caution', () => {
    const long = letter({ doNow: Array.from({ length: 40 }, (_, number) => `Do the thing with number ${number} as long as it takes.`) })
    expect(long.href.length).toBeLessThanOrEqual(1900)
    expect(bodyOf(long)).toContain('Do the thing with number 3')
    expect(bodyOf(long)).toContain(link)
    expect(bodyOf(long)).toContain('Wear gloves.')
    expect(bodyOf(letter({ doNow: [] }))).not.toContain('Do now')
  })
})
