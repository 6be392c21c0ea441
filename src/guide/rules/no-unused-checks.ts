import type { RuleContext } from '../rule-context.js'

/** Warning. A check is asked by a tree or mentioned by a profile. */
export function noUnusedChecksRule(context: RuleContext): void {
  const used = new Set<string>()
  for (const { node } of context.nodes()) used.add(node.check.value)
  for (const { shows } of context.guide.problems.values()) for (const { check } of shows) used.add(check.value)
  for (const check of context.guide.checks.values()) {
    if (used.has(check.id.value)) continue
    context.warn({
      code: 'UNUSED_CHECK', at: [check.id.at], of: check,
      message: `No tree asks the check "${check.id.value}" and no profile mentions it. Expected a use for it, or the file taken away.`,
    })
  }
}
