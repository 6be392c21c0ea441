import { entryCandidate, type EntryEars, fitEntries, type FittingEntry } from './entries.js'
import { hearHosts, type HostNames, type NamedHost, UNKNOWN_PLANT } from './hosts.js'
import type { EntryCandidate, HostCandidate } from './matched.js'
import type { Term } from './meanings.js'
import { tidyScore, WEIGHTS } from './score.js'
import type { Token } from './tokens.js'

/** The plants and complaints heard, best first. */
export interface HeardPlace {
  readonly hosts: readonly HostCandidate[]
  readonly entries: readonly EntryCandidate[]
}

/** The weeds' host id: weeds are seldom named, and are told of by the plants that they trouble. */
export const UNWANTED_PLANT = 'unwanted-plant'

/** The lawn's host id: like the weeds it is often told of and not named ("molehills!"). */
const LAWN = 'lawn'

/**
 * Which plant, and which complaint: decided together, because the words for the one bear on the other. A named plant
 * speaks for its entries; an entry that fits very well speaks for its plant.
 */
export function hearPlace(
  names: HostNames, ears: EntryEars, words: string, tokens: readonly Token[], terms: readonly Term[], isWord: (word: string) => boolean, inDanger: boolean,
): HeardPlace {
  const { named, nameWords, otherPlant } = hearHosts(names, words, tokens, isWord)
  const settling = settlingHosts(named, otherPlant)
  const wanted = settling.length === 0 ? null : new Set([
    ...settling.map(({ number }) => number), ...names.hosts.filter(({ id }) => id === UNKNOWN_PLANT || id === UNWANTED_PLANT).map(({ number }) => number),
  ])
  const fitting = fitEntries(ears, tokens, terms, nameWords, wanted, isWord)
  const shareOf = hostShares(settling, named, otherPlant)
  const scored = fitting
    .map((entry) => ({ entry, score: entry.fit * shareOf(entry.node.host) }))
    .sort((a, b) => b.score - a.score || a.entry.number - b.entry.number)
  return {
    hosts: rankHosts(named, settling, scored, words, tokens, inDanger),
    entries: scored
      .filter(({ score }) => score >= WEIGHTS.entryLeast)
      .slice(0, WEIGHTS.mostEntries)
      .map(({ entry, score }) => entryCandidate(words, tokens, entry, score)),
  }
}

/**
 * The hosts that settle the plant. A single plant that only says where ("underneath my lettuces") settles it too, when
 * no other plant is named.
 */
function settlingHosts(named: readonly NamedHost[], otherPlant: number): readonly NamedHost[] {
  const real = named.filter(({ host }) => host !== UNKNOWN_PLANT)
  const sure = real.filter(({ score }) => score >= WEIGHTS.hostNamed)
  const [only, ...others] = real
  if (only !== undefined && others.length === 0 && otherPlant === 0 && only.score === WEIGHTS.hostGround) return [{ ...only, score: only.name }]
  if (sure.length > 0 || only === undefined || others.length > 0 || otherPlant > 0 || only.score < WEIGHTS.hostNearby) return sure
  return [{ ...only, score: WEIGHTS.hostAlone }]
}

interface Scored {
  readonly entry: FittingEntry
  readonly score: number
}

/** What is left of an entry's fit, by its plant. */
function hostShares(settling: readonly NamedHost[], named: readonly NamedHost[], otherPlant: number): (host: string) => number {
  const scores = new Map<string, number>(settling.map(({ host, score }) => [host, score]))
  const best = settling.reduce((most, { score }) => Math.max(most, score), 0)
  const onlyGeneral = named[0]?.host === UNKNOWN_PLANT
  return (host) => {
    const own = scores.get(host)
    if (own !== undefined) return own
    if (settling.length > 0) {
      if (host === UNWANTED_PLANT) return best <= WEIGHTS.hostTroubled ? WEIGHTS.entryWeedTroubling : WEIGHTS.entryWeedBesides
      if (host === UNKNOWN_PLANT) return otherPlant > best ? 1 : WEIGHTS.entryUnknownBesides
      return 0
    }
    if (host === UNKNOWN_PLANT) return 1
    if (otherPlant >= WEIGHTS.hostNamed) return host === UNWANTED_PLANT ? WEIGHTS.entryWeedBesides : WEIGHTS.entryOtherPlant
    return onlyGeneral ? WEIGHTS.entryOnlyUnknown : WEIGHTS.entryUnnamedHost
  }
}

function rankHosts(
  named: readonly NamedHost[], settling: readonly NamedHost[], scored: readonly Scored[], words: string, tokens: readonly Token[], inDanger: boolean,
): readonly HostCandidate[] {
  const bestOf = new Map<string, number>()
  for (const { entry, score } of scored) bestOf.set(entry.node.host, Math.max(bestOf.get(entry.node.host) ?? 0, score))
  const settled = new Map<string, NamedHost>(settling.map((host) => [host.host, host]))
  const ranked = named
    .map((host) => settled.get(host.host) ?? host)
    .map((host) => ({ ...host, rank: host.score * (1 - WEIGHTS.hostByComplaint) + WEIGHTS.hostByComplaint * (bestOf.get(host.host) ?? 0) }))
    .sort((a, b) => b.rank - a.rank || a.at - b.at || a.number - b.number)
  // Beside a red flag no plant is guessed: the words are about something else.
  const unsaid = inDanger ? [] : hostUnsaid(settling, scored, bestOf)
  const hosts = [...unsaid.map(({ entry, score }) => ({
    host: entry.node.host, score: tidyScore(Math.max(WEIGHTS.hostNamed, score * WEIGHTS.hostByEntry)), words: entryCandidate(words, tokens, entry, score).words,
  })), ...ranked.filter(({ host }) => !unsaid.some(({ entry }) => entry.node.host === host)).map(({ host, score, words: heard }) => ({ host, score, words: heard }))]
  let ceiling = 1
  return hosts.slice(0, WEIGHTS.mostHosts).map(({ host, score, words: heard }) => {
    ceiling = Math.min(ceiling, score)
    return { host, score: ceiling, words: heard }
  })
}

/** The host that nobody named, but that the complaint speaks for plainly; none or one. */
function hostUnsaid(
  settling: readonly NamedHost[], scored: readonly Scored[], bestOf: ReadonlyMap<string, number>,
): readonly Scored[] {
  const [best] = scored
  if (best === undefined) return []
  const { host } = best.entry.node
  if (host === UNKNOWN_PLANT || settling.some((one) => one.host === host)) return []
  const next = Math.max(0, ...[...bestOf].filter(([other]) => other !== host).map(([, score]) => score))
  const toldOf = host === UNWANTED_PLANT || host === LAWN
  if (best.score < (toldOf ? WEIGHTS.hostToldOf : WEIGHTS.hostUnsaid)) return []
  if (best.score - next < (toldOf ? WEIGHTS.hostToldOfMargin : WEIGHTS.hostUnsaidMargin)) return []
  return [best]
}
