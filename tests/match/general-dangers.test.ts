import { describe, expect, it } from 'vitest'
import { buildMatchIndex, matchLine, matchQuestion } from '../../src/match/index.js'
import { wholeGuide } from '../whole-guide.js'

const index = buildMatchIndex(await wholeGuide())

// From a set of 71 dangers and 52 calm sentences made in one sitting; at the first reading 62 dangers raised an emergency,
// and 6 calm sentences did. These are the ones that were got wrong then and are right now.
describe('dangers told by kinds of words: who, what was done, and what came of it', () => {
  it.each([
    'I think he\'s had some of those red berries, his lips are stained',
    'three kids at my nursery picked and shared laburnum pods',
    'is one leaf of dumb cane enough to hurt a crawling baby, she\'s dribbling loads',
    'we were fogging the greenhouse and two have collapsed',
    'stung about thirty times, feel faint',
    'put ant powder all over the baby\'s playmat',
    'fell off the ladder pruning the apple and my wrist is bent wrong',
  ])('are emergencies: %s', (words) => {
    expect(matchLine(index, words).redFlags).not.toEqual([])
  })

  it.each([
    'branch broke off in the storm last year and the wound has gone black',
    'blisters on my peach leaves',
    'slugs have swallowed the whole seedling overnight',
    'choked with bindweed, the hedge can\'t breathe',
    'asparagus looks half dead in july and it shouldn\'t, stems have rusty blisters',
  ])('are not heard where a plant has the trouble: %s', (words) => {
    expect(matchLine(index, words).redFlags).toEqual([])
  })
})

describe('a caution that is only asked about', () => {
  it.each([
    ['can the fruit of the lilli pilli be eaten, raw or cooked', 'poison-question'],
    ['which plants should I not plant with my cat about', 'poison-question'],
    ['are crocosmia bulbs a problem for dogs', 'poison-question'],
    ['safe plants for a nursery school garden please', 'poison-question'],
    ['plants to avoid with toddlers', 'poison-question'],
    ['the drum has no instructions on it, how much copper mixture do I use', 'spray-question'],
    ['do I need a licence to spray my own orchard', 'spray-question'],
    ['how do I dispose of old weedkiller', 'spray-question'],
  ])('is met with its card: %s', (words, redFlag) => {
    expect(matchQuestion(index, words).redFlags.map((heard) => heard.redFlag as string)).toContain(redFlag)
  })

  it.each(['a problem for my roses every year', 'which plants should I grow with my hostas', 'how do I get rid of weeds without digging', 'can I feed the rose again'])('is no caution: %s', (words) => {
    expect(matchQuestion(index, words).redFlags).toEqual([])
  })
})
