import type { EntryNode, EntryPhrases, Postings } from './entry-phrases.js'
import { keyOf, type Meanings, type Term } from './meanings.js'
import type { EntryCandidate, HeardWords } from './matched.js'
import type { ProblemWords } from './problem-words.js'
import { firstFrom } from './rising.js'
import { tidyScore, WEIGHTS } from './score.js'
import type { Speller } from './spelling.js'
import type { Speech } from './languages/speech.js'
import { quote, type Token } from './tokens.js'

/** What entries are heard with. */
export interface EntryEars {
  readonly meanings: Meanings
  readonly phrases: EntryPhrases
  readonly problems: ProblemWords
  readonly spell: Speller
  readonly scratch: Scratch
}

/** Room to reckon in, kept because clearing what was touched costs far less than new lists. Empty between questions. */
export interface Scratch {
  readonly phrases: Float64Array
  readonly nodes: Float64Array
  readonly inNode: Float64Array
  readonly bestFit: Float64Array
  readonly bestPhrase: Int32Array
  readonly strengths: Float64Array
}

/** Room for the entries of one guide. */
export function makeScratch({ phrases, nodes }: EntryPhrases, { count }: ProblemWords): Scratch {
  return {
    phrases: new Float64Array(phrases.length), nodes: new Float64Array(nodes.length), inNode: new Float64Array(nodes.length),
    bestFit: new Float64Array(nodes.length), bestPhrase: new Int32Array(nodes.length), strengths: new Float64Array(count),
  }
}

/** An entry and how well the words alone fit it, whatever the plant: 0 to 1. */
export interface FittingEntry {
  readonly node: EntryNode
  readonly number: number
  readonly fit: number
  readonly phrase: string
  readonly places: readonly number[]
}

/**
 * Entries that fit, and how strongly the words point to each problem, by its number (telling of signs; see
 * `signsToConvince`): kept only where hosts are wanted, since nobody asks for it where every host is looked at.
 */
export interface Fitting {
  readonly entries: readonly FittingEntry[]
  readonly strengths: ReadonlyMap<number, number>
}

/**
 * Entries whose phrases share a word with the question, best first, not yet weighed by the plant.
 * @param nameWords places of the words that name plants: they say nothing about the complaint unless a phrase holds them
 * @param hosts numbers of the hosts whose entries are wanted; null for all
 * @param always for some hosts, by number: how many of its best entries are given however many others fit better
 */
export function fitEntries(
  { meanings, phrases, problems, spell, scratch }: EntryEars, tokens: readonly Token[], terms: readonly Term[], nameWords: ReadonlySet<number>,
  hosts: ReadonlySet<number> | null, always: ReadonlyMap<number, number>, isWord: (word: string) => boolean,
): Fitting {
  const heard = hearKeys(meanings, phrases, problems, spell, tokens, terms, nameWords, isWord)
  const asked = [...heard.entries()].filter(([, uses]) => uses.some(({ named }) => !named))
  const askedTelling = asked.reduce((sum, [key, uses]) => sum + bestFit(uses) * (phrases.postings.get(key)?.tells ?? 0), 0)
  const toCover = Math.max(Math.min(askedTelling, WEIGHTS.wordsToCover * phrases.averageTelling), Number.EPSILON)

  const ranges = hosts === null
    ? [[0, phrases.phrases.length] as const]
    : [...hosts].flatMap((host) => { const range = phrases.ranges.get(host); return range === undefined ? [] : [range] }).sort((a, b) => a[0] - b[0])
  const touchedPhrases: number[] = []
  const touchedNodes: number[] = []
  // Rare words first: in a guide of thousands of trees a word like "leaf" only adds to phrases that a rarer one has found.
  const rarestFirst = [...heard]
    .flatMap(([key, uses]) => { const postings = phrases.postings.get(key); return postings === undefined ? [] : [{ uses, postings }] })
    .sort((a, b) => a.postings.phrases.length - b.postings.phrases.length)
  for (const { uses, postings } of rarestFirst) {
    // Counted among the plants looked at only: however large the guide, one plant's own tree has few phrases with "leaf".
    const inRanges = ranges.reduce((sum, [from, to]) => sum + firstFrom(postings.phrases, to) - firstFrom(postings.phrases, from), 0)
    const opens = touchedPhrases.length === 0 || inRanges <= WEIGHTS.mostOpened
    const here: number[] = []
    for (const [from, to] of ranges) {
      for (let at = firstFrom(postings.phrases, from); at < postings.phrases.length; at += 1) {
        const number = postings.phrases[at] ?? to
        if (number >= to) break
        const so = scratch.phrases[number] ?? 0
        if (so === 0 && !opens) continue
        const weight = postings.tells * fitOf(uses, postings, at)
        if (so === 0) touchedPhrases.push(number)
        scratch.phrases[number] = so + weight
        const node = phrases.phrases[number]?.node ?? 0
        const inNode = scratch.inNode[node] ?? 0
        if (inNode === 0) here.push(node)
        if (weight > inNode) scratch.inNode[node] = weight
      }
    }
    for (const node of here) {
      const so = scratch.nodes[node] ?? 0
      if (so === 0) touchedNodes.push(node)
      scratch.nodes[node] = so + (scratch.inNode[node] ?? 0)
      scratch.inNode[node] = 0
    }
  }
  for (const number of touchedPhrases) {
    const phrase = phrases.phrases[number]
    if (phrase === undefined) continue
    const weight = scratch.phrases[number] ?? 0
    scratch.phrases[number] = 0
    const fit = (phrase.general ? WEIGHTS.phraseGeneral : 1) * Math.min(1, weight / phrase.telling)
      * (WEIGHTS.phraseAlone + (1 - WEIGHTS.phraseAlone) * Math.min(1, weight / toCover))
    if (fit > (scratch.bestFit[phrase.node] ?? 0)) {
      scratch.bestFit[phrase.node] = fit
      scratch.bestPhrase[phrase.node] = number
    }
  }

  const pointedTo = problemStrengths(problems, heard, scratch.strengths)
  // A plant whose problem is named ("flea beetles on the kale") has a way in even where no entry phrase has the word.
  for (const number of hosts === null ? [] : phrasesByName(phrases, ranges, pointedTo.filter((problem) => (scratch.strengths[problem] ?? 0) >= WEIGHTS.namedPlainly), touchedNodes)) {
    const node = phrases.phrases[number]?.node ?? 0
    scratch.bestPhrase[node] = number
    touchedNodes.push(node)
  }
  const likeliest = new Map<number, number>()
  const strengthOf = (node: EntryNode): number => {
    let best = 0
    for (const problem of node.own) best = Math.max(best, scratch.strengths[problem] ?? 0)
    if (best > (likeliest.get(node.hostNumber) ?? 0)) likeliest.set(node.hostNumber, best)
    return best
  }
  const near = touchedNodes.length <= WEIGHTS.nodesWeighed ? touchedNodes
    : [...touchedNodes].sort((a, b) => (scratch.bestFit[b] ?? 0) - (scratch.bestFit[a] ?? 0) || a - b).slice(0, WEIGHTS.nodesWeighed)
  const candidates = near.map((number) => {
    const node = phrases.nodes[number]
    return {
      number, node, phrase: scratch.bestPhrase[number] ?? 0, fit: scratch.bestFit[number] ?? 0, weight: scratch.nodes[number] ?? 0,
      strength: node === undefined ? 0 : strengthOf(node),
    }
  })
  const strengths = new Map(hosts === null ? [] : pointedTo.map((problem) => [problem, scratch.strengths[problem] ?? 0]))
  for (const problem of pointedTo) scratch.strengths[problem] = 0
  for (const number of touchedNodes) {
    scratch.bestFit[number] = 0
    scratch.nodes[number] = 0
  }
  const better = new Map<number, number>()
  const entries = candidates
    .flatMap(({ node, number, phrase, fit, weight, strength }) => {
      if (node === undefined) return []
      const together = Math.min(1, weight / toCover)
      const top = likeliest.get(node.hostNumber) ?? 0
      const bySigns = top <= 0 ? 0 : (strength / top) * Math.min(1, top / WEIGHTS.signsToConvince)
      const words = WEIGHTS.byPhrase * fit + WEIGHTS.byNode * together * Math.sqrt(fit) + WEIGHTS.bySigns * bySigns
      return [{ node, number, phrase, fit: words * (1 - WEIGHTS.wideNode * node.width) }]
    })
    .sort((a, b) => b.fit - a.fit || a.number - b.number)
    .filter(({ node }, place) => {
      const before = better.get(node.hostNumber) ?? 0
      better.set(node.hostNumber, before + 1)
      return place < WEIGHTS.entriesWeighed || before < (always.get(node.hostNumber) ?? 0)
    })
    .map(({ node, number, phrase, fit }) => {
      const { text, keys } = phrases.phrases[phrase] ?? { text: '', keys: [] }
      const places = placesOf(heard, keys)
      return { node, number, phrase: text, places, fit: fit * (1 - WEIGHTS.scattered * spreadOf(places)) }
    })
    .sort((a, b) => b.fit - a.fit || a.number - b.number)
  return { entries, strengths }
}

/** Turns a weighed entry into what is given out, with the asker's words that led to it. */
export function entryCandidate({ meanings: { speech } }: EntryEars, words: string, tokens: readonly Token[], entry: FittingEntry, score: number): EntryCandidate {
  const { host, node, problems } = entry.node
  return { host, node, problems, score: tidyScore(score), phrase: entry.phrase, words: quotePlaces(words, tokens, tellingPlaces(speech, tokens, entry.places)) }
}

/** The places without small words such as "is": quoted back, they would say nothing; kept where nothing else was heard. */
function tellingPlaces({ stopWords }: Speech, tokens: readonly Token[], places: readonly number[]): readonly number[] {
  const telling = places.filter((place) => !stopWords.has(tokens[place]?.text ?? ''))
  return telling.length > 0 ? telling : places
}

interface Use {
  readonly place: number
  /** Number of the very word, or -1 when no phrase has it. */
  readonly exact: number
  readonly negated: boolean
  /** 1, or less for a respelled word or a plant's name. */
  readonly fit: number
  readonly named: boolean
}

type Heard = ReadonlyMap<string, readonly Use[]>

function hearKeys(
  meanings: Meanings, phrases: EntryPhrases, problems: ProblemWords, spell: Speller, tokens: readonly Token[],
  terms: readonly Term[], nameWords: ReadonlySet<number>, isWord: (word: string) => boolean,
): Heard {
  const { stem, stopWords } = meanings.speech
  const heard = new Map<string, Use[]>()
  const note = (key: string, use: Use): void => {
    const uses = heard.get(key)
    if (uses === undefined) heard.set(key, [use])
    else if (uses.length < WEIGHTS.mostUses) uses.push(use)
  }
  const isUseful = (key: string): boolean => phrases.postings.has(key) || problems.postings.has(key)
  const respelled = new Set<string>()
  for (const { key, exact, first, last, negated } of terms) {
    const named = nameWords.has(first)
    const well = isFine(meanings.speech, tokens, last)
    const use = { place: first, exact: phrases.exactNumbers.get(exact) ?? -1, negated, named }
    const word = tokens[first]?.text ?? ''
    if (isUseful(key)) note(key, { ...use, fit: named && key !== exact ? WEIGHTS.nameAsPart : well ? WEIGHTS.denied : 1 })
    else if (first === last && !named && !isWord(word) && (respelled.has(word) || respelled.size < WEIGHTS.wordsRespelled)) {
      respelled.add(word)
      const [near] = spell(word)
      if (near !== undefined) note(keyOf(meanings, near.word), { ...use, exact: phrases.exactNumbers.get(stem(near.word)) ?? -1, fit: WEIGHTS.respelledWord })
    }
  }
  // Small words are heard where a phrase is made of nothing else ("it is not well").
  for (const [place, { text }] of tokens.entries()) {
    const exact = stem(text)
    if (stopWords.has(text) && !heard.has(exact) && phrases.postings.has(exact)) {
      note(exact, { place, exact: phrases.exactNumbers.get(exact) ?? -1, negated: false, fit: 1, named: false })
    }
  }
  return heard
}

/** "The leaves look very healthy": said to be well, and so not what is wrong. */
function isFine({ names: { being, degrees, fine } }: Speech, tokens: readonly Token[], last: number): boolean {
  const textAt = (place: number): string => tokens[place]?.text ?? ''
  if (!being.has(textAt(last + 1))) return false
  return fine.has(textAt(last + 2)) || (degrees.has(textAt(last + 2)) && fine.has(textAt(last + 3)))
}

function fitOf(uses: readonly Use[], postings: Postings, at: number): number {
  let best = 0
  for (const use of uses) {
    const same = use.exact === postings.exacts[at] ? 1 : WEIGHTS.alikeWord
    const agree = use.negated === (postings.negated[at] === 1) ? 1 : WEIGHTS.denied
    best = Math.max(best, use.fit * same * agree)
  }
  return best
}

function bestFit(uses: readonly Use[]): number {
  return uses.reduce((best, { fit }) => Math.max(best, fit), 0)
}

/** Adds up how strongly the words point to each problem, in room that is empty, and gives the problems that they point to. */
function problemStrengths(problems: ProblemWords, heard: Heard, strengths: Float64Array): readonly number[] {
  const pointedTo: number[] = []
  for (const [key, uses] of heard) {
    const list = problems.postings.get(key)
    if (list === undefined || list.problems.length > WEIGHTS.mostOpened) continue
    const fit = uses.reduce((best, use) => Math.max(best, use.negated ? WEIGHTS.denied : use.fit), 0)
    for (let at = 0; at < list.problems.length; at += 1) {
      const problem = list.problems[at] ?? 0
      const so = strengths[problem] ?? 0
      if (so === 0) pointedTo.push(problem)
      strengths[problem] = so + list.tells * fit * (list.strengths[at] ?? 0)
    }
  }
  return pointedTo
}

/** First phrases of the nodes, not yet touched, from which a problem can be reached that the words name plainly. */
function phrasesByName(
  { phrases, nodes }: EntryPhrases, ranges: readonly (readonly [number, number])[], namedPlainly: readonly number[], touched: readonly number[],
): readonly number[] {
  if (namedPlainly.length === 0) return []
  const plain = new Set(namedPlainly)
  const seen = new Set(touched)
  const found: number[] = []
  for (const [from, to] of ranges) {
    for (let number = from; number < to; number += 1) {
      const node = phrases[number]?.node ?? 0
      if (seen.has(node)) continue
      seen.add(node)
      if (nodes[node]?.own.some((problem) => plain.has(problem)) === true) found.push(number)
    }
  }
  return found
}

/** Where the words of the phrase stand in the question: for each word, the place nearest to the rarest word's first. */
function placesOf(heard: Heard, keys: readonly string[]): readonly number[] {
  const lists = keys.flatMap((key) => { const uses = heard.get(key); return uses === undefined ? [] : [uses.map(({ place }) => place)] })
    .sort((a, b) => a.length - b.length)
  const [rarest] = lists
  if (rarest === undefined) return []
  let best: readonly number[] = []
  let bestSpan = Number.POSITIVE_INFINITY
  for (const from of rarest) {
    const places = lists.map((list) => list.reduce((near, place) => (Math.abs(place - from) < Math.abs(near - from) ? place : near), list[0] ?? from))
    const span = Math.max(...places) - Math.min(...places)
    if (span < bestSpan) [best, bestSpan] = [places, span]
  }
  return [...new Set(best)].sort((a, b) => a - b)
}

/** 0 for words close together; up to three words for each word of the phrase is ordinary speech, from there on it grows to 1. */
function spreadOf(places: readonly number[]): number {
  if (places.length < 2) return 0
  const span = (places[places.length - 1] ?? 0) - (places[0] ?? 0) + 1
  return Math.min(1, Math.max(0, span / (3 * places.length) - 1))
}

function quotePlaces(words: string, tokens: readonly Token[], places: readonly number[]): readonly HeardWords[] {
  const quoted: HeardWords[] = []
  let first: number | null = null
  for (const [i, place] of places.entries()) {
    first ??= place
    if (places[i + 1] === place + 1) continue
    quoted.push(quote(words, tokens, first, place))
    first = null
  }
  return quoted
}
