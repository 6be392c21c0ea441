import { closestNames } from '../closest-names.js'
import type { RuleContext } from '../rule-context.js'
import type { Located } from '../source-file.js'

/** Error. Every host that a problem, a tree, a red flag or a worked case names has a file in trees/hosts; a problem names at least one. */
export function knownHostsRule(context: RuleContext): void {
  const { hosts, problems, redFlags, cases } = context.guide
  const look = (host: Located<string>): void => {
    if (hosts.has(host.value)) return
    context.error({
      code: 'UNKNOWN_HOST', at: [host.at], nearest: closestNames(host.value, hosts.keys()),
      message: `No host is called "${host.value}". Expected the name of a file in trees/hosts.`,
    })
  }
  for (const problem of problems.values()) {
    for (const { host } of problem.hosts) look(host)
    if (problem.hosts.length > 0) continue
    context.error({
      code: 'SHAPE', at: [problem.id.at],
      message: `The problem "${problem.id.value}" lists no hosts. Expected at least one, with how common it is there.`,
    })
  }
  for (const { node } of context.nodes()) {
    const targets = [...node.answers.map(({ target }) => target), node.otherAnswers, node.notSure]
    for (const target of targets) if (target?.kind === 'host') look(target.host)
  }
  for (const { afterwards } of redFlags.values()) if (afterwards !== null) look(afterwards.host)
  for (const { host } of cases) if (host !== null) look(host)
}
