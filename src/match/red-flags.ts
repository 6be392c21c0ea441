import type { Guide, RedFlag, RedFlagHearing, RedFlagId } from '../guide/index.js'
import type { HeardRedFlag, HeardWords } from './matched.js'
import { quote, type Token } from './tokens.js'
import { buildPatternIndex, findGroups, type PatternIndex, type Span } from './word-pattern.js'

/** The red flags of a guide, ready to listen with. */
export interface RedFlagEars {
  /** Emergencies first. */
  readonly flags: readonly { readonly redFlag: RedFlagId; readonly level: RedFlag['level']; readonly hearings: readonly Hearing[] }[]
  readonly patterns: PatternIndex
}

/** A red flag that rules have heard, and which of them, by name. */
export interface RuledFlag extends HeardRedFlag {
  readonly rules: readonly string[]
}

/** One way of hearing a danger: a word of each group, close together. Groups are numbers of the pattern index. */
interface Hearing {
  /** The first words of each group: it stays the same when words are added to a group. */
  readonly name: string
  readonly groups: readonly number[]
  readonly within: number
  /** True where the groups count only in the order in which they are written. */
  readonly inOrder: boolean
  readonly unless: number
  /** How many words before or after the stretch an `unless` word still cancels it. */
  readonly reach: number
}

/** Compiles the red flags of a guide. */
export function buildRedFlagEars(guide: Guide): RedFlagEars {
  const groups: (readonly string[])[] = []
  const numbers = new Map<string, number>()
  const numberOf = (group: readonly string[]): number => {
    const key = group.join('\n')
    const known = numbers.get(key)
    if (known !== undefined) return known
    numbers.set(key, groups.length)
    return groups.push(group) - 1
  }
  const flags = guide.redFlags
    .map((flag) => ({ redFlag: flag.id, level: flag.level, hearings: flag.hear.flatMap((hearing) => compileHearing(flag.id, hearing, numberOf)) }))
    .sort((a, b) => Number(b.level === 'emergency') - Number(a.level === 'emergency'))
  return { flags, patterns: buildPatternIndex(groups) }
}

/**
 * Red flags heard in the words, emergencies first, then in the guide's order; each with the words that raised it.
 * Every word is listened to, however long the text: the dangerous half-sentence may come last.
 */
export function hearRedFlags({ flags, patterns }: RedFlagEars, words: string, tokens: readonly Token[]): readonly RuledFlag[] {
  const found = findGroups(tokens, patterns)
  const marks = new Uint8Array(tokens.length)
  return flags.flatMap(({ redFlag, level, hearings }) => {
    const heard = hearings.flatMap((hearing) => {
      const spans = listen(hearing, found, marks.fill(0))
      return spans === null ? [] : [{ name: hearing.name, spans }]
    })
    const [first] = heard
    return first === undefined ? [] : [{ redFlag, level, words: quoteSpans(words, tokens, first.spans), rules: heard.map(({ name }) => name) }]
  })
}

function compileHearing(redFlag: RedFlagId, { allOf, phrases, within, inOrder, unless, reach }: RedFlagHearing, numberOf: (group: readonly string[]) => number): readonly Hearing[] {
  const nameOf = (written: readonly (readonly string[])[]): string => `${redFlag}: ${written.map(([first]) => first).join(', ')}`
  const rest = { within, unless: numberOf(unless.flat()), reach }
  return [
    ...(allOf.length > 0 ? [{ ...rest, name: nameOf(allOf), groups: allOf.map(numberOf), inOrder }] : []),
    ...(phrases.length > 0 ? [{ ...rest, name: nameOf([phrases]), groups: [numberOf(phrases)], inOrder: false }] : []),
  ]
}

/**
 * The first stretch in which every group is heard close together and nothing cancels it, as one span a group.
 *
 * A cancelling phrase that shares a word with a group word takes only that word out ("has not eaten the red ones but
 * has eaten the black ones" is still heard at the second "eaten"). One that shares none cancels the whole stretch it
 * stands in or beside.
 */
function listen(hearing: Hearing, heard: ReadonlyMap<number, readonly Span[]>, marks: Uint8Array): readonly Span[] | null {
  const found: (readonly Span[])[] = []
  for (const group of hearing.groups) {
    const spans = heard.get(group)
    if (spans === undefined) return null
    found.push(spans)
  }
  for (const spans of found) for (const { first, last } of spans) marks.fill(GROUP_WORD, first, last + 1)
  const apart: Span[] = []
  for (const cancel of heard.get(hearing.unless) ?? []) {
    let sharesNone = true
    for (let place = cancel.first; place <= cancel.last; place += 1) {
      if (marks[place] === 0) continue
      marks[place] = STRUCK
      sharesNone = false
    }
    if (sharesNone) apart.push(cancel)
  }

  const nextStretch = hearing.inOrder ? stretchInOrder(hearing.groups.length) : stretchInAnyOrder(hearing.groups.length)
  let firstApart = 0
  for (const { span, group } of inOrderOfPlace(found)) {
    if (marks.subarray(span.first, span.last + 1).includes(STRUCK)) continue
    const stretch = nextStretch(span, group)
    if (stretch === null) continue
    let [first, last, lastStart, firstEnd] = [span.first, span.last, span.first, span.last]
    for (const held of stretch) {
      first = Math.min(first, held.first)
      last = Math.max(last, held.last)
      lastStart = Math.max(lastStart, held.first)
      firstEnd = Math.min(firstEnd, held.last)
    }
    if (lastStart - firstEnd > hearing.within) continue
    while (firstApart < apart.length && (apart[firstApart]?.last ?? 0) < first - hearing.within - hearing.reach) firstApart += 1
    let cancelled = false
    for (let i = firstApart; i < apart.length; i += 1) {
      const cancel = apart[i]
      if (cancel === undefined || cancel.first > last + hearing.reach) break
      if (cancel.last >= first - hearing.reach) { cancelled = true; break }
    }
    if (!cancelled) return stretch
  }
  return null
}

/** Takes spans from left to right and gives the stretch that each one completes, or null. */
type NextStretch = (span: Span, group: number) => readonly Span[] | null

/** The latest hearing of each group gives the tightest stretch that ends at each word. */
function stretchInAnyOrder(groups: number): NextStretch {
  const latest: (Span | undefined)[] = Array.from({ length: groups }, () => undefined)
  return (span, group) => {
    latest[group] = span
    const held = latest.filter((one) => one !== undefined)
    return held.length < groups ? null : held
  }
}

/** Each group is added to the latest run of the groups before it. */
function stretchInOrder(groups: number): NextStretch {
  const runs: (readonly Span[] | undefined)[] = Array.from({ length: groups }, () => undefined)
  return (span, group) => {
    const before = group === 0 ? [] : runs[group - 1]
    if (before === undefined || (before[before.length - 1]?.last ?? -1) >= span.first) return null
    const run = [...before, span]
    runs[group] = run
    return group === groups - 1 ? run : null
  }
}

/** The spans of all groups from left to right; each group's own are in order already. */
function* inOrderOfPlace(found: readonly (readonly Span[])[]): Generator<{ readonly span: Span; readonly group: number }> {
  const next = found.map(() => 0)
  for (;;) {
    let best: { span: Span; group: number } | null = null
    for (let group = 0; group < found.length; group += 1) {
      const span = found[group]?.[next[group] ?? 0]
      if (span !== undefined && (best === null || span.first < best.span.first || (span.first === best.span.first && span.last < best.span.last))) best = { span, group }
    }
    if (best === null) return
    next[best.group] = (next[best.group] ?? 0) + 1
    yield best
  }
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

/** What is marked on the words of a text while one hearing is tried. */
const GROUP_WORD = 1
const STRUCK = 2
