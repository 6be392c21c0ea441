import { entryCandidate, type FittingEntry } from './entries.js'
import { asInCases, asInTexts, bestFirst, isSecondJob, problemsAsked, toldBesideComplaints, withJobsTold } from './entry-order.js'
import { hearSubject, type HeardSubject } from './hear-subject.js'
import { mostLikely, rankHosts, subjectFirst } from './host-order.js'
import { type NamedHost, UNKNOWN_PLANT } from './hosts.js'
import type { JobTold } from './job-letters.js'
import { hearKinds } from './kinds.js'
import type { LetterSign } from './letter-weights.js'
import type { EntryCandidate, HostCandidate } from './matched.js'
import type { Term } from './meanings.js'
import type { PlaceEars } from './place-ears.js'
import { type PlantSigns, plantSigns, plantsInQuestion } from './plant-in-question.js'
import { likelinessOf } from './problem-texts.js'
import { WEIGHTS } from './score.js'
import { A_PLANT, POISONS, SUBJECTS, subjectShares } from './subjects.js'
import { tokenize, type Token } from './tokens.js'

/** The plants and complaints heard, best first. */
export interface HeardPlace {
  readonly hosts: readonly HostCandidate[]
  readonly entries: readonly EntryCandidate[]
  /** How well the words fit the best complaint, whatever the whole letter asks for: 0 to 1. */
  readonly wordsFit: number
  /** What tells whether the question is about a plant at all. */
  readonly subject: HeardSubject
  /** The jobs that the letter asks for, weighed beside its complaints. */
  readonly told: JobTold
}

/**
 * Which plant, and which complaint: decided together, because the words for the one bear on the other. A named plant
 * speaks for its entries; an entry that fits very well speaks for its plant; and words about insects, soil, animals,
 * weeds or poison speak for those, whatever plant is named in passing.
 */
export function hearPlace(
  ears: PlaceEars, words: string, tokens: readonly Token[], terms: readonly Term[], isWord: (word: string) => boolean, danger: 'none' | 'caution' | 'emergency',
  toldAlone: JobTold, signs: readonly LetterSign[], except: string | null,
): HeardPlace {
  const { subject, shares, weighedBy, rankedBy, plants } = hearPlants(ears, words, tokens, terms, isWord, danger)
  const settling = inQuestion(subject.settling, plants)
  const shareOf = weighedBy(settling)
  const byWords = subject.fitting.map((entry) => ({ entry, score: entry.fit * shareOf(entry) }))
  // Judged by the words alone: a complaint that they fit is not lost because worked cases speak for another.
  const fits = (entry: FittingEntry): boolean => entry.fit * shareOf(entry) >= WEIGHTS.entryLeast
  const byCases = asInCases(ears, terms, except, byWords)
  const likely = likelinessOf(ears.texts, signs, problemsAsked(ears, byCases, toldAlone), except)
  const told = toldBesideComplaints(ears, toldAlone, likely, byCases.filter(({ entry }) => fits(entry)))
  const inCases = bestFirst(asInTexts(ears, likely, byCases))
  const scored = told.jobs.length > 0 ? bestFirst(withJobsTold(ears, told, inCases))
    : bestFirst(inCases.map((one, place, all) => (isSecondJob(ears, one, place, all) ? { ...one, score: one.score * WEIGHTS.jobBesideJob } : one)))
  const isToldJob = ({ node }: FittingEntry): boolean => told.jobs.length > 0 && ears.jobs.hosts.has(node.host)
  const ranked = rankedBy(settling)
  const wordsFit = byWords.reduce((most, { score }) => Math.max(most, score), 0)
  return {
    subject, told, wordsFit: wordsFit >= WEIGHTS.entryLeast ? wordsFit : 0,
    // Beside an emergency no subject is guessed: the words are about something else.
    hosts: danger === 'emergency' ? ranked : subjectFirst(ears, ranked, mostLikely(subject, shares, told), shares, scored, words, tokens),
    entries: scored
      .filter(({ entry }) => fits(entry) || isToldJob(entry))
      .slice(0, WEIGHTS.mostEntries)
      .map(({ entry, score }) => entryCandidate(ears.entries, words, tokens, entry, score)),
  }
}

/** What the words say of plants before complaints are ordered. */
interface HeardPlants {
  readonly subject: HeardSubject
  readonly shares: ReadonlyMap<string, number>
  /** What is left of an entry's fit, by the plants that settle the question. */
  readonly weighedBy: (settling: readonly NamedHost[]) => (entry: FittingEntry) => number
  readonly rankedBy: (settling: readonly NamedHost[]) => readonly HostCandidate[]
  /** What tells which of several plants is in question, by the host's number; empty where one alone is named. */
  readonly plants: ReadonlyMap<number, PlantSigns>
}

/** Hears the subject, and the plants named as their names and complaints alone would have them. */
export function hearPlants(
  ears: PlaceEars, words: string, tokens: readonly Token[], terms: readonly Term[], isWord: (word: string) => boolean, danger: 'none' | 'caution' | 'emergency',
): HeardPlants {
  const subject = hearSubject(ears, words, tokens, terms, isWord)
  const { heard: { named, namings, otherPlant }, settling: settled, fitting, isPlant } = subject
  const shares = subjectShares(subject.features, subject.own)
  const job = subject.troubled ? WEIGHTS.jobBesideTrouble : 1
  const sheets = poisonSheets(ears, subject, shares)
  const weighedBy = (settling: readonly NamedHost[]): ((entry: FittingEntry) => number) => {
    const byHost = hostShares(settling, named, otherPlant, shares)
    return (entry) => {
      const { host } = entry.node
      if (ears.jobs.hosts.has(host)) return job
      if (sheets.has(entry)) return settling.find((one) => one.host === host)?.score ?? 1
      return byHost(host) * (host === POISONS && sheets.size > 0 ? WEIGHTS.poisonsBesideSheet : 1)
    }
  }
  const rankedBy = (settling: readonly NamedHost[]): readonly HostCandidate[] => {
    const shareOf = weighedBy(settling)
    return rankHosts(ears, named, settling, bestFirst(fitting.map((entry) => ({ entry, score: entry.fit * shareOf(entry) }))), words, tokens, danger !== 'none')
  }
  return { subject, shares, weighedBy, rankedBy, plants: settled.length < 2 ? new Map() : plantSigns(ears.names, tokens, namings, named, rankedBy(settled), isPlant) }
}

/** The plants that settle the question, those that are less likely the one in question drawn back: a letter names others in passing. */
function inQuestion(settling: readonly NamedHost[], plants: ReadonlyMap<number, PlantSigns>): readonly NamedHost[] {
  const likely = plantsInQuestion(plants)
  const most = settling.reduce((best, { number }) => Math.max(best, likely.get(number) ?? 0), 0)
  return most === 0 ? settling : settling.map((host) => ({ ...host, score: host.score * ((likely.get(host.number) ?? most) / most) ** WEIGHTS.plantInQuestion }))
}

/**
 * The entries of a named plant's own sheet on poison, where whether it is poisonous is likeliest asked: it comes before the
 * tree for all plants, unless that one knows the very plant.
 */
function poisonSheets({ kinds }: PlaceEars, { own, features, settling, fitting }: HeardSubject, shares: ReadonlyMap<string, number>): ReadonlySet<FittingEntry> {
  if ((shares.get(POISONS) ?? 0) <= (shares.get(A_PLANT) ?? 0) || !features.has('plant') || (own.get(POISONS)?.name ?? 0) > 0) return new Set()
  const isOfPoison = (phrase: string): boolean => hearKinds(kinds, tokenize(phrase), new Set()).has('poison')
  return new Set(fitting.filter(({ node, phrase }) => settling.some(({ host }) => host === node.host) && isOfPoison(phrase)))
}

/** What is left of an entry's fit, by its plant and by what the question is about. */
function hostShares(
  settling: readonly NamedHost[], named: readonly NamedHost[], otherPlant: number, shares: ReadonlyMap<string, number>,
): (host: string) => number {
  const scores = new Map<string, number>(settling.map(({ host, score }) => [host, score]))
  const best = settling.reduce((most, { score }) => Math.max(most, score), 0)
  const onlyGeneral = named[0]?.host === UNKNOWN_PLANT
  const likeliest = Math.max(...shares.values())
  const bySubject = (subject: string): number => WEIGHTS.subjectLeast + (1 - WEIGHTS.subjectLeast) * (shares.get(subject) ?? 0) / likeliest
  const plant = bySubject(A_PLANT)
  return (host) => {
    if (SUBJECTS.has(host)) return bySubject(host)
    const own = scores.get(host)
    if (own !== undefined) return own * plant
    if (settling.length > 0) return host === UNKNOWN_PLANT ? plant * (otherPlant > best ? 1 : WEIGHTS.entryUnknownBesides) : 0
    if (host === UNKNOWN_PLANT) return plant
    if (otherPlant >= WEIGHTS.hostNamed) return plant * WEIGHTS.entryOtherPlant
    return plant * (onlyGeneral ? WEIGHTS.entryOnlyUnknown : WEIGHTS.entryUnnamedHost)
  }
}
