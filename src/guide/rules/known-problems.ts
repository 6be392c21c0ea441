import { closestNames } from '../closest-names.js'
import type { RuleContext } from '../rule-context.js'
import type { Located } from '../source-file.js'

/** Error. Every problem that a tree concludes, a profile lists as a look-alike or a worked case ends in has a file in trees/problems. */
export function knownProblemsRule(context: RuleContext): void {
  const { problems, cases } = context.guide
  const look = (problem: Located<string>): void => {
    if (problems.has(problem.value)) return
    context.error({
      code: 'UNKNOWN_PROBLEM', at: [problem.at], nearest: closestNames(problem.value, problems.keys()),
      message: `No problem is called "${problem.value}". Expected the name of a file in trees/problems.`,
    })
  }
  for (const { node } of context.nodes()) {
    const targets = [...node.answers.map(({ target }) => target), node.otherAnswers, node.notSure]
    for (const target of targets) if (target?.kind === 'problem') look(target.problem)
  }
  for (const { lookAlikes } of problems.values()) lookAlikes.forEach(look)
  for (const { ends, alsoRight } of cases) {
    if (ends.kind === 'problem') look(ends.problem)
    alsoRight.forEach(look)
  }
}
