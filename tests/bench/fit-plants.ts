import { buildMatchIndex, plantSignsIn } from '../../src/match/index.js'
import { lettersElsewhere, readLetters } from '../match/letters/read-letters.js'
import { isHeldBack, readQuestions } from '../match/questions/read-questions.js'
import { wholeGuide } from '../match/small-guide.js'
import { fitLogistic } from './fit-logistic.js'

/** The plants of one letter: the signs of the one in question, and of those beside it. */
interface Letter {
  readonly meant: readonly number[]
  readonly others: readonly (readonly number[])[]
}

/**
 * Fits the constants of src/match/plant-in-question.ts to the letters of tests/match/letters that name several plants, the
 * tuning two thirds of the development questions, and further files of letters named in ALSO. Two plants of one letter differ by
 * their signs, and the odds of the one against the other are logistic in that difference, so pairs are fitted, each once
 * either way round. Prints the constants, and how often the plant meant came first in letters kept out of five fits.
 */
async function fitPlants(): Promise<void> {
  const index = buildMatchIndex(await wholeGuide())
  const texts = [...await readLetters(...lettersElsewhere()), ...(await readQuestions()).filter(({ text }) => !isHeldBack(text))]
  const letters = texts.flatMap(({ text, host }): readonly Letter[] => {
    const signs = plantSignsIn(index, text)
    const meant = host === null ? undefined : signs.get(host)
    return meant === undefined || signs.size < 2 ? [] : [{ meant, others: [...signs].filter(([id]) => id !== host).map(([, values]) => values) }]
  })
  const kept = letters.map((letter, at) => ({ letter, fold: at % FOLDS }))
  const right = Array.from({ length: FOLDS }, (_, fold) => {
    const weights = fit(kept.filter((one) => one.fold !== fold).map(({ letter }) => letter))
    const score = (signs: readonly number[]): number => signs.reduce((sum, value, at) => sum + value * (weights[at] ?? 0), 0)
    return kept.filter((one) => one.fold === fold && one.letter.others.every((other) => score(other) < score(one.letter.meant))).length
  }).reduce((sum, count) => sum + count, 0)
  process.stdout.write(`${JSON.stringify({ letters: letters.length, right, before: letters.filter(({ meant, others }) => meant[meant.length - 1] === 1 && others.length > 0).length })}\n`)
  process.stdout.write(`[${fit(letters).map((value) => value.toFixed(2)).join(', ')}]\n`)
}

function fit(letters: readonly Letter[]): readonly number[] {
  const pairs = letters.flatMap(({ meant, others }) => others.flatMap((other) => {
    const difference = meant.map((value, at) => value - (other[at] ?? 0))
    // The base stands for nothing here, since neither plant comes first by itself.
    return [{ signs: [1, ...difference], isRight: true }, { signs: [1, ...difference.map((value) => -value)], isRight: false }]
  }))
  return fitLogistic(pairs, RIDGE).slice(1)
}

const FOLDS = 5
const RIDGE = 1

await fitPlants()
