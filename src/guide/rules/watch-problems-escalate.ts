import type { RuleContext } from '../rule-context.js'

/**
 * Error. A problem that must be reported says what to do about it, asks for a photo, and is weighed as regulated (or dangerous).
 * That an escalation asks for photo and place is what plant-health offices ask of the public (common practice, no source).
 */
export function watchProblemsEscalateRule(context: RuleContext): void {
  for (const { id, watch, cost } of context.guide.problems.values()) {
    if (watch === null) {
      if (cost !== 'regulated') continue
      context.error({
        code: 'WATCH_WITHOUT_ESCALATION', at: [id.at],
        message: `"${id.value}" is regulated but has no watch. Expected watch: { escalate: "what to do and whom to tell" }.`,
      })
    } else if (watch.escalate === null) {
      context.error({
        code: 'WATCH_WITHOUT_ESCALATION', at: [watch.at],
        message: `The watch on "${id.value}" does not say what to do. Expected escalate: "take a photo, note the place, and whom to tell".`,
      })
    } else if (!/photo|picture/i.test(watch.escalate.value)) {
      context.error({
        code: 'WATCH_WITHOUT_ESCALATION', at: [watch.escalate.at],
        message: `The escalation of "${id.value}" does not ask for a photo. Expected it to ask for a photo, the place and the date.`,
      })
    } else if (cost !== 'regulated' && cost !== 'dangerous') {
      context.error({
        code: 'WATCH_WITHOUT_ESCALATION', at: [id.at],
        message: `"${id.value}" is watched but its cost is "${cost}". Expected cost: regulated (or dangerous).`,
      })
    }
  }
}
