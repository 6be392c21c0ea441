import { describe, expect, it } from 'vitest'
import { readingGrade } from '../../../src/guide/index.js'
import { append, compileLettuce, swap, warningsOf } from '../lettuce-world.js'

const HARD = 'Necrotic interveinal discolouration characteristically precedes generalised defoliation of susceptible cultivars.'

describe('rule: text for askers reads at grade 8 or below', () => {
  it('accepts plain text', () => {
    expect(readingGrade('Look at the lower leaves first, then turn one of them over in good light.')).toBeLessThan(8)
    expect(warningsOf({ 'checks/slime.yaml': swap('Look at dawn.', 'Look at the lower leaves first, then turn one of them over in good light.') })).toEqual([])
  })

  it('does not grade a text of fewer than 8 words', () => {
    expect(readingGrade('Necrotic interveinal discolouration characteristically precedes defoliation.')).toBeGreaterThan(8)
    expect(warningsOf({ 'problems/slugs.yaml': swap('A thing that can be wrong with lettuce.', 'Necrotic interveinal discolouration characteristically precedes defoliation.') })).toEqual([])
  })

  it('points at the hard text and gives its grade', () => {
    const { warnings } = compileLettuce({ 'checks/slime.yaml': swap('Is there slime?', HARD) })
    expect(warnings.map(({ code, message }) => ({ code, message }))).toEqual([{
      code: 'READING_GRADE',
      message: `"ask" reads at grade ${readingGrade(HARD).toFixed(1)}. Expected 8 or below: shorter sentences, plainer words.`,
    }])
  })

  it.each([
    ['checks/slime.yaml', 'ask: Is there slime?', `ask: ${HARD}`, '2:6'],
    ['checks/slime.yaml', 'how: Look at dawn.', `how: ${HARD}`, '3:6'],
    ['checks/slime.yaml', 'why: Slugs leave it.', `why: ${HARD}`, '3:6'],
    ['problems/slugs.yaml', 'what: A thing that can be wrong with lettuce.', `what: ${HARD}`, '3:7'],
    ['problems/slugs.yaml', 'bottom line: Pick off the bad leaves.', `bottom line: ${HARD}`, '12:16'],
    ['problems/slugs.yaml', 'do now: [Pick them off today.]', `do now: [${HARD}]`, '13:12'],
    ['problems/slugs.yaml', '  spray: none', `  not worth doing: [${HARD}]\n  spray: none`, '14:21'],
    ['problems/slugs.yaml', '  spray: none', `  next year: [${HARD}]\n  spray: none`, '14:15'],
    ['problems/slugs.yaml', 'spray: none', `spray: ${HARD}`, '14:10'],
    ['problems/slugs.yaml', 'sources:', `cautions: [${HARD}]\nsources:`, '15:12'],
    ['problems/slugs.yaml', 'cost: ordinary', `cost: regulated\nwatch: { escalate: "Photographic ${HARD}" }`, '7:20'],
    ['red-flags/sap-on-skin.yaml', 'Rinse with cool running water.', HARD, '6:18'],
    ['red-flags/sap-on-skin.yaml', 'call:', `do not: [${HARD}], call:`, '6:18'],
  ])('grades %s: %s', (path, from, to, at) => {
    expect(warningsOf({ [path]: swap(from, to) })).toEqual([{ code: 'READING_GRADE', at: `trees/${path}:${at}`, nearest: [] }])
  })

  it('grades a list as one text', () => {
    const list = (...items: string[]) => warningsOf({ 'problems/slugs.yaml': swap('do now: [Pick them off today.]', `do now: [${items.join(', ')}]`) })
    expect(list(HARD)).toHaveLength(1)
    expect(list(HARD, ...Array.from({ length: 25 }, () => 'Pick the bad leaf off'))).toEqual([])
  })

  it('reports every hard text, not only the first', () => {
    expect(warningsOf({ 'checks/slime.yaml': swap('Is there slime?', HARD), 'problems/slugs.yaml': swap('Pick off the bad leaves.', HARD) })).toEqual([
      { code: 'READING_GRADE', at: 'trees/checks/slime.yaml:2:6', nearest: [] },
      { code: 'READING_GRADE', at: 'trees/problems/slugs.yaml:12:16', nearest: [] },
    ])
  })

  it.each([
    ['checks/slime.yaml', 'Is there slime?'], ['problems/slugs.yaml', 'Pick off the bad leaves.'], ['red-flags/sap-on-skin.yaml', 'Rinse with cool running water.'],
  ])('is silent where %s accepts it with a reason', (path, from) => {
    expect(warningsOf({ [path]: (text) => append('accepts: [{ warning: READING_GRADE, because: the names are long }]\n')(text.replace(from, HARD)) })).toEqual([])
  })
})
