import { confidenceSigns, buildMatchIndex, matchQuestion } from '../../src/match/index.js'
import { isHeldBack, readQuestions } from '../match/questions/read-questions.js'
import { wholeGuide } from '../match/small-guide.js'
import { isRightEntry } from './match-measure.js'
import { solve } from './solve.js'

/**
 * Fits the curve of src/match/confidence.ts to the tuning two thirds, by Newton's method with a small ridge, and prints
 * its constants. A question that has no right entry counts as one where the first entry is wrong.
 */
export async function fitConfidence(): Promise<void> {
  const guide = await wholeGuide()
  const index = buildMatchIndex(guide)
  const cases = (await readQuestions()).filter(({ text }) => !isHeldBack(text)).flatMap((question) => {
    const matched = matchQuestion(index, question.text)
    const [first] = matched.entries
    if (first === undefined || matched.redFlags.length > 0) return []
    const { score, host } = confidenceSigns(matched)
    return [{ signs: [1, score, host], right: isRightEntry(guide, question, first, false) ? 1 : 0 }]
  })
  const size = 3
  let beta = new Array<number>(size).fill(0)
  for (let turn = 0; turn < 30; turn += 1) {
    const gradient = beta.map((value, at) => (at === 0 ? 0 : -RIDGE * value))
    const hessian: number[][] = beta.map((_, row) => beta.map((__, column) => (row === column && row > 0 ? RIDGE : 0)))
    for (const { signs, right } of cases) {
      const share = 1 / (1 + Math.exp(-signs.reduce((sum, sign, at) => sum + sign * (beta[at] ?? 0), 0)))
      for (let row = 0; row < size; row += 1) {
        gradient[row] = (gradient[row] ?? 0) + (right - share) * (signs[row] ?? 0)
        for (let column = 0; column < size; column += 1) {
          const line = hessian[row]
          if (line !== undefined) line[column] = (line[column] ?? 0) + share * (1 - share) * (signs[row] ?? 0) * (signs[column] ?? 0)
        }
      }
    }
    const step = solve(hessian, gradient)
    beta = beta.map((value, at) => value + (step[at] ?? 0))
  }
  const [base, byScore, byHost] = beta.map((value) => Math.round(value * 100) / 100)
  process.stdout.write(`${JSON.stringify({ cases: cases.length, right: cases.filter(({ right }) => right === 1).length, base, byScore, byHost })}\n`)
}

const RIDGE = 0.5

await fitConfidence()
