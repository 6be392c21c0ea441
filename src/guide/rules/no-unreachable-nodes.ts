import type { RuleContext } from '../rule-context.js'

/** Error. Every node is led to by an answer, or is the start or an entry. */
export function noUnreachableNodesRule(context: RuleContext): void {
  const reachable = context.reachable()
  for (const { host, node } of context.nodes()) {
    if (reachable.has(node)) continue
    context.error({
      code: 'UNREACHABLE_NODE', at: [node.name.at],
      message: `Nothing leads to the node "${node.name.value}" of "${host.id.value}". Expected an answer that leads here, or entry phrases.`,
    })
  }
}
