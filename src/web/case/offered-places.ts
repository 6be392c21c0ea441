import type { CaseView } from '../../../shared/index.js'

/** A plant with a complaint, as it may be confirmed. */
export interface OfferedPlace {
  readonly host: string
  readonly hostName: string
  readonly node: string | null
  readonly phrase: string | null
  /** The asker's own words that led here. */
  readonly heard: readonly string[]
}

/**
 * The best places to choose from, best first, at most `most`.
 * A plant that was named but has no fitting complaint is offered with its whole tree, so that it is not lost.
 */
export function offeredPlaces(place: Pick<CaseView['place'], 'hosts' | 'entries'>, most = 3): readonly OfferedPlace[] {
  const fromEntries = place.entries.slice(0, most).map((entry): OfferedPlace => ({
    host: entry.host, hostName: entry.hostName, node: entry.node, phrase: entry.phrase, heard: saidOnce(entry.words.map(word => word.text)),
  }))
  const covered = new Set(fromEntries.map(offer => offer.host))
  const wholeTrees = place.hosts.filter(host => !covered.has(host.host)).map((host): OfferedPlace => ({
    host: host.host, hostName: host.name, node: null, phrase: null, heard: saidOnce(host.words.map(word => word.text)),
  }))
  return [...fromEntries, ...wholeTrees].slice(0, most)
}

function saidOnce(words: readonly string[]): readonly string[] {
  return [...new Set(words)]
}
