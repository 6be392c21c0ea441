import type { RuleContext } from '../rule-context.js'

/**
 * Warning. A profile mentions at least two checks. A garden job may rest on one: nothing is judged by its look there, the
 * asker says what they would like to do.
 */
export function enoughChecksRule(context: RuleContext): void {
  for (const problem of context.guide.problems.values()) {
    if (problem.shows.length >= (problem.nature === 'garden job' ? 1 : 2)) continue
    context.warn({
      code: 'FEW_CHECKS', at: [problem.id.at], of: problem,
      message: `The profile of "${problem.id.value}" mentions ${problem.shows.length === 1 ? 'one check' : 'no check'}. Expected at least two.`,
    })
  }
}
