import { fitEntries, type FittingEntry } from './entries.js'
import { type HeardHosts, hearHosts, type NamedHost, UNKNOWN_PLANT } from './hosts.js'
import { asksForJob } from './jobs.js'
import { hearKinds } from './kinds.js'
import type { Term } from './meanings.js'
import type { PlaceEars } from './place-ears.js'
import { WEIGHTS } from './score.js'
import { subjectFeatures, type SubjectFeatures } from './subject-features.js'
import { A_PLANT, type OwnWords, SUBJECTS } from './subjects.js'
import type { Token } from './tokens.js'

/** The subject of a question as far as it is heard: what it is judged by, and what the judging stands on. */
export interface HeardSubject {
  readonly features: SubjectFeatures
  readonly own: ReadonlyMap<string, OwnWords>
  readonly heard: HeardHosts
  readonly settling: readonly NamedHost[]
  /** Tells whether a host, by number, is a plant that can be named. */
  readonly isPlant: (host: number) => boolean
  readonly fitting: readonly FittingEntry[]
  /** True where signs of trouble are told. */
  readonly troubled: boolean
}

/** Kinds of words that tell of trouble rather than of a job. */
const TROUBLE = ['symptoms', 'insects', 'pests of plants', 'wild animals', 'animal signs', 'poison'] as const

/** Hears which plants are named, which complaints fit, and what tells whether the question is about a plant at all. */
export function hearSubject(
  { names, entries, kinds, jobs }: PlaceEars, words: string, tokens: readonly Token[], terms: readonly Term[], isWord: (word: string) => boolean,
): HeardSubject {
  const heard = hearHosts(names, words, tokens, isWord)
  const isPlant = (number: number): boolean => {
    const id = names.hosts[number]?.id
    return id !== undefined && id !== UNKNOWN_PLANT && !SUBJECTS.has(id) && !jobs.hosts.has(id)
  }
  const asked = asksForJob(jobs, tokens)
  const plantWords = new Set(heard.namings.flatMap(({ first, last, hosts, other }) => (other || hosts.some(isPlant) ? placesBetween(first, last) : [])))
  const settling = settlingHosts(heard.named.filter(({ number, host }) => isPlant(number) || host === UNKNOWN_PLANT), heard.otherPlant)
  const besides = names.hosts.filter(({ id }) => id === UNKNOWN_PLANT || SUBJECTS.has(id) || jobs.hosts.has(id)).map(({ number }) => number)
  const wanted = settling.length === 0 ? null : new Set([...settling.map(({ number }) => number), ...besides])
  const always = new Map(besides.map((number) => [number, names.hosts[number]?.id === UNKNOWN_PLANT ? WEIGHTS.unknownEntries : 1]))
  const { entries: all, strengths } = fitEntries(entries, tokens, terms, heard.nameWords, wanted, always, isWord)
  const problemsOf = (kinds: ReadonlySet<string>): readonly number[] => settling.flatMap(({ number }) => [...(names.hosts[number]?.problems ?? [])].filter((problem) => kinds.has(names.problemKinds[problem] ?? '')))
  const features = subjectFeatures({
    kinds: hearKinds(kinds, tokens, plantWords), strengthOf: (of) => problemsOf(of).reduce<number | null>((best, problem) => Math.max(best ?? 0, Math.min(1, (strengths.get(problem) ?? 0) / WEIGHTS.signsToConvince)), null),
  }, tokens, heard, isPlant)
  const troubled = TROUBLE.some((kind) => features.has(kind))
  // Words that are plainly those of a job ask for it without "when" or "how", where nothing is wrong.
  const fitting = all.filter(({ node, fit }) => asked || !jobs.hosts.has(node.host) || (!troubled && fit >= WEIGHTS.jobUnasked))
  const own = new Map<string, OwnWords>([[A_PLANT, { name: settling[0]?.score ?? 0, fit: bestFitOf(fitting, ({ node }) => !SUBJECTS.has(node.host)) }]])
  for (const { id } of names.hosts) {
    if (SUBJECTS.has(id)) own.set(id, { name: heard.named.find(({ host }) => host === id)?.name ?? 0, fit: bestFitOf(fitting, ({ node }) => node.host === id) })
  }
  return { features, own, heard, settling, isPlant, fitting, troubled }
}

/**
 * The hosts that settle the plant. A single plant that only says where ("underneath my lettuces") settles it too, when
 * no other plant is named.
 */
function settlingHosts(named: readonly NamedHost[], otherPlant: number): readonly NamedHost[] {
  const real = named.filter(({ host }) => host !== UNKNOWN_PLANT)
  const sure = real.filter(({ score }) => score >= WEIGHTS.hostNamed)
  const [only, ...others] = real
  // "Mushrooms on the roots of a tree in my front lawn": the tree is in question, though nobody says which.
  if (only !== undefined && only.score === WEIGHTS.hostGround && others.length === 0 && named.some(({ host }) => host === UNKNOWN_PLANT)) return []
  if (only !== undefined && others.length === 0 && otherPlant === 0 && only.score === WEIGHTS.hostGround) return [{ ...only, score: only.name }]
  if (sure.length > 0 || only === undefined || others.length > 0 || otherPlant > 0 || only.score < WEIGHTS.hostNearby) return sure
  return [{ ...only, score: WEIGHTS.hostAlone }]
}

function placesBetween(first: number, last: number): number[] {
  return Array.from({ length: last - first + 1 }, (_, step) => first + step)
}

function bestFitOf(fitting: readonly FittingEntry[], holds: (entry: FittingEntry) => boolean): number {
  return fitting.reduce((best, entry) => (holds(entry) ? Math.max(best, entry.fit) : best), 0)
}
