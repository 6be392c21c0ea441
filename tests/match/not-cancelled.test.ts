import { describe, expect, it } from 'vitest'
import { buildMatchIndex, matchQuestion } from '../../src/match/index.js'
import { wholeGuide } from '../whole-guide.js'
import { PLANT_TALK } from './plant-talk.js'

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
    ['I gave them tomato feed to drink by mistake instead of squash', 'someone-ate-plant'],
    ['my husband gave them rose spray to drink, thought it was lemonade', 'someone-ate-plant'],
    ['toddler found with half eaten bulbs and skins in his hands', 'someone-ate-plant'],
    ['grandson was shelling peas that turned out to be laburnum and ate some', 'someone-ate-plant'],
    ['my boy has been at the laburnum with his friends, eating pods', 'someone-ate-plant'],
    ["we've been in the garden and she has eaten the foxglove", 'someone-ate-plant'],
    ['he just drank it, the plant food', 'someone-ate-plant'],
    ['somebody has been at the yew with the shears and the horse ate the clippings', 'pet-ate-plant'],
    ['my mum went down the garden path and collapsed, she is not answering', 'trouble-breathing'],
    ['he collapsed in the dry ditch after being stung', 'trouble-breathing'],
    ['my daughter Violet has collapsed, I think she ate something', 'trouble-breathing'],
    ['Rosemary has gone grey and clammy, she was stung by a bee', 'trouble-breathing'],
    ['nobody has ever been stung before but now he has been stung twenty times and is pale', 'trouble-breathing'],
    ['strimming waist high hogweed and now blisters all over my arms', 'sap-on-skin'],
    ['swollen fingers like sausages after weeding the euphorbia', 'sap-on-skin'],
    ['prickly little rash all over my arm after cutting back rue', 'sap-on-skin'],
    ["baby's fingers are red and blistered after she picked spurge", 'sap-on-skin'],
    ['we were dusted by a crop plane and he is staggering', 'spray-exposure'],
    ['farmer dumped a load of spray on us from the tractor', 'spray-exposure'],
    ['neighbour sprays his field and it drifts right over our veg beds and the washing', 'spray-exposure'],
    ["storm blew the spray through the window onto the baby's cot", 'spray-exposure'],
    ['cleaned it all out with bleach and ammonia together', 'spray-misuse'],
    ['poured the old weedkiller down the drain', 'spray-misuse'],
    ['burnt my hand at bonfire night, it is blistered', 'injury'],
    ["cactus spine came off in my hand and it's stuck and swollen", 'injury'],
    ['I am at the end of it all, cant go on', 'self-harm'],
    ["I have the weedkiller here and I don't think I can do another winter", 'self-harm'],
    ['if I drink this will that be the end of it', 'self-harm'],
    ['the trunk has split into two over the drive', 'tree-hazard'],
    ['thorn broke off in my finger', 'injury'],
    ['washed the lettuce with bleach', 'spray-misuse'],
    ['lemon juice on her hands in the sun and now blisters', 'sap-on-skin'],
    ['I read people used to eat it so I am going to cook the roots tonight, it is a wild plant', 'about-to-eat'],
    ['we make leaf mould in a cage and mushrooms came up in it, can I eat them', 'about-to-eat'],
    ['I make leafmold every year, could I fry the mushrooms that grow on it for dinner', 'about-to-eat'],
    ['she cut the foxglove leaves with a knife and ate them', 'someone-ate-plant'],
    ['in the gale the spray from the field came through the kitchen window', 'spray-exposure'],
    ['my husband collapsed in the heat while spraying', 'trouble-breathing'],
    ['the branch is dry and falling onto the path', 'tree-hazard'],
    ['the label is gone so I need to guess the dose of weed killer', 'spray-misuse'],
    ['a limb is cracked and the tree is falling already onto the road', 'tree-hazard'],
    ['I keep thinking which pills would be the quickest, and the least toxic to taste', 'self-harm'],
    ['the weedkiller is in front of me and I am thinking of taking it', 'self-harm'],
    ['I just want to end it', 'self-harm'],
    ['he says he wants to kill himself', 'self-harm'],
    ['thinking of taking the pills out of the shed', 'self-harm'],
    ['is this bug spray ok to use in my bedroom', 'spray-misuse'],
    ['is weed killer safe to use in the house', 'spray-misuse'],
    ['we have been in this house a week and she ate the berries by the door', 'someone-ate-plant'],
  ])('silence no danger: %s', (words, redFlag) => {
    expect(matchQuestion(index, words).redFlags.map((heard) => heard.redFlag)).toContain(redFlag)
  })
})

// The other way round: words of danger that are said of plants, tools and crops.
// Beside the words of real letters that raised a card over nothing: tasty strawberries, a bunch of tulips, a spike six foot high.
describe('dangers in the words that were drawn in on 2026-11-30', () => {
  it.each([
    ['what have we got in the yard that might poison my puppy, he is being sick', 'pet-ate-plant'],
    ['I saw my toddler nibbling the hydrangea', 'someone-ate-plant'],
    ['saw him chewing on the foxglove', 'someone-ate-plant'],
    ['i gave him my weedkiller to drink by mistake', 'someone-ate-plant'],
    ['my skin is burnt in brown patches from the sap of the hogweed on my arm', 'sap-on-skin'],
    ['the bush is six foot high and a thorn is stuck in my hand', 'injury'],
    ['we had tulip bulbs for tea, grandad ate two', 'someone-ate-plant'],
    ['wilting hogweed roots in butter, is it ok to eat', 'about-to-eat'],
    ['would it be quicker than the dumbcane, I want to end it', 'self-harm'],
    ['large berries on a hedge, tasty I think, can I eat them', 'about-to-eat'],
    ['our mother in law ate the daffodil bulbs', 'someone-ate-plant'],
    ['used banned weedkiller on the veg and we ate it', 'spray-misuse'],
    ['I used the same sprayer for weedkiller and feed and now the tomatoes curl', 'spray-misuse'],
  ])('are heard: %s', (words, redFlag) => {
    expect(matchQuestion(index, words).redFlags.map((heard) => heard.redFlag as string)).toContain(redFlag)
  })

  it.each([
    'I have a dumbcane and its leaves turn brown quicker than it makes new ones',
    'we have June bearing strawberries, they began fine with large tasty berries but now look like buttons',
    'my sprouts were wilting so I dug one up and the roots have white grubs, what pest is it',
    'she has two bunches of tulips that did not bloom and a bunch of daffodils',
    'what do I see nibbling on my lavender and hydrangea, some fat brown thing',
    'I want to dig up roses that have been in my mother in laws garden for 30 years and plant them in mine',
    'it grew into a six foot high white spike in my garden',
    'the privet was sprayed with a growth regulator once but that is banned now',
    'leaves come down, some have burnt brown areas, another maple 100 feet off is fine',
    'can i use the same sprayer for weedkiller and feed',
  ])('and what only sounds like it is not: %s', (words) => {
    expect(matchQuestion(index, words).redFlags.filter(({ level }) => level === 'emergency').map((heard) => heard.redFlag as string)).toEqual([])
  })
})

describe('words of danger in a plant question', () => {
  it.each(PLANT_TALK)('raise no emergency: %s', (words) => {
    expect(matchQuestion(index, words).redFlags.filter(({ level }) => level === 'emergency')).toEqual([])
  })
})

describe('somebody who may hurt himself', () => {
  it.each([
    'I think my son wants to hurt himself, he keeps asking about yew',
    'she said she would hurt herself if the garden goes',
    'my brother talks of harming himself since the nursery closed',
    'I want to poison myself, which of the berries would do it',
    'I have been meaning to poison myself for a while now',
    'which weed killer is strongest, and is it quick, it is not for weeds really',
    'my boys would do better on the insurance than they do with me',
    'she has been hurting her arms, no, I have been hurting my arms again, can the tomatoes be used',
    'my friend says she is done with everything and is asking about my monkshood',
    'my son fell out with us and talks of hurting himself',
    'he climbs the walls and says he will harm himself tonight',
    'most nights I pray not to wake up, what am I meant to plant for that',
    'how many yew needles is too many, for a grown woman of eight stone',
    'I sit in the shed with the doors shut and think how easy it would be, nobody calls on a Sunday',
  ])('is met with a human voice: %s', (words) => {
    expect(matchQuestion(index, words).redFlags.map(({ redFlag }) => redFlag)).toEqual(['self-harm'])
  })

  it.each([
    'my husband took a chain saw to the old ash, I am afraid he might hurt himself or our property',
    'my dad is 80 and goes up the ladder to do the wisteria, he will hurt himself one day',
    'she hurt herself on the thorns of the berberis',
    'I am nearly positive they are blueberries but I also do not want to poison myself, can I eat them',
    'are these chanterelles, I am scared of poisoning myself',
    'I am done with everything in the garden for the year, can I use weed killer now',
    'brambles have been cutting my arms to ribbons, how do I get them out',
    'are we alright on the insurance if the old oak comes down, the car was written off on insurance last time',
    'how easy it would be to grow dahlias on my own allotment if nobody calls',
    'would the old bough hold me, I want to hang a hammock for the grandchildren',
    'the lawn hasnt been right since I put weed killer on it',
    'I bought a weed killer for the drive, is it quick?',
    'I am so tired of bindweed, how much weed killer do I need',
    'I have had enough of ground elder, which is the strongest weed killer',
    'how easy it would be to prune the hedge on my own',
    "I wonder how easy it'd be to fell it by myself",
    'the hydrangea isnt itself lately, hasnt been right since the yew next door was cut',
    'my maple has not been right for years, I have given his roses away',
    'how much foxglove is too much for a border, I am very tired of deadheading',
    'the limb is heavy, I keep thinking it would come down, would it hold my swing',
    "my friend's husband died in March, I will go and be with her for two weeks, who waters my tomatoes",
    'my dad has not been right since his stroke and has given his greenhouse to me, when do I sow',
    'I am done with it all, the yew hedge is dying again',
    'I mow early and hope not to wake the neighbours',
    'which slug pellets are strongest, and how many for a border',
    'I can see no reason to keep this rose, it looks dead',
    'I lost my wife in May and want to keep her roses as they were, when do I prune',
  ])('is no such thing beside a saw, a ladder or thorns, nor where somebody is careful: %s', (words) => {
    expect(matchQuestion(index, words).redFlags.map(({ redFlag }) => redFlag)).not.toContain('self-harm')
  })
})
