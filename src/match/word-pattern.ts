import { isPassedOver, PASSING_WORDS } from '../guide/index.js'
import { tokenize, type Token } from './tokens.js'

/**
 * A group word as an author writes it: one word, several words in a row, or words with choices.
 * `slugs/snails ate/chewed` stands for four phrases. Each step lists the choices at that place.
 */
export type WordPattern = readonly ReadonlySet<string>[]

/** Where a pattern was heard: first and last token, both included. */
export interface Span {
  readonly first: number
  readonly last: number
}

/**
 * Many groups of word patterns, made ready to be looked for in one walk over a text. A pattern that stands in several
 * groups is looked for once.
 */
export interface PatternIndex {
  readonly byFirst: ReadonlyMap<string, readonly SharedPattern[]>
  /** Every word of every pattern, by group number. */
  readonly words: readonly ReadonlySet<string>[]
}

interface SharedPattern {
  readonly pattern: WordPattern
  readonly groups: readonly number[]
}

/**
 * Compiles groups of group words. Words that say nothing ("some", "just") are left out of patterns of several words, or
 * with `fillers` "kept" must be heard as they are written: "all of them" is then not heard in every "them".
 */
export function buildPatternIndex(groups: readonly (readonly string[])[], fillers: 'passed over' | 'kept' = 'passed over'): PatternIndex {
  const shared = new Map<string, { pattern: WordPattern; groups: number[] }>()
  for (const [group, written] of groups.entries()) {
    for (const words of new Set(written)) {
      const so = shared.get(words)
      const pattern = readPattern(words)
      if (so === undefined) shared.set(words, { pattern: fillers === 'kept' ? pattern : withoutFillers(pattern), groups: [group] })
      else so.groups.push(group)
    }
  }
  const byFirst = new Map<string, SharedPattern[]>()
  for (const one of shared.values()) {
    for (const first of one.pattern[0] ?? []) {
      const others = byFirst.get(first)
      if (others === undefined) byFirst.set(first, [one])
      else others.push(one)
    }
  }
  const words = groups.map(() => new Set<string>())
  for (const one of shared.values()) for (const group of one.groups) for (const choices of one.pattern) for (const word of choices) words[group]?.add(word)
  return { byFirst, words }
}

/** Where each group is heard, in order of the first word; groups that are not heard are missing. Fillers between words are passed over. */
export function findGroups(tokens: readonly Token[], { byFirst }: PatternIndex): ReadonlyMap<number, readonly Span[]> {
  const found = new Map<number, Span[]>()
  for (let first = 0; first < tokens.length; first += 1) {
    for (const { pattern, groups } of patternsAt(byFirst, tokens[first])) {
      const last = lastWordOf(pattern, tokens, first)
      if (last === null) continue
      for (const group of groups) {
        const spans = found.get(group)
        const before = spans?.[spans.length - 1]
        if (spans === undefined) found.set(group, [{ first, last }])
        else if (before?.first !== first || before.last !== last) spans.push({ first, last })
      }
    }
  }
  for (const spans of found.values()) spans.sort((a, b) => a.first - b.first || a.last - b.last)
  return found
}

function lastWordOf(pattern: WordPattern, tokens: readonly Token[], first: number): number | null {
  let at = first
  for (const choices of pattern.slice(1)) {
    at += 1
    while (at < tokens.length && PASSING_WORDS.has(textAt(tokens, at)) && !isOneOf(choices, tokens[at])) at += 1
    if (!isOneOf(choices, tokens[at])) return null
  }
  return at
}

/** The patterns that begin with a word, however it may be read. */
function patternsAt(byFirst: PatternIndex['byFirst'], token: Token | undefined): readonly SharedPattern[] {
  const here = byFirst.get(token?.text ?? '') ?? NONE
  if (token?.also === undefined) return here
  return [...new Set([...here, ...token.also.flatMap((word) => byFirst.get(word) ?? NONE)])]
}

function isOneOf(choices: ReadonlySet<string>, token: Token | undefined): boolean {
  return token !== undefined && (choices.has(token.text) || (token.also !== undefined && token.also.some((word) => choices.has(word))))
}

const NONE: readonly SharedPattern[] = []

function readPattern(written: string): WordPattern {
  return written
    .split(/\s+/u)
    .map((step) => new Set(step.split('/').flatMap((choice) => tokenize(choice).map((token) => token.text))))
    .filter((choices) => choices.size > 0)
}

function withoutFillers(steps: WordPattern): WordPattern {
  const kept = steps.filter((choices) => !isPassedOver(choices))
  return kept.length === 0 ? steps : kept
}

function textAt(tokens: readonly Token[], place: number): string {
  return tokens[place]?.text ?? ''
}
