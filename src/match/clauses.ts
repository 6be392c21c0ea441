import type { Speech } from './languages/speech.js'
import type { Token } from './tokens.js'

/** Tokens from one place to another, both counted. */
export interface Span {
  readonly first: number
  readonly last: number
}

/** True where a full stop or a line's end stands between the words: "on the leaves. Sticky windowsill". */
export function isParted(words: string, tokens: readonly Token[], { first, last }: Span): boolean {
  for (let place = first; place < last; place += 1) if (SENTENCE_END.test(words.slice(tokens[place]?.end, tokens[place + 1]?.at))) return true
  return false
}

/** The token that ends the sentence of another. */
export function sentenceEnd(words: string, tokens: readonly Token[], last: number): number {
  let end = last
  while (end < tokens.length - 1 && !SENTENCE_END.test(words.slice(tokens[end]?.end, tokens[end + 1]?.at))) end += 1
  return end
}

/** The token that begins the sentence of another. */
export function sentenceStart(words: string, tokens: readonly Token[], first: number): number {
  let start = first
  while (start > 0 && !SENTENCE_END.test(words.slice(tokens[start - 1]?.end, tokens[start]?.at))) start -= 1
  return start
}

/** The clause in which words stand: as far as commas, stops and joining words reach. */
export function clauseAround({ answers: { clauseWords } }: Speech, words: string, tokens: readonly Token[], { first, last }: Span): Span {
  const isEnd = (place: number): boolean => CLAUSE_END.test(words.slice(tokens[place]?.end, tokens[place + 1]?.at))
  let [from, to] = [first, last]
  while (from > 0 && !isEnd(from - 1) && !clauseWords.has(tokens[from - 1]?.text ?? '')) from -= 1
  while (to < tokens.length - 1 && !isEnd(to) && !clauseWords.has(tokens[to + 1]?.text ?? '')) to += 1
  return { first: from, last: to }
}

/** What ends a sentence, and what ends a clause, between two words. */
export const SENTENCE_END = /[.;!?\n]/u
export const CLAUSE_END = /[,.;:!?()\n]/u
