import { describe, expect, it } from 'vitest'
import { keepReadings } from '../../../src/desk/cases/kept-readings.js'
import { readCaseFile } from '../../../src/desk/cases/read-case-file.js'
import { lettuceGuide } from '../../guide/lettuce-world.js'

const file = (answer: string) => ({
  askedOn: '2026-05-14', district: 'eastmere', plausible: [],
  evidence: {
    redFlags: [], carriedOn: false, start: { host: 'lettuce', node: null }, findings: [{ check: 'leaf-top', answer, from: 'asked' as const }],
  },
})

describe('readings that are kept', () => {
  it('are reckoned once for the same guide and key, and anew for another of either', () => {
    const [guide, other] = [lettuceGuide(), lettuceGuide()]
    const kept = keepReadings<string>()
    const reckoned: string[] = []
    const ask = (of: typeof guide, key: string) => kept(of, key, () => {
      reckoned.push(key)
      return `${key} ${reckoned.length}`
    })
    expect([ask(guide, 'a'), ask(guide, 'b'), ask(guide, 'a'), ask(other, 'a'), ask(guide, 'a')]).toEqual(['a 1', 'b 2', 'a 1', 'a 3', 'a 1'])
    expect(reckoned).toEqual(['a', 'b', 'a'])
  })

  it('keep what is nothing too, and let go what was asked for longest ago', () => {
    const guide = lettuceGuide()
    const kept = keepReadings<null>()
    const reckoned: string[] = []
    const ask = (key: string) => kept(guide, key, () => {
      reckoned.push(key)
      return null
    })
    ask('first')
    ask('first')
    expect(reckoned).toEqual(['first'])
    for (let key = 0; key < 255; key++) ask(String(key))
    ask('first')
    for (let key = 255; key < 400; key++) ask(String(key))
    reckoned.length = 0
    ask('first')
    ask('399')
    ask('0')
    expect(reckoned).toEqual(['0'])
  })

  it('of a case are those of its evidence as it is, its day, its district and what the season made of it, and of the guide of now', () => {
    const guide = lettuceGuide()
    const pale = readCaseFile(guide, file('pale patches'))
    expect(readCaseFile(guide, file('pale patches'))).toBe(pale)
    const brown = readCaseFile(guide, file('brown edges'))
    expect(brown.differential[0]?.problem).toBe('tipburn')
    expect(pale.differential[0]?.problem).toBe('downy-mildew')
    for (const otherwise of [{ ...file('pale patches'), askedOn: '2026-06-14' }, { ...file('pale patches'), district: null },
      { ...file('pale patches'), plausible: [{ problem: 'tipburn', factor: 2, reasons: [] }] }]) {
      expect(readCaseFile(guide, otherwise)).not.toBe(pale)
    }
    const anew = lettuceGuide({ 'problems/tipburn.yaml': (text) => text.replace('brown edges: almost always', 'pale patches: almost always, brown edges: sometimes') })
    expect(readCaseFile(anew, file('pale patches'))).not.toEqual(pale)
  })
})
