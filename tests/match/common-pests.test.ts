import { describe, expect, it } from 'vitest'
import type { Host } from '../../src/guide/index.js'
import { buildMatchIndex, matchQuestion } from '../../src/match/index.js'
import { SUBJECTS } from '../../src/match/subjects.js'
import { UNKNOWN_PLANT } from '../../src/match/hosts.js'
import { wholeGuide } from '../whole-guide.js'

const guide = await wholeGuide()
const index = buildMatchIndex(guide)

/** Pests and marks that many plants share, by the end of their problem's id, and how people name them. Common practice, no source. */
const NAMED: readonly (readonly [RegExp, readonly string[]])[] = [
  [/powdery-mildew$/u, ['there is mildew on my X', 'my X has white stuff on the leaves']],
  [/^(?:general-|tree-)?aphids$/u, ['aphids all over my X', 'little green bugs on my X']],
  [/slugs(?:-and-snails)?$/u, ['slugs are eating my X']],
  [/spider-mites$/u, ['spider mites on my X', 'fine webs on my X']],
  [/(?:soft-|olive-|houseplant-)scale$/u, ['scale insects on my X']],
  [/mealybugs$/u, ['mealybugs on my X', 'white cottony bugs on my X']],
  [/^japanese-beetle$/u, ['japanese beetles are eating my X']],
  [/^browsing-on-shrubs$/u, ['deer are eating my X', 'rabbits chewed my X in winter']],
  [/^birds-eat-fruit$/u, ['birds eat all the fruit on my X', 'robins pluck the fruit from my X']],
  [/^lichens-on-bark$/u, ['lichen on the bark of my X', 'green crusty growth on the branches of my X']],
  [/whitefly$/u, ['whitefly on my X']],
  [/caterpillars$/u, ['caterpillars are eating my X']],
  [/^bracket-decay$/u, ['big bracket fungus on the trunk of my X']],
  [/leaf-miner$/u, ['squiggly lines in the leaves of my X']],
  [/^weed-killer-drift$/u, ['weed killer drifted onto my X']],
]

const AMONG_THREE: ReadonlySet<number> = new Set([0, 1, 2])

/** How a plant is asked about: by its id in plain words where it is called so, and a tree of many plants by the first of them. */
function saidAs(host: Host): string {
  const plain = host.id.replaceAll('-', ' ')
  return host.called.includes(plain) ? plain : host.called[0] ?? plain
}

/** Where the first complaint of this plant stands that may lead to the problem; -1 where none does. */
function placeOf(words: string, host: string, problem: string): number {
  return matchQuestion(index, words).entries.findIndex((entry) => entry.host === host && entry.problems.some((id) => id === problem))
}

describe('a common pest, named plainly', () => {
  const plants = guide.hosts.filter(({ id }) => id !== UNKNOWN_PLANT && !SUBJECTS.has(id))

  it.each(NAMED)('leads to its problem among the first three, on every plant that has it: %s', (ending, sayings) => {
    const asked = plants.flatMap((host) => [...host.problems]
      .map((number) => guide.problems[number]?.id ?? '')
      .filter((problem) => ending.test(problem))
      .flatMap((problem) => sayings.map((saying) => ({ words: saying.replace('X', saidAs(host)), host: host.id, problem }))))
    expect(asked.length).toBeGreaterThan(0)
    expect(asked.filter(({ words, host, problem }) => !AMONG_THREE.has(placeOf(words, host, problem))).map(({ words }) => words)).toEqual([])
  })
})
