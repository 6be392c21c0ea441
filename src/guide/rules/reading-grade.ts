import type { Draft } from '../drafts.js'
import { readingGrade } from '../reading-grade.js'
import type { RuleContext } from '../rule-context.js'
import type { Located } from '../source-file.js'

/** Highest Flesch-Kincaid grade that text for askers may have. */
export const HIGHEST_GRADE = 8

/** Texts shorter than this are not graded: the formula means little on a few words. */
const LEAST_WORDS = 8

/** Warning. Text for askers reads at grade 8 or below. Lists are graded as one text. */
export function readingGradeRule(context: RuleContext): void {
  const look = (of: Draft, name: string, texts: readonly Located<string>[]): void => {
    const [first] = texts
    if (first === undefined) return
    const text = texts.map(({ value }) => (/[.!?]\s*$/.test(value) ? value : `${value}.`)).join(' ')
    if (text.split(/\s+/).length < LEAST_WORDS) return
    const grade = readingGrade(text)
    if (grade <= HIGHEST_GRADE) return
    context.warn({
      code: 'READING_GRADE', at: [first.at], of,
      message: `"${name}" reads at grade ${grade.toFixed(1)}. Expected ${HIGHEST_GRADE} or below: shorter sentences, plainer words.`,
    })
  }
  const { checks, problems, redFlags } = context.guide
  for (const check of checks.values()) {
    look(check, 'ask', [check.ask])
    look(check, 'how and why', [check.how, check.why])
  }
  for (const problem of problems.values()) {
    look(problem, 'what', [problem.what])
    look(problem, 'bottom line', [problem.advice.bottomLine])
    look(problem, 'do now', problem.advice.doNow)
    look(problem, 'not worth doing', problem.advice.notWorthDoing)
    look(problem, 'next year', problem.advice.nextYear)
    look(problem, 'spray', [problem.advice.spray])
    look(problem, 'cautions', problem.cautions)
    if (problem.watch?.escalate != null) look(problem, 'escalate', [problem.watch.escalate])
  }
  for (const redFlag of redFlags.values()) look(redFlag, 'card', [...redFlag.doNow, ...redFlag.doNot])
}
