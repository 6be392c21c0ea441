import { readFile } from 'node:fs/promises'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { z } from 'zod'
import { buildMatchIndex, matchQuestion, subjectIn } from '../../src/match/index.js'
import { subjectShares } from '../../src/match/subjects.js'
import { wholeGuide } from '../whole-guide.js'

const index = buildMatchIndex(await wholeGuide())
const hostOf = (words: string): string | undefined => matchQuestion(index, words).hosts[0]?.host
const ThirdQuestion = z.strictObject({ text: z.string().min(1), host: z.string() })

describe('a question that is about no plant, though one is named in passing', () => {
  it.each([
    ['my soil is like concrete where I grow carrots', 'garden-conditions'],
    ['bugs on the kitchen window sill next to my basil', 'insect-found'],
    ['is lily of the valley poisonous to my dog', 'poison-plant'],
    ['squirrels have stripped bark off the young trees', 'wildlife-damage'],
    ['shiny leaves in threes by the fence, taking over, what is this weed', 'unwanted-plant'],
  ])('is about its subject: %s', (words, host) => {
    expect(hostOf(words)).toBe(host)
  })

  it.each([
    ['little green insects on the rose buds', 'rose'],
    ['the soil is fine but my rose has black spots', 'rose'],
    ['rabbits have eaten the tips of my holly', 'holly'],
    ['my tomatoes split after the heavy rain', 'tomato'],
  ])('is about the plant where the trouble is the plant\'s: %s', (words, host) => {
    expect(hostOf(words)).toBe(host)
  })

  it('takes a denied word for no sign of its subject', () => {
    const has = (words: string): boolean => subjectIn(index, words).features.has('insects')
    expect(has('holes in the leaves, and beetles about')).toBe(true)
    expect(has('holes in the leaves, no beetles about')).toBe(false)
  })

  it('guesses no subject beside an emergency, and none for what is out of scope', () => {
    expect(hostOf('the hens got at slug pellets')).toBeUndefined()
    expect(matchQuestion(index, 'what time do you open the kitchen').outOfScope).toBe(true)
  })
})

describe('the shares of the subjects', () => {
  it('add up to one, and rise with the name and the best complaint of a subject', () => {
    const features = new Map<string, number>()
    const shareOf = (fit: number): number => subjectShares(features, new Map([['a plant', { name: 0, fit: 0.3 }], ['insect-found', { name: 0, fit }]])).get('insect-found') ?? 0
    const shares = [...subjectShares(features, new Map([['a plant', { name: 0, fit: 0.3 }], ['insect-found', { name: 0, fit: 0.4 }]])).values()]
    expect(shares.reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 10)
    expect(shareOf(0.9)).toBeGreaterThan(shareOf(0.1))
  })

  // Worked by hand: two subjects of equal strength share alike (softmax; Bridle 1990).
  it('are even where nothing tells two subjects apart that have no weights', () => {
    const own = { name: 0.5, fit: 0.5 }
    expect([...subjectShares(new Map(), new Map([['one', own], ['other', own]])).values()]).toEqual([0.5, 0.5])
  })
})

describe('the third set, whose weights were fitted to it', async () => {
  const lines = (await readFile(join(import.meta.dirname, 'third-questions/questions.jsonl'), 'utf8')).trim().split('\n')
  const questions = lines.map((line) => ThirdQuestion.parse(JSON.parse(line)))

  it('is heard at least as well as when the weights were fitted', () => {
    const right = questions.filter(({ text, host }) => hostOf(text) === host).length
    expect(right / questions.length).toBeGreaterThan(0.8)
  })
})
