import type { CaseView, FlagCard } from '../../../shared/index.js'
import { UNKNOWN_PLANT } from './unknown-plant.js'

type HeardPlace = Pick<CaseView['place'], 'hosts' | 'entries'>
type DangerCard = Pick<FlagCard, 'level' | 'afterwards'>

/** A plant with a complaint, as it may be confirmed. */
export interface OfferedPlace {
  readonly host: string
  readonly hostName: string
  /** The name as it is offered: without the list of its plants where one of them was plainly named. */
  readonly shortName: string
  readonly node: string | null
  readonly phrase: string | null
  /** Set where it is no complaint that was heard but a question about what did harm, from the card of a danger. */
  readonly ofHarm?: true
  /** The asker's own words that led here. */
  readonly heard: readonly string[]
}

/**
 * The best places to choose from, best first, at most three.
 * A plant that was named but has no fitting complaint is offered with its whole tree, so that it is not lost. So is one
 * of which nothing but its name was heard: "when do I prune my hydrangea" tells of no trouble, and must not be met with one.
 *
 * After an emergency it is what was plainly told, what did the harm, and the plant itself; see `offeredAfterDanger`.
 */
export function offeredPlaces(heard: HeardPlace, cards: readonly DangerCard[] = []): readonly OfferedPlace[] {
  return isAfterDanger(cards) ? offeredAfterDanger(heard, cards) : ordinarilyOffered(withoutNameAlone(heard))
}

/** Whether the asker comes from the card of an emergency: they may have no trouble with a plant at all. */
export function isAfterDanger(cards: readonly DangerCard[]): boolean {
  return cards.some(({ level }) => level === 'emergency')
}

/**
 * What is plainly said: a plant by its name, its complaint by two words or more or by one that fits well. To someone whose child has eaten berries,
 * a guess from the word 'berries' is out of place. Then what did the harm, as the cards have it, at the place that the
 * words fit if there is one; and the plant's whole tree last, for its trouble may not have been told yet.
 */
function offeredAfterDanger(heard: HeardPlace, cards: readonly DangerCard[]): readonly OfferedPlace[] {
  const said = ordinarilyOffered(plainlySaid(heard))
  const told = said.filter(({ node }) => node !== null).slice(0, MOST_TOLD)
  const known = new Set(told.map(({ host }) => host))
  const harms = [...new Map(cards.flatMap(({ afterwards }) => (afterwards === undefined ? [] : [[afterwards.host, afterwards]]))).values()]
    .filter(({ host }) => !known.has(host))
    .map(({ host, hostName, node, offer }): OfferedPlace => {
      const fitting = heard.entries.find((entry) => entry.host === host && entry.score >= NAME_ALONE_TELLS)
      return { host, hostName, shortName: hostName, node: fitting?.node ?? node, phrase: offer, ofHarm: true, heard: saidOnce(fitting?.words ?? []) }
    })
  const named = heard.hosts.find(isPlainlyNamed)
  const ofHarm = new Set(cards.flatMap(({ afterwards }) => afterwards?.host ?? []))
  const whole = named === undefined || ofHarm.has(named.host) ? [] : [{ ...wholeTree(heard.hosts, named), heard: [] }]
  const others = [...harms, ...whole]
  return [...told, ...others.slice(0, MOST_OFFERS - told.length)]
}

function ordinarilyOffered({ hosts, entries }: HeardPlace): readonly OfferedPlace[] {
  const [best] = entries
  const isGuessFarBelow = (entry: HeardPlace['entries'][number]): boolean =>
    best !== undefined && entry.score < best.score * FAR_BELOW && !hosts.some(host => host.host === entry.host)
  const fromEntries = entries.filter(entry => !isGuessFarBelow(entry)).slice(0, MOST_OFFERS).map((entry): OfferedPlace => ({
    host: entry.host, hostName: entry.hostName, shortName: shortName(hosts, entry.host, entry.hostName), node: entry.node, phrase: entry.phrase, heard: saidOnce(entry.words),
  }))
  const covered = new Set(fromEntries.map(offer => offer.host))
  const wholeTrees = hosts.filter(host => !covered.has(host.host)).map(host => wholeTree(hosts, host))
  // "When do I prune my hydrangea" is met with jobs; the hydrangea that was named must not be crowded out by them.
  const namedTree = wholeTrees.filter(offer => hosts.some(host => host.host === offer.host && host.host !== UNKNOWN_PLANT && host.score >= PLAINLY_NAMED)).slice(0, 1)
  const others = [...fromEntries, ...wholeTrees].filter(offer => !namedTree.includes(offer))
  const before = others.slice(0, MOST_OFFERS - namedTree.length)
  return [...before, ...namedTree, ...others.slice(before.length)].slice(0, MOST_OFFERS)
}

function wholeTree(hosts: HeardPlace['hosts'], { host, name, words }: HeardPlace['hosts'][number]): OfferedPlace {
  return { host, hostName: name, shortName: shortName(hosts, host, name), node: null, phrase: null, heard: saidOnce(words) }
}

/** "Border flower (hellebore, foxglove, aster and others)" is long beside what was said; "Plane tree (American sycamore)" explains. */
function shortName(hosts: HeardPlace['hosts'], id: string, name: string): string {
  return hosts.some(({ host, score }) => host === id && score >= PLAINLY_NAMED) ? name.replace(/ \([^()]*,[^()]*\)$/u, '') : name
}

function plainlySaid({ hosts, entries }: HeardPlace): HeardPlace {
  const named = hosts.filter(isPlainlyNamed)
  return { hosts: named, entries: entries.filter(entry => (entry.score >= NAME_ALONE_TELLS || saidOnce(entry.words).length > 1) && named.some(host => host.host === entry.host)) }
}

function isPlainlyNamed({ host, score }: HeardPlace['hosts'][number]): boolean {
  return host !== UNKNOWN_PLANT && score >= PLAINLY_NAMED
}

/** Without the complaints that fit poorly and rest on no other word than their plant's name. */
function withoutNameAlone({ hosts, entries }: HeardPlace): HeardPlace {
  return { hosts, entries: entries.filter(entry => {
    const named = hosts.find(host => host.host === entry.host && host.score >= PLAINLY_NAMED)
    if (named === undefined || entry.score >= NAME_ALONE_TELLS) return true
    const name = new Set(named.words.flatMap(partsOf))
    return !entry.words.flatMap(partsOf).every(part => name.has(part))
  }) }
}

function partsOf({ text }: HeardPlace['hosts'][number]['words'][number]): string[] {
  return text.toLowerCase().split(/\s+/)
}

function saidOnce(words: HeardPlace['hosts'][number]['words']): readonly string[] {
  return [...new Set(words.map(word => word.text))]
}

const MOST_OFFERS = 3
/** After a danger, so that what did the harm is offered beside them. */
const MOST_TOLD = 2
/** "Everything in my garden looks sad" offers no jasmine that nobody named and that fits half as well as the garden. */
const FAR_BELOW = 0.5
/** An exact name scores 1; below this it is a likeness or a guess from the complaint. */
export const PLAINLY_NAMED = 0.9
/**
 * From here on a complaint that rests on its plant's name tells something ("creeping charlie", "carrots gone to seed").
 * Below it the first one was right for 8 of 32 real questions, and a third of those asked about growing (2026-11-29).
 */
const NAME_ALONE_TELLS = 0.4
