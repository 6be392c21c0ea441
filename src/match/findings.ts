import type { CheckId, Guide } from '../guide/index.js'
import { CLAUSE_END, isParted, type Span } from './clauses.js'
import { type Meanings, readTerms, type Term } from './meanings.js'
import type { HeardFinding, HeardWords } from './matched.js'
import type { Speech } from './languages/speech.js'
import { partsIn } from './parts-of-plants.js'
import { isMeant } from './said-in-earnest.js'
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
const NO_PARTS: ReadonlySet<string> = new Set()
