import { closestNames } from '../closest-names.js'
import type { HostDraft } from '../drafts.js'
import { findNode } from '../link.js'
import type { RuleContext } from '../rule-context.js'
import type { Place } from '../source-file.js'

/** Error. Every node that is named exists in the tree it is looked for in. */
export function knownNodesRule(context: RuleContext): void {
  const look = (host: HostDraft, name: string, at: Place): void => {
    if (findNode(host, name) !== null) return
    context.error({
      code: 'UNKNOWN_NODE', at: [at], nearest: closestNames(name, host.nodes.map((node) => node.name.value)),
      message: `The tree of "${host.id.value}" has no node "${name}". Expected the name of one of its nodes.`,
    })
  }
  for (const host of context.guide.hosts.values()) look(host, host.start.value, host.start.at)
  for (const { afterwards } of context.guide.redFlags.values()) {
    const host = afterwards === null ? undefined : context.guide.hosts.get(afterwards.host.value)
    if (afterwards !== null && host !== undefined) look(host, afterwards.node.value, afterwards.node.at)
  }
  for (const { host, node } of context.nodes()) {
    // As written, not as taken: *other answers* may lead astray even where every answer is named.
    for (const target of [...node.answers.map((answer) => answer.target), node.otherAnswers, node.notSure]) {
      if (target === null) continue
      if (target.kind === 'node') look(host, target.node, target.at)
      if (target.kind !== 'host' || target.node === null) continue
      const other = context.guide.hosts.get(target.host.value)
      if (other !== undefined) look(other, target.node.value, target.node.at)
    }
  }
}
