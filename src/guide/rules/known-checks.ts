import { closestNames } from '../closest-names.js'
import type { RuleContext } from '../rule-context.js'
import type { Located } from '../source-file.js'

/** Error. Every check that a tree asks, a profile mentions or a worked case answers has a file in trees/checks. */
export function knownChecksRule(context: RuleContext): void {
  const { checks, problems, cases } = context.guide
  const look = (check: Located<string>): void => {
    if (checks.has(check.value)) return
    context.error({
      code: 'UNKNOWN_CHECK', at: [check.at], nearest: closestNames(check.value, checks.keys()),
      message: `No check is called "${check.value}". Expected the name of a file in trees/checks.`,
    })
  }
  for (const { node } of context.nodes()) look(node.check)
  for (const { shows, sameSign } of problems.values()) {
    for (const { check } of shows) look(check)
    for (const group of sameSign) group.forEach(look)
  }
  for (const { findings } of cases) for (const { check } of findings) look(check)
}
