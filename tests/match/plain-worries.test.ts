import { describe, expect, it } from 'vitest'
import { buildMatchIndex, matchLine } from '../../src/match/index.js'
import { wholeGuide } from '../whole-guide.js'
import { FIRST_CALM, FIRST_WORRIED, SECOND_CALM, SECOND_WORRIED, THIRD_CALM, THIRD_WORRIED } from './plain-worries.js'

const index = buildMatchIndex(await wholeGuide())
const raised = (words: string): readonly string[] => {
  const { redFlags, cautions } = matchLine(index, words)
  return [...redFlags, ...cautions]
}

describe('worries in plain and odd voices', () => {
  it.each([...FIRST_WORRIED, ...SECOND_WORRIED, ...THIRD_WORRIED])('are heard: %s', (words, anyOf) => {
    const heard = raised(words)
    expect(heard.some((id) => anyOf.includes(id)), `raised ${heard.join(', ') || 'nothing'}`).toBe(true)
  })

  // Ordinary talk that shares words with despair, eating and danger; found in use and told here in other words.
  it.each([
    'the front lawn took a bit of a battering from the scaffolders, do I kill off the old turf first', 'cracks have opened in the lawn this dry summer, should we try and fill them with sand',
    'no room to plant the earlies so we are going to use bags of compost', 'just bought the home and the big aspen tree has leaves turning yellow and falling off in july',
    'raspberries began well this year with big tasty berries and now they are seedy and small', 'greenfly on the window sill chives, dont want poison, the kids and all of us eat them',
    'took too many cuttings off the fuchsia and now it sulks', 'pulled up a cabbage and its roots were like fat swollen fingers', 'big ash by the road, thin at the top, dead twigs coming down, is it safe',
    'squirrels dug up all my crocuses', 'should I cut off the infected leaf, I only fed it once', 'a bough came off many years back and the scar is cracked',
    'I have had this houseplant for years and repotted it thinking it was rootbound, but new leaves get brown tips', 'sap oozed from the peaches, the skin ruptured and the fruit rotted',
  ])('are not heard where words are shared by chance: %s', (words) => {
    expect(matchLine(index, words).redFlags).toEqual([])
  })

  it('are heard of a pet at a bulb and of a child with a berry', () => {
    expect(matchLine(index, 'dog was sick, had been digging up the crocuses').redFlags).toContain('pet-ate-plant')
    expect(matchLine(index, 'my little one picked a snowberry and squashed it, are they bad').cautions).toContain('poison-question')
  })

  it.each([
    ['sap on my arms and my skin is cracked and burning', 'sap-on-skin'], ['hogweed juice on my hands, the skin has burst into blisters', 'sap-on-skin'], ['thorn in my finger, the infected part is swelling', 'injury'],
    ['we ate it thinking it was dead nettle and feel sick', 'someone-ate-plant'], ['puffball this morning on the lawn, safe to eat', 'about-to-eat'], ['we found tasty berries in the hedge, can the kids eat them', 'about-to-eat'],
    ['going to use potato leaves for soup', 'about-to-eat'], ['the tree is brown and falling down onto the house', 'tree-hazard'],
  ])('are heard though ordinary talk shares the words: %s', (words, redFlag) => {
    expect(matchLine(index, words).redFlags).toContain(redFlag)
  })

  it.each(['the branch broke and I fell', 'branches broke and fell on us'])('are heard of a fall: %s', (words) => {
    expect(matchLine(index, words).redFlags).toContain('injury')
  })

  it.each(['I took all of my pills', 'she has taken a lot of tablets', 'he took an overdose', 'I have taken all of them tonight'])('are heard though few words are said: %s', (words) => {
    expect(matchLine(index, words).redFlags).toContain('self-harm')
  })

  it.each([...FIRST_CALM, ...SECOND_CALM, ...THIRD_CALM])('are not heard in calm words: %s', (words) => {
    expect(matchLine(index, words).redFlags).toEqual([])
  })
})

describe('hearsay', () => {
  it.each(['my neighbour said her toddler ate it', 'the teacher says he chewed a foxglove leaf', 'gran thinks the baby swallowed a seed', 'she told me her husband ate the bulbs'])(
    'that something was eaten is a danger: %s', (words) => {
      expect(matchLine(index, words).redFlags).toContain('someone-ate-plant')
    },
  )

  it.each(['she said nobody ate any', 'he says they never touched the berries', 'my husband says they have eaten all the seed potatoes, the mice'])('that nothing was, or that mice did, is none: %s', (words) => {
    expect(matchLine(index, words).redFlags).toEqual([])
  })
})

describe('misspelled words of danger', () => {
  it.each([['daughter touched the chillis then her eyes, screaming', 'something-in-eyes']])(
    'keep their bridge to the right word though some red flag lists them, or a shorter one, as they are written: %s', (words, flag) => {
      expect(matchLine(index, words).redFlags).toContain(flag)
    },
  )
})
