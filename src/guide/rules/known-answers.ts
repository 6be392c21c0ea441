import { closestNames } from '../closest-names.js'
import { CANT_LOOK, NOT_SURE } from '../guide.js'
import type { RuleContext } from '../rule-context.js'
import type { Located } from '../source-file.js'

/** Error. An answer that is named belongs to its check, letter for letter. Only a worked case may say *not sure* or *can't look now*. */
export function knownAnswersRule(context: RuleContext): void {
  const { checks, problems, cases } = context.guide
  const look = (check: Located<string>, answer: Located<string>, alsoAllowed: readonly string[]): void => {
    const labels = checks.get(check.value)?.answers.map(({ label }) => label.value)
    if (labels === undefined || labels.includes(answer.value) || alsoAllowed.includes(answer.value)) return
    const all = [...labels, ...alsoAllowed]
    context.error({
      code: 'UNKNOWN_ANSWER', at: [answer.at], nearest: closestNames(answer.value, all),
      message: `The check "${check.value}" has no answer "${answer.value}". Expected one of: ${all.map((label) => `"${label}"`).join(', ')}.`,
    })
  }
  for (const { node } of context.nodes()) for (const { label } of node.answers) look(node.check, label, [])
  for (const { shows } of problems.values()) {
    for (const { check, answers } of shows) for (const { label } of answers) look(check, label, [])
  }
  for (const { findings } of cases) for (const { check, answer } of findings) look(check, answer, [NOT_SURE, CANT_LOOK])
}
