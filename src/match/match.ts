import type { Guide, RedFlag } from '../guide/index.js'
import { toldBesideDanger } from './beside-danger.js'
import { type EntryEars, makeScratch } from './entries.js'
import { confidenceOf, confidenceSigns, jobConfidence } from './confidence.js'
import { weighDangers } from './danger-letters.js'
import { buildDangerSpelling, type DangerSpelling, respellDanger } from './danger-spelling.js'
import { buildEntryPhrases } from './entry-phrases.js'
import { buildSaidAnswers, hearFindings, type SaidAnswers } from './findings.js'
import { buildHostNames, type HostNames, UNKNOWN_PLANT } from './hosts.js'
import { buildJobEars, type JobEars } from './jobs.js'
import { buildJobEntries, type JobEntries, type JobTold, jobTold, NO_JOB_TOLD } from './job-letters.js'
import { buildKindEars, type KindEars } from './kinds.js'
import { speechOf } from './languages/index.js'
import type { Speech } from './languages/speech.js'
import { knownWords } from './known-words.js'
import type { HeardFinding, HeardRedFlag, Matched } from './matched.js'
import { buildLetterEars, type LetterEars, letterSigns, pairSigns } from './letter-signs.js'
import type { LetterSign } from './letter-weights.js'
import { buildMeanings, readTerms } from './meanings.js'
import { type HeardSubject, hearSubject } from './hear-subject.js'
import { hearPlace, hearPlants } from './place.js'
import type { PlaceEars } from './place-ears.js'
import type { PlantSigns } from './plant-in-question.js'
import { buildProblemTexts, type ProblemTexts } from './problem-texts.js'
import { buildProblemWords } from './problem-words.js'
import { buildRedFlagEars, hearRedFlags, type RedFlagEars, type RuledFlag } from './red-flags.js'
import { buildScopeEar, isOutOfScope, type ScopeEar, type ScopeSigns, scopeSigns } from './scope.js'
import { WEIGHTS } from './score.js'
import { buildSpeller } from './spelling.js'
import { tokenize, type Token } from './tokens.js'
import { buildCaseEars, type CaseEars } from './worked-cases.js'

/** A guide made ready for listening to questions. Make it once a guide; it is never changed. */
export interface MatchIndex {
  readonly speech: Speech
  readonly redFlags: RedFlagEars
  readonly dangerSpelling: DangerSpelling
  readonly letters: LetterEars
  readonly redFlagsById: ReadonlyMap<string, RedFlag>
  readonly hostNames: HostNames
  readonly entries: EntryEars
  readonly kinds: KindEars
  readonly jobs: JobEars
  readonly jobEntries: JobEntries
  readonly cases: CaseEars
  readonly texts: ProblemTexts
  /** Words that are right as they stand and so are never respelled. */
  readonly knownWords: ReadonlySet<string>
  readonly said: SaidAnswers
  readonly scope: ScopeEar
  readonly hostNumbers: ReadonlyMap<string, number>
}

/** Makes a guide ready for listening. Takes a second or two for the whole guide, so make it once. */
export function buildMatchIndex(guide: Guide): MatchIndex {
  const speech = speechOf(guide)
  const meanings = buildMeanings(guide.layWords, speech)
  const phrases = buildEntryPhrases(guide, meanings)
  const problems = buildProblemWords(guide, meanings)
  const redFlags = buildRedFlagEars(guide)
  const kinds = buildKindEars(guide.layWords, speech)
  const jobs = buildJobEars(guide, speech)
  const letters = buildLetterEars(guide, meanings, kinds)
  return {
    speech, redFlags, dangerSpelling: buildDangerSpelling(redFlags),
    letters,
    redFlagsById: new Map(guide.redFlags.map((redFlag) => [redFlag.id, redFlag])),
    hostNames: buildHostNames(guide, speech),
    entries: { meanings, phrases, problems, scratch: makeScratch(phrases, problems), spell: buildSpeller([...phrases.words, ...meanings.groups.keys()]) },
    kinds,
    jobs, jobEntries: buildJobEntries(guide, phrases, jobs.hosts),
    cases: buildCaseEars(guide, meanings), texts: buildProblemTexts(guide, letters, phrases),
    knownWords: knownWords(guide, speech),
    said: buildSaidAnswers(guide, meanings),
    scope: buildScopeEar(guide.layWords),
    hostNumbers: guide.hostNumbers,
  }
}

/**
 * What is heard in one question, in the asker's own words: red flags first, then the plants named, then the complaints.
 * Pure, and takes any text at all: words it cannot use give empty lists. Red flags are listened for in the whole text,
 * plants and complaints in its first `WEIGHTS.wordsWeighed` words.
 * @param except id of a worked case that the words are not likened to: a case that is played again must not hear itself
 */
export function matchQuestion(index: MatchIndex, words: string, except: string | null = null): Matched {
  const tokens = tokenize(words)
  const weighed = tokens.slice(0, WEIGHTS.wordsWeighed)
  const isWord = (word: string): boolean => index.knownWords.has(word)
  const { redFlags, signs } = hearDangers(index, words, tokens)
  const terms = readTerms(index.entries.meanings, weighed)
  const told = redFlags.some(isEmergency) ? NO_JOB_TOLD : hearJob(index, tokens, signs)
  const danger = redFlags.some(isEmergency) ? 'emergency' : redFlags.length > 0 ? 'caution' : 'none'
  const { subject, wordsFit, told: asked, ...heard } = hearPlace(placeEars(index), words, weighed, terms, isWord, danger, told, firstOf(signs), except)
  const place = danger === 'emergency' ? { ...heard, entries: toldBesideDanger(index, words, tokens, redFlags, heard.hosts, heard.entries) } : heard
  return {
    redFlags, ...place,
    // Beside an emergency nothing is filled in: the words tell of the danger.
    findings: redFlags.some(isEmergency) ? [] : hearFindings(index.said, words, weighed, terms, index.hostNumbers.get(findingsHost(place)) ?? -1),
    confidence: confidenceIn(place, index.jobs.hosts, asked),
    outOfScope: redFlags.length === 0 && isOutOfScope(scopeSigns(index.scope, index.entries, weighed, terms, { subject, wordsFit, told: asked, ...place })),
  }
}

/**
 * What the words already answer for the checks of a host that is settled. Nothing beside an emergency.
 */
export function findingsFor(index: MatchIndex, words: string, host: string): readonly HeardFinding[] {
  const tokens = tokenize(words)
  if (hearDangers(index, words, tokens).redFlags.some(isEmergency)) return []
  const weighed = tokens.slice(0, WEIGHTS.wordsWeighed)
  return hearFindings(index.said, words, weighed, readTerms(index.entries.meanings, weighed), index.hostNumbers.get(host) ?? -1)
}

/** Emergencies first: what the rules hear, then what the whole letter tells of. */
function hearDangers(index: MatchIndex, words: string, tokens: readonly Token[]): { readonly redFlags: readonly HeardRedFlag[]; readonly signs: readonly LetterSign[] } {
  const { listened, ruled } = hearRules(index, words, tokens)
  const { dangerLetters, stopWords } = index.speech
  // The names of plants are among the signs: a guide without plants hears by its rules alone.
  if (index.hostNumbers.size === 0) return { redFlags: ruled, signs: [] }
  const signs = letterSigns(index.letters, tokens, listened)
  if (dangerLetters === null) return { redFlags: ruled, signs }
  const heard = weighDangers(dangerLetters, { words, tokens, signs, stopWords }, ruled, (id) => index.redFlagsById.get(id) ?? null)
  return { redFlags: [...heard].sort((a, b) => Number(isEmergency(b)) - Number(isEmergency(a))), signs }
}

/** The signs of the words that are weighed for hosts and entries. */
function firstOf(signs: readonly LetterSign[]): readonly LetterSign[] {
  return signs.filter(({ first }) => first < WEIGHTS.wordsWeighed)
}

function hearJob({ speech, jobEntries }: MatchIndex, tokens: readonly Token[], signs: readonly LetterSign[]): JobTold {
  return speech.jobLetters === null || jobEntries.size === 0 ? NO_JOB_TOLD : jobTold(speech.jobLetters, speech, tokens, signs)
}

function hearRules(index: MatchIndex, words: string, tokens: readonly Token[]): { readonly listened: readonly Token[]; readonly ruled: readonly RuledFlag[] } {
  const isWord = (word: string): boolean => index.knownWords.has(word) || index.entries.phrases.words.has(word) || index.speech.stopWords.has(word)
  const listened = respellDanger(index.dangerSpelling, tokens, isWord)
  return { listened, ruled: hearRedFlags(index.redFlags, words, listened) }
}

/** What a letter is weighed by, for fitting: its signs, its pairs of words (which only tell whether it asks for a job), and what the rules of danger hear. */
export function letterSignsIn(index: MatchIndex, words: string): { readonly signs: readonly LetterSign[]; readonly pairs: readonly LetterSign[]; readonly ruled: readonly string[]; readonly rules: readonly string[] } {
  const tokens = tokenize(words)
  const { listened, ruled } = hearRules(index, words, tokens)
  return { signs: letterSigns(index.letters, tokens, listened), pairs: pairSigns(index.speech, tokens), ruled: ruled.map(({ redFlag }) => redFlag), rules: ruled.flatMap(({ rules }) => rules) }
}

function placeEars({ hostNames: names, entries, kinds, jobs, jobEntries, cases, texts }: MatchIndex): PlaceEars {
  return { names, entries, kinds, jobs, jobEntries, cases, texts }
}

function isEmergency({ level }: HeardRedFlag): boolean {
  return level === 'emergency'
}

/** The host whose checks the words may answer: the first one heard, else the one of the first entry. */
function findingsHost({ hosts, entries }: Pick<Matched, 'hosts' | 'entries'>): string {
  const [first] = hosts
  if (first !== undefined && first.score >= WEIGHTS.hostNamed) return first.host
  return entries.find(({ host }) => host === UNKNOWN_PLANT)?.host ?? entries[0]?.host ?? first?.host ?? ''
}

function confidenceIn(place: Pick<Matched, 'hosts' | 'entries'>, jobs: ReadonlySet<string>, told: JobTold): number {
  const [first] = place.entries
  if (first === undefined) return 0
  return jobs.has(first.host) && told.jobs.length > 0 ? jobConfidence(told) : confidenceOf(confidenceSigns(place, jobs))
}

/**
 * What tells the subject of a question and how likely each one is, for fitting and for looking into a reading.
 */
export function subjectIn(index: MatchIndex, words: string): Pick<HeardSubject, 'features' | 'own'> {
  const weighed = tokenize(words).slice(0, WEIGHTS.wordsWeighed)
  return hearSubject(placeEars(index), words, weighed, readTerms(index.entries.meanings, weighed), (word) => index.knownWords.has(word))
}

/**
 * What tells whether a question is for a plant helpline at all, for fitting and for looking into a reading.
 */
export function scopeIn(index: MatchIndex, words: string): ScopeSigns {
  const tokens = tokenize(words)
  const weighed = tokens.slice(0, WEIGHTS.wordsWeighed)
  const terms = readTerms(index.entries.meanings, weighed)
  const signs = letterSigns(index.letters, tokens, tokens)
  const place = hearPlace(placeEars(index), words, weighed, terms, (word) => index.knownWords.has(word), 'none', NO_JOB_TOLD, firstOf(signs), null)
  return scopeSigns(index.scope, index.entries, weighed, terms, place)
}

/** What tells which of several plants named is the one in question, by host, for fitting; empty where one alone is named. */
export function plantSignsIn(index: MatchIndex, words: string): ReadonlyMap<string, PlantSigns> {
  const weighed = tokenize(words).slice(0, WEIGHTS.wordsWeighed)
  const { plants } = hearPlants(placeEars(index), words, weighed, readTerms(index.entries.meanings, weighed), (word) => index.knownWords.has(word), 'none')
  return new Map([...plants].flatMap(([number, signs]) => {
    const id = index.hostNames.hosts[number]?.id
    return id === undefined ? [] : [[id, signs] as const]
  }))
}
