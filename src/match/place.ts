import { entryCandidate, type EntryEars, fitEntries, type FittingEntry } from './entries.js'
import { type HeardHosts, hearHosts, type HostNames, type NamedHost, UNKNOWN_PLANT } from './hosts.js'
import type { JobEntries, JobEntry, JobTold } from './job-letters.js'
import { asksForJob, type JobEars } from './jobs.js'
import { hearKinds, type KindEars } from './kinds.js'
import type { HostId } from '../guide/index.js'
import type { EntryCandidate, HostCandidate } from './matched.js'
import type { Term } from './meanings.js'
import { tidyScore, WEIGHTS } from './score.js'
import { subjectFeatures, type SubjectFeatures } from './subject-features.js'
import { A_PLANT, isToldOf, type OwnWords, SUBJECTS, subjectShares } from './subjects.js'
import { tokenize, type Token } from './tokens.js'
import { type CaseEars, likenessToCases } from './worked-cases.js'
import { likelinessOf, type ProblemTexts } from './problem-texts.js'
import type { LetterSign } from './letter-weights.js'
import { shareOf as shareOfOdds } from './weighed-letter.js'

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

/** Kinds of words that tell of trouble rather than of a job. */
const TROUBLE = ['symptoms', 'insects', 'pests of plants', 'wild animals', 'animal signs', 'poison'] as const

/** The lawn's host id: it is often told of and not named ("molehills!"). */
const LAWN = 'lawn'

/** What place is heard with. */
export interface PlaceEars {
  readonly names: HostNames
  readonly entries: EntryEars
  readonly kinds: KindEars
  readonly jobs: JobEars
  readonly jobEntries: JobEntries
  readonly cases: CaseEars
  readonly texts: ProblemTexts
}

/** The subject of a question as far as it is heard: what it is judged by, and what the judging stands on. */
export interface HeardSubject {
  readonly features: SubjectFeatures
  readonly own: ReadonlyMap<string, OwnWords>
  readonly heard: HeardHosts
  readonly settling: readonly NamedHost[]
  readonly fitting: readonly FittingEntry[]
  /** True where signs of trouble are told. */
  readonly troubled: boolean
}

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
  return { features, own, heard, settling, fitting, troubled }
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
  const subject = hearSubject(ears, words, tokens, terms, isWord)
  const { heard: { named, otherPlant }, settling, fitting } = subject
  const shares = subjectShares(subject.features, subject.own)
  const job = subject.troubled ? WEIGHTS.jobBesideTrouble : 1
  const byHost = hostShares(settling, named, otherPlant, shares)
  const sheets = poisonSheets(ears, subject, shares)
  const shareOf = (entry: FittingEntry): number => {
    const { host } = entry.node
    if (ears.jobs.hosts.has(host)) return job
    if (sheets.has(entry)) return settling.find((one) => one.host === host)?.score ?? 1
    return byHost(host) * (host === POISONS && sheets.size > 0 ? WEIGHTS.poisonsBesideSheet : 1)
  }
  const byWords = fitting.map((entry) => ({ entry, score: entry.fit * shareOf(entry) }))
  // Judged by the words alone: a complaint that they fit is not lost because worked cases speak for another.
  const fits = (entry: FittingEntry): boolean => entry.fit * shareOf(entry) >= WEIGHTS.entryLeast
  const byCases = asInCases(ears, terms, except, byWords)
  const likely = likelinessOf(ears.texts, signs, problemsAsked(ears, byCases, toldAlone), except)
  const told = toldBesideComplaints(ears, toldAlone, likely, byCases.filter(({ entry }) => fits(entry)))
  const inCases = bestFirst(asInTexts(ears, likely, byCases))
  const scored = told.jobs.length > 0 ? bestFirst(withJobsTold(ears, told, inCases))
    : bestFirst(inCases.map((one, place, all) => (isSecondJob(ears, one, place, all) ? { ...one, score: one.score * WEIGHTS.jobBesideJob } : one)))
  const isToldJob = ({ node }: FittingEntry): boolean => told.jobs.length > 0 && ears.jobs.hosts.has(node.host)
  const ranked = rankHosts(ears, named, settling, bestFirst(byWords), words, tokens, danger !== 'none')
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

function bestFirst(scored: readonly Scored[]): readonly Scored[] {
  return [...scored].sort((a, b) => b.score - a.score || a.entry.number - b.entry.number)
}

/**
 * The entries as the worked cases that are told in like words would have them: the more, the worse the words fit any
 * phrase. They change the order and the distance of the entries, never the score of the best, which says how well the
 * words fit.
 */
function asInCases({ cases }: PlaceEars, terms: readonly Term[], except: string | null, scored: readonly Scored[]): readonly Scored[] {
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
function problemsAsked({ jobs, jobEntries }: PlaceEars, scored: readonly Scored[], told: JobTold): ReadonlySet<number> {
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
function asInTexts({ jobs }: PlaceEars, likely: ReadonlyMap<number, number>, scored: readonly Scored[]): readonly Scored[] {
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
function toldBesideComplaints({ jobEntries }: PlaceEars, told: JobTold, likely: ReadonlyMap<number, number>, complaints: readonly Scored[]): JobTold {
  if (told.jobs.length === 0) return told
  const ahead = likeliest(likely, jobNumbers(jobEntries)) - complaints.reduce((best, { entry }) => Math.max(best, likeliest(likely, entry.node.reached)), 0)
  const odds = Math.log(told.share / (1 - Math.min(told.share, 0.9999)))
  return { ...told, share: shareOfOdds(WEIGHTS.jobBesideComplaints + WEIGHTS.jobToldAlone * odds + WEIGHTS.jobByTexts * ahead) }
}

/**
 * The entries with the jobs that the letter asks for among them. Nothing of a job need be said in the words of its entry
 * phrases; how surely a job is asked for decides whether it comes before the complaints.
 */
function withJobsTold({ jobs, jobEntries }: PlaceEars, told: JobTold, scored: readonly Scored[]): readonly Scored[] {
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
function isSecondJob({ jobs }: PlaceEars, { entry }: Scored, place: number, all: readonly Scored[]): boolean {
  return jobs.hosts.has(entry.node.host) && all.slice(0, place).some((better) => jobs.hosts.has(better.entry.node.host))
}

/**
 * The subject that is most likely; a plant that is named gives way only to one that is rather sure. Whether a plant is
 * poisonous is asked of the plant's own tree where there is one, unless the tree for poisons knows that very plant.
 */
function mostLikely({ settling, own, features }: HeardSubject, shares: ReadonlyMap<string, number>, told: JobTold): string {
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

/**
 * The entries of a named plant's own sheet on poison, where whether it is poisonous is likeliest asked: it comes before the
 * tree for all plants, unless that one knows the very plant.
 */
function poisonSheets({ kinds }: PlaceEars, { own, features, settling, fitting }: HeardSubject, shares: ReadonlyMap<string, number>): ReadonlySet<FittingEntry> {
  if ((shares.get(POISONS) ?? 0) <= (shares.get(A_PLANT) ?? 0) || !features.has('plant') || (own.get(POISONS)?.name ?? 0) > 0) return new Set()
  const isOfPoison = (phrase: string): boolean => hearKinds(kinds, tokenize(phrase), new Set()).has('poison')
  return new Set(fitting.filter(({ node, phrase }) => settling.some(({ host }) => host === node.host) && isOfPoison(phrase)))
}

/** The host id of the tree for soil, water and weather. */
const CONDITIONS = 'garden-conditions'

/** The host id of the tree for whether a plant is poisonous. */
const POISONS = 'poison-plant'

/** The hosts with the subject first, where the question is more likely about it than about any plant. */
function subjectFirst(
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

function placesBetween(first: number, last: number): number[] {
  return Array.from({ length: last - first + 1 }, (_, step) => first + step)
}

function bestFitOf(fitting: readonly FittingEntry[], holds: (entry: FittingEntry) => boolean): number {
  return fitting.reduce((best, entry) => (holds(entry) ? Math.max(best, entry.fit) : best), 0)
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

interface Scored {
  readonly entry: FittingEntry
  readonly score: number
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

function rankHosts(
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
