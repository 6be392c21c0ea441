import { beforeAll, describe, expect, it } from 'vitest'
import { buildMatchIndex, matchQuestion, type MatchIndex } from '../../src/match/index.js'
import { wholeGuide } from './small-guide.js'

let index: MatchIndex
beforeAll(async () => { index = buildMatchIndex(await wholeGuide()) })

const firstThree = (words: string): string[] => matchQuestion(index, words).entries.slice(0, 3).map(({ host }) => host)

/** Our own sentences, in the manner of callers: the job that is asked for, and the plant that it is for. */
const ASKED: readonly (readonly [string, string, string | null])[] = [
  ['when do I prune my lilac', 'pruning', 'lilac'],
  ['My forsythia needs pruning, is now the right time?', 'pruning', null],
  ['how hard can i cut back a buddleia', 'pruning', null],
  ['should I deadhead the daffs now theyve gone over', 'pruning', null],
  ['When should I trim my beech hedge', 'pruning', 'beech'],
  ['old plum tree, whats the right time of year to prune it', 'pruning', 'plum'],
  ['do i cut my raspberry canes to the ground', 'pruning', 'raspberry'],
  ['can I move a peony in spring', 'planting', 'peony'],
  ['is october too late to transplant a hydrangea', 'planting', 'hydrangea'],
  ['when can i plant my tomatoes outside', 'planting', 'tomato'],
  ['my peace lily is pot bound when should I repot it', 'planting', 'peace-lily'],
  ['how do I propagate rosemary', 'new-plants', 'rosemary'],
  ['can you take cuttings of fuchsia in autumn', 'new-plants', 'fuchsia'],
  ['how do I save seed from my runner beans for next year', 'new-plants', 'bean'],
  ['When should I sow carrots?', 'new-plants', 'carrot'],
  ['how do i overwinter my geraniums', 'winter-care', 'geranium'],
  ['do I have to lift my dahlia tubers for the winter', 'winter-care', 'dahlia'],
  ['should I cover my roses before winter', 'winter-care', 'rose'],
  ['how often should I water a newly planted maple', 'feeding', 'maple'],
  ['what should I feed my citrus and when', 'feeding', 'citrus'],
  ['Can I use fresh horse manure on the vegetable plot?', 'feeding', null],
  ['what can I plant under a big maple where nothing grows', 'choosing', null],
  ['when are my pumpkins ready to pick and how do I store them', 'choosing', 'squash'],
]

/** A job is told of, and what is asked is what went wrong. */
const TROUBLE = [
  'pruned my lilac last autumn and this year there are no flowers',
  'I moved my peony two years ago and it has not flowered since',
  'repotted my peace lily and now all the leaves are drooping',
  'leaves curling on my tomatoes, I feed them every week',
  'white powder all over the rose leaves after I cut it back',
  'the hedge I planted in spring has brown patches',
  'I mulched the hostas and now something eats big holes in them',
  'sowed carrots twice and nothing has come up',
  'small flies coming out of the compost of my houseplants',
  'my apple tree was never pruned and the bark is splitting',
]

describe('a question after a job', () => {
  it.each(ASKED)('is heard in "%s"', (words, job, plant) => {
    const jobs = job === 'pruning' ? ['pruning', 'fruit-pruning'] : [job]
    expect(firstThree(words).some((host) => jobs.includes(host)), firstThree(words).join(', ')).toBe(true)
    if (plant !== null) expect(matchQuestion(index, words).hosts[0]?.host).toBe(plant)
  })

  it.each(ASKED)('never takes the job for the plant in "%s"', (words) => {
    expect(matchQuestion(index, words).hosts.map(({ host }) => host).filter((host) => index.jobs.hosts.has(host))).toEqual([])
  })

  it.each(TROUBLE)('is not heard before the trouble in "%s"', (words) => {
    const [first] = firstThree(words)
    expect(first).toBeDefined()
    expect(index.jobs.hosts.has(first ?? ''), first).toBe(false)
  })

  it('knows the jobs of the guide by the kind of their problems', () => {
    expect([...index.jobs.hosts].sort()).toEqual(['choosing', 'feeding', 'fruit-pruning', 'new-plants', 'planting', 'pruning', 'soil-work', 'winter-care'])
  })
})
