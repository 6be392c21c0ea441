import { describe, expect, it } from 'vitest'
import { buildMatchIndex, matchQuestion } from '../../src/match/index.js'
import { wholeGuide } from '../whole-guide.js'

const index = buildMatchIndex(await wholeGuide())

// Each holds words that keep a plant question calm elsewhere: blisters on leaves, threads of caterpillars, "as if someone".
describe('words that keep plant questions calm', () => {
  it.each([
    ['I cut back hogweed yesterday and now I have little blisters all over my arms', 'sap-on-skin'],
    ['strimmed cow parsnip, white blisters along my legs', 'sap-on-skin'],
    ['blisters all along my forearm after pulling up giant hogweed', 'sap-on-skin'],
    ['pruned the peach with its red blistered leaves and now my arms are blistered', 'sap-on-skin'],
    ['cleared the hogweed, leaves all over me, arms all red and blistered', 'sap-on-skin'],
    ['my son ate some berries off the hedge, I want to keep him safe, what do I do', 'someone-ate-plant'],
    ['it looks as if someone has eaten the yew berries, the kids were out there', 'someone-ate-plant'],
    ['my daughter ate poisonous plants for a dare', 'someone-ate-plant'],
    ['she ate the daffodil bulbs ten minutes ago and has gone pale and clammy', 'trouble-breathing'],
    ['my boy has gone white and limp after eating berries', 'someone-ate-plant'],
    ['he spilt petrol over my garden clothes and it soaked his skin', 'spray-exposure'],
    ['a limb is hanging on threads of bark over the path', 'tree-hazard'],
    ['the dead conifer hedge is leaning over the gate and about to fall on the road', 'tree-hazard'],
  ])('silence no danger: %s', (words, redFlag) => {
    expect(matchQuestion(index, words).redFlags.map((heard) => heard.redFlag)).toContain(redFlag)
  })
})
