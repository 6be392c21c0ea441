import { readFile } from 'node:fs/promises'
import { join } from 'node:path'
import { z } from 'zod'
import { buildMatchIndex, type MatchIndex, matchQuestion, scopeIn, SIGNS } from '../../src/match/index.js'
import { WEIGHTS } from '../../src/match/score.js'
import { ERRANDS, LIKE_ERRANDS } from '../match/errands.js'
import { isHeldBack, readQuestions } from '../match/questions/read-questions.js'
import { wholeGuide } from '../match/small-guide.js'
import { fitLogistic, logistic } from './fit-logistic.js'

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
  const example = (isRight: boolean, weight: number) => (text: string) => {
    const signs = scopeIn(index, text)
    return { text, isRight, weight, signs: [1, ...SIGNS.map((sign) => signs[sign])] }
  }
  const examples = [...plants, ...unnamed].map(example(true, 1)).concat(errands.map(example(false, ERRAND_WEIGHT)))
  const wrong = { plants: 0, errands: 0 }
  for (let fold = 0; fold < 5; fold += 1) {
    const beta = fitLogistic(examples.filter((_, at) => at % 5 !== fold), RIDGE)
    for (const { text, signs, isRight } of examples.filter((_, at) => at % 5 === fold)) {
      const likely = logistic(beta, signs)
      if ((likely < WEIGHTS.scopeLeast) !== isRight) continue
      wrong[isRight ? 'plants' : 'errands'] += 1
      if (process.argv.includes('--wrong')) process.stdout.write(`${likely.toFixed(2)} ${text}\n`)
    }
  }
  const constants = fitLogistic(examples, RIDGE).map((value) => Math.round(value * 100) / 100)
  process.stdout.write(`${JSON.stringify({
    plants: plants.length, unnamed: unnamed.length, errands: errands.length, wrong, ...Object.fromEntries(['base', ...SIGNS].map((name, at) => [name, constants[at]])),
  })}\n`)
}

/** The question without the words that named its plants: "leaves have black spots". */
function withoutNames(index: MatchIndex, text: string): string {
  const named = matchQuestion(index, text).hosts.filter(({ score }) => score > 0.5).flatMap(({ words }) => words.map((heard) => heard.text))
  return named.filter((name) => name.split(/\s+/u).length < 3).reduce((left, name) => left.replaceAll(name, ''), text)
}

const ERRAND_WEIGHT = 5
const RIDGE = 2

await fitScope()
