import { closestNames } from '../closest-names.js'
import type { RuleContext } from '../rule-context.js'
import type { Located } from '../source-file.js'

/** Error. Every red flag that an answer raises or a worked case ends in has a file in trees/red-flags. */
export function knownRedFlagsRule(context: RuleContext): void {
  const { redFlags, checks, cases } = context.guide
  const look = (redFlag: Located<string>): void => {
    if (redFlags.has(redFlag.value)) return
    context.error({
      code: 'UNKNOWN_RED_FLAG', at: [redFlag.at], nearest: closestNames(redFlag.value, redFlags.keys()),
      message: `No red flag is called "${redFlag.value}". Expected the name of a file in trees/red-flags.`,
    })
  }
  for (const { answers } of checks.values()) for (const { redFlag } of answers) if (redFlag !== null) look(redFlag)
  for (const { ends } of cases) if (ends.kind === 'red flag') look(ends.redFlag)
}
