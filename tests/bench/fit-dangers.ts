import { writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { seededRandom } from '../../src/engine/index.js'
import { buildDangerSigns, type DangerSigns, readDangerSigns, signsOfSets, stretchesOf } from '../../src/match/danger-signs.js'
import { buildMatchIndex, dangersIn } from '../../src/match/index.js'
import { strengthOf } from '../../src/match/likely-danger.js'
import { WEIGHTS } from '../../src/match/score.js'
import { wholeGuide } from '../match/small-guide.js'
import { type DangerExample, dangerExamples } from './danger-examples.js'

interface Read extends DangerExample {
  /** Whether the patterns of the red flags hear it. */
  readonly byPattern: boolean
  /** The signs of each of its stretches. */
  readonly stretches: readonly ReadonlySet<number>[]
}

interface Row {
  readonly signs: ReadonlySet<number>
  readonly isRight: boolean
}

interface Fitted {
  readonly base: number
  readonly weights: Float64Array
}

/**
 * Fits the weights of src/match/danger-weights.ts and prints five-fold figures: logistic regression with a ridge, by
 * stochastic gradient steps that are scaled by each weight's own past slopes (Duchi, Hazan & Singer 2011, Adaptive
 * subgradient methods, from memory). First one curve that tells danger from calm, then one for each card that tells it
 * from the other dangers. A danger of several stretches is left out of the fit, since nothing says which of them tells it.
 * `--write` writes the file, `--wrong` prints what is heard wrong.
 */
export async function fitDangers(): Promise<void> {
  const guide = await wholeGuide()
  const index = buildMatchIndex(guide)
  const signs = buildDangerSigns(guide)
  const numbers = new Map<string, number>()
  const numberOf = (words: string): number => {
    const known = numbers.get(words)
    if (known !== undefined) return known
    numbers.set(words, signsOfSets(signs) + numbers.size)
    return signsOfSets(signs) + numbers.size - 1
  }
  const examples: readonly Read[] = (await dangerExamples(guide, index)).map((example) => {
    const { tokens, byPattern } = dangersIn(index, example.text)
    const at = readDangerSigns(signs, tokens, numberOf)
    return { ...example, byPattern: byPattern.some(({ level }) => level === 'emergency'), stretches: stretchesOf(tokens.length).map(([from, to]) => new Set(at.slice(from, to).flat())) }
  })
  const cards = [...new Set(examples.flatMap(({ anyOf }) => anyOf.slice(0, 1)))].sort()
  const size = signsOfSets(signs) + numbers.size
  if (!process.argv.includes('--write')) {
    crossValidate(examples, cards, size)
    return
  }
  const { danger, byCard } = fitAll(examples, cards, size)
  const names = [...signNames(signs), ...numbers.keys()]
  await writeFile(join(import.meta.dirname, '../../src/match/danger-weights.ts'), `${HEADER}
export const DANGER_WEIGHTS: SignWeights = ${printed(danger, names, signs, '')}

/** Which card it is, by red flag. */
export const CARD_WEIGHTS: Readonly<Record<string, SignWeights>> = {
${[...byCard].map(([card, fitted]) => `  '${card}': ${printed(fitted, names, signs, '  ')},`).join('\n')}
}
`)
}

function fitAll(examples: readonly Read[], cards: readonly string[], size: number): { danger: Fitted; byCard: ReadonlyMap<string, Fitted> } {
  const dangers = examples.filter(({ anyOf, stretches }) => anyOf.length > 0 && stretches.length === 1)
  const rows = examples.flatMap(({ anyOf, stretches }) => (anyOf.length === 0 ? stretches.map((signs) => ({ signs, isRight: false })) : []))
    .concat(dangers.flatMap(({ stretches }) => stretches.map((signs) => ({ signs, isRight: true }))))
  const byCard = new Map(cards.map((card) => {
    const own = dangers.filter(({ anyOf }) => anyOf[0] === card || !anyOf.includes(card)).flatMap(({ stretches, anyOf }) => stretches.map((signs) => ({ signs, isRight: anyOf[0] === card })))
    return [card, fitMost(own, size, CARD_KEPT, CARD_SEEN)]
  }))
  return { danger: fitMost(rows, size, DANGER_KEPT, DANGER_SEEN), byCard }
}

/** Fits twice: the second time with the signs alone that said most in the first. */
function fitMost(rows: readonly Row[], size: number, kept: number, seenAtLeast: number): Fitted {
  const seen = new Float64Array(size)
  for (const { signs } of rows) for (const sign of signs) seen[sign] = (seen[sign] ?? 0) + 1
  const often = seen.map((count) => (count >= seenAtLeast ? 1 : 0))
  const first = fit(rows, often)
  const says = [...first.weights].map((weight, sign) => ({ sign, says: Math.abs(weight) * Math.sqrt(seen[sign] ?? 0) })).sort((a, b) => b.says - a.says)
  const most = new Float64Array(size)
  for (const { sign, says: much } of says.slice(0, kept)) if (much > 0) most[sign] = 1
  return fit(rows, most)
}

function fit(all: readonly Row[], usable: Float64Array): Fitted {
  const rows = all.map(({ signs, isRight }) => ({ signs: [...signs].filter((sign) => usable[sign] === 1), isRight }))
  const weights = new Float64Array(usable.length)
  const slopes = new Float64Array(usable.length).fill(1e-8)
  let base = 0
  let slopeOfBase = 1e-8
  const random = seededRandom(1)
  for (let turn = 0; turn < TURNS; turn += 1) {
    for (let place = rows.length - 1; place > 0; place -= 1) {
      const other = Math.floor(random() * (place + 1))
      const [one, two] = [rows[place], rows[other]]
      if (one !== undefined && two !== undefined) [rows[place], rows[other]] = [two, one]
    }
    for (const { signs, isRight } of rows) {
      const scale = 1 / Math.sqrt(signs.length + 1)
      const strength = signs.reduce((sum, sign) => sum + (weights[sign] ?? 0) * scale, base)
      const gap = 1 / (1 + Math.exp(-strength)) - (isRight ? 1 : 0)
      slopeOfBase += gap * gap
      base -= gap / Math.sqrt(slopeOfBase)
      for (const sign of signs) {
        const slope = gap * scale + RIDGE * (weights[sign] ?? 0)
        slopes[sign] = (slopes[sign] ?? 0) + slope * slope
        weights[sign] = (weights[sign] ?? 0) - slope / Math.sqrt(slopes[sign] ?? 1)
      }
    }
  }
  const rounded = (value: number): number => Math.round(value * 10) / 10
  return { base: rounded(base), weights: weights.map(rounded) }
}

/** How dangers and calm words fare that the weights were not fitted to, by where they come from; the patterns as they are. */
function crossValidate(examples: readonly Read[], cards: readonly string[], size: number): void {
  const held: { readonly example: Read; readonly strength: number; readonly card: string }[] = []
  for (let fold = 0; fold < FOLDS; fold += 1) {
    const { danger, byCard } = fitAll(examples.filter((_, number) => number % FOLDS !== fold), cards, size)
    for (const example of examples.filter((_, number) => number % FOLDS === fold)) {
      const [worst] = example.stretches.map((signs) => ({ signs, strength: strengthOf(danger, signs) })).sort((a, b) => b.strength - a.strength)
      const [card] = [...byCard].map(([name, fitted]) => ({ name, strength: strengthOf(fitted, worst?.signs ?? new Set()) })).sort((a, b) => b.strength - a.strength)
      held.push({ example, strength: worst?.strength ?? 0, card: card?.name ?? '' })
    }
  }
  for (const least of [0, 0.4, WEIGHTS.dangerLeast, 1, 1.5, 2]) {
    const dangers = held.filter(({ example }) => example.anyOf.length > 0)
    const heard = dangers.filter(({ strength }) => strength >= least)
    const unheard = dangers.filter(({ example }) => !example.byPattern)
    const calm = held.filter(({ example }) => example.anyOf.length === 0)
    const falseAlarms = calm.filter(({ strength }) => strength >= least)
    const sources = [...new Set(calm.map(({ example }) => example.from))].map((from) => `${from} ${falseAlarms.filter(({ example }) => example.from === from).length}/${calm.filter(({ example }) => example.from === from).length}`)
    process.stdout.write(`${least}: by weight alone ${heard.length}/${dangers.length} heard, card right ${heard.filter(({ example, card }) => example.anyOf.includes(card)).length}; `
      + `of ${unheard.length} without a pattern ${unheard.filter(({ strength }) => strength >= least).length}; calm raised ${falseAlarms.length}/${calm.length} (${sources.join(', ')})\n`)
  }
  if (!process.argv.includes('--wrong')) return
  for (const { example, strength, card } of held) {
    const raised = strength >= WEIGHTS.dangerLeast
    if (example.anyOf.length === 0 ? raised : !raised && !example.byPattern) process.stdout.write(`${strength.toFixed(1)} ${raised ? card : 'missed'} | ${example.from} | ${example.text}\n`)
  }
}

function signNames({ sets }: DangerSigns): readonly string[] {
  return [...sets, ...sets.flatMap((before) => sets.map((after) => `${before} > ${after}`))]
}

function printed({ base, weights }: Fitted, names: readonly string[], signs: DangerSigns, indent: string): string {
  const group = (from: number, to: number): string => {
    const parts = names.slice(from, to).map((name, at) => [name, weights[from + at] ?? 0] as const).filter(([, weight]) => weight !== 0).sort(([a], [b]) => (a < b ? -1 : 1))
    return parts.length === 0 ? '{}' : `{\n${wrapped(parts.map(([name, weight]) => `${/^[a-z]+$/u.test(name) ? name : `'${name}'`}: ${weight},`), `${indent}    `)}\n${indent}  }`
  }
  const all = signsOfSets(signs)
  return `{\n${indent}  base: ${base},\n${indent}  sets: ${group(0, signs.sets.length)},\n${indent}  pairs: ${group(signs.sets.length, all)},\n${indent}  words: ${group(all, names.length)},\n${indent}}`
}

function wrapped(parts: readonly string[], indent: string): string {
  const lines: string[] = []
  for (const part of parts) {
    const last = lines[lines.length - 1]
    if (last === undefined || last.length + part.length > WIDTH) lines.push(`${indent}${part}`)
    else lines[lines.length - 1] = `${last} ${part}`
  }
  return lines.join('\n')
}

const HEADER = `/** How much each sign of a danger weighs. A sign that is missing weighs nothing. */
export interface SignWeights {
  readonly base: number
  /** By the name of the word set. */
  readonly sets: Readonly<Record<string, number>>
  /** By the names of two sets, "small children > swallowed". */
  readonly pairs: Readonly<Record<string, number>>
  /** By stem, or two stems in a row. */
  readonly words: Readonly<Record<string, number>>
}

/** Fitted by \`tests/bench/fit-dangers.ts --write\`, not by hand. Logarithms of odds; the signs are told of in \`danger-signs.ts\`. */`
const WIDTH = 160
const FOLDS = 5
const TURNS = 12
const RIDGE = 0.001
/** A sign seen fewer times in the examples says more of them than of dangers. */
const DANGER_SEEN = 2
const CARD_SEEN = 3
const DANGER_KEPT = 4_000
const CARD_KEPT = 150

await fitDangers()
