import type { RuleContext } from '../rule-context.js'

/** Warning. A profile mentions at least two checks, or one answer decides it all. */
export function enoughChecksRule(context: RuleContext): void {
  for (const problem of context.guide.problems.values()) {
    if (problem.shows.length >= 2) continue
    context.warn({
      code: 'FEW_CHECKS', at: [problem.id.at], of: problem,
      message: `The profile of "${problem.id.value}" mentions ${problem.shows.length === 1 ? 'one check' : 'no check'}. Expected at least two.`,
    })
  }
}
