import { closestNames } from '../closest-names.js'
import { warningCodes } from '../error-codes.js'
import type { RuleContext } from '../rule-context.js'

/** Error. An accepted warning is one that exists. */
export function knownWarningsRule(context: RuleContext): void {
  const { checks, problems, hosts, redFlags } = context.guide
  for (const { accepts } of [...checks.values(), ...problems.values(), ...hosts.values(), ...redFlags.values()]) {
    for (const { warning } of accepts) {
      if ((warningCodes as readonly string[]).includes(warning.value)) continue
      context.error({
        code: 'UNKNOWN_WARNING', at: [warning.at], nearest: closestNames(warning.value, warningCodes),
        message: `There is no warning "${warning.value}". Expected one of: ${warningCodes.join(', ')}.`,
      })
    }
  }
}
