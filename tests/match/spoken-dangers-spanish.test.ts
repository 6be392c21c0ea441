import { describe, expect, it } from 'vitest'
import { guideIn } from '../../src/guide/index.js'
import { buildMatchIndex, matchQuestion } from '../../src/match/index.js'
import { wholeGuide } from '../whole-guide.js'
import { CALM_IN_SPANISH, HEARD_IN_SPANISH } from './spoken-dangers-spanish.js'

const whole = await wholeGuide()
const guide = guideIn(whole, 'es')
const index = buildMatchIndex(guide)

function heard(words: string): ReturnType<typeof matchQuestion>['redFlags'] {
  return matchQuestion(index, words).redFlags
}

describe('dangers said in Spanish', () => {
  for (const [id, sentences] of Object.entries(HEARD_IN_SPANISH)) {
    it.each(sentences)(`${id} is heard in: %s`, (words) => {
      expect(heard(words).map(({ redFlag }) => redFlag)).toContain(id)
    })
  }

  it('tries every red flag there is at least six times', () => {
    const tried = Object.entries(HEARD_IN_SPANISH).filter(([, sentences]) => sentences.length >= 6).map(([id]) => id)
    expect(tried.sort()).toEqual(guide.redFlags.map(({ id }) => id as string).sort())
  })

  it.each(CALM_IN_SPANISH)('no emergency is heard in: %s', (words) => {
    expect(heard(words).filter(({ level }) => level === 'emergency')).toEqual([])
  })
})

describe('the Spanish words of the guide itself', () => {
  it('raise no emergency where a plant\'s trouble is told', () => {
    const english = new Set(whole.hosts.flatMap((host) => host.nodes.flatMap((node) => node.entry)))
    const ofDanger = new Set(['poison-plant', 'garden-conditions'])
    const told = guide.hosts.filter(({ id }) => !ofDanger.has(id)).flatMap((host) => host.nodes.flatMap((node) => node.entry)).filter((words) => !english.has(words))
    expect(told.length).toBeGreaterThan(100)
    const raised = told.flatMap((words) => heard(words).filter(({ level }) => level === 'emergency').map(({ redFlag }) => `${words} | ${redFlag}`))
    expect(raised).toEqual([])
  })
})
