import { describe, expect, it } from 'vitest'
import { buildMatchIndex, matchQuestion } from '../../src/match/index.js'
import { wholeGuide } from '../whole-guide.js'

const index = buildMatchIndex(await wholeGuide())
const hostOf = (words: string): string | undefined => matchQuestion(index, words).hosts[0]?.host

describe('a name of several words', () => {
  it.each([
    ['chrismas cactus dropping buds', 'christmas-cactus'], ['christmass cactus limp', 'christmas-cactus'], ['peice lily drooping', 'peace-lily'],
    ['spyder plant with brown tips', 'spider-plant'], ['horse chesnut leaves brown by july', 'horse-chestnut'], ['cherry laurrel hedge has holes', 'cherry-laurel'],
  ])('wins over the short name in it though a word of it is misspelled: %s', (words, host) => {
    expect(hostOf(words)).toBe(host)
  })

  it('is meant by its last word later on', () => {
    expect(matchQuestion(index, 'my peace lilly has brown tips, the lily is limp').hosts.map(({ host }) => host)).toEqual(['peace-lily'])
    expect(hostOf('xmas cactus from my aunt. the cactus drops its buds')).toBe('christmas-cactus')
  })

  it('is not read into words that are right as they stand', () => {
    expect(hostOf('the lily by the place where we sit has holes')).toBe('lily')
    expect(hostOf('cactus in the house is soft')).toBe('cactus')
  })
})

describe('short names', () => {
  it.each(['a barrow full of leaves', 'chilly spring, nothing grows', 'early in the morning there is a grey film'])('are not heard in other words one letter away: %s', (words) => {
    expect(matchQuestion(index, words).hosts.map(({ host }) => host)).not.toEqual(expect.arrayContaining([expect.stringMatching(/^(?:squash|pepper|potato)$/u)]))
  })

  it.each([
    ['the leaves of my hibiscus come out nearly lemon with green lines', 'hibiscus'], ['our jasmine went beetroot in january', 'jasmine'],
    ['big olive drying up branch by branch, lavender by it is doing the same', 'olive'], ['shoots of the rowan look scorched. neighbours pear is the same', 'rowan'],
    ['no flowers on the cannas, they share the bed with the runner beans', 'canna'], ['beetles have moved on from the roses to the cannas', 'canna'],
  ])('step back when they are a colour or another plant that is told of: %s', (words, host) => {
    expect(hostOf(words)).toBe(host)
  })

  it('step back when they are named for company', () => {
    expect(hostOf('new cucumber leaves are twisted, tomatoes next to it the same')).toBe('cucumber')
    expect(hostOf('tomatoes next to the wall are wilting')).toBe('tomato')
  })

  it('stand for the plants in their bed or garden, where nothing else is named', () => {
    expect(hostOf('pea bed swampy, plants pale yellow and not moving')).toBe('pea')
    expect(matchQuestion(index, 'have you any ideas for keeping deer out of the rose garden').hosts.map(({ host }) => host)).toContain('rose')
  })

  it('are no ash where it came out of a stove', () => {
    expect(matchQuestion(index, 'are oak ashes from the fireplace any good on flowerbeds').hosts.map(({ host }) => host)).not.toEqual(expect.arrayContaining(['ash']))
    expect(hostOf('the ash in the lane has lost its top twigs')).toBe('ash')
  })

  it('give way to a longer name that begins after "my"', () => {
    expect(hostOf('my box elder has brown leaves')).toBe('maple')
    expect(hostOf('my box has brown leaves')).toBe('box')
  })

  it.each(['caragana', 'madagascar palm', 'ixora', 'loropetalum', 'lychee tree'])('without a tree of their own are heard as an unknown plant: %s', (plant) => {
    expect(hostOf(`the leaves of my ${plant} have gone brown`)).toBe('unknown-plant')
  })

  it('step back when an old or a large one only stands near', () => {
    expect(hostOf('the hydrangea by a huge mature maple has limp leaves')).toBe('hydrangea')
  })
})
