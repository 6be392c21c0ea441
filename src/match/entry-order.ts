import type { FittingEntry } from './entries.js'
import type { JobEntries, JobEntry, JobTold } from './job-letters.js'
import type { Term } from './meanings.js'
import type { PlaceEars } from './place-ears.js'
import { WEIGHTS } from './score.js'
import { shareOf } from './weighed-letter.js'
import { likenessToCases } from './worked-cases.js'

/** An entry with its score, comparable between the entries of one question. */
export interface Scored {
  readonly entry: FittingEntry
  readonly score: number
}

/** Best first; of two with the same score the one that stands first in the guide. */
export function bestFirst(scored: readonly Scored[]): readonly Scored[] {
  return [...scored].sort((a, b) => b.score - a.score || a.entry.number - b.entry.number)
}

/**
 * The entries as the worked cases that are told in like words would have them: the more, the worse the words fit any
 * phrase. They change the order and the distance of the entries, never the score of the best, which says how well the
 * words fit.
 */
export function asInCases({ cases }: PlaceEars, terms: readonly Term[], except: string | null, scored: readonly Scored[]): readonly Scored[] {
  const likeness = likenessToCases(cases, terms, except)
  const weight = WEIGHTS.likeCase * (1 - WEIGHTS.likeCaseUnneeded * scored.reduce((most, { entry }) => Math.max(most, entry.fit), 0))
  const weighed = scored.map(({ entry, score }) => {
    let best = 0
    for (const problem of entry.node.reached) best = Math.max(best, likeness[problem] ?? 0)
    return { entry, score: score * (1 + weight * best) }
  })
  const bestOf = (all: readonly Scored[]): number => all.reduce((most, { score }) => Math.max(most, score), 0)
  const [before, after] = [bestOf(scored), bestOf(weighed)]
  return after === 0 ? scored : weighed.map(({ entry, score }) => ({ entry, score: score * before / after }))
}

/** Numbers of the problems whose texts are looked at: those that the complaints may end in, and every job where one may be asked for. */
export function problemsAsked({ jobs, jobEntries }: PlaceEars, scored: readonly Scored[], told: JobTold): ReadonlySet<number> {
  const complaints = scored.flatMap(({ entry }) => (jobs.hosts.has(entry.node.host) ? [] : entry.node.reached))
  return new Set([...complaints, ...(told.jobs.length > 0 ? jobNumbers(jobEntries) : [])])
}

function jobNumbers(jobEntries: JobEntries): readonly number[] {
  return [...jobEntries.values()].flatMap((entries) => entries.flatMap(({ node }) => node.own))
}

/** How likely the text of a problem that an entry leads to makes the letter, at best. */
function likeliest(likely: ReadonlyMap<number, number>, problems: readonly number[]): number {
  return problems.reduce((best, problem) => Math.max(best, likely.get(problem) ?? 0), 0)
}

/**
 * The complaints as the texts of their problems would have them: those whose problems are told of in such words come
 * forward. The best score stays what it was, so that jobs, and how sure a reading is, stand to it as before.
 */
export function asInTexts({ jobs }: PlaceEars, likely: ReadonlyMap<number, number>, scored: readonly Scored[]): readonly Scored[] {
  const isJob = ({ entry }: Scored): boolean => jobs.hosts.has(entry.node.host)
  const fullest = scored.reduce((most, one) => (isJob(one) ? most : Math.max(most, one.entry.fit)), 0)
  const best = scored.reduce((most, one) => (isJob(one) ? most : Math.max(most, likeliest(likely, one.entry.node.reached))), 0)
  const weight = WEIGHTS.byTexts * (1 - WEIGHTS.textsUnneeded * fullest)
  // An entry from which no problem can be reached hands over; no text speaks for or against it.
  const foretold = ({ entry: { node } }: Scored): number => (node.reached.length === 0 ? best : likeliest(likely, node.reached))
  const weighed = scored.map((one) => (isJob(one) ? one : { ...one, score: one.score * Math.exp(weight * foretold(one)) }))
  const bestOf = (all: readonly Scored[]): number => all.reduce((most, one) => (isJob(one) ? most : Math.max(most, one.score)), 0)
  const [before, after] = [bestOf(scored), bestOf(weighed)]
  return after === 0 ? scored : weighed.map((one) => (isJob(one) ? one : { ...one, score: one.score * before / after }))
}

/**
 * How surely a job is asked for, when what the texts of the jobs make of the letter stands beside what those of its
 * complaints do: "my lilac has white dust, can I prune it" is foretold better by mildew than by any job.
 */
export function toldBesideComplaints({ jobEntries }: PlaceEars, told: JobTold, likely: ReadonlyMap<number, number>, complaints: readonly Scored[]): JobTold {
  if (told.jobs.length === 0) return told
  const ahead = likeliest(likely, jobNumbers(jobEntries)) - complaints.reduce((best, { entry }) => Math.max(best, likeliest(likely, entry.node.reached)), 0)
  const odds = Math.log(told.share / (1 - Math.min(told.share, 0.9999)))
  return { ...told, share: shareOf(WEIGHTS.jobBesideComplaints + WEIGHTS.jobToldAlone * odds + WEIGHTS.jobByTexts * ahead) }
}

/**
 * The entries with the jobs that the letter asks for among them. Nothing of a job need be said in the words of its entry
 * phrases; how surely a job is asked for decides whether it comes before the complaints.
 */
export function withJobsTold({ jobs, jobEntries }: PlaceEars, told: JobTold, scored: readonly Scored[]): readonly Scored[] {
  const likely = likeliestJobs(jobEntries, told, scored)
  const mostShare = likely[0]?.share ?? 1
  const complaints = scored.filter(({ entry }) => !jobs.hosts.has(entry.node.host)).map(({ score }) => score).sort((a, b) => b - a)
  const byOdds = WEIGHTS.jobToldBase * (told.share / (1 - Math.min(told.share, 0.98))) ** WEIGHTS.jobToldLead
  // What is not rather sure never comes before the best complaint, unless the words hardly fit that.
  const least = (complaints[0] ?? 0) < WEIGHTS.complaintWeak ? WEIGHTS.jobToldBeforeWeak : WEIGHTS.jobToldFirst
  const lead = told.share < least ? Math.min(byOdds, (complaints[0] ?? 1) * 0.99) : Math.max(byOdds, (complaints[0] ?? 0) * 1.01)
  // Always offered among three; where a job is plainly asked for, two of them are.
  const amongThree = (complaints[2] ?? 0) * 1.001
  const byNode = new Map<number, Scored>()
  for (const [place, { entry, share, places }] of likely.entries()) {
    const isOffered = byNode.size === 0 || (byNode.size === 1 && told.share >= WEIGHTS.jobToldPlainly)
    const score = Math.max(lead * Math.sqrt(share / mostShare) * (place === 0 ? 1 : WEIGHTS.jobBesideTold), isOffered ? amongThree : 0)
    if (!byNode.has(entry.number)) byNode.set(entry.number, { score, entry: { ...entry, fit: 0, places } })
  }
  const others = scored.map((one) => {
    const job = byNode.get(one.entry.number)
    byNode.delete(one.entry.number)
    if (job !== undefined) return { entry: { ...one.entry, phrase: job.entry.phrase }, score: Math.max(one.score, job.score) }
    return jobs.hosts.has(one.entry.node.host) ? { ...one, score: one.score * WEIGHTS.jobBesideJob } : one
  })
  const all = [...others, ...byNode.values()]
  const most = all.reduce((best, { score }) => Math.max(best, score), 0)
  return most <= 1 ? all : all.map((one) => ({ ...one, score: one.score / most }))
}

interface LikelyJob {
  readonly entry: JobEntry
  /** Comparable between the jobs of one letter. */
  readonly share: number
  readonly places: readonly number[]
}

/** The jobs that the whole letter tells of, likeliest first: the more so, the better its words fit a phrase that leads there. */
function likeliestJobs(jobEntries: JobEntries, told: JobTold, scored: readonly Scored[]): readonly LikelyJob[] {
  const fits = new Map(scored.map(({ entry }) => [entry.number, entry.fit]))
  return told.jobs.flatMap(({ problem, share, places }) => {
    const entries = jobEntries.get(problem) ?? []
    const entry = bestEntry(entries, scored)
    const fit = entries.reduce((best, { number }) => Math.max(best, fits.get(number) ?? 0), 0)
    return entry === undefined ? [] : [{ entry, share: share * Math.exp(WEIGHTS.jobToldByFit * fit), places }]
  }).sort((a, b) => b.share - a.share).slice(0, WEIGHTS.jobsTold)
}

/** Of the entries that lead to a job, the one that the words fit best; the most direct where they fit none. */
function bestEntry(entries: readonly JobEntry[], scored: readonly Scored[]): JobEntry | undefined {
  const fitting = scored.find(({ entry }) => entries.some(({ number }) => number === entry.number))?.entry.number
  return entries.find(({ number }) => number === fitting) ?? entries[0]
}

/** A question asks for one job: the others that share its words ("when", "back") must not crowd the plant's complaints out. */
export function isSecondJob({ jobs }: PlaceEars, { entry }: Scored, place: number, all: readonly Scored[]): boolean {
  return jobs.hosts.has(entry.node.host) && all.slice(0, place).some((better) => jobs.hosts.has(better.entry.node.host))
}
