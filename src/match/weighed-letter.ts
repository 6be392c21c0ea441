import type { LetterSign, LetterWeights } from './letter-weights.js'

/**
 * What a letter says for a thing, in natural log odds: logistic regression over its signs, which share a fixed weight
 * between them, so that a long letter says no more than a short one.
 * @param facts signs that count fully beside the shared ones, such as what a rule has heard
 */
export function leaning({ base, signs: weights }: LetterWeights, signs: readonly LetterSign[], facts: readonly string[]): number {
  const each = signShare(signs.length)
  const shared = signs.reduce((sum, { name }) => sum + (weights.get(name) ?? 0), 0)
  return base + each * shared + facts.reduce((sum, name) => sum + (weights.get(name) ?? 0), 0)
}

/** What one of so many signs counts. In a few words none tells so much more. */
export function signShare(count: number): number {
  return ALL_SIGNS / Math.sqrt(Math.max(count, FEWEST_SIGNS))
}

/** The share, 0 to 1, that goes with natural log odds. */
export function shareOf(odds: number): number {
  return 1 / (1 + Math.exp(-odds))
}

/** The signs that speak most for a thing, the strongest first. */
export function strongest({ signs: weights }: LetterWeights, signs: readonly LetterSign[], atMost: number): readonly LetterSign[] {
  return signs.filter(({ name }) => (weights.get(name) ?? 0) > 0).sort((a, b) => (weights.get(b.name) ?? 0) - (weights.get(a.name) ?? 0) || a.first - b.first).slice(0, atMost)
}

/** Length of the vector of all signs of one letter. */
const ALL_SIGNS = 5
/** Shorter letters are weighed as if they had so many signs. */
const FEWEST_SIGNS = 25
