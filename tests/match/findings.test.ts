import { describe, expect, it } from 'vitest'
import { buildMatchIndex, findingsFor, matchQuestion } from '../../src/match/index.js'
import { wholeGuide } from '../whole-guide.js'

const guide = await wholeGuide()
const index = buildMatchIndex(guide)
const heard = (words: string): Record<string, string> => Object.fromEntries(matchQuestion(index, words).findings.map(({ check, answer }) => [check, answer]))

describe('answers that the words already give', () => {
  it.each([
    ['white powder on the leaves of my rose', 'leaf-coating', 'white powder that rubs off'],
    ['my roses have white powder on the leaves', 'leaf-coating', 'white powder that rubs off'],
    ['lettuce gone to seed', 'lettuce-middle', 'growing up into a tall stalk'],
    ['holes in my hosta leaves and silver trails on the path', 'slime-trails', 'yes'],
    ['dog urine on the lawn', 'lawn-dog', 'yes'],
  ])('hears %s', (words, check, answer) => {
    expect(heard(words)[check]).toBe(answer)
  })

  it.each([
    ['my hosta has holes, no slime trails', 'slime-trails', 'no'],
    ['there is no white powder on the leaves of my rose', 'leaf-coating', undefined],
    ['should I worry about white powder on the leaves of my rose', 'leaf-coating', undefined],
    ['last year white powder on the leaves of my rose, this year it looks bare', 'leaf-coating', undefined],
  ])('takes no denied, feared or former answer for a stated one: %s', (words, check, answer) => {
    expect(heard(words)[check]).toBe(answer)
  })

  it('leaves a check open when two of its answers are said', () => {
    expect(heard('the bottom leaves of my tomato have rings like a target, others have thick black spots like tar')['leaf-spots']).toBeUndefined()
  })

  it.each([
    ['my lettuce wilted, the roots have white waxy powder on them', 'roots', 'firm and pale'],
    ['my tomato hangs down. cut the stem at the bottom and its brown streaky', 'tomato-fruit', 'flat dark patch at the bottom end'],
    ['tomato smells strong when you rub the leaf, little yellow flowers', 'leaf-change', 'yellow or pale'],
  ])('joins no words across a clause, and gives no colour to the wrong thing: %s', (words, check, answer) => {
    expect(heard(words)[check]).not.toBe(answer)
  })

  it.each([
    ['every flower of my clematis has ragged holes', 'leaf-holes', undefined],
    ['the clematis leaves have ragged holes', 'leaf-holes', 'ragged holes of all sizes'],
    ['viburnum no flowers, cut in autumn', 'season-begun', undefined],
    ['rusty brown dust on the back of plum leaves in autumn', 'season-begun', 'autumn, as nights turn cold'],
    ['husks ripped open on the sweet corn, two days before I was going to pick', 'how-fast', undefined],
    ['spuds left in the ground, holes in near all of them', 'others-affected', undefined],
    ['little bugs under the chilli leaves. sticky windowsill too', 'leaf-coating', undefined],
    ['cracked potatoes. it was bone dry then we had a deluge', 'soil-feel', undefined],
    ['rhubarb mosaic?', 'rhubarb-leaf-marks', undefined],
    ['the raspberry leaves got a fine mottling', 'raspberry-leaf-look', undefined],
  ])('hears no answer of another part, another time, another sentence or a mere guess: %s', (words, check, answer) => {
    expect(heard(words)[check]).toBe(answer)
  })

  it.each([
    ['looks like white powder on the rose leaves but it isn\'t', 'leaf-coating'],
    ['are those fine webs on my tomato?', 'leaf-underside'],
    ['two summers ago the rose had sticky leaves', 'leaf-coating'],
    ['the rose beside it has white powder on the leaves but this one only has holes', 'leaf-coating'],
    ['the leaves were sticky but that has gone now, now rose leaves drop', 'leaf-coating'],
    ['I have looked for caterpillars on the rose and found none', 'insects-seen'],
    ['i cant find any greenfly, rose leaves sticky', 'insects-seen'],
    ['I\'ve ruled out greenfly on the rose', 'insects-seen'],
    ['i read that roses get white powder on the leaves', 'leaf-change'],
    ['does the rose get black spots on the leaves every year?', 'leaf-change'],
    ['in case of greenfly on my rose, what do I spray', 'insects-seen'],
    ['someone told me to look for fine webs on my cucumber', 'leaf-underside'],
    ['sticky leaves maybe on the rose', 'leaf-coating'],
    ['rose with hardly any black spots on the leaves', 'leaf-change'],
    ['potatoes in bags wilt every afternoon, perk up overnight', 'how-fast'],
    ['New rhubarb planted in the autumn, spindly sticks', 'season-begun'],
    ['tiny purple spots on holly leaf', 'leaf-holes'],
  ])('hears no answer that is doubted, ruled out, over, another plant\'s or only looked for: %s', (words, check) => {
    expect(heard(words)[check]).toBeUndefined()
  })

  it.each([
    ['my mum\'s rose has white powder on the leaves', 'leaf-coating', 'white powder that rubs off'],
    ['apart from yellow leaves the tomato is fine', 'leaf-change', 'yellow or pale'],
    ['rose planted last year. sticky leaves', 'leaf-coating', 'sticky and shiny'],
    ['can you help, my rose leaves are sticky', 'leaf-coating', 'sticky and shiny'],
    ['looks like white powder on the rose leaves', 'leaf-coating', 'white powder that rubs off'],
    ['basil leaves went black overnight', 'how-fast', 'overnight or in a day or two'],
  ])('still hears what is told beside such words: %s', (words, check, answer) => {
    expect(heard(words)[check]).toBe(answer)
  })

  it('leaves a check that asks for the chief change open where the words tell of two', () => {
    expect(heard('my rose leaves are yellow')['leaf-change']).toBe('yellow or pale')
    expect(heard('my rose leaves are yellow and they have gone limp')['leaf-change']).toBeUndefined()
  })

  it('answers only checks of the plant in question', () => {
    const checksOf = (host: string): ReadonlySet<number> => new Set(guide.hosts.find(({ id }) => id === host)?.checks ?? [])
    for (const { check } of findingsFor(index, 'white powder on the leaves, molehills and mushrooms', 'lawn')) {
      expect(checksOf('lawn').has(guide.checkNumbers.get(check) ?? -1)).toBe(true)
    }
  })

  it('fills in nothing beside an emergency', () => {
    expect(matchQuestion(index, 'my toddler ate a mushroom off the lawn').findings).toEqual([])
  })

  it('quotes the words that said it', () => {
    const words = 'My ROSE: White, powder… on the leaves!'
    for (const { words: quoted } of matchQuestion(index, words).findings) {
      for (const { text, at } of quoted) expect(words.slice(at, at + text.length)).toBe(text)
    }
  })
})
