import { closestNames } from '../closest-names.js'
import type { RuleContext } from '../rule-context.js'

/** Error. A tree concludes only problems that list its host, so that each has a place in the host's reckoning. */
export function problemsOfHostRule(context: RuleContext): void {
  const { problems } = context.guide
  for (const { host, node } of context.nodes()) {
    const targets = [...node.answers.map(({ target }) => target), node.otherAnswers, node.notSure]
    for (const target of targets) {
      if (target?.kind !== 'problem') continue
      const problem = problems.get(target.problem.value)
      if (problem === undefined || problem.hosts.some((entry) => entry.host.value === host.id.value)) continue
      const own = [...problems.values()].filter(({ hosts }) => hosts.some((entry) => entry.host.value === host.id.value))
      context.error({
        code: 'NOT_ITS_PROBLEM', at: [target.problem.at, problem.id.at],
        nearest: closestNames(target.problem.value, own.map(({ id }) => id.value)),
        message: `"${target.problem.value}" does not list the host "${host.id.value}". Expected ${host.id.value} among its \`hosts\`, with how common it is there.`,
      })
    }
  }
}
