import { confidenceSigns, buildMatchIndex, matchQuestion } from '../../src/match/index.js'
import { isHeldBack, readQuestions } from '../match/questions/read-questions.js'
import { wholeGuide } from '../match/small-guide.js'
import { fitLogistic } from './fit-logistic.js'
import { isRightEntry } from './match-measure.js'

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
    const { score, host } = confidenceSigns(matched, index.jobs.hosts)
    return [{ signs: [1, score, host], isRight: isRightEntry(guide, question, first, false) }]
  })
  const [base, byScore, byHost] = fitLogistic(cases, RIDGE).map((value) => Math.round(value * 100) / 100)
  process.stdout.write(`${JSON.stringify({ cases: cases.length, right: cases.filter(({ isRight }) => isRight).length, base, byScore, byHost })}\n`)
}

const RIDGE = 0.5

await fitConfidence()
