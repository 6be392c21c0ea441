import type { SubjectFeatures } from './subject-features.js'
import { SUBJECT_WEIGHTS } from './subject-weights.js'

/** What a question may be about. `a plant` stands for every plant, named or not; the others are hosts that are none. */
export const A_PLANT = 'a plant'

/** The host id of the tree for soil, water and weather. */
export const CONDITIONS = 'garden-conditions'

/** The host id of the tree for whether a plant is poisonous. */
export const POISONS = 'poison-plant'

/** The hosts that are no plant, as far as the guide has them. */
export const SUBJECTS: ReadonlySet<string> = new Set(Object.keys(SUBJECT_WEIGHTS.bySubject).filter((subject) => subject !== A_PLANT))

/** How one host's own words bear on it: its names heard, and how well its best complaint fits. Both 0 to 1. */
export interface OwnWords {
  readonly name: number
  readonly fit: number
}

/**
 * How likely each subject is, by its name: shares of one, 0 to 1 each, `a plant` among them. Multinomial logistic
 * regression (softmax) over the features; its weights are fitted by `tests/bench/fit-subjects.ts`.
 * @param own names and best complaints heard, by subject; a subject that is missing is not in the guide and gets none
 */
export function subjectShares(features: SubjectFeatures, own: ReadonlyMap<string, OwnWords>): ReadonlyMap<string, number> {
  const strengths = [...own].map(([subject, words]): [string, number] => {
    const weights = SUBJECT_WEIGHTS.bySubject[subject] ?? {}
    let strength = (weights[BASE] ?? 0) + SUBJECT_WEIGHTS.byName * words.name + SUBJECT_WEIGHTS.byFit * words.fit
    for (const [feature, value] of features) strength += (weights[feature] ?? 0) * value
    return [subject, strength]
  })
  const most = Math.max(...strengths.map(([, strength]) => strength))
  const raised = strengths.map(([subject, strength]): [string, number] => [subject, Math.exp(strength - most)])
  const sum = raised.reduce((total, [, value]) => total + value, 0)
  return new Map(raised.map(([subject, value]) => [subject, value / sum]))
}

/**
 * False for a subject of which no word is heard: neither a name of its own nor a word of its kinds. The side of a house
 * and a window are told of in many letters, and are no insect yet.
 */
export function isToldOf(subject: string, features: SubjectFeatures, own: ReadonlyMap<string, OwnWords>): boolean {
  const kinds = TOLD_BY.get(subject)
  return kinds === undefined || (own.get(subject)?.name ?? 0) > 0 || kinds.some((kind) => features.has(kind))
}

const BASE = 'base'

/** Kinds of words without one of which the subject is not told of. */
const TOLD_BY: ReadonlyMap<string, readonly string[]> = new Map([
  ['insect-found', ['insects', 'pests of plants', 'swarms and nests', 'insect looks', 'bites', 'stores']],
  ['poison-plant', ['poison', 'fungi and berries', 'eats', 'small people', 'bites']],
  ['unwanted-plant', ['weeds', 'weed ways', 'names it']],
  ['garden-conditions', ['soil', 'soil tests', 'wet places', 'weather', 'everything', 'spoilers']],
  ['wildlife-damage', ['wild animals', 'tame animals', 'animal signs', 'digs', 'eats', 'keeps out']],
])
