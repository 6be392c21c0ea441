import type { HostId } from '../guide/index.js'
import { entryCandidate } from './entries.js'
import type { Scored } from './entry-order.js'
import type { HeardSubject } from './hear-subject.js'
import { type NamedHost, UNKNOWN_PLANT } from './hosts.js'
import type { JobTold } from './job-letters.js'
import type { HostCandidate } from './matched.js'
import type { PlaceEars } from './place-ears.js'
import { tidyScore, WEIGHTS } from './score.js'
import { A_PLANT, CONDITIONS, isToldOf, POISONS, SUBJECTS } from './subjects.js'
import type { Token } from './tokens.js'

/** The lawn's host id: it is often told of and not named ("molehills!"). */
const LAWN = 'lawn'

/**
 * The subject that is most likely; a plant that is named gives way only to one that is rather sure. Whether a plant is
 * poisonous is asked of the plant's own tree where there is one, unless the tree for poisons knows that very plant.
 */
export function mostLikely({ settling, own, features }: HeardSubject, shares: ReadonlyMap<string, number>, told: JobTold): string {
  // Where some plant is named, a window, a house or a colour beside it is no subject; elsewhere odd words may be all there is.
  const aPlantIsNamed = settling.length > 0 || features.has('other plant') || features.has('only some plant')
  const [subject, share] = [...shares].filter(([one]) => !aPlantIsNamed || isToldOf(one, features, own))
    .reduce((best, one) => (one[1] > best[1] ? one : best), [A_PLANT, 0] as [string, number])
  // Whoever asks for a job asks about no insect or animal that is only spoken of.
  if (subject !== CONDITIONS && told.share >= WEIGHTS.jobToldSurely && share < WEIGHTS.subjectDespiteJob && (own.get(subject)?.name ?? 0) === 0) return A_PLANT
  // "My shrub" is a plant too, though nobody says which: words for the soil and the weather beside it are mostly in passing.
  const unnamed = features.has('other plant') || (subject === CONDITIONS && features.has('only some plant'))
  if (settling.length === 0 && !unnamed) return subject
  if (share < WEIGHTS.subjectDespitePlant) return A_PLANT
  // "My oleander drops its buds, its soil is moist": the soil is that of a plant, though no tree stands for it.
  if (subject === CONDITIONS && settling.length === 0 && features.has('other plant') && !features.has('everything')) return A_PLANT
  if (subject === POISONS && features.has('plant') && (own.get(POISONS)?.name ?? 0) === 0) return A_PLANT
  return subject
}

/** The hosts with the subject first, where the question is more likely about it than about any plant. */
export function subjectFirst(
  ears: PlaceEars, ranked: readonly HostCandidate[], subject: string, shares: ReadonlyMap<string, number>, scored: readonly Scored[], words: string, tokens: readonly Token[],
): readonly HostCandidate[] {
  const host = ranked.find((one) => one.host === subject)
  const best = scored.find(({ entry }) => entry.node.host === subject)
  if (!SUBJECTS.has(subject)) {
    const plants = ranked.filter((one) => !SUBJECTS.has(one.host))
    return plants.length === 0 ? ranked.filter((one) => (shares.get(one.host) ?? 0) >= WEIGHTS.subjectOffered) : [...plants, ...ranked.filter((one) => SUBJECTS.has(one.host))]
  }
  const first = host ?? { host: subject as HostId, score: 0, words: best === undefined ? [] : entryCandidate(ears.entries, words, tokens, best.entry, best.score).words }
  const score = tidyScore(Math.max(WEIGHTS.hostNamed, shares.get(subject) ?? 0))
  return [{ ...first, score }, ...ranked.filter((one) => one.host !== subject).map((one) => ({ ...one, score: Math.min(one.score, score) }))].slice(0, WEIGHTS.mostHosts)
}

/**
 * The plants heard, best first: by how plainly each is named, how well its best complaint fits, and how often it is spoken of.
 * One that nobody named comes first where its complaint alone speaks for it, unless a danger is told.
 */
export function rankHosts(
  ears: PlaceEars, named: readonly NamedHost[], settling: readonly NamedHost[], scored: readonly Scored[], words: string, tokens: readonly Token[], inDanger: boolean,
): readonly HostCandidate[] {
  const bestOf = new Map<string, number>()
  for (const { entry, score } of scored) bestOf.set(entry.node.host, Math.max(bestOf.get(entry.node.host) ?? 0, score))
  const settled = new Map<string, NamedHost>(settling.map((host) => [host.host, host]))
  // "A shrub in our front yard": the shrub is in question, though nobody says which.
  const isOfSomePlant = settling.length === 0 && named.some(({ host }) => host === UNKNOWN_PLANT)
  const isMereGround = ({ score }: NamedHost): boolean => isOfSomePlant && score === WEIGHTS.hostGround
  const ranked = named
    .map((host) => settled.get(host.host) ?? host)
    // The plant of the story is named again and again, which its score, at most 1, no longer shows.
    .map((host) => ({
      ...host, rank: host.score * (1 - WEIGHTS.hostByComplaint) + WEIGHTS.hostByComplaint * (bestOf.get(host.host) ?? 0)
        + WEIGHTS.hostAgain * Math.min(3, host.words.length - 1),
    }))
    .sort((a, b) => Number(isMereGround(a)) - Number(isMereGround(b)) || b.rank - a.rank || a.at - b.at || a.number - b.number)
  // Beside a red flag no plant is guessed: the words are about something else.
  const unsaid = inDanger ? [] : hostUnsaid(settling, scored, bestOf, ears.jobs.hosts)
  const hosts = [...unsaid.map(({ entry, score }) => ({
    host: entry.node.host, score: tidyScore(Math.max(WEIGHTS.hostNamed, score * WEIGHTS.hostByEntry)), words: entryCandidate(ears.entries, words, tokens, entry, score).words,
  })), ...ranked.filter(({ host }) => !unsaid.some(({ entry }) => entry.node.host === host)).map(({ host, score, words: heard }) => ({ host, score, words: heard }))]
  let ceiling = 1
  return hosts.slice(0, WEIGHTS.mostHosts).map(({ host, score, words: heard }) => {
    ceiling = Math.min(ceiling, score)
    return { host, score: ceiling, words: heard }
  })
}

/** The host that nobody named, but that the complaint speaks for plainly; none or one. */
function hostUnsaid(
  settling: readonly NamedHost[], scored: readonly Scored[], bestOf: ReadonlyMap<string, number>, jobs: ReadonlySet<string>,
): readonly Scored[] {
  const [best] = scored
  if (best === undefined) return []
  const { host } = best.entry.node
  if (host === UNKNOWN_PLANT || settling.some((one) => one.host === host)) return []
  const next = Math.max(0, ...[...bestOf].filter(([other]) => other !== host).map(([, score]) => score))
  const toldOf = host === LAWN
  // A job is done to some plant: it is offered as a complaint and never taken for the plant itself.
  if (SUBJECTS.has(host) || jobs.has(host)) return []
  if (best.score < (toldOf ? WEIGHTS.hostToldOf : WEIGHTS.hostUnsaid)) return []
  if (best.score - next < (toldOf ? WEIGHTS.hostToldOfMargin : WEIGHTS.hostUnsaidMargin)) return []
  return [best]
}
