import type { Guide, RedFlagId } from '../guide/index.js'
import { buildDangerSigns, type DangerSigns, readDangerSigns, signOfPair, signsOfSets, stretchesOf } from './danger-signs.js'
import { CARD_WEIGHTS, DANGER_WEIGHTS, type SignWeights } from './danger-weights.js'
import { ENGLISH } from './languages/en.js'
import { speechIn } from './languages/index.js'
import type { HeardRedFlag } from './matched.js'
import { WEIGHTS } from './score.js'
import { quote, type Token } from './tokens.js'

/** The second ear for dangers: it weighs words where no pattern of a red flag is heard. */
export interface DangerScale {
  readonly signs: DangerSigns
  /** Numbers of words and of words in a row that weigh anything. */
  readonly words: ReadonlyMap<string, number>
  readonly danger: Weighing
  readonly cards: readonly { readonly redFlag: RedFlagId; readonly weighing: Weighing }[]
}

interface Weighing {
  readonly base: number
  /** By the number of the sign. */
  readonly weights: Float64Array
}

/**
 * Makes the second ear ready, or null for a guide without word sets or in another language than English: the weights
 * belong to English words and to the sets. Only emergencies that the guide has are ever raised.
 */
export function buildDangerScale(guide: Guide): DangerScale | null {
  if (guide.wordSets.size === 0 || speechIn(guide.language) !== ENGLISH) return null
  const signs = buildDangerSigns(guide)
  const words = new Map<string, number>()
  for (const { words: some } of [DANGER_WEIGHTS, ...Object.values(CARD_WEIGHTS)]) for (const word of Object.keys(some)) if (!words.has(word)) words.set(word, signsOfSets(signs) + words.size)
  return {
    signs, words, danger: weighingOf(DANGER_WEIGHTS, signs, words),
    cards: guide.redFlags.flatMap(({ id, level }) => {
      const weights = CARD_WEIGHTS[id]
      return level === 'emergency' && weights !== undefined ? [{ redFlag: id, weighing: weighingOf(weights, signs, words) }] : []
    }),
  }
}

/**
 * The emergency that the words most likely tell of, or null where none is likely.
 * @param tokens words with misspelled words of danger put right
 */
export function likelyDanger(scale: DangerScale, words: string, tokens: readonly Token[]): HeardRedFlag | null {
  const weighed = tokens.slice(0, WORDS_WEIGHED)
  const signs = readDangerSigns(scale.signs, weighed, (word) => scale.words.get(word) ?? -1)
  const stretches = stretchesOf(weighed.length).map(([from, to]) => ({ from, to, signs: new Set(signs.slice(from, to).flat()) }))
  const [worst] = stretches.map((stretch) => ({ ...stretch, strength: strengthOf(scale.danger, stretch.signs) })).sort((a, b) => b.strength - a.strength)
  if (worst === undefined || worst.strength < WEIGHTS.dangerLeast) return null
  const [card] = scale.cards.map(({ redFlag, weighing }) => ({ redFlag, strength: strengthOf(weighing, worst.signs) })).sort((a, b) => b.strength - a.strength)
  return card === undefined ? null : { redFlag: card.redFlag, level: 'emergency', words: tellingWords(scale, signs, worst).map((place) => quote(words, tokens, place, place)) }
}

/** How surely signs tell of a danger, as the logarithm of the odds. A long stretch has more signs, and each tells less. */
export function strengthOf({ base, weights }: Weighing, signs: ReadonlySet<number>): number {
  let sum = 0
  let known = 1
  for (const sign of signs) {
    const weight = weights[sign] ?? 0
    if (weight === 0) continue
    sum += weight
    known += 1
  }
  return base + sum / Math.sqrt(known)
}

/** The few words that weigh most, in the order in which they stand. */
function tellingWords({ danger }: DangerScale, signs: readonly (readonly number[])[], { from, to }: { readonly from: number; readonly to: number }): readonly number[] {
  const places = signs.slice(from, to).map((here, at) => ({ place: from + at, weight: here.reduce((sum, sign) => sum + (danger.weights[sign] ?? 0), 0) }))
  return places.sort((a, b) => b.weight - a.weight).slice(0, WORDS_SHOWN).map(({ place }) => place).sort((a, b) => a - b)
}

function weighingOf({ base, sets, pairs, words }: SignWeights, signs: DangerSigns, numbers: ReadonlyMap<string, number>): Weighing {
  const weights = new Float64Array(signsOfSets(signs) + numbers.size)
  const setNumbers = new Map(signs.sets.map((name, number) => [name, number]))
  const put = (sign: number | undefined, weight: number): void => { if (sign !== undefined) weights[sign] = weight }
  for (const [name, weight] of Object.entries(sets)) put(setNumbers.get(name), weight)
  for (const [name, weight] of Object.entries(pairs)) {
    const [before, after] = name.split(' > ').map((one) => setNumbers.get(one))
    if (before !== undefined && after !== undefined) put(signOfPair(signs, before, after), weight)
  }
  for (const [word, weight] of Object.entries(words)) put(numbers.get(word), weight)
  return { base, weights }
}

/** So many words are weighed; the patterns listen to all. */
const WORDS_WEIGHED = 1_000
const WORDS_SHOWN = 3
