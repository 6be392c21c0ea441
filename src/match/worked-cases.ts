import type { Guide } from '../guide/index.js'
import { type Meanings, readTerms, type Term } from './meanings.js'
import { tokenize } from './tokens.js'

/**
 * The worked cases of the casebook, made ready to be found by what was said in them: an inverted index of the words of
 * each, compared by the cosine of tf-idf vectors (Salton and Buckley, Term-weighting approaches in automatic text
 * retrieval, Information Processing and Management 24, 1988). People tell of one trouble in alike words, so a case whose
 * end is known says what the words of the next one may mean, in ways that no entry phrase foresaw.
 */
export interface CaseEars {
  /** Key to the cases that have it, and its part of each case's vector, which is of length 1. */
  readonly postings: ReadonlyMap<string, { readonly cases: Int32Array; readonly parts: Float64Array; readonly rarity: number }>
  readonly ids: readonly string[]
  /** Number of the problem that each case ended in. */
  readonly ends: Int32Array
  /** How many problems the guide has. */
  readonly problems: number
  /** Room to reckon in; empty between questions. */
  readonly likeness: Float64Array
}

/** Gathers the cases that ended in a problem. */
export function buildCaseEars(guide: Guide, meanings: Meanings): CaseEars {
  const cases = guide.casebook.flatMap(({ id, words, ends }) => (ends.kind === 'problem' ? [{ id, ends: ends.problem, counts: countsOf(readTerms(meanings, tokenize(words))) }] : []))
  const holders = new Map<string, number[]>()
  for (const [number, { counts }] of cases.entries()) {
    for (const key of counts.keys()) {
      const list = holders.get(key)
      if (list === undefined) holders.set(key, [number])
      else list.push(number)
    }
  }
  const rarityOf = (key: string): number => rarity(cases.length, holders.get(key)?.length ?? 0)
  const lengths = cases.map(({ counts }) => Math.hypot(...[...counts].map(([key, count]) => count * rarityOf(key))))
  const partOf = (number: number, key: string): number => (cases[number]?.counts.get(key) ?? 0) * rarityOf(key) / (lengths[number] ?? 1)
  return {
    postings: new Map([...holders].map(([key, list]) => [key, { rarity: rarityOf(key), cases: Int32Array.from(list), parts: Float64Array.from(list, (number) => partOf(number, key)) }])),
    ids: cases.map(({ id }) => id), ends: Int32Array.from(cases, ({ ends }) => ends), problems: guide.problems.length, likeness: new Float64Array(cases.length),
  }
}

/**
 * How like the words are to those of the most alike case of each problem, by the problem's number: 0 to 1.
 * @param except id of a case that is not listened to: a case that is played again must not hear itself
 */
export function likenessToCases({ postings, ids, ends, problems, likeness }: CaseEars, terms: readonly Term[], except: string | null): Float64Array {
  const touched: number[] = []
  let square = 0
  for (const [key, count] of countsOf(terms)) {
    const list = postings.get(key)
    const weight = count * (list?.rarity ?? rarity(ids.length, 0))
    square += weight * weight
    if (list === undefined) continue
    for (let at = 0; at < list.cases.length; at += 1) {
      const number = list.cases[at] ?? 0
      const so = likeness[number] ?? 0
      if (so === 0) touched.push(number)
      likeness[number] = so + weight * (list.parts[at] ?? 0)
    }
  }
  const best = new Float64Array(problems)
  for (const number of touched) {
    const problem = ends[number] ?? 0
    const like = (likeness[number] ?? 0) / Math.sqrt(square)
    if (like > (best[problem] ?? 0) && ids[number] !== except) best[problem] = like
    likeness[number] = 0
  }
  return best
}

/** How strongly each key is said. A word said twice tells more, but not twice as much; what is denied is another thing than what is said. */
function countsOf(terms: readonly Term[]): ReadonlyMap<string, number> {
  const counts = new Map<string, number>()
  for (const { key, negated } of terms) {
    const said = negated ? `not ${key}` : key
    counts.set(said, (counts.get(said) ?? 0) + 1)
  }
  for (const [key, count] of counts) counts.set(key, 1 + Math.log(count))
  return counts
}

/** Inverse document frequency, smoothed so that no word tells nothing. */
function rarity(cases: number, holders: number): number {
  return Math.log((1 + cases) / (1 + holders)) + 1
}
