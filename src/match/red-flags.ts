import type { Guide, RedFlagHearing, RedFlagId } from '../guide/index.js'
import type { HeardRedFlag, HeardWords } from './matched.js'
import { quote, type Token } from './tokens.js'
import { compilePatterns, findPatterns, type PatternSet, placeWords, type Span, type WordPlaces } from './word-pattern.js'

/** A red flag's rules, ready to listen with. */
export interface RedFlagEar {
  readonly redFlag: RedFlagId
  readonly emergency: boolean
  readonly hearings: readonly Hearing[]
}

interface Hearing {
  readonly groups: readonly PatternSet[]
  readonly within: number
  readonly unless: PatternSet
}

/** Compiles the red flags of a guide, emergencies first. */
export function buildRedFlagEars(guide: Guide): readonly RedFlagEar[] {
  return guide.redFlags
    .map((flag) => ({
      redFlag: flag.id,
      emergency: flag.level === 'emergency',
      hearings: flag.hear.flatMap(compileHearing),
    }))
    .sort((a, b) => Number(b.emergency) - Number(a.emergency))
}

/**
 * Red flags heard in the words, emergencies first, then in the guide's order; each with the words that raised it.
 * Every word is listened to, however long the text: the dangerous half-sentence may come last.
 */
export function hearRedFlags(ears: readonly RedFlagEar[], words: string, tokens: readonly Token[]): readonly HeardRedFlag[] {
  const heard: HeardRedFlag[] = []
  const places = placeWords(tokens)
  for (const ear of ears) {
    for (const hearing of ear.hearings) {
      const spans = listen(hearing, tokens, places)
      if (spans === null) continue
      heard.push({ redFlag: ear.redFlag, words: quoteSpans(words, tokens, spans) })
      break
    }
  }
  return heard
}

function compileHearing(hearing: RedFlagHearing): readonly Hearing[] {
  const unless = compilePatterns(hearing.unless.flat())
  const ways: Hearing[] = []
  if (hearing.allOf.length > 0) {
    ways.push({ groups: hearing.allOf.map(compilePatterns), within: hearing.within, unless })
  }
  if (hearing.phrases.length > 0) {
    ways.push({ groups: [compilePatterns(hearing.phrases)], within: hearing.within, unless })
  }
  return ways
}

/**
 * The first stretch in which every group is heard close together and nothing cancels it, as one span a group.
 *
 * A cancelling phrase that shares a word with a group word takes only that word out ("has not eaten the red ones but
 * has eaten the black ones" is still heard at the second "eaten"). One that shares none cancels the whole stretch it
 * stands in or beside.
 */
function listen(hearing: Hearing, tokens: readonly Token[], places: WordPlaces): readonly Span[] | null {
  const found: (readonly Span[])[] = []
  for (const group of hearing.groups) {
    const spans = findPatterns(tokens, places, group)
    if (spans.length === 0) return null
    found.push(spans)
  }
  const cancels = findPatterns(tokens, places, hearing.unless)
  const struck = new Set<number>()
  const apart: Span[] = []
  const groupWordAt = markWords(found)
  for (const cancel of cancels) {
    const shared = wordsOf(cancel).filter((place) => groupWordAt.has(place))
    if (shared.length === 0) apart.push(cancel)
    for (const place of shared) struck.add(place)
  }

  const standing = found
    .flatMap((spans, group) => spans.map((span) => ({ span, group })))
    .filter(({ span }) => !wordsOf(span).some((place) => struck.has(place)))
    .sort((a, b) => a.span.first - b.span.first || a.span.last - b.span.last)

  // Walking left to right with the latest hearing of each group gives the tightest stretch that ends at each word.
  const latest: (Span | undefined)[] = hearing.groups.map(() => undefined)
  let firstApart = 0
  for (const { span, group } of standing) {
    latest[group] = span
    const stretch = latest.filter((held) => held !== undefined)
    if (stretch.length < latest.length) continue
    const first = Math.min(...stretch.map((held) => held.first))
    const last = Math.max(...stretch.map((held) => held.last))
    const lastStart = Math.max(...stretch.map((held) => held.first))
    const firstEnd = Math.min(...stretch.map((held) => held.last))
    if (lastStart - firstEnd > hearing.within) continue
    while (firstApart < apart.length && (apart[firstApart]?.last ?? 0) < first - hearing.within - BESIDE) firstApart += 1
    let cancelled = false
    for (let i = firstApart; i < apart.length; i += 1) {
      const cancel = apart[i]
      if (cancel === undefined || cancel.first > last + BESIDE) break
      if (cancel.last >= first - BESIDE) { cancelled = true; break }
    }
    if (!cancelled) return stretch
  }
  return null
}

function markWords(found: readonly (readonly Span[])[]): ReadonlySet<number> {
  const marked = new Set<number>()
  for (const spans of found) for (const span of spans) for (const place of wordsOf(span)) marked.add(place)
  return marked
}

function wordsOf(span: Span): readonly number[] {
  return Array.from({ length: span.last - span.first + 1 }, (_, step) => span.first + step)
}

function quoteSpans(words: string, tokens: readonly Token[], spans: readonly Span[]): readonly HeardWords[] {
  const inOrder = [...spans].sort((a, b) => a.first - b.first || b.last - a.last)
  const quoted: HeardWords[] = []
  let lastQuoted = -1
  for (const span of inOrder) {
    if (span.last <= lastQuoted) continue
    quoted.push(quote(words, tokens, span.first, span.last))
    lastQuoted = span.last
  }
  return quoted
}

/** A cancelling word counts this many words before or after the stretch: "nobody even ate it", "ate it? no". */
const BESIDE = 2
