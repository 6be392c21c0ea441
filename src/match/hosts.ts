import type { Guide, Host } from '../guide/index.js'
import type { HostCandidate, HeardWords } from './matched.js'
import { slipsAllowed, tidyScore, WEIGHTS } from './score.js'
import { buildSpeller, type Speller } from './spelling.js'
import { singular } from './stems.js'
import { STOP_WORDS } from './stop-words.js'
import { quote, tokenize, type Token } from './tokens.js'

/** The names by which hosts are called, ready to be heard. */
export interface HostNames {
  readonly hosts: readonly Host[]
  /** Names as the guide writes them, folded and run together: "sweet corn" and "sweetcorn" meet. */
  readonly asWritten: ReadonlyMap<string, readonly number[]>
  /** The same with plurals taken off. */
  readonly singulars: ReadonlyMap<string, readonly number[]>
  readonly longestName: number
  readonly spell: Speller
}

/** Hosts heard, best first, and which words of the question named them. */
export interface HeardHosts {
  readonly candidates: readonly HostCandidate[]
  readonly nameWords: ReadonlySet<number>
}

/** The unknown plant's host id: its names are too general to settle anything. */
export const UNKNOWN_PLANT = 'unknown-plant'

/** Gathers the names of every host. */
export function buildHostNames(guide: Guide): HostNames {
  const asWritten = new Map<string, number[]>()
  const singulars = new Map<string, number[]>()
  let longestName = 1
  for (const host of guide.hosts) {
    for (const name of [host.name, ...host.called]) {
      const words = tokenize(name).map((token) => token.text)
      if (words.length === 0) continue
      longestName = Math.max(longestName, words.length)
      addHost(asWritten, words.join(''), host.number)
      addHost(singulars, words.map(singular).join(''), host.number)
    }
  }
  return {
    hosts: guide.hosts, asWritten, singulars, longestName,
    spell: buildSpeller([...asWritten.keys(), ...singulars.keys()]),
  }
}

/**
 * Hosts named in the question. Long names are heard before the short ones inside them, exact before misspelled.
 * `isWord` tells words that are right as they stand and so are never taken for a misspelled host ("rows", "pest").
 */
export function hearHosts(
  names: HostNames, words: string, tokens: readonly Token[], isWord: (word: string) => boolean,
): HeardHosts {
  const nameWords = new Set<number>()
  const namings: Naming[] = []
  const claim = (first: number, last: number, hosts: readonly number[], fit: number): void => {
    for (let place = first; place <= last; place += 1) nameWords.add(place)
    namings.push({ first, last, hosts, fit })
  }
  const isFree = (first: number, last: number): boolean => {
    for (let place = first; place <= last; place += 1) if (nameWords.has(place)) return false
    return true
  }

  const texts = tokens.map(({ text }) => text)
  const singularTexts = texts.map(singular)
  for (let length = names.longestName; length >= 1; length -= 1) {
    for (let first = 0; first + length <= tokens.length; first += 1) {
      const last = first + length - 1
      const written = names.asWritten.get(joinWords(texts, first, last))
      const inflected = written ?? names.singulars.get(joinWords(singularTexts, first, last))
      if (inflected === undefined || !isFree(first, last)) continue
      claim(first, last, inflected, written === undefined ? WEIGHTS.hostInflected : 1)
    }
  }

  // Single words first: "toma to" and "swet corn" are rarer than "tomatoe", and the lookups are counted.
  for (const length of [1, 2]) {
    const tried = new Map<string, ReturnType<Speller>>()
    for (let first = 0; first + length <= tokens.length; first += 1) {
      const last = first + length - 1
      if (!isFree(first, last) || isPlain(texts.slice(first, last + 1), isWord)) continue
      const written = joinWords(texts, first, last)
      if (slipsAllowed(written.length) === 0) continue
      let near = tried.get(written)
      if (near === undefined) {
        if (tried.size >= WEIGHTS.wordsRespelled) continue
        near = names.spell(written)
        tried.set(written, near)
      }
      const [best] = near
      if (best === undefined) continue
      const hosts = near
        .filter(({ slips }) => slips === best.slips)
        .flatMap(({ word }) => [...(names.asWritten.get(word) ?? []), ...(names.singulars.get(word) ?? [])])
      claim(first, last, [...new Set(hosts)], 1 - WEIGHTS.hostSlip * best.slips)
    }
  }
  return { candidates: rankHosts(names, words, tokens, namings), nameWords }
}

interface Naming {
  readonly first: number
  readonly last: number
  readonly hosts: readonly number[]
  readonly fit: number
}

function rankHosts(
  names: HostNames, words: string, tokens: readonly Token[], namings: readonly Naming[],
): readonly HostCandidate[] {
  const byHost = new Map<number, { score: number; times: number; at: number; words: HeardWords[] }>()
  for (const naming of [...namings].sort((a, b) => a.first - b.first)) {
    const heard = quote(words, tokens, naming.first, naming.last)
    const standing = standingOf(tokens, naming)
    for (const number of naming.hosts) {
      const general = names.hosts[number]?.id === UNKNOWN_PLANT ? WEIGHTS.hostUnknown : 1
      const score = naming.fit * standing * general
      const so = byHost.get(number)
      if (so === undefined) byHost.set(number, { score, times: 1, at: heard.at, words: [heard] })
      else {
        so.score = Math.max(so.score, score)
        so.times += 1
        so.words.push(heard)
      }
    }
  }
  return [...byHost]
    .map(([number, { score, times, at, words: heard }]) => ({
      number, at, heard, score: tidyScore(score + WEIGHTS.hostAgain * Math.min(3, times - 1)),
    }))
    .filter(({ score }) => score >= WEIGHTS.hostLeast)
    .sort((a, b) => b.score - a.score || a.at - b.at || a.number - b.number)
    .slice(0, WEIGHTS.mostHosts)
    .flatMap(({ number, score, heard }) => {
      const host = names.hosts[number]
      return host === undefined ? [] : [{ host: host.id, score, words: heard }]
    })
}

/** How much a naming says about the plant in question, from the words around it: 1, or less for places and things. */
function standingOf(tokens: readonly Token[], { first, last }: Naming): number {
  const next = tokens[last + 1]?.text ?? ''
  if (THINGS.has(next)) return WEIGHTS.hostThing
  let before = first - 1
  while (before >= 0 && BETWEEN.has(tokens[before]?.text ?? '')) before -= 1
  const said = tokens[before]?.text ?? ''
  const saidBefore = `${tokens[before - 1]?.text ?? ''} ${said}`
  if (HOLDERS.has(said) && before === first - 1) return WEIGHTS.hostThing
  // "under the lettuce leaves" is about the lettuce; "under the maple" is not about the maple.
  if (PLANT_PARTS.has(singular(next))) return 1
  return NEARBY.has(said) || NEARBY.has(saidBefore) ? WEIGHTS.hostNearby : 1
}

function addHost(map: Map<string, number[]>, name: string, host: number): void {
  const hosts = map.get(name)
  if (hosts === undefined) map.set(name, [host])
  else if (!hosts.includes(host)) hosts.push(host)
}

/** True for words that need no respelling: all of them right as they stand, or one that never is part of a name. */
function isPlain(words: readonly string[], isWord: (word: string) => boolean): boolean {
  return words.every(isWord) || words.some((word) => STOP_WORDS.has(word))
}

function joinWords(words: readonly string[], first: number, last: number): string {
  let joined = words[first] ?? ''
  for (let place = first + 1; place <= last; place += 1) joined += words[place] ?? ''
  return joined
}

const listed = (text: string): ReadonlySet<string> => new Set(text.split(/\s+/u))

const THINGS = listed(
  `stake stakes cane canes cage cages bed beds border borders feed food fertiliser fertilizer trellis arch arbor arbour frame
  frames netting net support supports clippings mulch sauce juice jam pie soup crumble cider peel peelings shed barrel crate crates
  compost bag bags sack sacks box boxes show club society seller`,
)
const HOLDERS = listed('window flower planter letter nest raised cardboard') // "window box" is no box hedge
const BETWEEN = listed('a an the my our your his her their some that this old big large tall little small neighbours neighbors neighbour neighbor')
const PLANT_PARTS = listed('leaf stem root fruit flower bud bloom trunk bark branch twig shoot needle pod head bulb tuber berry')
const NEARBY: ReadonlySet<string> = new Set([
  'near', 'nearby', 'beside', 'under', 'underneath', 'beneath', 'below', 'behind', 'by', 'between', 'alongside', 'against', 'opposite',
  'around', 'among', 'amongst', 'next', 'like', 'unlike', 'not', 'except', 'besides', 'beyond', 'nor',
  'next to', 'close to', 'front of', 'instead of', 'looks like', 'smells of', 'smells like', 'away from', 'adjacent to', 'where the',
])
