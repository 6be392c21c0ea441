import type { Guide, Host, HostId } from '../guide/index.js'
import type { HeardWords } from './matched.js'
import { slipsBetween } from './edit-distance.js'
import { slipsAllowed, tidyScore, WEIGHTS } from './score.js'
import { buildSpeller, type Speller } from './spelling.js'
import { listed, type Speech } from './languages/speech.js'
import { quote, tokenize, type Token } from './tokens.js'

/** The names by which hosts are called, ready to be heard. */
export interface HostNames {
  readonly speech: Speech
  readonly hosts: readonly Host[]
  /** What kind of thing each problem is, by number. */
  readonly problemKinds: readonly string[]
  /** Names as the guide writes them, folded and run together: "sweet corn" and "sweetcorn" meet. */
  readonly asWritten: ReadonlyMap<string, readonly number[]>
  /** The same with plurals taken off. */
  readonly singulars: ReadonlyMap<string, readonly number[]>
  readonly longestName: number
  /** First words of names, and names of one word: where nothing of this is said, no name can begin. */
  readonly firstWords: ReadonlySet<string>
  /** Names of plants that no host stands for; they lead to the unknown plant. */
  readonly otherPlants: ReadonlySet<string>
  readonly things: ReadonlySet<string>
  readonly grounds: ReadonlySet<string>
  readonly unknownPlant: number | null
  readonly spell: Speller
  /** Names of several words by each of their words in the singular: "cactus" leads to "christmas cactus". */
  readonly longer: ReadonlyMap<string, readonly LongName[]>
}

/** A name of several words, for hearing it where one of them is misspelled. */
interface LongName {
  readonly words: readonly string[]
  /** The same run together, as the lists of names have it. */
  readonly name: string
  readonly hosts: readonly number[]
}

/** A host named in the question. */
export interface NamedHost {
  readonly number: number
  readonly host: HostId
  /** 0 to 1: how surely it is the plant in question, by its name and the words around it. */
  readonly score: number
  /** The same by the name alone. */
  readonly name: number
  readonly at: number
  readonly words: readonly HeardWords[]
}

/** Hosts heard, best first, and which words of the question named them. */
export interface HeardHosts {
  readonly named: readonly NamedHost[]
  readonly nameWords: ReadonlySet<number>
  /** Every naming of a host or another plant, in order of place, for what stands around it. */
  readonly namings: readonly Naming[]
  /** How surely a plant that the guide has no tree for is the plant in question. */
  readonly otherPlant: number
}

/** Stands for no host at all: a guide need not have an unknown plant. */
const NO_HOST = -1

/** The unknown plant's host id: its names are too general to settle anything. */
export const UNKNOWN_PLANT = 'unknown-plant'

/** Gathers the names of every host. */
export function buildHostNames(guide: Guide, speech: Speech): HostNames {
  const { singular } = speech
  const asWritten = new Map<string, number[]>()
  const singulars = new Map<string, number[]>()
  const firstWords = new Set<string>()
  const otherPlants = new Set<string>()
  const unknownPlant = guide.hostNumbers.get(UNKNOWN_PLANT) ?? null
  let longestName = 1
  const longer = new Map<string, LongName[]>()
  const add = (name: string, host: number): void => {
    const words = tokenize(name).map((token) => token.text)
    if (words.length === 0) return
    longestName = Math.max(longestName, words.length)
    for (const list of [words, words.map(singular)]) {
      firstWords.add(list[0] ?? '')
      firstWords.add(list.join(''))
    }
    addHost(asWritten, words.join(''), host)
    addHost(singulars, words.map(singular).join(''), host)
    if (words.length > 1) for (const word of new Set(words.map(singular))) longer.set(word, [...(longer.get(word) ?? []), { words: words.map(singular), name: words.map(singular).join(''), hosts: [host] }])
  }
  for (const host of guide.hosts) for (const name of [host.name, ...host.called]) add(name, host.number)
  for (const [genus, host] of genera(guide)) if (!asWritten.has(genus)) add(genus, host)
  for (const plant of guide.layWords.otherPlants) {
    const words = tokenize(plant).map((token) => token.text)
    for (const key of [words.join(''), words.map(singular).join('')]) if (!asWritten.has(key) && !singulars.has(key)) otherPlants.add(key)
  }
  for (const plant of guide.layWords.otherPlants) add(plant, unknownPlant ?? NO_HOST)
  // Things of several words are names of nothing that grows: "vine weevil" names no vine.
  for (const thing of guide.layWords.things) if (tokenize(thing).length > 1) add(thing, NO_HOST)
  return {
    speech, hosts: guide.hosts, problemKinds: guide.problems.map(({ kind }) => kind), asWritten, singulars, longestName, firstWords, otherPlants, unknownPlant,
    things: new Set(guide.layWords.things.map((thing) => tokenize(thing)).flatMap((words) => (words.length === 1 ? words.map(({ text }) => text) : []))),
    grounds: new Set(guide.layWords.grounds.flatMap((word) => tokenize(word).map(({ text }) => text))),
    spell: buildSpeller([...asWritten.keys(), ...singulars.keys()]), longer,
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
  const claim = (first: number, last: number, hosts: readonly number[], fit: number, name: string): void => {
    for (let place = first; place <= last; place += 1) nameWords.add(place)
    namings.push({ first, last, hosts, fit, other: names.otherPlants.has(name) })
  }
  const isFree = (first: number, last: number): boolean => {
    for (let place = first; place <= last; place += 1) if (nameWords.has(place)) return false
    return true
  }

  const texts = tokens.map(({ text }) => text)
  const singularTexts = texts.map(names.speech.singular)
  // A name of one word may be said as two ("tomato" as "toma to"), so only longer ones are sure to begin with their first word.
  const mayBegin = (place: number): boolean => {
    const [said, one] = [texts[place] ?? '', singularTexts[place] ?? '']
    return names.firstWords.has(said) || names.firstWords.has(one)
  }
  // "Chrismas cactus" is no cactus: beside a short name its longer ones are tried, misspelled too.
  const claimLonger = (place: number, word: string): boolean => {
    const found = longNameAt(names, texts, singularTexts, place, word, isWord, isFree)
    if (found === null) return false
    claim(found.first, found.last, found.hosts, Math.min(WEIGHTS.hostInflected, 1 - WEIGHTS.hostSlip * found.slips), found.name)
    return true
  }
  for (let length = names.longestName; length >= 1; length -= 1) {
    for (let first = 0; first + length <= tokens.length; first += 1) {
      if (length > 2 && !mayBegin(first)) continue
      const last = first + length - 1
      const asSaid = joinWords(texts, first, last)
      const asSingular = joinWords(singularTexts, first, last)
      const written = names.asWritten.get(asSaid)
      const inflected = written ?? names.singulars.get(asSingular)
      if (inflected === undefined || !isFree(first, last)) continue
      // "My box elder": a name that begins with "my" gives way to one that begins after it.
      if (length > 1 && names.speech.names.between.has(texts[first] ?? '') && last + 1 < tokens.length
        && (names.asWritten.has(joinWords(texts, first + 1, last + 1)) || names.singulars.has(joinWords(singularTexts, first + 1, last + 1)))) continue
      if (length === 1 && claimLonger(first, asSingular)) continue
      claim(first, last, inflected, written === undefined ? WEIGHTS.hostInflected : 1, written === undefined ? asSingular : asSaid)
    }
  }

  // Single words first: "toma to" and "swet corn" are rarer than "tomatoe", and the lookups are counted.
  for (const length of [1, 2]) {
    const tried = new Map<string, ReturnType<Speller>>()
    for (let first = 0; first + length <= tokens.length; first += 1) {
      const last = first + length - 1
      if (!isFree(first, last) || isPlain(texts.slice(first, last + 1), isWord, names.speech)) continue
      const written = joinWords(texts, first, last)
      if (slipsAllowed(written.length) === 0) continue
      let near = tried.get(written)
      if (near === undefined) {
        if (tried.size >= WEIGHTS.wordsRespelled) continue
        near = names.spell(written)
        tried.set(written, near)
      }
      const [best] = near
      if (best === undefined || isAnotherWord(written, best.word)) continue
      if (length === 1 && claimLonger(first, names.speech.singular(best.word))) continue
      const hosts = near
        .filter(({ slips }) => slips === best.slips)
        .flatMap(({ word }) => [...(names.asWritten.get(word) ?? []), ...(names.singulars.get(word) ?? [])])
      claim(first, last, [...new Set(hosts)], 1 - WEIGHTS.hostSlip * best.slips, best.word)
    }
  }
  const meant = namings.map((naming) => asLongerSaidBefore(names, naming, namings, singularTexts))
  return { named: rankHosts(names, words, tokens, meant), nameWords, namings: meant, otherPlant: otherPlantIn(names, tokens, meant) }
}

/** "My peace lily ... the lily": the last word of a longer name said before means that plant again. */
function asLongerSaidBefore(names: HostNames, naming: Naming, namings: readonly Naming[], texts: readonly string[]): Naming {
  // "Tree" and "flower" are names of no plant in particular.
  if (naming.first !== naming.last || (names.unknownPlant !== null && naming.hosts.includes(names.unknownPlant))) return naming
  const before = namings.find(({ first, last, hosts }) => last > first && last < naming.first && hosts.some((host) => host !== NO_HOST)
    && (names.singulars.get(texts[last] ?? '') ?? names.asWritten.get(texts[last] ?? '') ?? []).some((host) => naming.hosts.includes(host)))
  return before === undefined ? naming : { ...naming, hosts: before.hosts, other: before.other }
}

/** The name of several words around a place that holds one of them, as far as the words beside it are those of the name or a slip away. */
function longNameAt(
  names: HostNames, texts: readonly string[], singularTexts: readonly string[], place: number, word: string,
  isWord: (word: string) => boolean, isFree: (first: number, last: number) => boolean,
): { readonly first: number; readonly last: number; readonly hosts: readonly number[]; readonly name: string; readonly slips: number } | null {
  let best: { first: number; last: number; hosts: readonly number[]; name: string; slips: number } | null = null
  for (const { words, name, hosts } of names.longer.get(word) ?? []) {
    const first = place - words.indexOf(word)
    const last = first + words.length - 1
    if (first < 0 || last >= texts.length || !isFree(first, last)) continue
    let slips = 0
    for (const [step, wanted] of words.entries()) {
      if (first + step !== place) slips += slipsOf(names, texts[first + step] ?? '', singularTexts[first + step] ?? '', wanted, isWord)
    }
    if (slips > MOST_SLIPS || (best !== null && (best.slips < slips || (best.slips === slips && best.last - best.first >= last - first)))) continue
    best = { first, last, hosts, name, slips }
  }
  return best
}

/** Slips between a word as it is said and one of a name; more than are ever allowed where it is another word. */
function slipsOf({ speech }: HostNames, said: string, singularSaid: string, wanted: string, isWord: (word: string) => boolean): number {
  if (singularSaid === wanted) return 0
  const limit = slipsAllowed(Math.min(said.length, wanted.length))
  if (limit === 0 || isWord(said) || speech.stopWords.has(said) || said[0] !== wanted[0]) return MOST_SLIPS + 1
  const slips = Math.min(slipsBetween(said, wanted, limit), slipsBetween(singularSaid, wanted, limit))
  return slips <= limit ? slips : MOST_SLIPS + 1
}

/** A short word with another first letter is another word more often than a misspelling: "barrow" is no marrow. */
function isAnotherWord(written: string, name: string): boolean {
  return written[0] !== name[0] && written[0] !== name[1] && name.length < LONG_NAME
}

const MOST_SLIPS = 2
const LONG_NAME = 8

/** One naming in the question: first and last token, and the numbers of the hosts that it may mean. */
export interface Naming {
  readonly first: number
  readonly last: number
  readonly hosts: readonly number[]
  readonly fit: number
  /** True for a plant that no host stands for. */
  readonly other: boolean
}

function rankHosts(
  names: HostNames, words: string, tokens: readonly Token[], namings: readonly Naming[],
): readonly NamedHost[] {
  const byHost = new Map<number, { score: number; name: number; times: number; at: number; words: HeardWords[] }>()
  for (const naming of [...namings].sort((a, b) => a.first - b.first)) {
    const heard = quote(words, tokens, naming.first, naming.last)
    const standing = standingOf(names, tokens, naming)
    for (const number of naming.hosts) {
      if (number === NO_HOST) continue
      const general = number !== names.unknownPlant ? 1 : naming.other ? WEIGHTS.hostOtherPlant : WEIGHTS.hostUnknown
      const score = naming.fit * standing * general
      const so = byHost.get(number)
      if (so === undefined) byHost.set(number, { score, name: naming.fit * general, times: 1, at: heard.at, words: [heard] })
      else {
        so.score = Math.max(so.score, score)
        so.name = Math.max(so.name, naming.fit * general)
        so.times += 1
        so.words.push(heard)
      }
    }
  }
  return [...byHost]
    .map(([number, { score, name, times, at, words: heard }]) => ({
      number, at, heard, name: tidyScore(name), score: tidyScore(score + WEIGHTS.hostAgain * Math.min(3, times - 1)),
    }))
    .filter(({ score }) => score >= WEIGHTS.hostLeast)
    .sort((a, b) => b.score - a.score || a.at - b.at || a.number - b.number)
    .slice(0, WEIGHTS.mostHosts)
    .flatMap(({ number, score, name, heard }) => {
      const host = names.hosts[number]
      return host === undefined ? [] : [{ number, host: host.id, score, name, at: heard[0]?.at ?? 0, words: heard }]
    })
}

function otherPlantIn(names: HostNames, tokens: readonly Token[], namings: readonly Naming[]): number {
  return namings.reduce((best, naming) => (naming.other ? Math.max(best, naming.fit * standingOf(names, tokens, naming)) : best), 0)
}

/** How much a naming says about the plant in question, from the words around it: 1, or less for places and things. */
function standingOf(names: HostNames, tokens: readonly Token[], { first, last }: Naming): number {
  const { singular, names: around } = names.speech
  const textAt = (place: number): string => tokens[place]?.text ?? ''
  const next = textAt(last + 1)
  if (names.things.has(next)) return GROWN_IN.has(next) ? WEIGHTS.hostNearby : WEIGHTS.hostThing
  let before = first - 1
  while (before >= 0 && around.between.has(textAt(before))) before -= 1
  const said = textAt(before)
  const saidBefore = `${textAt(before - 1)} ${said}`
  if (around.thingsOf.has(saidBefore)) return WEIGHTS.hostThing
  if (HOLDERS.has(said) && before === first - 1) return WEIGHTS.hostThing
  // "Went beetroot": a colour.
  if (around.colours.has(textAt(last)) && around.becoming.has(textAt(first - 1))) return WEIGHTS.hostThing
  // "the tomatoes are fine", "roses look ok": named to say that they are not meant.
  if (around.being.has(next) && (around.fine.has(textAt(last + 2)) || (around.degrees.has(textAt(last + 2)) && around.fine.has(textAt(last + 3))))) return WEIGHTS.hostNearby
  // "the beans next to it went the same": named for company.
  const after = `${next} ${textAt(last + 2)}`
  if (around.alongside.has(next) || around.alongside.has(after) || around.alongside.has(`${after} ${textAt(last + 3)}`)) return WEIGHTS.hostNearby
  // "under the lettuce leaves" is about the lettuce; "under the maple" is not about the maple.
  if (PLANT_PARTS.has(singular(next))) return 1
  if (around.nearby.has(said) || around.nearby.has(saidBefore) || around.nearby.has(`${textAt(before - 2)} ${saidBefore}`)) return WEIGHTS.hostNearby
  const grounds = names.grounds.has(textAt(last)) || names.grounds.has(singular(textAt(last)))
  // "In our back lawn".
  while (grounds && before >= 0 && (SIDES.has(textAt(before)) || around.between.has(textAt(before)))) before -= 1
  if (grounds && around.inPlace.has(textAt(before))) return WEIGHTS.hostGround
  return TROUBLED.has(said) ? WEIGHTS.hostTroubled : 1
}

/**
 * Scientific names of causes that are found on one host only, by their first word: whoever says "Rhytisma" means the
 * maple. Left out where several hosts share the cause.
 */
function genera(guide: Guide): ReadonlyMap<string, number> {
  const hostsOf = new Map<string, Set<number>>()
  for (const host of guide.hosts) {
    for (const problem of host.problems) {
      for (const part of (guide.problems[problem]?.agent ?? '').split(/[,;(]| and | or /u)) {
        const genus = tokenize(part)[0]?.text ?? ''
        if (genus.length >= SHORTEST_GENUS && /^\p{Lu}/u.test(part.trim())) hostsOf.set(genus, (hostsOf.get(genus) ?? new Set()).add(host.number))
      }
    }
  }
  return new Map([...hostsOf].flatMap(([genus, hosts]) => (hosts.size === 1 ? [...hosts].map((host): [string, number] => [genus, host]) : [])))
}

const SHORTEST_GENUS = 6

function addHost(map: Map<string, number[]>, name: string, host: number): void {
  const hosts = map.get(name)
  if (hosts === undefined) map.set(name, [host])
  else if (!hosts.includes(host)) hosts.push(host)
}

/** True for words that need no respelling: all of them right as they stand, or one that never is part of a name. */
function isPlain(words: readonly string[], isWord: (word: string) => boolean, { stopWords }: Speech): boolean {
  return words.every(isWord) || words.some((word) => stopWords.has(word))
}

function joinWords(words: readonly string[], first: number, last: number): string {
  let joined = words[first] ?? ''
  for (let place = first + 1; place <= last; place += 1) joined += words[place] ?? ''
  return joined
}

const HOLDERS = listed('window flower planter letter nest cardboard') // "window box" is no box hedge
const SIDES = listed('front back side rear')
/** "strangling my roses": what troubles the rose is in question as much as the rose. */
const TROUBLED = listed('strangling choking climbing smothering through up round into among over twining throttling swamping')
/** "The pea bed": where it grows, and the plant in question if no other is named. */
const GROWN_IN = listed('bed beds patch row rows border garden')
const PLANT_PARTS = listed('leaf stem root fruit flower bud bloom trunk bark branch twig shoot needle pod head bulb tuber berry')
