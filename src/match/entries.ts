import type { Guide, HostId, NodeName, ProblemId, Target } from '../guide/index.js'
import { UNKNOWN_PLANT } from './hosts.js'
import type { EntryCandidate, HeardWords, HostCandidate } from './matched.js'
import { tidyScore, WEIGHTS } from './score.js'
import { buildSpeller, type Speller } from './spelling.js'
import { stem } from './stems.js'
import { STOP_WORDS } from './stop-words.js'
import { quote, tokenize, type Token } from './tokens.js'

/** The entry phrases of all hosts, by the words in them. */
export interface EntryPhrases {
  readonly nodes: readonly EntryNode[]
  readonly phrases: readonly EntryPhrase[]
  /** Stem to the numbers of the phrases that have it. */
  readonly byStem: ReadonlyMap<string, readonly number[]>
  /** How much a stem tells: rare words more than common ones (inverse document frequency over the phrases). */
  readonly tells: ReadonlyMap<string, number>
  readonly averageTelling: number
  readonly spell: Speller
}

interface EntryNode {
  readonly host: HostId
  readonly node: NodeName
  readonly problems: readonly ProblemId[]
}

interface EntryPhrase {
  readonly text: string
  readonly node: number
  readonly stems: readonly string[]
  readonly telling: number
  /** True when it names nothing but the plant or small words. */
  readonly general: boolean
}

/** Gathers and weighs the entry phrases of a guide. */
export function buildEntryPhrases(guide: Guide): EntryPhrases {
  const nodes: EntryNode[] = []
  const phrases: Omit<EntryPhrase, 'telling'>[] = []
  const byStem = new Map<string, number[]>()
  const knownWords = new Set<string>()
  for (const host of guide.hosts) {
    const ownNames = new Set([host.name, ...host.called].flatMap((name) => {
      const words = tokenize(name)
      return words.length === 1 ? words.map(({ text }) => stem(text)) : []
    }))
    for (const node of host.nodes) {
      if (node.entry.length === 0) continue
      nodes.push({ host: host.id, node: node.name, problems: reachableProblems(guide, host.number, node.number) })
      for (const text of node.entry) {
        const words = tokenize(text).map((token) => token.text)
        // The host's own name in its phrases says nothing about the complaint. A phrase with no other telling word
        // ("it is not well") keeps what it has: better a weak way in than none.
        const complaint = words.filter((word) => !STOP_WORDS.has(word) && !ownNames.has(stem(word)))
        const general = complaint.length === 0
        const stems = [...new Set((general ? words : complaint).map(stem))]
        if (stems.length === 0) continue
        for (const word of complaint) knownWords.add(word)
        for (const each of stems) {
          const list = byStem.get(each)
          if (list === undefined) byStem.set(each, [phrases.length])
          else list.push(phrases.length)
        }
        phrases.push({ text, node: nodes.length - 1, stems, general })
      }
    }
  }
  const tells = new Map([...byStem].map(([each, list]) => [each, Math.log(1 + phrases.length / list.length)]))
  const total = [...tells.values()].reduce((sum, weight) => sum + weight, 0)
  return {
    nodes, byStem, tells,
    phrases: phrases.map((phrase) => ({ ...phrase, telling: sumOf(phrase.stems, tells) })),
    averageTelling: tells.size === 0 ? 1 : total / tells.size,
    spell: buildSpeller(knownWords),
  }
}

/**
 * Entries that fit the question, best first. With a host named, other hosts' entries step far back;
 * with none, all compete and the unknown plant's come before an equal one of a plant nobody spoke of.
 */
export function hearEntries(
  entries: EntryPhrases, words: string, tokens: readonly Token[],
  hosts: readonly HostCandidate[], nameWords: ReadonlySet<number>, isWord: (word: string) => boolean,
): readonly EntryCandidate[] {
  const heard = hearStems(entries, tokens, isWord)
  const asked = [...heard].filter(([, { places }]) => places.some((place) => !nameWords.has(place)))
  const askedTelling = asked.reduce((sum, [each, { fit }]) => sum + fit * (entries.tells.get(each) ?? 0), 0)
  const toCover = Math.max(Math.min(askedTelling, WEIGHTS.wordsToCover * entries.averageTelling), Number.EPSILON)

  const best = new Map<number, Fit>()
  const stemsOfNode = new Map<number, Set<string>>()
  for (const number of phrasesWith(entries, heard.keys())) {
    const phrase = entries.phrases[number]
    if (phrase === undefined) continue
    const shared = phrase.stems.filter((each) => heard.has(each))
    const together = stemsOfNode.get(phrase.node) ?? new Set()
    for (const each of shared) together.add(each)
    stemsOfNode.set(phrase.node, together)
    const fit = fitPhrase(entries, phrase, shared, heard, toCover, best.get(phrase.node)?.score ?? 0)
    if (fit !== null) best.set(phrase.node, fit)
  }

  const preference = hostPreference(hosts)
  return [...best]
    .map(([number, fit]) => {
      const together = [...(stemsOfNode.get(number) ?? [])]
        .reduce((sum, each) => sum + (heard.get(each)?.fit ?? 0) * (entries.tells.get(each) ?? 0), 0)
      const score = (1 - WEIGHTS.phrasesTogether) * fit.score
        + WEIGHTS.phrasesTogether * fit.score ** 0.5 * Math.min(1, together / toCover)
      return { number, fit, score: tidyScore(score * preference(entries.nodes[number]?.host)) }
    })
    .filter(({ score }) => score >= WEIGHTS.entryLeast)
    .sort((a, b) => b.score - a.score || a.number - b.number)
    .slice(0, WEIGHTS.mostEntries)
    .flatMap(({ number, fit, score }) => {
      const node = entries.nodes[number]
      return node === undefined ? [] : [{ ...node, score, phrase: fit.phrase.text, words: quoteHits(words, tokens, fit.hits) }]
    })
}

interface HeardStem {
  /** 1, or less for a respelled word. */
  readonly fit: number
  readonly places: number[]
}

interface Hit {
  readonly stem: string
  readonly place: number
}

interface Fit {
  readonly phrase: EntryPhrase
  readonly score: number
  readonly hits: readonly Hit[]
}

function hearStems(
  entries: EntryPhrases, tokens: readonly Token[], isWord: (word: string) => boolean,
): Map<string, HeardStem> {
  const heard = new Map<string, HeardStem>()
  const note = (each: string, place: number, fit: number): void => {
    const so = heard.get(each)
    if (so === undefined) heard.set(each, { fit, places: [place] })
    else if (so.fit < fit) heard.set(each, { fit, places: [...so.places, place] })
    else so.places.push(place)
  }
  const respelled = new Map<string, ReturnType<Speller>>()
  for (const [place, { text }] of tokens.entries()) {
    const each = stem(text)
    if (entries.byStem.has(each)) note(each, place, 1)
    else if (!STOP_WORDS.has(text) && !isWord(text)) {
      let near = respelled.get(text)
      if (near === undefined) {
        if (respelled.size >= WEIGHTS.wordsRespelled) continue
        near = entries.spell(text)
        respelled.set(text, near)
      }
      const [best] = near
      if (best !== undefined) note(stem(best.word), place, WEIGHTS.respelledWord)
    }
  }
  return heard
}

function phrasesWith(entries: EntryPhrases, stems: Iterable<string>): ReadonlySet<number> {
  const numbers = new Set<number>()
  for (const each of stems) for (const number of entries.byStem.get(each) ?? []) numbers.add(number)
  return numbers
}

/** How well a phrase fits, or null when it cannot beat the score to beat; looking for places is the costly part. */
function fitPhrase(
  entries: EntryPhrases, phrase: EntryPhrase, shared: readonly string[], heard: ReadonlyMap<string, HeardStem>,
  toCover: number, toBeat: number,
): Fit | null {
  const weight = shared.reduce((sum, each) => sum + (heard.get(each)?.fit ?? 0) * (entries.tells.get(each) ?? 0), 0)
  const ofPhrase = weight / phrase.telling
  const ofQuestion = Math.min(1, weight / toCover)
  const atBest = (phrase.general ? WEIGHTS.phraseGeneral : 1)
    * ofPhrase * (WEIGHTS.phraseAlone + (1 - WEIGHTS.phraseAlone) * ofQuestion)
  if (atBest <= toBeat) return null
  const hits = nearestPlaces(shared, heard)
  const places = hits.map(({ place }) => place)
  const span = Math.max(...places) - Math.min(...places) + 1
  // Up to three words for each word of the phrase is ordinary speech; from there on it fades.
  const spread = hits.length < 2 ? 0 : Math.min(1, Math.max(0, span / (3 * hits.length) - 1))
  const score = atBest * (1 - WEIGHTS.scattered * spread)
  return score > toBeat ? { phrase, score, hits } : null
}

/** One place for each stem, as near to each other as a look from the rarest stem's places finds. */
function nearestPlaces(stems: readonly string[], heard: ReadonlyMap<string, HeardStem>): readonly Hit[] {
  const placesOf = (each: string): readonly number[] => heard.get(each)?.places.slice(0, MOST_PLACES) ?? []
  const [rarest] = [...stems].sort((a, b) => placesOf(a).length - placesOf(b).length)
  if (rarest === undefined) return []
  let best: readonly Hit[] = []
  let bestSpan = Number.POSITIVE_INFINITY
  for (const from of placesOf(rarest)) {
    const hits = stems.map((each) => ({ stem: each, place: nearestTo(from, placesOf(each)) }))
    const places = hits.map(({ place }) => place)
    const span = Math.max(...places) - Math.min(...places)
    if (span < bestSpan) {
      best = hits
      bestSpan = span
    }
  }
  return best
}

function nearestTo(from: number, places: readonly number[]): number {
  return places.reduce((near, place) => (Math.abs(place - from) < Math.abs(near - from) ? place : near), places[0] ?? from)
}

function quoteHits(words: string, tokens: readonly Token[], hits: readonly Hit[]): readonly HeardWords[] {
  const places = [...new Set(hits.map(({ place }) => place))].sort((a, b) => a - b)
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

function hostPreference(hosts: readonly HostCandidate[]): (host: HostId | undefined) => number {
  const scores = new Map(hosts.map(({ host, score }) => [host, score]))
  const named = hosts.some(({ host, score }) => score >= WEIGHTS.hostNamed && host !== UNKNOWN_PLANT)
  const onlyUnknown = hosts[0]?.host === UNKNOWN_PLANT
  return (host) => {
    if (host === undefined) return 0
    if (named) return Math.max(WEIGHTS.entryOtherHost, scores.get(host) ?? 0)
    if (host === UNKNOWN_PLANT) return 1
    return onlyUnknown ? WEIGHTS.entryOnlyUnknown : WEIGHTS.entryUnnamedHost
  }
}

/** Problems that can be reached from a node, following the tree and the trees it leads to, in the order met. */
function reachableProblems(guide: Guide, host: number, node: number): readonly ProblemId[] {
  const problems = new Set<number>()
  const seen = new Set<string>()
  const open: (Target & { readonly from: number })[] = [{ kind: 'host', host, node, from: host }]
  for (let target = open.pop(); target !== undefined; target = open.pop()) {
    if (target.kind === 'problem') problems.add(target.problem)
    if (target.kind !== 'node' && target.kind !== 'host') continue
    const at = target.kind === 'host' ? target.host : target.from
    const key = `${at}:${target.node}`
    if (seen.has(key)) continue
    seen.add(key)
    const here = guide.hosts[at]?.nodes[target.node]
    if (here === undefined) continue
    const leads = here.notSure === null ? here.answers : [...here.answers, here.notSure]
    for (const lead of [...leads].reverse()) open.push({ ...lead, from: at })
  }
  return [...problems].flatMap((number) => guide.problems[number]?.id ?? [])
}

function sumOf(stems: readonly string[], tells: ReadonlyMap<string, number>): number {
  return stems.reduce((sum, each) => sum + (tells.get(each) ?? 0), 0)
}

/** Places looked at for a word said again and again; keeps a rant linear. */
const MOST_PLACES = 8
