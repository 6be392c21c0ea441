import { CLAUSE_END, clauseAround, SENTENCE_END, sentenceEnd, sentenceStart, type Span } from './clauses.js'
import type { Speech } from './languages/speech.js'
import type { Term } from './meanings.js'
import { partsIn } from './parts-of-plants.js'
import type { Token } from './tokens.js'

/** As much of a saying as tells whether it is meant where it was heard. */
interface Saying {
  readonly words: readonly string[]
  readonly stems: readonly string[]
  readonly terms: readonly Term[]
  readonly parts: ReadonlySet<string>
}

/** False where the words are denied, only asked about, or told of another year, another part or something the asker did. */
export function isMeant(speech: Speech, said: Saying, words: string, { first, last }: Span, tokens: readonly Token[], terms: readonly Term[]): boolean {
  const { answers } = speech
  const denied = terms.some((term) => term.first >= first && term.last <= last && term.negated
    && !said.terms.some((wanted) => wanted.key === term.key && wanted.negated))
  const clause = clauseAround(speech, words, tokens, { first, last })
  if (denied || isOfAnotherPart(speech, said, tokens, clause) || isOnlyNamed(said, words, tokens, { first, last }, clause)) return false
  const textOf = (from: number, to: number): string => tokens.slice(Math.max(0, from), to).map(({ text }) => text).join(' ')
  const start = sentenceStart(words, tokens, first)
  const before = textOf(start, first)
  if (isAsked(speech, words, tokens, first) || answers.question.test(textOf(first - QUESTION_WITHIN, first)) || answers.askedOfAll.test(textOf(start, last + 1))) return false
  if (answers.somebodyElses.test(textOf(first - QUESTION_WITHIN, last + QUESTION_WITHIN)) || answers.besides.test(textOf(clause.first, first))) return false
  if (answers.over.test(before) || isTakenBack(speech, words, tokens, { first, last }, before)) return false
  // "Two days before I picked it", "it was bone dry, then it poured": over, or nothing about the start.
  const after = tokens[last + 1]?.text ?? ''
  if (answers.beforeThat.has(after) || (answers.noLonger.has(after) && answers.once.test(textOf(first - 3, first)))) return false
  if (answers.times.test(textOf(first, last + 1)) && isTimeOfSomethingElse(speech, said, tokens, { first, last }, clause)) return false
  const told = textOf(Math.max(start, Math.min(clause.first, first - YEAR_WITHIN)), Math.min(last + YEAR_WITHIN, sentenceEnd(words, tokens, last) + 1))
  return said.stems.includes(answers.ofAnotherYear) || !answers.anotherYear.test(told)
}

/** True for a time that tells when the asker did something or when the plant is well: "planted in autumn", "perk up overnight". */
function isTimeOfSomethingElse({ answers }: Speech, said: Saying, tokens: readonly Token[], { first, last }: Span, clause: Span): boolean {
  if (said.words.some((word) => answers.acts.has(word))) return false
  const near = tokens.slice(Math.max(clause.first, first - ACT_WITHIN), Math.min(clause.last, last + ACT_WITHIN) + 1)
  return near.some(({ text }) => answers.acts.has(text) || answers.recovering.has(text))
}

/** True after a word of asking, fearing, guessing or hearsay, as far back as a comma or a stop. */
function isAsked({ answers }: Speech, words: string, tokens: readonly Token[], first: number): boolean {
  for (let place = first - 1; place >= Math.max(0, first - ASKED_WITHIN); place -= 1) {
    if (first - place > ASKED_ACROSS && CLAUSE_END.test(words.slice(tokens[place]?.end, tokens[place + 1]?.at))) return false
    if (answers.asking.has(tokens[place]?.text ?? '')) return true
  }
  return false
}

/** True for what the next words take back: "looks like white powder but it isn't", "were sticky but that has gone now". */
function isTakenBack({ answers }: Speech, words: string, tokens: readonly Token[], { first, last }: Span, before: string): boolean {
  const next: string[] = []
  for (let place = last + 1; place < tokens.length && next.length < TAKEN_BACK_WITHIN; place += 1) {
    const between = words.slice(tokens[place - 1]?.end, tokens[place]?.at)
    if (SENTENCE_END.test(between)) break
    next.push(`${CLAUSE_END.test(between) ? ', ' : ''}${tokens[place]?.text ?? ''}`)
  }
  const after = `${next.join(' ')} ,`
  return answers.takenBack.test(after) || (answers.likened.test(`${before} ${tokens[first]?.text ?? ''}`) && answers.unlikened.test(after))
}

/** True where the check looks at one part and the clause names only others: "every flower has ragged holes". */
function isOfAnotherPart(speech: Speech, { parts }: Saying, tokens: readonly Token[], { first, last }: Span): boolean {
  if (parts.size === 0) return false
  const named = partsIn(speech, tokens.slice(first, last + 1))
  return named.size > 0 && ![...named].some((part) => parts.has(part))
}

/** True for one word put as a guess, with hardly more than the plant beside it: "rhubarb mosaic?". */
function isOnlyNamed(said: Saying, words: string, tokens: readonly Token[], span: Span, clause: Span): boolean {
  return said.words.length === 1 && clause.last - clause.first < FEW_WORDS && /^\s*\?/u.test(words.slice(tokens[span.last]?.end))
}

const ASKED_WITHIN = 7
/** Words of asking so near are minded across a comma. */
const ASKED_ACROSS = 4
const QUESTION_WITHIN = 3
/** A gardener's act this near to a time is what the time is told of. */
const ACT_WITHIN = 3
const TAKEN_BACK_WITHIN = 9
const YEAR_WITHIN = 4
/** A clause of so few words that asks is a guess at a name. */
const FEW_WORDS = 3
