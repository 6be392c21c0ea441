import type { Guide, Problem } from '../guide/index.js'
import { type Meanings, readTerms, type Term } from './meanings.js'
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
  const lists = new Map<string, { readonly problems: number[]; readonly strengths: number[] }>()
  const words = new Set<string>()
  // Many problems share a sign, and so its words.
  const known = new Map<string, readonly Term[]>()
  const termsOf = (text: string): readonly Term[] => {
    const so = known.get(text)
    if (so !== undefined) return so
    const tokens = tokenize(text)
    for (const { text: word } of tokens) if (word.length > 4) words.add(word)
    const terms = readTerms(meanings, tokens)
    known.set(text, terms)
    return terms
  }
  for (const problem of guide.problems) {
    const add = (key: string, strength: number): void => {
      let list = lists.get(key)
      if (list === undefined) lists.set(key, list = { problems: [], strengths: [] })
      const last = list.problems.length - 1
      if (list.problems[last] === problem.number) list.strengths[last] = Math.max(list.strengths[last] ?? 0, strength)
      else {
        list.problems.push(problem.number)
        list.strengths.push(strength)
      }
    }
    for (const [text, strength] of textsOf(guide, problem)) {
      for (const { key, exact } of termsOf(text)) {
        add(key, strength)
        if (strength === WEIGHTS.problemName) add(exact, strength)
      }
    }
  }
  const count = guide.problems.length
  return {
    words, count,
    postings: new Map([...lists].map(([key, { problems, strengths }]) => [key, {
      problems: Int32Array.from(problems), strengths: Float64Array.from(strengths), tells: Math.log(1 + count / problems.length),
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

