import { readFile } from 'node:fs/promises'
import { join } from 'node:path'
import { z } from 'zod'
import { buildMatchIndex, type MatchIndex, matchQuestion, scopeIn, SIGNS } from '../../src/match/index.js'
import { ERRANDS, LIKE_ERRANDS } from '../match/errands.js'
import { isHeldBack, readQuestions } from '../match/questions/read-questions.js'
import { wholeGuide } from '../match/small-guide.js'
import { solve } from './solve.js'

interface Example {
  readonly text: string
  readonly signs: readonly number[]
  readonly isPlant: number
  readonly weight: number
}

const OtherQuestion = z.looseObject({ text: z.string().min(1), outOfScope: z.boolean().optional() })

/**
 * Fits the curve of src/match/scope.ts by Newton's method with a small ridge, and prints its constants with five-fold
 * figures. For: the tuning two thirds, the third set and the casebook, and a third of them once more with the names of
 * the plants left out, as people often name none. Against: errands and what is marked out of scope. As there are far
 * fewer of those, each counts as five.
 */
export async function fitScope(): Promise<void> {
  const guide = await wholeGuide()
  const index = buildMatchIndex(guide)
  const questions = (await readQuestions()).filter(({ text }) => !isHeldBack(text))
  const others = (await Promise.all(['second-questions', 'third-questions'].map((folder) => readFile(join(import.meta.dirname, '../match', folder, 'questions.jsonl'), 'utf8'))))
    .flatMap((text) => text.trim().split('\n').map((line) => OtherQuestion.parse(JSON.parse(line))))
  const calm = (text: string): boolean => matchQuestion(index, text).redFlags.length === 0
  const all = [...questions, ...others]
  const plants = [...all.filter(({ outOfScope }) => outOfScope !== true).map(({ text }) => text), ...guide.casebook.map(({ words }) => words), ...LIKE_ERRANDS].filter(calm)
  const unnamed = plants.filter((_, at) => at % 3 === 0).map((text) => withoutNames(index, text)).filter((text) => text.split(/\s+/u).length > 2)
  const errands = [...all.filter(({ outOfScope }) => outOfScope === true).map(({ text }) => text), ...ERRANDS].filter(calm)
  const example = (isPlant: number, weight: number) => (text: string): Example => {
    const signs = scopeIn(index, text)
    return { text, isPlant, weight, signs: [1, ...SIGNS.map((sign) => signs[sign])] }
  }
  const examples = [...plants, ...unnamed].map(example(1, 1)).concat(errands.map(example(0, ERRAND_WEIGHT)))
  const wrong = { plants: 0, errands: 0 }
  for (let fold = 0; fold < 5; fold += 1) {
    const beta = fitted(examples.filter((_, at) => at % 5 !== fold))
    for (const { text, signs, isPlant } of examples.filter((_, at) => at % 5 === fold)) {
      const likely = likelihood(beta, signs)
      if ((likely < LEAST) !== (isPlant === 1)) continue
      wrong[isPlant === 1 ? 'plants' : 'errands'] += 1
      if (process.argv.includes('--wrong')) process.stdout.write(`${likely.toFixed(2)} ${text}\n`)
    }
  }
  const constants = fitted(examples).map((value) => Math.round(value * 100) / 100)
  process.stdout.write(`${JSON.stringify({
    plants: plants.length, unnamed: unnamed.length, errands: errands.length, wrong, ...Object.fromEntries(['base', ...SIGNS].map((name, at) => [name, constants[at]])),
  })}\n`)
}

function fitted(examples: readonly Example[]): readonly number[] {
  const size = SIGNS.length + 1
  let beta = new Array<number>(size).fill(0)
  for (let turn = 0; turn < 30; turn += 1) {
    const gradient = beta.map((value, at) => (at === 0 ? 0 : -RIDGE * value))
    const hessian: number[][] = beta.map((_, row) => beta.map((__, column) => (row === column && row > 0 ? RIDGE : 0)))
    for (const { signs, isPlant, weight } of examples) {
      const share = likelihood(beta, signs)
      for (const [row, line] of hessian.entries()) {
        gradient[row] = (gradient[row] ?? 0) + weight * (isPlant - share) * (signs[row] ?? 0)
        for (let column = 0; column < size; column += 1) line[column] = (line[column] ?? 0) + weight * share * (1 - share) * (signs[row] ?? 0) * (signs[column] ?? 0)
      }
    }
    const step = solve(hessian, gradient)
    beta = beta.map((value, at) => value + (step[at] ?? 0))
  }
  return beta
}

function likelihood(beta: readonly number[], signs: readonly number[]): number {
  return 1 / (1 + Math.exp(-signs.reduce((sum, sign, at) => sum + sign * (beta[at] ?? 0), 0)))
}

/** The question without the words that named its plants: "leaves have black spots". */
function withoutNames(index: MatchIndex, text: string): string {
  const named = matchQuestion(index, text).hosts.filter(({ score }) => score > 0.5).flatMap(({ words }) => words.map((heard) => heard.text))
  return named.filter((name) => name.split(/\s+/u).length < 3).reduce((left, name) => left.replaceAll(name, ''), text)
}

const ERRAND_WEIGHT = 5
const RIDGE = 2
/** `scopeLeast` of src/match/score.ts. */
const LEAST = 0.3

await fitScope()
