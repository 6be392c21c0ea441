import { confidenceSigns, buildMatchIndex, type EntryCandidate, matchQuestion } from '../../src/match/index.js'
import { readLetters } from '../match/letters/read-letters.js'
import { isHeldBack, readQuestions } from '../match/questions/read-questions.js'
import { wholeGuide } from '../match/small-guide.js'
import { fitLogistic } from './fit-logistic.js'
import { isRightEntry } from './match-measure.js'

/**
 * Fits the curve of src/match/confidence.ts to the tuning two thirds and the letters of tests/match/letters, by Newton's
 * method with a small ridge, and prints its constants. A question that has no right entry counts as one where the first entry is wrong.
 */
export async function fitConfidence(): Promise<void> {
  const guide = await wholeGuide()
  const index = buildMatchIndex(guide)
  const caseOf = (text: string, isRight: (first: EntryCandidate) => boolean) => {
    const matched = matchQuestion(index, text)
    const [first] = matched.entries
    // A garden job is judged by the letter that asks for it, not by how well the words fit a phrase.
    if (first === undefined || matched.redFlags.length > 0 || index.jobs.hosts.has(first.host)) return []
    const { score, host } = confidenceSigns(matched, index.jobs.hosts)
    return [{ signs: [1, score, host], isRight: isRight(first) }]
  }
  const cases = [
    ...(await readQuestions()).filter(({ text }) => !isHeldBack(text)).flatMap((question) => caseOf(question.text, (first) => isRightEntry(guide, question, first, false))),
    ...(await readLetters()).flatMap(({ text, problems }) => (problems === undefined || problems.length === 0 ? [] : caseOf(text, (first) => first.problems.some((problem) => problems.includes(problem))))),
  ]
  const [base, byScore, byHost] = fitLogistic(cases, RIDGE).map((value) => Math.round(value * 100) / 100)
  process.stdout.write(`${JSON.stringify({ cases: cases.length, right: cases.filter(({ isRight }) => isRight).length, base, byScore, byHost })}\n`)
}

const RIDGE = 0.5

await fitConfidence()
