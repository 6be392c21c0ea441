import type { NodeDraft } from '../drafts.js'
import type { LinkedNode } from '../link.js'
import type { RuleContext } from '../rule-context.js'

/** Error. No path comes back to a node it has passed. Each cycle is reported once, at each of its nodes. */
export function noCyclesRule(context: RuleContext): void {
  const done = new Set<NodeDraft>()
  const trail: LinkedNode[] = []
  const onTrail = new Set<NodeDraft>()

  // Depth first without recursion, so that a very long chain cannot overflow the stack.
  for (const first of context.nodes()) {
    if (done.has(first.node)) continue
    const stack: { here: LinkedNode; next: LinkedNode[] }[] = []
    const enter = (here: LinkedNode): void => {
      trail.push(here)
      onTrail.add(here.node)
      // Once each, or a cycle that two answers close would be reported twice.
      stack.push({ here, next: [...new Map(context.nextNodes(here).map((next) => [next.node, next])).values()] })
    }
    enter(first)
    while (stack.length > 0) {
      const top = stack[stack.length - 1]
      if (top === undefined) break
      const next = top.next.pop()
      if (next === undefined) {
        stack.pop()
        trail.pop()
        onTrail.delete(top.here.node)
        done.add(top.here.node)
      } else if (onTrail.has(next.node)) {
        const from = trail.findIndex(({ node }) => node === next.node)
        const [start, ...rest] = trail.slice(from).map(({ node }) => node)
        if (start === undefined) continue
        context.error({
          code: 'CYCLE', at: [start.name.at, ...rest.map(({ name }) => name.at)],
          message: `The tree goes round in a circle: ${[start, ...rest, start].map(({ name }) => `"${name.value}"`).join(' → ')}. Expected every path to end.`,
        })
      } else if (!done.has(next.node)) enter(next)
    }
  }
}
