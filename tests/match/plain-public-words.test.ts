import { describe, expect, it } from 'vitest'
import { buildMatchIndex, matchQuestion } from '../../src/match/index.js'
import { wholeGuide } from '../whole-guide.js'

// Our own sentences for kinds of wording that real public questions showed; no question is quoted.
const index = buildMatchIndex(await wholeGuide())
const heard = (words: string): ReturnType<typeof matchQuestion> => matchQuestion(index, words)

describe('a problem named by its own name', () => {
  it.each([
    ['the broccoli and the turnips were ruined by flea beetle again', 'cabbage', 'cabbage-flea-beetle'],
    ['is there a cure for clubroot in my sprouts', 'cabbage', 'cabbage-clubroot'],
  ])('is a way into the plant\'s tree: %s', (words, host, problem) => {
    const entry = heard(words).entries.find((one) => one.host === host)
    expect(entry?.problems).toContain(problem)
    expect(heard(words).entries[0]?.host).toBe(host)
  })
})

describe('a plant that has no tree', () => {
  it.each(['lychee', 'chokecherry', 'xylosma', 'sea buckthorn', 'jujube', 'tomatillo', 'monkey puzzle', 'koelreuteria'])('is heard as the unknown plant: %s', (plant) => {
    expect(heard(`my ${plant} has brown spots on the leaves`).hosts[0]?.host).toBe('unknown-plant')
  })

  it('is offered the general questions first', () => {
    expect(heard('white powder on my koelreuteria leaves').entries[0]?.host).toBe('unknown-plant')
    expect(heard('the potted fern by the stairs, a houseplant, leaves sticky').entries.slice(0, 3).map(({ host }) => host)).toContain('unknown-plant')
  })
})

describe('a plant named again and again', () => {
  it('is the one in question, whatever taller trees are named beside it', () => {
    expect(heard('two of our five spruces are thin at the bottom. They stand under an oak and three maples. Do spruces need more sun, or is this spruce sick?').hosts[0]?.host).toBe('spruce')
  })
})

describe('an animal that is only told by what it does', () => {
  it.each(['what is digging in my yard, deep holes every morning', 'something burrowed beside the shed and threw out a pile of dirt', 'a woodchuck has moved in under the deck'])(
    'is about damage by animals: %s', (words) => {
      expect(heard(words).hosts[0]?.host).toBe('wildlife-damage')
    },
  )
})

describe('words of harm and of taking that are said of plants too', () => {
  it.each(['will that kill the tree', 'take a look at the bushes by the drive, they look poor', 'could this kill my shrub'])('make no question of poison or of animals: %s', (words) => {
    expect(['poison-plant', 'wildlife-damage']).not.toContain(heard(words).hosts[0]?.host)
  })

  it.each(['could this kill my dog', 'can it kill a horse'])('still do where an animal may be harmed: %s', (words) => {
    expect(heard(words).redFlags.length > 0 || heard(words).hosts[0]?.host === 'poison-plant').toBe(true)
  })
})

describe('a colour that is a flower\'s name too', () => {
  it.each([
    ['our pink cherry has two boughs with pure white blossom', 'cherry'],
    ['my pink hydrangea has turned blue', 'hydrangea'],
    ['the pink rose is dying', 'rose'],
  ])('names no other plant: %s', (words, host) => {
    expect(heard(words).hosts.map((one) => one.host)).toEqual([host])
  })

  it('is not taken for a misspelt pine', () => {
    expect(heard('my pinks have gone brown in the middle').hosts.map((one) => one.host)).not.toContain('pine')
  })
})
