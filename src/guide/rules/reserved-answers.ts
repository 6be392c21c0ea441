import { CANT_LOOK, NOT_SURE } from '../guide.js'
import type { RuleContext } from '../rule-context.js'
import { OTHER_ANSWERS } from '../drafts.js'

/** Error. *not sure* and *can't look now* always exist, so no check lists them; nor may an answer be called *other answers*. */
export function reservedAnswersRule(context: RuleContext): void {
  for (const { answers, id } of context.guide.checks.values()) {
    for (const { label } of answers) {
      if (label.value !== NOT_SURE && label.value !== CANT_LOOK && label.value !== OTHER_ANSWERS) continue
      context.error({
        code: 'RESERVED_ANSWER', at: [label.at],
        message: `The answer "${label.value}" always exists by itself. Expected only the check's own answers.`,
      })
    }
    if (answers.length < 2 || answers.length > 6) {
      context.error({
        code: 'SHAPE', at: [id.at],
        message: `The check "${id.value}" has ${answers.length} ${answers.length === 1 ? 'answer' : 'answers'}. Expected 2 to 6, so that a person can choose.`,
      })
    }
  }
}
