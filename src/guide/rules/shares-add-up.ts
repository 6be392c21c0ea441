import { frequencyShares, LARGEST_SHARE_SUM } from '../frequency-words.js'
import type { RuleContext } from '../rule-context.js'

/** Error. The shares that a profile gives the answers of one check add up to no more than 130 %. */
export function sharesAddUpRule(context: RuleContext): void {
  for (const { shows } of context.guide.problems.values()) {
    for (const { check, answers } of shows) {
      const sum = answers.reduce((total, { word }) => total + frequencyShares[word], 0)
      if (sum <= LARGEST_SHARE_SUM) continue
      context.error({
        code: 'SHARES_TOO_LARGE', at: [check.at],
        message: `The answers of "${check.value}" add up to ${Math.round(sum * 100)} %. Expected about 100 %, since only one answer is given: choose rarer words.`,
      })
    }
  }
}
