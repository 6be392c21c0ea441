import type { CheckId, Guide } from '../guide/index.js'
import { type Meanings, readTerms, type Term } from './meanings.js'
import type { HeardFinding, HeardWords } from './matched.js'
import type { Speech } from './languages/speech.js'
import { quote, tokenize, type Token } from './tokens.js'

/** The words in which answers are already said in a question. */
export interface SaidAnswers {
  readonly speech: Speech
  readonly saids: readonly Said[]
  /** Each stem to the sayings that hold it as their rarest, so that few are looked at. */
  readonly byStem: ReadonlyMap<string, readonly number[]>
  /** Each key likewise, for sayings of several telling words. */
  readonly byKey: ReadonlyMap<string, readonly number[]>
  /** Checks by host number. */
  readonly checksOf: readonly ReadonlySet<number>[]
}

interface Said {
  readonly check: number
  readonly id: CheckId
  readonly answer: string
  readonly stems: readonly string[]
  readonly words: readonly string[]
  readonly terms: readonly Term[]
  /** Parts of a plant that the check looks at, where the saying itself names none: "ragged holes" in a flower are none in a leaf. */
  readonly parts: ReadonlySet<string>
  /** Keys that speak for another answer of a check that asks for the chief one; empty for the rest. */
  readonly rivals: ReadonlySet<string>
}

/** Gathers the `said as` words of every check. */
export function buildSaidAnswers(guide: Guide, meanings: Meanings): SaidAnswers {
  const { speech } = meanings
  const { stem, stopWords, answers: { joining, denying } } = speech
  const saids: Said[] = []
  const plants = new Set(guide.hosts.flatMap(({ called }) => [...spokenKeys(called, meanings)]))
  for (const check of guide.checks) {
    const keysOf = check.answers.map(({ saidAs }) => spokenKeys(saidAs, meanings))
    const asked = partsIn(speech, tokenize(check.ask))
    const looksAt = asked.size > 0 ? asked : partsIn(speech, tokenize(check.how))
    for (const [number, { label, saidAs }] of check.answers.entries()) {
      const own = keysOf[number] ?? new Set<string>()
      const rivals = new Set(check.chief ? keysOf.flatMap((keys) => [...keys].filter((key) => !own.has(key) && !plants.has(key))) : [])
      for (const said of saidAs) {
        const tokens = tokenize(said)
        const kept = tokens.filter(({ text }) => !joining.has(text))
        // "in a day" without its small words would be heard in every "day", and "all of them have it" in every "all them".
        const words = (kept.length < FEWEST_TERMS || kept.every(({ text }) => stopWords.has(text)) ? tokens : kept).map(({ text }) => text)
        if (words.length === 0) continue
        const terms = readTerms(meanings, tokens)
        saids.push({
          rivals, check: check.number, id: check.id, answer: label, words, stems: words.map(stem),
          parts: partsIn(speech, tokens).size > 0 ? NO_PARTS : looksAt,
          // With a small word in it that tells ("new leaves"), its telling words alone would say too little.
          terms: terms.length === words.filter((word) => !denying.has(word)).length ? terms : [],
        })
      }
    }
  }
  const timesOfStem = countOf(saids.flatMap(({ stems }) => stems))
  const timesOfKey = countOf(saids.flatMap(({ terms }) => terms.map(({ key }) => key)))
  return {
    speech, saids,
    byStem: rarestFirst(saids.map(({ stems }) => stems), timesOfStem),
    byKey: rarestFirst(saids.map(({ terms }) => (terms.length >= FEWEST_TERMS ? terms.map(({ key }) => key) : [])), timesOfKey),
    checksOf: guide.hosts.map(({ checks }) => new Set(checks)),
  }
}

/**
 * What the words already answer, for the checks of one host. Sure before many: a saying must be heard whole, in its own
 * order or with nothing telling between its words, not denied,
 * not asked about, not told of last year or of a time that is over, and not said of another part; two answers to one check are heard only when one of them is said within the other.
 * A check that asks for the chief of several true answers is heard only where no word speaks for another of them.
 */
export function hearFindings(said: SaidAnswers, words: string, tokens: readonly Token[], terms: readonly Term[], host: number): readonly HeardFinding[] {
  const checks = said.checksOf[host]
  if (checks === undefined) return []
  const stems = tokens.map(({ text }) => said.speech.stem(text))
  const heard: (Span & { said: Said })[] = []
  const looked = new Set<number>()
  const look = (number: number): void => {
    const one = said.saids[number]
    if (looked.has(number) || one === undefined || !checks.has(one.check)) return
    looked.add(number)
    const span = spanOf(said.speech, one, words, tokens, stems, terms)
    if (span === null || terms.some(({ key, negated, first, last }) => !negated && one.rivals.has(key) && (first > span.last || last < span.first))) return
    heard.push({ ...span, said: one })
  }
  for (const each of new Set(stems)) for (const number of said.byStem.get(each) ?? []) look(number)
  for (const { key } of terms) for (const number of said.byKey.get(key) ?? []) look(number)

  const byCheck = new Map<number, (Span & { said: Said })[]>()
  for (const one of heard) byCheck.set(one.said.check, [...(byCheck.get(one.said.check) ?? []), one])
  return [...byCheck.values()].flatMap((list) => {
    const [longest, ...others] = [...list].sort((a, b) => weightOf(b) - weightOf(a) || a.first - b.first)
    if (longest === undefined) return []
    const against = others.filter(({ said: other }) => other.answer !== longest.said.answer)
    if (against.some((other) => other.first > longest.last || other.last < longest.first || weightOf(other) === weightOf(longest))) return []
    return [{ check: longest.said.id, answer: longest.said.answer, words: quoteSpan(words, tokens, longest) }]
  }).sort((a, b) => (a.check < b.check ? -1 : 1))
}

interface Span {
  readonly first: number
  readonly last: number
}

function weightOf({ said }: { readonly said: Said }): number {
  return said.words.length
}

/** Where a saying is heard: word for word, or all of its telling words close together in any order. */
function spanOf(speech: Speech, said: Said, words: string, tokens: readonly Token[], stems: readonly string[], terms: readonly Term[]): Span | null {
  for (let first = 0; first < stems.length; first += 1) {
    if (stems[first] !== said.stems[0]) continue
    const last = lastOf(speech, said, tokens, stems, first)
    if (last !== null && !isParted(words, tokens, { first, last }) && !isOfTheNextWord(speech, words, tokens, last) && isMeant(speech, said, words, { first, last }, tokens, terms)) return { first, last }
  }
  if (said.terms.length < FEWEST_TERMS) return null
  for (let from = 0; from < terms.length; from += 1) {
    const window = terms.slice(from, from + said.terms.length)
    const hits = said.terms.map((wanted) => window.find((term) => term.exact === wanted.exact && term.negated === wanted.negated))
    if (hits.some((hit) => hit === undefined)) continue
    const places = hits.flatMap((hit) => (hit === undefined ? [] : [hit.first, hit.last]))
    const span = { first: Math.min(...places), last: Math.max(...places) }
    if (new Set(hits).size === hits.length && span.last - span.first <= said.terms.length + WIDEST && isOneClause(speech, said, words, tokens, span)
      && !isOfTheNextWord(speech, words, tokens, span.last) && isMeant(speech, said, words, span, tokens, terms)) return span
  }
  return null
}

function lastOf(speech: Speech, said: Said, tokens: readonly Token[], stems: readonly string[], first: number): number | null {
  let at = first - 1
  for (const [step, each] of said.stems.entries()) {
    at += 1
    while (at < stems.length && stems[at] !== each && speech.answers.passedOver.has(tokens[at]?.text ?? '')) at += 1
    if (stems[at] !== each || !isSameWord(speech, said.words[step] ?? '', tokens[at]?.text ?? '', said.words.length === 1)) return null
  }
  return at
}

/** True where a full stop or a line's end stands between the words: "on the leaves. Sticky windowsill". */
function isParted(words: string, tokens: readonly Token[], { first, last }: Span): boolean {
  for (let place = first; place < last; place += 1) if (SENTENCE_END.test(words.slice(tokens[place]?.end, tokens[place + 1]?.at))) return true
  return false
}

/** True where a colour (or "fine") ends the saying and belongs to what comes after it: "roots are white" in "roots have white waxy powder". */
function isOfTheNextWord({ stopWords, answers: { colours, following } }: Speech, words: string, tokens: readonly Token[], last: number): boolean {
  const [colour, next] = [tokens[last], tokens[last + 1]]
  if (colour === undefined || next === undefined || !colours.has(colour.text)) return false
  return words.slice(colour.end, next.at).trim() === '' && !stopWords.has(next.text) && !following.has(next.text)
}

/** False where a comma, a stop or an "and" parts the words of a saying that has none: "leaf, little yellow flowers". */
function isOneClause({ answers: { clauseWords } }: Speech, said: Said, words: string, tokens: readonly Token[], { first, last }: Span): boolean {
  for (let place = first; place < last; place += 1) {
    const [one, next] = [tokens[place], tokens[place + 1]]
    if (one === undefined || next === undefined || CLAUSE_END.test(words.slice(one.end, next.at))) return false
    if (clauseWords.has(next.text) && !said.words.includes(next.text)) return false
  }
  return true
}

/** Forms of one word, but not "yellow" for "yellowy" or "hard" for "hardly"; a word alone must be said as it is. */
function isSameWord({ singular }: Speech, wanted: string, said: string, alone: boolean): boolean {
  return singular(wanted) === singular(said) || (!alone && /y$/u.test(wanted) === /y$/u.test(said))
}

/** False where the words are denied, only asked about, or told of another year, another part or something the asker did. */
function isMeant(speech: Speech, said: Said, words: string, { first, last }: Span, tokens: readonly Token[], terms: readonly Term[]): boolean {
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
function isTimeOfSomethingElse({ answers }: Speech, said: Said, tokens: readonly Token[], { first, last }: Span, clause: Span): boolean {
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

/** The token that ends the sentence of another. */
function sentenceEnd(words: string, tokens: readonly Token[], last: number): number {
  let end = last
  while (end < tokens.length - 1 && !SENTENCE_END.test(words.slice(tokens[end]?.end, tokens[end + 1]?.at))) end += 1
  return end
}

/** The token that begins the sentence of another. */
function sentenceStart(words: string, tokens: readonly Token[], first: number): number {
  let start = first
  while (start > 0 && !SENTENCE_END.test(words.slice(tokens[start - 1]?.end, tokens[start]?.at))) start -= 1
  return start
}

/** The clause in which words stand: as far as commas, stops and joining words reach. */
function clauseAround({ answers: { clauseWords } }: Speech, words: string, tokens: readonly Token[], { first, last }: Span): Span {
  const isEnd = (place: number): boolean => CLAUSE_END.test(words.slice(tokens[place]?.end, tokens[place + 1]?.at))
  let [from, to] = [first, last]
  while (from > 0 && !isEnd(from - 1) && !clauseWords.has(tokens[from - 1]?.text ?? '')) from -= 1
  while (to < tokens.length - 1 && !isEnd(to) && !clauseWords.has(tokens[to + 1]?.text ?? '')) to += 1
  return { first: from, last: to }
}

/** True where the check looks at one part and the clause names only others: "every flower has ragged holes". */
function isOfAnotherPart(speech: Speech, { parts }: Said, tokens: readonly Token[], { first, last }: Span): boolean {
  if (parts.size === 0) return false
  const named = partsIn(speech, tokens.slice(first, last + 1))
  return named.size > 0 && ![...named].some((part) => parts.has(part))
}

/** True for one word put as a guess, with hardly more than the plant beside it: "rhubarb mosaic?". */
function isOnlyNamed(said: Said, words: string, tokens: readonly Token[], span: Span, clause: Span): boolean {
  return said.words.length === 1 && clause.last - clause.first < FEW_WORDS && /^\s*\?/u.test(words.slice(tokens[span.last]?.end))
}

function partsIn({ singular, answers: { parts } }: Speech, tokens: readonly Token[]): ReadonlySet<string> {
  return new Set(tokens.flatMap(({ text }) => parts.get(singular(text)) ?? []))
}

function quoteSpan(words: string, tokens: readonly Token[], { first, last }: Span): readonly HeardWords[] {
  return [quote(words, tokens, first, last)]
}

function spokenKeys(saidAs: readonly string[], meanings: Meanings): ReadonlySet<string> {
  return new Set(saidAs.flatMap((said) => readTerms(meanings, tokenize(said)).flatMap(({ key, negated }) => (negated ? [] : [key]))))
}

function countOf(items: readonly string[]): ReadonlyMap<string, number> {
  const counts = new Map<string, number>()
  for (const item of items) counts.set(item, (counts.get(item) ?? 0) + 1)
  return counts
}

function rarestFirst(lists: readonly (readonly string[])[], times: ReadonlyMap<string, number>): ReadonlyMap<string, readonly number[]> {
  const numbers = new Map<string, number[]>()
  for (const [number, list] of lists.entries()) {
    const [rarest] = [...list].sort((a, b) => (times.get(a) ?? 0) - (times.get(b) ?? 0))
    if (rarest === undefined) continue
    const so = numbers.get(rarest)
    if (so === undefined) numbers.set(rarest, [number])
    else so.push(number)
  }
  return numbers
}

/** Sayings of fewer telling words must be heard word for word. */
const FEWEST_TERMS = 2
/** Small words that may stand among the telling ones of a saying. */
const WIDEST = 2
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
const NO_PARTS: ReadonlySet<string> = new Set()
const SENTENCE_END = /[.;!?\n]/u
const CLAUSE_END = /[,.;:!?()\n]/u
