import { nodeOfTarget, waysOut } from '../link.js'
import type { RuleContext } from '../rule-context.js'

/**
 * Error. No path leads to a problem through an answer that the problem's own profile calls *never*.
 * It is enough to look at each single step: every step of a tree without cycles lies on some path.
 */
export function conclusionFitsProfileRule(context: RuleContext): void {
  const { guide } = context
  for (const { host, node } of context.nodes()) {
    const reported = new Set<string>()
    for (const { answer, target } of waysOut(guide, node)) {
      if (answer === null) continue
      const next = nodeOfTarget(guide, host, target)
      const ends = target.kind === 'problem' ? [target.problem.value]
        : next === null || next.host !== host ? [] : [...context.problemsFrom(host, next.node)]
      for (const end of ends) {
        const sign = guide.problems.get(end)?.shows.find(({ check }) => check.value === node.check.value)
        const word = sign?.answers.find(({ label }) => label.value === answer)
        if (word?.word !== 'never' || reported.has(`${end} ${answer}`)) continue
        reported.add(`${end} ${answer}`)
        context.error({
          code: 'CONTRADICTS_PROFILE', at: [target.at, word.label.at],
          message: `At "${node.name.value}" the answer "${answer}" leads to "${end}", whose profile says *never* for it. Expected another branch, or another word in the profile.`,
        })
      }
    }
  }
}
