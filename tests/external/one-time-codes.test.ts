import { describe, expect, it } from 'vitest'
import { oneTimeCode, secretInText, stepOfCode } from '../../src/desk/people/one-time-code.js'

/** The secret of both RFCs' tables: the ASCII text of these twenty digits. */
const SECRET = new TextEncoder().encode('12345678901234567890')

describe('one-time codes against the published tables', () => {
  // RFC 6238, appendix B: time in seconds and the code of eight digits, for SHA-1.
  it.each([
    [59, '94287082'], [1_111_111_109, '07081804'], [1_111_111_111, '14050471'], [1_234_567_890, '89005924'],
    [2_000_000_000, '69279037'], [20_000_000_000, '65353130'],
  ])('are those of RFC 6238 after %i seconds', (seconds, code) => {
    expect(oneTimeCode(SECRET, new Date(seconds * 1000), 8)).toBe(code)
    // The last six of the eight digits are the code of six (RFC 4226, section 5.3: the number modulo ten to the digits).
    expect(oneTimeCode(SECRET, new Date(seconds * 1000))).toBe(code.slice(2))
    expect(stepOfCode(SECRET, code.slice(2), new Date(seconds * 1000))).toBe(Math.floor(seconds / 30))
  })

  // RFC 4226, appendix D: the codes of the counters 0 to 9; RFC 6238 counts steps of thirty seconds.
  it('are those of RFC 4226 for its ten counters', () => {
    const codes = Array.from({ length: 10 }, (_, counter) => oneTimeCode(SECRET, new Date(counter * 30_000)))
    expect(codes).toEqual([
      '755224', '287082', '359152', '969429', '338314', '254676', '287922', '162583', '399871', '520489',
    ])
  })

  // RFC 6238, section 5.2: at most one step of delay is recommended.
  it('are taken one step early or late, and not two', () => {
    const at = (step: number) => new Date(step * 30_000 + 15_000)
    const code = oneTimeCode(SECRET, at(1000))
    expect([998, 999, 1000, 1001, 1002].map((step) => stepOfCode(SECRET, code, at(step)))).toEqual([null, 1000, 1000, 1000, null])
    expect([`${code.slice(0, 5)}x`, code.slice(1), `${code}0`, ''].map((wrong) => stepOfCode(SECRET, wrong, at(1000)))).toEqual([null, null, null, null])
  })

  // RFC 4648, section 6.
  it('have their secret in base32', () => {
    expect(secretInText(SECRET)).toBe('GEZDGNBVGY3TQOJQGEZDGNBVGY3TQOJQ')
  })
})
