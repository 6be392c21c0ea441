import type { RuleContext } from '../rule-context.js'

/** Error. A node says where each answer of its check leads, or where *other answers* lead. */
export function everyAnswerHandledRule(context: RuleContext): void {
  for (const { node } of context.nodes()) {
    const check = context.guide.checks.get(node.check.value)
    if (check === undefined || node.otherAnswers !== null) continue
    const handled = new Set(node.answers.map(({ label }) => label.value))
    const missing = check.answers.filter(({ label }) => !handled.has(label.value))
    if (missing.length === 0) continue
    context.error({
      code: 'UNANSWERED', at: [node.name.at],
      message: `The node "${node.name.value}" does not say where ${missing.map(({ label }) => `"${label.value}"`).join(', ')} of "${node.check.value}" ${missing.length === 1 ? 'leads' : 'lead'}. Expected a target for each answer, or for other answers.`,
    })
  }
}
