import type { LayWords } from '../guide/index.js'
import type { EntryEars } from './entries.js'
import { UNKNOWN_PLANT } from './hosts.js'
import type { Term } from './meanings.js'
import type { HeardPlace } from './place.js'
import { WEIGHTS } from './score.js'
import { A_PLANT, SUBJECTS } from './subjects.js'
import type { Token } from './tokens.js'
import { buildPatternIndex, findGroups, type PatternIndex } from './word-pattern.js'

/** What tells questions for a plant helpline from others. */
export interface ScopeEar {
  readonly errands: PatternIndex
  /** Asking for advice in the words of an errand: "do you have any ideas". */
  readonly advice: PatternIndex
}

/** What it is judged by whether a question is for a plant helpline. All are 0 to 1. */
export interface ScopeSigns {
  /** How surely a plant is named, and a plant without a tree or only "plant", "tree", "hedge". */
  readonly plant: number
  readonly somePlant: number
  /** How surely insects, soil, poison, animals or weeds are named by a name of their tree. */
  readonly subject: number
  /** How well the best complaint fits. */
  readonly complaint: number
  /** Share of the telling words that the guide has in a complaint or a problem, as they are spelled. */
  readonly known: number
  /** How much the words are those of plants in trouble, whatever the plant ("leaves", "brown"), and not of one tree. */
  readonly talk: number
  /** Words of three or more kinds (parts, signs, insects, weather) give 1. */
  readonly kinds: number
  /** 1 where an errand is heard. */
  readonly errand: number
}

/** Makes the guide's errands ready. Small words count: "buy a" is not heard in every "buy". */
export function buildScopeEar({ errands, kinds }: LayWords): ScopeEar {
  return { errands: buildPatternIndex([errands], 'kept'), advice: buildPatternIndex([kinds.get(ADVICE) ?? []], 'kept') }
}

/** The kind of words that take an errand back. */
const ADVICE = 'asks advice'

/** True where an errand is told that is not the asking for advice in its words. */
function isErrand(ear: ScopeEar, tokens: readonly Token[]): boolean {
  const advice = [...findGroups(tokens, ear.advice).values()].flat()
  return [...findGroups(tokens, ear.errands).values()].flat().some(({ first, last }) => !advice.some((asked) => asked.first <= last && asked.last >= first))
}

/** Reads from a question what its scope is judged by. */
export function scopeSigns(ear: ScopeEar, { phrases, problems }: EntryEars, tokens: readonly Token[], terms: readonly Term[], { subject, wordsFit }: HeardPlace): ScopeSigns {
  const { heard, settling, features } = subject
  const best = (scores: readonly number[]): number => scores.reduce((most, score) => Math.max(most, score), 0)
  const telling = terms.filter(({ first }) => !heard.nameWords.has(first))
  const known = telling.filter(({ key }) => phrases.postings.has(key) || problems.postings.has(key))
  const talk = telling.reduce((sum, { key }) => sum + (phrases.postings.get(key)?.shared ?? 0), 0)
  const somePlant = heard.named.some(({ host }) => host === UNKNOWN_PLANT)
  return {
    plant: best(settling.flatMap(({ host, score }) => (host === UNKNOWN_PLANT ? [] : [score]))),
    somePlant: Math.max(somePlant ? 1 : 0, heard.otherPlant),
    subject: best([...subject.own].flatMap(([name, own]) => (name !== A_PLANT && SUBJECTS.has(name) ? [own.name] : []))),
    complaint: wordsFit,
    known: telling.length === 0 ? 0 : known.length / telling.length,
    talk: Math.min(1, talk / MUCH_TALK),
    kinds: Math.min(1, KINDS.filter((kind) => features.has(kind)).length / MANY_KINDS),
    errand: isErrand(ear, tokens) ? 1 : 0,
  }
}

/**
 * True where the question is hardly for a plant helpline. Whoever names a plant as it is spelled, and no errand, always
 * is in scope. A red flag is never out of scope; the caller sees to that.
 */
export function isOutOfScope(signs: ScopeSigns): boolean {
  const named = signs.plant >= WEIGHTS.hostInflected || signs.somePlant >= WEIGHTS.hostInflected || signs.subject >= WEIGHTS.hostInflected
  return !(named && signs.errand === 0) && plantLikely(signs) < WEIGHTS.scopeLeast
}

/** How likely a question is for a plant helpline, 0 to 1: a logistic curve fitted to questions and errands. */
export function plantLikely(signs: ScopeSigns): number {
  const strength = SIGNS.reduce<number>((sum, sign) => sum + FITTED[sign] * signs[sign], FITTED.base)
  return 1 / (1 + Math.exp(-strength))
}

/** The signs, in the order of the fit. */
export const SIGNS = ['plant', 'somePlant', 'subject', 'complaint', 'known', 'talk', 'kinds', 'errand'] as const satisfies readonly (keyof ScopeSigns)[]

/** Fitted 2026-11-28 by `tests/bench/fit-scope.ts`. */
const FITTED = { base: -3.25, plant: 2.63, somePlant: 2.2, subject: 1.14, complaint: 2.79, known: 1.7, talk: 3.41, kinds: 3.13, errand: -5.05 } as const

/** Two words that every tree has say as much as words can. */
const MUCH_TALK = 2
/** Kinds of words that errands too are full of are left out: names asked for, rooms, places, "everything". */
const KINDS = [
  'insects', 'pests of plants', 'swarms and nests', 'insect looks', 'wild animals', 'tame animals', 'small people', 'animal signs', 'digs', 'eats', 'keeps out', 'stores', 'soil',
  'soil tests', 'wet places', 'weather', 'spoilers', 'poison', 'weeds', 'weed ways', 'parts', 'symptoms', 'fungi and berries', 'bites',
] as const
const MANY_KINDS = 3
