import type { EntryPhrases } from './entry-phrases.js'
import type { Guide, Problem } from '../guide/index.js'
import { type LetterEars, letterSigns } from './letter-signs.js'
import type { LetterSign } from './letter-weights.js'
import { firstFrom } from './rising.js'
import { WEIGHTS } from './score.js'
import { tokenize } from './tokens.js'

/**
 * All that the guide says of each problem in words, as one text: its name, cause and sentence, its advice, the phrases that
 * lead to it, the words by which its signs are told, and the worked cases that ended in it. How likely such a text makes a
 * letter tells which problem the letter is about, from many faint words where no phrase and no single case has them all
 * (query likelihood: Ponte and Croft, A language modeling approach to information retrieval, SIGIR 1998; smoothed with all
 * texts after Jelinek and Mercer, as in Zhai and Lafferty, A study of smoothing methods for language models, ACM
 * Transactions on Information Systems 22, 2004; both from memory).
 */
export interface ProblemTexts {
  /** Sign to the problems whose text has it, by rising number, how often, and what it gains them; `usual`: its share in the mean of all texts. */
  readonly postings: ReadonlyMap<string, { readonly problems: Int32Array; readonly counts: Float64Array; readonly gains: Float64Array; readonly usual: number }>
  /** Sum of the counts of each problem's text. */
  readonly lengths: Float64Array
  /** Signs of each worked case that ended in a problem, so that a case which is played again can be left out. */
  readonly cases: ReadonlyMap<string, WorkedCase>
  /** Room to reckon in, by problem; empty between questions. */
  readonly placeOf: Int32Array
}

/** Signs by number, each once, and how often the text of a problem has each. */
interface ProblemText {
  readonly signs: readonly number[]
  readonly counts: readonly number[]
}

interface WorkedCase {
  readonly problem: number
  readonly signs: ReadonlySet<string>
}

/** Gathers the text of every problem of a guide. */
export function buildProblemTexts(guide: Guide, ears: LetterEars, phrases: EntryPhrases): ProblemTexts {
  const known = new Map<string, readonly number[]>()
  const numbers = new Map<string, number>()
  const names: string[] = []
  const numberOf = (sign: string): number => {
    const so = numbers.get(sign)
    if (so !== undefined) return so
    numbers.set(sign, names.length)
    return names.push(sign) - 1
  }
  const signsOf = (text: string): readonly number[] => {
    const so = known.get(text)
    if (so !== undefined) return so
    const tokens = tokenize(text)
    const signs = letterSigns(ears, tokens, tokens).map(({ name }) => numberOf(name))
    known.set(text, signs)
    return signs
  }
  const phrasesOf = new Map<number, { readonly text: string; readonly share: number }[]>()
  for (const { node, text } of phrases.phrases) {
    const { own = [], reached = [] } = phrases.nodes[node] ?? {}
    const ends = own.length > 0 ? own : reached
    if (ends.length <= MOST_ENDS) for (const problem of ends) listedAt(phrasesOf, problem).push({ text, share: 1 / ends.length })
  }
  const cases = new Map(guide.casebook.flatMap(({ id, words, ends }) => (ends.kind === 'problem' ? [[id as string, { problem: ends.problem, signs: new Set(signsOf(words).map((sign) => names[sign] ?? '')) }] as const] : [])))
  const casesOf = new Map<number, ReadonlySet<number>[]>()
  for (const { words, ends } of guide.casebook) if (ends.kind === 'problem') listedAt(casesOf, ends.problem).push(new Set(signsOf(words)))
  // One text at a time: those of thousands of trees together would fill the memory.
  const counts: number[] = []
  const textOf = (problem: Problem): ProblemText => {
    const signs: number[] = []
    const add = (of: Iterable<number>, each: number): void => {
      for (const sign of of) {
        const so = counts[sign] ?? 0
        if (so === 0) signs.push(sign)
        counts[sign] = so + each
      }
    }
    for (const written of writtenOf(problem)) add(signsOf(written), 1)
    for (const [said, share] of toldOf(guide, problem)) add(signsOf(said), share / Math.max(1, signsOf(said).length))
    for (const { text: phrase, share } of phrasesOf.get(problem.number) ?? []) add(signsOf(phrase), share)
    for (const said of casesOf.get(problem.number) ?? []) add(said, 1)
    const text = { signs, counts: signs.map((sign) => counts[sign] ?? 0) }
    for (const sign of signs) counts[sign] = 0
    return text
  }
  return { cases, ...gathered(guide.problems, textOf, names) }
}

function listedAt<Item>(lists: Map<number, Item[]>, number: number): Item[] {
  const so = lists.get(number)
  if (so !== undefined) return so
  const fresh: Item[] = []
  lists.set(number, fresh)
  return fresh
}

/**
 * How much better each problem's text foretells the signs of a letter than all texts together do, in natural log odds summed
 * over the signs, shared so that a long letter says no more than a short one; 0 or more.
 * @param problems numbers of those that are asked about
 * @param except id of a worked case that is left out: a case that is played again must not hear itself
 */
export function likelinessOf(texts: ProblemTexts, signs: readonly LetterSign[], problems: ReadonlySet<number>, except: string | null): ReadonlyMap<number, number> {
  const left = except === null ? undefined : texts.cases.get(except)
  const asked = Int32Array.from(problems)
  const sums = left === undefined ? sumsOf(texts, signs, asked) : sumsWithout(texts, signs, asked, left)
  const shared = 1 / Math.sqrt(Math.max(1, signs.length))
  return new Map(Array.from(asked, (problem, at) => [problem, (sums[at] ?? 0) * shared]))
}

/** What the signs gain each problem that is asked about. */
function sumsOf({ postings, placeOf }: ProblemTexts, signs: readonly LetterSign[], asked: Int32Array): Float64Array {
  const sums = new Float64Array(asked.length)
  asked.forEach((problem, place) => { placeOf[problem] = place + 1 })
  for (const { name } of signs) {
    const list = postings.get(name)
    if (list === undefined) continue
    // A list is read through where that is less work than looking each problem up in it: a guide may have thousands of trees.
    if (list.problems.length <= asked.length * READ_THROUGH) {
      for (let at = 0; at < list.problems.length; at += 1) {
        const place = (placeOf[list.problems[at] ?? 0] ?? 0) - 1
        if (place >= 0) sums[place] = (sums[place] ?? 0) + (list.gains[at] ?? 0)
      }
    } else {
      for (let place = 0; place < asked.length; place += 1) sums[place] = (sums[place] ?? 0) + (list.gains[placeIn(list.problems, asked[place] ?? 0)] ?? 0)
    }
  }
  asked.forEach((problem) => { placeOf[problem] = 0 })
  return sums
}

/** The same as if one worked case had never been written, reckoned anew. */
function sumsWithout({ postings, lengths }: ProblemTexts, signs: readonly LetterSign[], asked: Int32Array, { problem: own, signs: told }: WorkedCase): Float64Array {
  const length = lengths[own] ?? 0
  const lengthLeft = length - told.size
  const sums = new Float64Array(asked.length)
  for (const { name } of signs) {
    const list = postings.get(name)
    if (list === undefined) continue
    const count = list.counts[placeIn(list.problems, own)] ?? 0
    const share = lengthLeft <= 0 ? 0 : Math.max(0, count - (told.has(name) ? 1 : 0)) / lengthLeft
    const usual = list.usual - (count / Math.max(1, length) - share) / lengths.length
    for (const [place, problem] of asked.entries()) {
      const of = problem === own ? share : (list.counts[placeIn(list.problems, problem)] ?? 0) / (lengths[problem] ?? 1)
      if (of > 0) sums[place] = (sums[place] ?? 0) + gainOf(of, usual)
    }
  }
  return sums
}

/** The natural log odds of a sign in one text mixed with all texts against all texts alone. */
function gainOf(own: number, usual: number): number {
  return Math.log1p(WEIGHTS.textsOwn * own / ((1 - WEIGHTS.textsOwn) * usual))
}

/** @param names the signs by number, all known once every text has been read */
function gathered(problems: readonly Problem[], textOf: (problem: Problem) => ProblemText, names: readonly string[]): Omit<ProblemTexts, 'cases'> {
  const lengths = new Float64Array(problems.length)
  const lists: { problems: number[]; counts: number[]; usual: number }[] = []
  for (const problem of problems) {
    const text = textOf(problem)
    let length = 0
    for (const count of text.counts) length += count
    lengths[problem.number] = length
    for (const [at, sign] of text.signs.entries()) {
      const count = text.counts[at] ?? 0
      const list = lists[sign] ??= { problems: [], counts: [], usual: 0 }
      list.problems.push(problem.number)
      list.counts.push(count)
      list.usual += count / length / problems.length
    }
  }
  return {
    lengths, placeOf: new Int32Array(problems.length),
    postings: new Map(lists.flatMap(({ problems: having, counts, usual }, sign) => [[names[sign] ?? '', {
      usual, problems: Int32Array.from(having), counts: Float64Array.from(counts),
      gains: Float64Array.from(counts, (count, at) => gainOf(count / (lengths[having[at] ?? 0] ?? 1), usual)),
    }] as const])),
  }
}

function writtenOf({ name, agent, what, advice }: Problem): readonly string[] {
  return [name, agent ?? '', what, advice.bottomLine, ...advice.doNow]
}

/** The words in which the answers are said that this problem often gives, each with how often it does. */
function toldOf(guide: Guide, { signs }: Problem): readonly (readonly [string, number])[] {
  return signs.flatMap(({ check, shares }) => (guide.checks[check]?.answers ?? []).flatMap(({ saidAs }, answer) => {
    const share = shares[answer] ?? 0
    return share < WEIGHTS.signLeastShare ? [] : saidAs.map((said) => [said, share] as const)
  }))
}

/** Where a number stands in a rising list, or -1. */
function placeIn(rising: Int32Array, number: number): number {
  const at = firstFrom(rising, number)
  return rising[at] === number ? at : -1
}

/** So many entries of a list are read in the time of one look-up. */
const READ_THROUGH = 12
/** A phrase from which more problems of its plant can be reached says little of any of them. */
const MOST_ENDS = 6
