import type { RuleContext } from '../rule-context.js'

/** Error. Every answer leads somewhere: to a node, a problem, a hand-over or another host. */
export function noDeadEndsRule(context: RuleContext): void {
  for (const { node } of context.nodes()) {
    const ways = [
      ...node.answers.map(({ label, target }) => ({ name: label.value, target })),
      ...(node.otherAnswers === null ? [] : [{ name: 'other answers', target: node.otherAnswers }]),
      ...(node.notSure === null ? [] : [{ name: 'not sure', target: node.notSure }]),
    ]
    for (const { name, target } of ways) {
      if (target.kind !== 'nowhere') continue
      context.error({
        code: 'DEAD_END', at: [target.at],
        message: `"${name}" at the node "${node.name.value}" leads nowhere. Expected a node, { problem: id }, { hand over: "why" } or { host: id }.`,
      })
    }
  }
}
