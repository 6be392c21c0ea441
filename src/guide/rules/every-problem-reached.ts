import type { RuleContext } from '../rule-context.js'

/** Error. A problem that lists a host is the end of at least one path of that host's tree. */
export function everyProblemReachedRule(context: RuleContext): void {
  const { hosts, problems } = context.guide
  for (const problem of problems.values()) {
    for (const { host } of problem.hosts) {
      const tree = hosts.get(host.value)
      if (tree === undefined) continue
      const reached = tree.nodes.some((node) =>
        [...node.answers.map(({ target }) => target), node.otherAnswers, node.notSure]
          .some((target) => target?.kind === 'problem' && target.problem.value === problem.id.value))
      if (reached) continue
      context.error({
        code: 'PROBLEM_NOT_REACHED', at: [host.at, tree.id.at],
        message: `No path in the tree of "${host.value}" ends in "${problem.id.value}". Expected a branch to it, or the host taken off its list.`,
      })
    }
  }
}
