import type { Guide, Problem } from '../guide/index.js'
import { type Meanings, readTerms } from './meanings.js'
import { WEIGHTS } from './score.js'
import { tokenize } from './tokens.js'

/**
 * The words by which problems can be known: their names, their causes, and what their profiles say is seen. People name
 * the problem ("is it blight?") or tell a sign in the words of an answer, where no entry phrase says so.
 */
export interface ProblemWords {
  /** Key to the problems that have it, with how strongly: 1 for a name, less for a sign. */
  readonly postings: ReadonlyMap<string, { readonly problems: Int32Array; readonly strengths: Float64Array; readonly tells: number }>
  readonly words: ReadonlySet<string>
  /** How many problems the guide has. */
  readonly count: number
}

/** Gathers the words of every problem of a guide. */
export function buildProblemWords(guide: Guide, meanings: Meanings): ProblemWords {
  const lists = new Map<string, Map<number, number>>()
  const words = new Set<string>()
  for (const problem of guide.problems) {
    for (const [text, strength] of textsOf(guide, problem)) {
      const tokens = tokenize(text)
      for (const { text: word } of tokens) if (word.length > 4) words.add(word)
      for (const { key, exact } of readTerms(meanings, tokens)) {
        const keys = strength === WEIGHTS.problemName ? [key, exact] : [key]
        for (const each of new Set(keys)) {
          let list = lists.get(each)
          if (list === undefined) lists.set(each, list = new Map())
          list.set(problem.number, Math.max(list.get(problem.number) ?? 0, strength))
        }
      }
    }
  }
  const count = guide.problems.length
  return {
    words, count,
    postings: new Map([...lists].map(([key, list]) => [key, {
      problems: Int32Array.from(list.keys()), strengths: Float64Array.from(list.values()), tells: Math.log(1 + count / list.size),
    }])),
  }
}

function textsOf(guide: Guide, problem: Problem): readonly (readonly [string, number])[] {
  const signs = problem.signs.flatMap(({ check, shares }): (readonly [string, number])[] => {
    const answers = guide.checks[check]?.answers ?? []
    return answers.flatMap(({ label, saidAs }, number): (readonly [string, number])[] => {
      const share = shares[number] ?? 0
      if (share < WEIGHTS.signLeastShare) return []
      const strength = WEIGHTS.problemSign * share
      return [[label, strength], ...saidAs.map((said) => [said, strength] as const)]
    })
  })
  return [[problem.name, WEIGHTS.problemName], [problem.agent ?? '', WEIGHTS.problemName], [problem.what, WEIGHTS.problemWhat], ...signs]
}

