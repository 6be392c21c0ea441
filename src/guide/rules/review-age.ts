import type { RuleContext } from '../rule-context.js'

const OLDEST_REVIEW_YEARS = 3

/** Warning. A problem was reviewed within the last three years. */
export function reviewAgeRule(context: RuleContext): void {
  const year = Number(context.today.slice(0, 4)) - OLDEST_REVIEW_YEARS
  const oldest = `${year}${context.today.slice(4)}`
  for (const problem of context.guide.problems.values()) {
    if (problem.reviewedOn.value >= oldest) continue
    context.warn({
      code: 'OLD_REVIEW', at: [problem.reviewedOn.at], of: problem,
      message: `"${problem.id.value}" was last reviewed on ${problem.reviewedOn.value}. Expected a review within ${OLDEST_REVIEW_YEARS} years.`,
    })
  }
}
