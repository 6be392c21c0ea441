import { describe, expect, it } from 'vitest'
import { buildMatchIndex, matchQuestion, subjectIn } from '../../src/match/index.js'
import { wholeGuide } from '../whole-guide.js'

const guide = await wholeGuide()
const index = buildMatchIndex(guide)
const levels = new Map<string, string>(guide.redFlags.map(({ id, level }) => [id, level]))
const flagsOf = (words: string): readonly string[] => matchQuestion(index, words).redFlags.map(({ redFlag }) => redFlag)
const emergenciesOf = (words: string): readonly string[] => flagsOf(words).filter((flag) => levels.get(flag) === 'emergency')
const hostOf = (words: string): string => matchQuestion(index, words).hosts[0]?.host ?? 'unknown-plant'

// All sentences are invented. The public writes at length: rain, children and other plants come into it, and are not what it is about.
describe('a letter of many words', () => {
  it.each([
    ['Good morning, I hope you can help. We moved to the end cottage in spring and have been busy with the house, the children are at a new school, it rained all of May and then the hot weather came. '
      + 'What I wanted to ask about is the shrub by the door. I do not know what it is. Its leaves curl at the edges and some have dropped. We water it when we remember. Could it be saved?', 'unknown-plant'],
    ['My sister gave me three tomato plants in April and I put them in big pots on the patio with new compost, next to the herbs. We had a cold wet week and then sun every day, and I was away for some of it. '
      + 'Now the ones that are still green have a flat black patch at the bottom end. The beans in the bed behind are fine. Is it the soil, or have I given too much feed?', 'tomato'],
    ['The forsythia that my father planted has always done well by the gate, whatever the winter was like, and the children pick from it for the school fair. This year there are hardly any flowers on it and I would like to know why that might be.', 'flowering-shrub'],
  ])('is about its plant, not about the soil and weather in it: %s', (words, host) => {
    expect(hostOf(words)).toBe(host)
  })

  // All of these name a plant without a tree or no plant at all, beside a word that is at home in another tree.
  it.each([
    'Can you think of a tall narrow shrub that would hide me from the windows of the house behind? My garden is only a small yard.',
    'The bushes at the side of our house look poorly, what would you suggest?',
    'My xylosma lives in a pot in half shade and its buds fall before they open. I keep the soil damp and never wet. What does it want?',
    'I planted a sea buckthorn last winter and it did not live. What kind of soil should it have had?',
    'The fragrant akebia is in flower but a lot of its leaves are pale. Does it want manure, or feed for acid soil?',
  ])('is not about a window, a house, soil or a colour that stands beside its plant: %s', (words) => {
    expect(hostOf(words)).toBe('unknown-plant')
  })

  it('lets each kind of word tell less than a line does', () => {
    const line = 'the soil is like concrete'
    const letter = `${line} ${'and so I came home again and sat down for a while '.repeat(6)}`
    const of = (words: string): number => subjectIn(index, words).features.get('soil') ?? 0
    expect(of(line)).toBe(1)
    // 77 words, where 40 would still tell in full.
    expect(of(letter)).toBeCloseTo(40 / 77, 10)
  })
})

describe('everyday words', () => {
  it.each(['gardener', 'early', 'earlier', 'basic', 'popular', 'monster', 'pants', 'settling', 'arise', 'bench'])('are no misspelled plant: %s', (word) => {
    expect(matchQuestion(index, `that was the ${word} one`).hosts).toEqual([])
  })

  it.each(['the plant is sprawling without gloves in sight', 'a weed is invading and two weedkillers did not help'])('are no misspelled danger: %s', (words) => {
    expect(emergenciesOf(words)).toEqual([])
  })
})

describe('dangers in a story', () => {
  it.each([
    ['Robin rang to say that Alex had eaten some kind of strange berries by the pond', 'someone-ate-plant'],
    ['I made her spit it out at once, but both fists were still full of red berries, and there were more under the hedge', 'someone-ate-plant'],
    ['our dog chewed a houseplant on the landing, we did not think much of it then and went on with the painting until tea, when he came in drooling', 'pet-ate-plant'],
    ['the cat was out all day on Friday. She seemed well. On Sunday one cheek was fat and by Monday the other one too. Could that be a reaction to eating the plant by the steps?', 'pet-ate-plant'],
    ['there are mushrooms all round the base of the big beech, and it stands four paces from the house', 'tree-hazard'],
    ['before I begin, is it safe to spray around the lilacs', 'spray-question'],
  ])('are heard: %s', (words, redFlag) => {
    expect(flagsOf(words)).toContain(redFlag)
  })

  it.each([
    'when I came back from the coast the stems of the courgettes had collapsed',
    'every fall little trees come up in our borders from the neighbours\' seeds',
    'our neighbour has old trees and in the fall we rake for weeks',
    'the grubs which were eating the roots are gone since I borrowed two hens',
    'would ivy finish my tree by taking all of the water from it',
    'we decided to go outside and tidy the beds',
  ])('are not heard in words that only sound like one: %s', (words) => {
    expect(emergenciesOf(words)).toEqual([])
  })

  // The same calm words beside a real danger.
  it.each([
    ['in the fall a big limb cracked and now it hangs over the drive', 'tree-hazard'],
    ['the dead ash leans more each fall, could it come down on the house', 'tree-hazard'],
    ['could this fall on the house, the oak is split to the base', 'tree-hazard'],
    ['my father collapsed after he pulled up the bean stems', 'trouble-breathing'],
    ['the plants had collapsed and then my husband collapsed beside them', 'trouble-breathing'],
    ['she has taken all of the pills that were in the shed', 'self-harm'],
    ['the roots were taking all of the water and my son swallowed the berries', 'someone-ate-plant'],
    ['the slugs which were eating the lilies are gone but our cat has eaten a lily leaf', 'pet-ate-plant'],
    ['the grubs that were eating the bulbs are gone and now my daughter has eaten a daffodil bulb', 'someone-ate-plant'],
    ['will it harm the plant, and will it harm my dog', 'poison-question'],
    ['I have decided to go, nobody would miss me, please water the pots', 'self-harm'],
  ])('are heard though words that keep others calm stand beside them: %s', (words, redFlag) => {
    expect(flagsOf(words)).toContain(redFlag)
  })
})
