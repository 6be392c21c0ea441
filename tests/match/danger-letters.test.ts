import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { RedFlag } from '../../src/guide/index.js'
import { weighDangers } from '../../src/match/danger-letters.js'
import { buildMatchIndex, matchQuestion } from '../../src/match/index.js'
import type { DangerWeights } from '../../src/match/letter-weights.js'
import { tokenize } from '../../src/match/tokens.js'
import { leaning, shareOf, signShare } from '../../src/match/weighed-letter.js'
import { wholeGuide } from '../whole-guide.js'

const sign = (name: string, first: number) => ({ name, first, last: first })
const WORDS = 'he chewed the berries and is pale'
const SIGNS = ['he', 'chewed', 'the', 'berries', 'and', 'is', 'pale'].map(sign)
const flag = (id: string, level: RedFlag['level'], then: RedFlag['then'] = 'carry on') => ({ id, level, then }) as RedFlag
const FLAGS = new Map([flag('ate', 'emergency'), flag('sap', 'emergency'), flag('breath', 'emergency', 'stop'), flag('asked', 'caution')].map((one) => [one.id as string, one]))
const WEIGHTS: DangerWeights = {
  emergency: {
    any: { base: -2, signs: new Map([['chewed', 2], ['pale', 3], ['rule sap', 4], ['rule ate: its rule', -0.5], ['rule sap: its rule', 0]]) },
    kinds: new Map([['ate', { base: 0, signs: new Map([['chewed', 3]]) }], ['sap', { base: -4.3, signs: new Map() }], ['breath', { base: -4, signs: new Map([['pale', 1]]) }]]),
  },
  caution: { any: { base: 4, signs: new Map() }, kinds: new Map([['asked', { base: 1, signs: new Map() }]]) },
}
const heardIn = (signs: typeof SIGNS, ruled: readonly string[] = [], rule = 'its rule') => weighDangers(
  WEIGHTS, { words: WORDS, tokens: tokenize(WORDS), signs, stopWords: new Set(['he', 'the', 'and', 'is']) }, ruled.map((id) => ({ redFlag: id as RedFlag['id'], level: FLAGS.get(id)?.level ?? 'caution', words: [], rules: [`${id}: ${rule}`] })), (id) => FLAGS.get(id) ?? null,
)

describe('dangers told by a whole letter', () => {
  it('are reckoned as logistic regression over signs that share a fixed weight', () => {
    // Worked by hand: 7 signs count as 25, so each counts 5 / sqrt(25) = 1; -2 + 2 + 3 = 3, and 1 / (1 + e^-3) = 0.9526.
    expect(signShare(SIGNS.length)).toBe(1)
    expect(leaning(WEIGHTS.emergency.any, SIGNS, [])).toBe(3)
    expect(shareOf(3)).toBeCloseTo(0.9526, 4)
  })

  it('raise the likeliest kind, with the words that told it', () => {
    expect(heardIn(SIGNS).map(({ redFlag, words }) => [redFlag, words.map(({ text }) => text)])).toEqual([['ate', ['chewed']]])
  })

  it('raise no caution beside an emergency, and one where nothing worse is told', () => {
    expect(heardIn(SIGNS).some(({ level }) => level === 'caution')).toBe(false)
    expect(heardIn(SIGNS.filter(({ name }) => name !== 'pale' && name !== 'chewed')).map(({ redFlag }) => redFlag)).toEqual(['asked'])
  })

  it('never take back one that asks to stop, nor a caution, and guess nothing beside what asks to stop', () => {
    expect(heardIn(SIGNS, ['sap']).map(({ redFlag }) => redFlag)).toEqual(['sap', 'ate'])
    expect(heardIn(SIGNS, ['breath']).map(({ redFlag }) => redFlag)).toEqual(['breath'])
    expect(heardIn([], ['breath']).map(({ redFlag }) => redFlag)).toContain('breath')
    fc.assert(fc.property(fc.subarray([...FLAGS.keys()]), fc.subarray(SIGNS), (ruled, signs) => {
      const heard = heardIn(signs, ruled).map(({ redFlag }) => redFlag as string)
      const emergencies = ruled.filter((id) => FLAGS.get(id)?.level === 'emergency')
      const danger = shareOf(leaning(WEIGHTS.emergency.any, signs, ruled.flatMap((id) => [`rule ${id}`, `rule ${id}: its rule`])))
      expect(heard).toEqual(expect.arrayContaining(ruled.filter((id) => !emergencies.includes(id) || id === 'breath')))
      if (danger >= 0.2 && emergencies.length > 0) expect(heard.some((id) => emergencies.includes(id))).toBe(true)
      if (danger >= 0.2 && emergencies.length === 1) expect(heard).toEqual(expect.arrayContaining(emergencies))
    }))
  })

  it('take back the only emergency that a rule heard where the letter as a whole hardly tells of any', () => {
    // Worked by hand: with no signs -2, and -0.5 for a rule that is often wrong, 1 / (1 + e^2.5) = 0.076; with "chewed" as one of 25, 2 more, 0.38.
    expect(heardIn([], ['ate']).map(({ level }) => level)).not.toContain('emergency')
    expect(heardIn([sign('chewed', 1)], ['ate']).map(({ redFlag }) => redFlag)).toEqual(['ate'])
    // A rule of which nothing was learnt, such as one that a guide has added, is believed.
    expect(heardIn([], ['ate'], 'a rule of our own').map(({ redFlag }) => redFlag)).toContain('ate')
    // A rule that is seldom wrong speaks for itself: -2 + 4, 0.88.
    expect(heardIn([], ['sap']).map(({ redFlag }) => redFlag)).toContain('sap')
  })

  it('lose one that a rule heard beside another of which the letter tells far more', () => {
    // Worked by hand, 7 signs that count 1 each: ate 1 / (1 + e^-3) = 0.953, sap 1 / (1 + e^4.3) = 0.0134, breath 1 / (1 + e^3) = 0.047;
    // of 1.014 in all sap has 0.0132, below 0.015. Without the signs ate has 0.5, sap 0.0134 and breath 0.018: sap has 0.025.
    expect(heardIn(SIGNS, ['ate', 'sap']).map(({ redFlag }) => redFlag)).toEqual(['ate'])
    expect(heardIn([], ['ate', 'sap']).map(({ redFlag }) => redFlag)).toEqual(['ate', 'sap'])
  })
})

describe('letters of danger in words that no rule foresaw', async () => {
  const index = buildMatchIndex(await wholeGuide())

  // Invented for this test after the weights were fitted; which card is right is common practice, no source.
  it.each([
    ['We had my sister’s twins for the weekend and when I fetched them in from the border one of them had purple round his lips and three of the stalks of the pokeweed were bare. He has since brought up his tea. Should the thing come out altogether?', 'someone-ate-plant'],
    ['the spaniel cleared a whole tray of hyacinths waiting to be planted and keeps dribbling', 'pet-ate-plant'],
    ['After Tuesday’s wind our old poplar is at an angle it was not at before and the turf has lifted on one side like a lid. The school path runs along there.', 'tree-hazard'],
    ['I was cutting back the euphorbia in shorts and today both shins are covered in weeping blisters', 'sap-on-skin'],
  ])('are heard: %s', (words, redFlag) => {
    expect(matchQuestion(index, words).redFlags.map((heard) => heard.redFlag)).toContain(redFlag)
  })

})
