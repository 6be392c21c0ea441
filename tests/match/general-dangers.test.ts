import { describe, expect, it } from 'vitest'
import { buildMatchIndex, matchLine } from '../../src/match/index.js'
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
